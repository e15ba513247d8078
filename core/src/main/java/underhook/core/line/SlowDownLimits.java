package underhook.core.line;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * How hard the machine may slow down.
 *
 * @param decelerationMPerS2 hardest the pilot wants, m/s², above 0
 * @param noseUpRad farthest the nose may rise above its hover attitude, for the tail comes down with it,
 *     rad, in (0, π/4]
 * @param periodSpreadFraction how far the real period may be off the computed one either way, in [0, 0.5):
 *     length not measured, machine giving way
 */
public record SlowDownLimits(
        double decelerationMPerS2, double noseUpRad, double periodSpreadFraction) {
    public SlowDownLimits {
        Ranges.requirePositive(decelerationMPerS2, "decelerationMPerS2");
        if (!(decelerationMPerS2 <= 10)) {
            throw new IllegalArgumentException(
                    "decelerationMPerS2 (" + decelerationMPerS2 + ") must be at most 10.");
        }
        if (!(noseUpRad > 0 && noseUpRad <= Math.PI / 4)) {
            throw new IllegalArgumentException(
                    "noseUpRad (" + noseUpRad + ") must lie in (0, π/4].");
        }
        if (!(periodSpreadFraction >= 0 && periodSpreadFraction < 0.5)) {
            throw new IllegalArgumentException(
                    "periodSpreadFraction (" + periodSpreadFraction + ") must lie in [0, 0.5).");
        }
    }

    /**
     * Hardest deceleration within both limits, m/s².
     *
     * @source DERIVED thrust tilted back at one height: a = g tan(nose up)
     */
    public double mostMPerS2() {
        return Math.min(decelerationMPerS2, Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(noseUpRad));
    }

    /**
     * How far the tail comes down while slowing, m.
     *
     * @param tailReachM mast to tail's end, m, above 0
     * @param slowingMPerS2 deceleration, m/s², not negative
     * @source DERIVED the tail turns about the mast by atan(a/g)
     */
    public static double tailDropM(double tailReachM, double slowingMPerS2) {
        Ranges.requirePositive(tailReachM, "tailReachM");
        return tailReachM * Math.sin(HangAngle.steadyRad(slowingMPerS2));
    }
}
