package underhook.core.load;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * Steady ride of a load behind the plumb line in level flight.
 *
 * <p>Balances drag against weight: tan(angle) = drag / weight. Line drag is left out, so it reads low for
 * light loads on long lines.
 *
 * @param trailAngleRad line from plumb, rad, in [0, π/2)
 * @param lineTensionN tension at the load, N
 * @param dragN drag of the load, N
 */
public record Trail(double trailAngleRad, double lineTensionN, double dragN) {
    /**
     * The ride at an airspeed.
     *
     * @param massKg load, kg, above 0
     * @param dragAreaM2 drag coefficient times frontal area, m², not negative
     * @param airspeedMPerS true airspeed, m/s, not negative
     * @param densityKgPerM3 air density, kg/m³, above 0
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED balance of drag and weight on the load
     */
    public static Trail of(
            double massKg, double dragAreaM2, double airspeedMPerS, double densityKgPerM3) {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requireNotNegative(dragAreaM2, "dragAreaM2");
        Ranges.requireNotNegative(airspeedMPerS, "airspeedMPerS");
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        double drag = 0.5 * densityKgPerM3 * airspeedMPerS * airspeedMPerS * dragAreaM2;
        double weight = massKg * Units.STANDARD_GRAVITY_M_PER_S2;
        return new Trail(Math.atan2(drag, weight), Math.hypot(drag, weight), drag);
    }

    /**
     * Airspeed at which the load trails at a limit, m/s.
     *
     * @param massKg load, kg, above 0
     * @param dragAreaM2 drag coefficient times frontal area, m², above 0
     * @param limitRad trail angle, rad, in (0, π/2)
     * @param densityKgPerM3 air density, kg/m³, above 0; the densest air on the way is the safe choice
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED balance of drag and weight, solved for the speed
     */
    public static double speedAtLimitMPerS(
            double massKg, double dragAreaM2, double limitRad, double densityKgPerM3) {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(dragAreaM2, "dragAreaM2");
        requireAcute(limitRad);
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        return Math.sqrt(
                2
                        * massKg
                        * Units.STANDARD_GRAVITY_M_PER_S2
                        * Math.tan(limitRad)
                        / (densityKgPerM3 * dragAreaM2));
    }

    /**
     * Least mass that keeps the trail angle at a limit, kg; ballast is this less the load's mass.
     *
     * @param dragAreaM2 drag coefficient times frontal area, ballast included, m², not negative
     * @param airspeedMPerS true airspeed, m/s, not negative
     * @param limitRad trail angle, rad, in (0, π/2)
     * @param densityKgPerM3 air density, kg/m³, above 0
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED balance of drag and weight, solved for the mass
     */
    public static double massForSpeedKg(
            double dragAreaM2, double airspeedMPerS, double limitRad, double densityKgPerM3) {
        Ranges.requireNotNegative(dragAreaM2, "dragAreaM2");
        Ranges.requireNotNegative(airspeedMPerS, "airspeedMPerS");
        requireAcute(limitRad);
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        return 0.5
                * densityKgPerM3
                * airspeedMPerS
                * airspeedMPerS
                * dragAreaM2
                / (Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(limitRad));
    }

    /**
     * Drag area of a box that turns its largest side to the wind, m².
     *
     * @param lengthM side, m, above 0
     * @param widthM side, m, above 0
     * @param heightM side, m, above 0
     * @param dragCoefficient for the largest side, above 0
     * @throws IllegalArgumentException if an argument is not above 0
     * @source PRACTICE largest side; a box on its edge shows up to 1.7 times that of a cube's side
     */
    public static double boxDragAreaM2(
            double lengthM, double widthM, double heightM, double dragCoefficient) {
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requirePositive(widthM, "widthM");
        Ranges.requirePositive(heightM, "heightM");
        Ranges.requirePositive(dragCoefficient, "dragCoefficient");
        double smallest = Math.min(lengthM, Math.min(widthM, heightM));
        return dragCoefficient * lengthM * widthM * heightM / smallest;
    }

    private static void requireAcute(double limitRad) {
        if (!(limitRad > 0 && limitRad < Math.PI / 2)) {
            throw new IllegalArgumentException("limitRad (" + limitRad + ") must lie in (0, π/2).");
        }
    }
}
