package underhook.core.line;

import java.util.List;
import underhook.core.unit.Ranges;

/**
 * How the belly hook moves over the ground at one height: from a steady speed through parts of steady
 * acceleration.
 *
 * @param startMPerS speed along the track at the start, m/s
 * @param parts one after the other; afterwards the speed stays
 */
public record HookPath(double startMPerS, List<Part> parts) {
    /**
     * A time of steady acceleration.
     *
     * @param durationS s, above 0
     * @param forwardMPerS2 along the track, m/s²; negative slows down
     * @param rightMPerS2 across, m/s²
     */
    public record Part(double durationS, double forwardMPerS2, double rightMPerS2) {
        public Part {
            Ranges.requirePositive(durationS, "durationS");
            if (!(Math.abs(forwardMPerS2) <= 20 && Math.abs(rightMPerS2) <= 20)) {
                throw new IllegalArgumentException(
                        "forwardMPerS2 ("
                                + forwardMPerS2
                                + ") and rightMPerS2 ("
                                + rightMPerS2
                                + ") must lie in [-20, 20].");
            }
        }
    }

    public HookPath {
        parts = List.copyOf(parts);
        if (!(Math.abs(startMPerS) <= 150)) {
            throw new IllegalArgumentException(
                    "startMPerS (" + startMPerS + ") must lie in [-150, 150].");
        }
    }

    /** Straight on at one speed. */
    public static HookPath steady(double speedMPerS) {
        return new HookPath(speedMPerS, List.of());
    }

    /** Time of all parts, s. */
    public double durationS() {
        return parts.stream().mapToDouble(Part::durationS).sum();
    }

    /** Speed along the track after the last part, m/s. */
    public double endMPerS() {
        double speed = startMPerS;
        for (Part part : parts) {
            speed += part.forwardMPerS2() * part.durationS();
        }
        return speed;
    }

    /** Way along the track over all parts, m. */
    public double distanceM() {
        double speed = startMPerS;
        double way = 0;
        for (Part part : parts) {
            double after = speed + part.forwardMPerS2() * part.durationS();
            way += (speed + after) / 2 * part.durationS();
            speed = after;
        }
        return way;
    }

    /** Hardest acceleration along the track either way, m/s². */
    public double hardestMPerS2() {
        return parts.stream().mapToDouble(part -> Math.abs(part.forwardMPerS2())).max().orElse(0);
    }
}
