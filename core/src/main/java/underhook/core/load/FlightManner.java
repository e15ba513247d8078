package underhook.core.load;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * How a load may be expected to fly.
 *
 * @param kind by weight over drag area, or by shape
 * @param bulkKgPerM3 mass over the box around it, kg/m³
 * @param weightOverAreaPa weight over drag area, Pa: the pressure of air at which it trails at 45°
 */
public record FlightManner(Kind kind, double bulkKgPerM3, double weightOverAreaPa) {
    /**
     * From the steadiest on.
     *
     * @source ARMY-FM-3-21-38 paragraph 5-1: high density, low density, aerodynamic
     */
    public enum Kind {
        /** Heavy for its size: steady, but long to stop. */
        HIGH_DENSITY,
        /** Large and light: swings, spins, streams back. */
        LOW_DENSITY,
        /** Has lift of its own: unstable until it is streamlined. */
        AERODYNAMIC
    }

    /** A load counts as dense when it trails at most so far at 50 kt, rad. @source PRACTICE own setting */
    private static final double DENSE_TRAIL_RAD = Math.toRadians(10);

    private static final double DENSE_SPEED_M_PER_S = Units.ktToMPerS(50);
    private static final double SEA_LEVEL_KG_PER_M3 = 1.225;

    /**
     * The manner of a load.
     *
     * @param massKg lighter bound, kg, above 0
     * @param dragAreaM2 m², above 0
     * @param boxM3 volume of the box around it, m³, above 0
     * @param wingLike sheets, boards, aerofoils, open tarpaulins
     */
    public static FlightManner of(
            double massKg, double dragAreaM2, double boxM3, boolean wingLike) {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(dragAreaM2, "dragAreaM2");
        Ranges.requirePositive(boxM3, "boxM3");
        double trail =
                Trail.of(massKg, dragAreaM2, DENSE_SPEED_M_PER_S, SEA_LEVEL_KG_PER_M3)
                        .trailAngleRad();
        Kind byDensity = trail <= DENSE_TRAIL_RAD ? Kind.HIGH_DENSITY : Kind.LOW_DENSITY;
        return new FlightManner(
                wingLike ? Kind.AERODYNAMIC : byDensity,
                massKg / boxM3,
                massKg * Units.STANDARD_GRAVITY_M_PER_S2 / dragAreaM2);
    }
}
