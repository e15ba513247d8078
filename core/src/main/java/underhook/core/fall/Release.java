package underhook.core.fall;

import underhook.core.unit.Ranges;

/**
 * A load let go in flight, with how well each thing is known.
 *
 * <p>Forward is along the track, right is square to it. Spreads are either way.
 *
 * @param heightM height of the load's lower end above the ground where it may land, m, in (0, 3000]
 * @param heightSpreadM spread of that height, m, below the height itself
 * @param groundSpeedMPerS speed over the ground, m/s, in [0, 150]
 * @param speedSpreadMPerS spread of that speed, m/s
 * @param drift the wind
 * @param hanging what hangs there and how
 */
public record Release(
        double heightM,
        double heightSpreadM,
        double groundSpeedMPerS,
        double speedSpreadMPerS,
        Drift drift,
        Hanging hanging) {
    public Release {
        if (!(heightM > 0 && heightM <= 3000)) {
            throw new IllegalArgumentException("heightM (" + heightM + ") must lie in (0, 3000].");
        }
        if (!(heightSpreadM >= 0 && heightSpreadM < heightM)) {
            throw new IllegalArgumentException(
                    "heightSpreadM (" + heightSpreadM + ") must lie in [0, height).");
        }
        if (!(groundSpeedMPerS >= 0 && groundSpeedMPerS <= 150)) {
            throw new IllegalArgumentException(
                    "groundSpeedMPerS (" + groundSpeedMPerS + ") must lie in [0, 150].");
        }
        Ranges.requireNotNegative(speedSpreadMPerS, "speedSpreadMPerS");
    }

    /**
     * The steady wind that drifts it.
     *
     * @param forwardMPerS wind along the track, m/s; from behind is positive
     * @param rightMPerS wind across the track, m/s; towards the right is positive
     * @param spreadMPerS spread of the wind along and across, m/s
     */
    public record Drift(double forwardMPerS, double rightMPerS, double spreadMPerS) {
        public Drift {
            if (!(Math.abs(forwardMPerS) <= 60 && Math.abs(rightMPerS) <= 60)) {
                throw new IllegalArgumentException("the wind must not be above 60 m/s.");
            }
            Ranges.requireNotNegative(spreadMPerS, "spreadMPerS");
        }
    }

    /**
     * What hangs there.
     *
     * @param light the body at its lightest and largest: most drag for its mass
     * @param heavy the body at its heaviest and smallest: least drag for its mass
     * @param lineLengthM from the belly hook to the load, m
     * @param trailRad steady angle at which it hangs back, rad, in [0, π/2)
     * @param swingRad swing to any side of that, rad, in [0, π/2)
     */
    public record Hanging(
            Fall.Body light,
            Fall.Body heavy,
            double lineLengthM,
            double trailRad,
            double swingRad) {
        public Hanging {
            if (light.retardationCoefficient() < heavy.retardationCoefficient()) {
                throw new IllegalArgumentException("light must have more drag for its mass.");
            }
            Ranges.requireNotNegative(lineLengthM, "lineLengthM");
            if (!(trailRad >= 0 && swingRad >= 0 && trailRad + swingRad < Math.PI / 2)) {
                throw new IllegalArgumentException(
                        "trailRad (" + trailRad + ") and swingRad (" + swingRad + ") are too far.");
            }
        }
    }
}
