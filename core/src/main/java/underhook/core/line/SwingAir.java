package underhook.core.line;

import underhook.core.unit.Ranges;

/**
 * The air a load swings in, seen along the track.
 *
 * @param densityKgPerM3 kg/m³, above 0
 * @param windForwardMPerS steady wind along the track, m/s; positive from behind
 * @param windRightMPerS steady wind across, m/s; positive toward the right
 * @param gust on top of it
 */
public record SwingAir(
        double densityKgPerM3, double windForwardMPerS, double windRightMPerS, Gust gust) {
    /**
     * One gust that swells and dies away as a cosine does.
     *
     * @param startS after the start of the path, s, not negative
     * @param durationS from nothing to nothing, s, above 0
     * @param forwardMPerS its peak along the track, m/s
     * @param rightMPerS its peak across, m/s
     * @source FAR-25-341 shape of a discrete gust: U/2 (1 − cos)
     */
    public record Gust(double startS, double durationS, double forwardMPerS, double rightMPerS) {
        /** No gust. */
        public static final Gust NONE = new Gust(0, 1, 0, 0);

        public Gust {
            Ranges.requireNotNegative(startS, "startS");
            Ranges.requirePositive(durationS, "durationS");
            requireWind(forwardMPerS, "forwardMPerS");
            requireWind(rightMPerS, "rightMPerS");
        }

        /** Part of the peak at a time, in [0, 1]. */
        double strengthFraction(double timeS) {
            double part = (timeS - startS) / durationS;
            return part > 0 && part < 1 ? 0.5 * (1 - Math.cos(2 * Math.PI * part)) : 0;
        }

        double endS() {
            return startS + durationS;
        }
    }

    public SwingAir {
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        requireWind(windForwardMPerS, "windForwardMPerS");
        requireWind(windRightMPerS, "windRightMPerS");
    }

    /** Still air. */
    public static SwingAir still(double densityKgPerM3) {
        return new SwingAir(densityKgPerM3, 0, 0, Gust.NONE);
    }

    private static void requireWind(double windMPerS, String name) {
        if (!(windMPerS >= -60 && windMPerS <= 60)) {
            throw new IllegalArgumentException(
                    name + " (" + windMPerS + ") must lie in [-60, 60].");
        }
    }
}
