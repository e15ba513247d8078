package underhook.core.line;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/** What slings, shackles and the hook's attachment may carry. */
public final class Sling {
    /**
     * Marked breaking strength over load of slings under a helicopter. Other profiles state their own;
     * the strictest wins.
     *
     * @source WAC-296-45 67537
     */
    public static final double BREAKING_FACTOR = 5;

    /** Limit load of the airframe's attachment over the largest load. @source CFR-29-865 (a) */
    public static final double ATTACHMENT_LIMIT_FACTOR = 2.5;

    /** Ultimate over limit load. @source CFR-29-303 from memory */
    public static final double ULTIMATE_FACTOR = 1.5;

    /** Least angle from plumb at which the attachment must hold its limit load, rad. @source CFR-29-865 */
    public static final double ATTACHMENT_ANGLE_RAD = Math.toRadians(30);

    private Sling() {}

    /**
     * Most mass under a sling of a breaking strength, kg.
     *
     * @param breakingN marked least breaking strength, N, above 0
     * @param profileFactor breaking strength over load by the profile's rule, at least 1; never counted
     *     below {@link #BREAKING_FACTOR}
     */
    public static double limitKg(double breakingN, double profileFactor) {
        Ranges.requirePositive(breakingN, "breakingN");
        if (!(profileFactor >= 1 && profileFactor < 100)) {
            throw new IllegalArgumentException(
                    "profileFactor (" + profileFactor + ") must lie in [1, 100).");
        }
        return breakingN
                / Math.max(BREAKING_FACTOR, profileFactor)
                / Units.STANDARD_GRAVITY_M_PER_S2;
    }

    /** Limit load of the attachment for a largest load, N. @source CFR-29-865 */
    public static double attachmentLimitN(double largestLoadKg) {
        Ranges.requirePositive(largestLoadKg, "largestLoadKg");
        return ATTACHMENT_LIMIT_FACTOR * largestLoadKg * Units.STANDARD_GRAVITY_M_PER_S2;
    }

    /**
     * Most mass under the legs of one sling, kg; a rigid load hangs on two of three or more.
     *
     * @param legLimitKg most mass on one leg hanging straight, kg, above 0
     * @source LOAD-ANGLE; PRACTICE two legs counted for a rigid load
     */
    public static double legsLimitKg(
            double legLimitKg, int legs, double angleHorizontalRad, boolean rigid) {
        Ranges.requirePositive(legLimitKg, "legLimitKg");
        LegTension one = LegTension.of(1, legs, angleHorizontalRad, rigid);
        return legLimitKg * one.legsCounted() / one.angleFactor();
    }

    /**
     * Most mass under a bridle of two to four legs, kg: two legs counted, at their flattest.
     *
     * @param legLimitKg most mass on one leg hanging straight, kg, above 0
     * @param heightM hook above the attachments, m, above 0
     * @param longestLegM m, at least the height
     * @source NAVY-EQUIPMENT-OPERATOR bridle: SWL H/L 2; the smallest H/L counts
     */
    public static double bridleLimitKg(double legLimitKg, double heightM, double longestLegM) {
        Ranges.requirePositive(legLimitKg, "legLimitKg");
        Ranges.requirePositive(heightM, "heightM");
        if (!(longestLegM >= heightM && longestLegM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "longestLegM (" + longestLegM + ") must be at least heightM.");
        }
        return 2 * legLimitKg * heightM / longestLegM;
    }

    /**
     * Most mass on a shackle by the field rule, kg: three short tons for an inch of pin, by its square.
     *
     * @param diameterM of the body's round, m, above 0
     * @source NAVEDTRA-14251 chapter 6
     */
    public static double shackleFieldKg(double diameterM) {
        Ranges.requirePositive(diameterM, "diameterM");
        double inches = Units.mToInch(diameterM);
        return Units.shortTonToKg(3 * inches * inches);
    }

    /**
     * What a shackle carries pulled aslant, over its straight pull; each band counts with its worse end.
     *
     * @param angleRad off the line of the body, rad, in [0, π/2]
     * @source ASME-B30-26 from memory: 0, 30, 50 % less at 5°, 45°, 90°
     */
    public static double shackleAslantFactor(double angleRad) {
        if (!(angleRad >= 0 && angleRad <= Math.PI / 2)) {
            throw new IllegalArgumentException("angleRad (" + angleRad + ") must lie in [0, π/2].");
        }
        if (angleRad <= Math.toRadians(5)) {
            return 1;
        }
        return angleRad <= Math.toRadians(45) ? 0.7 : 0.5;
    }
}
