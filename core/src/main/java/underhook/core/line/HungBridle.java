package underhook.core.line;

import java.util.Optional;
import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * A rigid load on two legs of given length: how it hangs when lifted.
 *
 * <p>The load turns until the hook is plumb over its centre of gravity.
 *
 * @param tiltRad how far the load turns, rad; positive with the first attachment low
 * @param tension1N pull of the first leg, N
 * @param tension2N pull of the second leg, N
 * @param flattest1Rad first leg from the horizontal as the load hangs, rad
 * @param flattest2Rad second leg from the horizontal as the load hangs, rad
 */
public record HungBridle(
        double tiltRad,
        double tension1N,
        double tension2N,
        double flattest1Rad,
        double flattest2Rad) {
    /**
     * The flattest that a leg may stand above the level, rad.
     *
     * @source PRACTICE 60° from plumb: beyond, a pull grows by a tenth and more for 3° that it is flatter
     */
    public static final double LEAST_LEG_ANGLE_RAD = Math.toRadians(30);

    private static final double DUST_RAD = 1e-9;

    /** The flatter leg above the level as the load hangs, rad. */
    public double flatterRad() {
        return Math.min(flattest1Rad, flattest2Rad);
    }

    /** Whether a leg stands flatter than legs may. */
    public boolean isTooFlat() {
        return flatterRad() < LEAST_LEG_ANGLE_RAD - DUST_RAD;
    }

    /**
     * Where two legs hold a load.
     *
     * @param distance1M first attachment before the centre of gravity, along the load, m
     * @param distance2M second attachment behind it, m; together above 0
     * @param attachAboveM line between the attachments above the centre of gravity, m; negative below
     */
    public record Attachments(double distance1M, double distance2M, double attachAboveM) {
        public Attachments {
            if (!(distance1M + distance2M > 0)
                    || !Double.isFinite(distance1M + distance2M + attachAboveM)) {
                throw new IllegalArgumentException(
                        "distance1M ("
                                + distance1M
                                + ") and distance2M ("
                                + distance2M
                                + ") must be above 0 together.");
            }
        }

        double spanM() {
            return distance1M + distance2M;
        }
    }

    /**
     * How it hangs; empty when the legs do not meet above the load, or one would have to push: then it
     * turns over or slides.
     *
     * @param massKg load, kg, above 0
     * @param length1M first leg, m, above 0
     * @param length2M second leg, m, above 0
     * @source DERIVED two circles meet at the hook; three forces through one point
     */
    public static Optional<HungBridle> find(
            double massKg, Attachments at, double length1M, double length2M) {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(length1M, "length1M");
        Ranges.requirePositive(length2M, "length2M");
        double span = at.spanM();
        double along = (length1M * length1M - length2M * length2M + span * span) / (2 * span);
        double height2 = length1M * length1M - along * along;
        if (!(height2 > 0)) {
            return Optional.empty();
        }
        double height = Math.sqrt(height2);
        // The hook seen from the centre of gravity, in the load's own frame.
        double hookAlong = along - at.distance1M();
        double hookAbove = height + at.attachAboveM();
        double tilt = Math.atan2(hookAlong, hookAbove);
        // Legs from plumb, each on its side of the hook.
        double leg1 = Math.atan2(along, height) - tilt;
        double leg2 = Math.atan2(span - along, height) + tilt;
        double weight = massKg * Units.STANDARD_GRAVITY_M_PER_S2;
        double opening = Math.sin(leg1 + leg2);
        if (!(hookAbove > 0 && leg1 >= 0 && leg2 >= 0 && opening > 0)
                || Math.max(leg1, leg2) >= Math.PI / 2) {
            return Optional.empty();
        }
        return Optional.of(
                new HungBridle(
                        tilt,
                        weight * Math.sin(leg2) / opening,
                        weight * Math.sin(leg1) / opening,
                        Math.PI / 2 - leg1,
                        Math.PI / 2 - leg2));
    }
}
