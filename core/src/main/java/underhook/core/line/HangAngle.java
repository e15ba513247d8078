package underhook.core.line;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/** What accelerating, turning and stopping does to a load without drag, in closed forms. */
public final class HangAngle {
    private static final double GRAVITY_M_PER_S2 = Units.STANDARD_GRAVITY_M_PER_S2;

    private HangAngle() {}

    /**
     * Steady angle from plumb under a steady level acceleration, rad, in [0, π/2).
     *
     * <p>Begun suddenly, the load first swings to twice this angle.
     *
     * @param accelerationMPerS2 m/s², not negative
     * @source DERIVED tan(angle) = a/g
     */
    public static double steadyRad(double accelerationMPerS2) {
        Ranges.requireNotNegative(accelerationMPerS2, "accelerationMPerS2");
        return Math.atan2(accelerationMPerS2, GRAVITY_M_PER_S2);
    }

    /**
     * Steady angle in a level turn, which is also the machine's bank, rad.
     *
     * @param speedMPerS m/s, not negative
     * @param radiusM m, above 0
     * @source DERIVED tan(angle) = V²/(g r)
     */
    public static double turnRad(double speedMPerS, double radiusM) {
        Ranges.requireNotNegative(speedMPerS, "speedMPerS");
        Ranges.requirePositive(radiusM, "radiusM");
        return steadyRad(speedMPerS * speedMPerS / radiusM);
    }

    /**
     * Pull over weight at a steady angle from plumb, which is the load factor of a level turn.
     *
     * @param angleRad rad, in [0, π/2)
     * @source FAA-PHAK chapter 5, load factor in level turns: 1/cos(bank)
     */
    public static double loadFactor(double angleRad) {
        if (!(angleRad >= 0 && angleRad < Math.PI / 2)) {
            throw new IllegalArgumentException("angleRad (" + angleRad + ") must lie in [0, π/2).");
        }
        return 1 / Math.cos(angleRad);
    }

    /**
     * Farthest swing after a sudden change of the hook's speed, rad, in [0, π/2].
     *
     * @param changeMPerS m/s, not negative, at most √(2 g L): beyond, the line goes slack
     * @param lengthM hook to the load's centre, m, above 0
     * @throws IllegalArgumentException outside that range
     * @source DERIVED energy: cos(angle) = 1 − Δv²/(2 g L); Δv/√(g L) where small
     */
    public static double afterStopRad(double changeMPerS, double lengthM) {
        Ranges.requireNotNegative(changeMPerS, "changeMPerS");
        Ranges.requirePositive(lengthM, "lengthM");
        double cosine = 1 - changeMPerS * changeMPerS / (2 * GRAVITY_M_PER_S2 * lengthM);
        if (!(cosine >= 0)) {
            throw new IllegalArgumentException(
                    "changeMPerS (" + changeMPerS + ") swings the load above its hook's height.");
        }
        return Math.acos(cosine);
    }

    /**
     * Pull over weight at the bottom of a swing.
     *
     * @param amplitudeRad largest angle from plumb, rad, in [0, π/2]
     * @source DERIVED energy: 3 − 2 cos(amplitude)
     */
    public static double bottomPullFactor(double amplitudeRad) {
        if (!(amplitudeRad >= 0 && amplitudeRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "amplitudeRad (" + amplitudeRad + ") must lie in [0, π/2].");
        }
        return 3 - 2 * Math.cos(amplitudeRad);
    }
}
