package underhook.core.wire;

import underhook.core.job.Hanging;
import underhook.core.unit.Ranges;

/** How far wind swings a wire out to the side. */
public final class Swing {
    /** Air of the standard atmosphere at sea level: none on the day is much denser. @source ICAO-7488 */
    private static final double AIR_KG_PER_M3 = 1.225;

    /**
     * Drag of a round wire over its width times the wind's pressure.
     *
     * @source PRACTICE smooth cylinders have up to about 1.2, stranded wires about 1.0
     */
    static final double DRAG_COEFFICIENT = 1.2;

    /**
     * Wind that is counted at least: the machine's own wash blows as hard beside it, about twice the
     * induced velocity.
     *
     * @source PRACTICE far wake of a light machine with its load, docs/calculations/downwash.md
     */
    static final double LEAST_WIND_M_PER_S = 20;

    private Swing() {}

    /**
     * Force of wind square to a wire, N/m.
     *
     * @param windMPerS wind, m/s, not negative
     * @param diameterM diameter, m, above 0
     * @param dragCoefficient drag over width times pressure, above 0
     * @source DERIVED ½ ρ V² Cd d
     */
    public static double forceNPerM(double windMPerS, double diameterM, double dragCoefficient) {
        Ranges.requireNotNegative(windMPerS, "windMPerS");
        Ranges.requirePositive(diameterM, "diameterM");
        Ranges.requirePositive(dragCoefficient, "dragCoefficient");
        return AIR_KG_PER_M3 / 2 * windMPerS * windMPerS * dragCoefficient * diameterM;
    }

    /**
     * Angle of the wire's plane from the vertical, rad, in [0, π/2).
     *
     * @param forceNPerM sideways force, N/m, not negative
     * @param weightNPerM weight, N/m, above 0
     * @source DERIVED balance of the two: tan(angle) = force / weight
     */
    public static double angleRad(double forceNPerM, double weightNPerM) {
        Ranges.requireNotNegative(forceNPerM, "forceNPerM");
        Ranges.requirePositive(weightNPerM, "weightNPerM");
        return Math.atan2(forceNPerM, weightNPerM);
    }

    /**
     * What the sag is multiplied with for how far the wire reaches to the side: the sine of the angle, or
     * 1 where diameter or weight is not known.
     *
     * @param gustMPerS strongest gust of the day where it is strongest, m/s
     */
    public static double asideFraction(Hanging hanging, double gustMPerS) {
        if (hanging.diameterM().isEmpty() || hanging.weightNPerM().isEmpty()) {
            return 1;
        }
        double windMPerS = Math.max(LEAST_WIND_M_PER_S, gustMPerS);
        double force = forceNPerM(windMPerS, hanging.diameterM().getAsDouble(), DRAG_COEFFICIENT);
        return Math.sin(angleRad(force, hanging.weightNPerM().getAsDouble()));
    }
}
