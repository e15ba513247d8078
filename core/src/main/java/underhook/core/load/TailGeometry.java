package underhook.core.load;

import underhook.core.unit.Ranges;

/**
 * Where the tail is, seen from the belly hook, and how near a line may come.
 *
 * @param tailAftM tail rotor's nearest point behind the hook, m, above 0
 * @param tailAboveM the same above the hook, m; negative below it
 * @param keepClearM least distance of line and load, m, not negative
 */
public record TailGeometry(double tailAftM, double tailAboveM, double keepClearM) {
    public TailGeometry {
        Ranges.requirePositive(tailAftM, "tailAftM");
        Ranges.requireNotNegative(keepClearM, "keepClearM");
        if (!Double.isFinite(tailAboveM)) {
            throw new IllegalArgumentException("tailAboveM (" + tailAboveM + ") must be finite.");
        }
    }

    /**
     * From the machine's own measures.
     *
     * @param tailReachM mast's centre to the tail's end, m
     * @param discRadiusM tail rotor radius, m: its disc reaches so far forward and down
     * @param hookAftM belly hook behind the mast, m; negative ahead
     * @param hubAboveM tail rotor hub above the hook, m
     * @param keepClearM least distance, m
     */
    public static TailGeometry of(
            double tailReachM,
            double discRadiusM,
            double hookAftM,
            double hubAboveM,
            double keepClearM) {
        Ranges.requireNotNegative(discRadiusM, "discRadiusM");
        // The disc is held against as a ball round its hub.
        return new TailGeometry(
                tailReachM - discRadiusM - hookAftM, hubAboveM, keepClearM + discRadiusM);
    }
}
