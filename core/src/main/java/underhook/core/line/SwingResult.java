package underhook.core.line;

/**
 * What a load on a line did while the hook followed its path, and afterwards.
 *
 * <p>Distances are those between the load and where it would hang at rest in the speed and wind at the end
 * of the path.
 *
 * @param end how it ended
 * @param timeS when that was, s from the start of the path
 * @param greatestForeRad farthest ahead of plumb, rad; negative if the load never came ahead
 * @param greatestAftRad farthest behind plumb, rad, counted positive backward
 * @param greatestSideRad farthest to either side, rad
 * @param overshootM farthest ahead of where it comes to rest, m, not negative
 * @param residualM farthest from rest after the path's end, m
 * @param settlingS how long after the path's end it last was farther from rest than is called still, s;
 *     0 if it never was
 * @param settled whether it stayed still for a period and more before the watch ended
 * @param hookTensionN greatest pull on the belly hook, N
 * @param leastTensionN least pull on the load, N
 */
public record SwingResult(
        End end,
        double timeS,
        double greatestForeRad,
        double greatestAftRad,
        double greatestSideRad,
        double overshootM,
        double residualM,
        double settlingS,
        boolean settled,
        double hookTensionN,
        double leastTensionN) {
    /** How it ended. */
    public enum End {
        /** Watched to the end. */
        WATCHED,
        /** The line went slack: what follows is a fall and a jerk, not a swing. */
        SLACK,
        /** The load swung wider than the model holds. */
        TOO_WIDE
    }

    /** Whether the line stayed taut and the load within what the model holds. */
    public boolean isWhole() {
        return end == End.WATCHED;
    }
}
