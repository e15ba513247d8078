package underhook.core.line;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * A load on its line, as far as swinging goes: a point under a straight line that has mass and drag.
 *
 * <p>The line's mass is spread evenly along it: a third of it counts as inertia at the load, half of it as
 * weight. Half of its drag area counts at the load, which gives the moment of even air on a straight line.
 *
 * @param lengthM hook to the load's centre of gravity, m, above 0; the longer bound is the safe side
 * @param massKg load with what hangs at it, kg, above 0; the lighter bound is the safe side
 * @param dragAreaM2 drag coefficient times frontal area of the load, m², not negative
 * @param lineMassKg line between the hooks, kg, not negative
 * @param lineDragAreaM2 drag coefficient times diameter times length of the line, m², not negative
 * @source DERIVED moments of an even straight rod about its upper end
 */
public record SlungLoad(
        double lengthM,
        double massKg,
        double dragAreaM2,
        double lineMassKg,
        double lineDragAreaM2) {
    public SlungLoad {
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requireNotNegative(dragAreaM2, "dragAreaM2");
        Ranges.requireNotNegative(lineMassKg, "lineMassKg");
        Ranges.requireNotNegative(lineDragAreaM2, "lineDragAreaM2");
    }

    /** A point on a line without mass and drag. */
    public static SlungLoad ofPoint(double lengthM, double massKg, double dragAreaM2) {
        return new SlungLoad(lengthM, massKg, dragAreaM2, 0, 0);
    }

    /** The same on a line of another length; mass and drag of the line stay. */
    public SlungLoad withLengthM(double otherM) {
        return new SlungLoad(otherM, massKg, dragAreaM2, lineMassKg, lineDragAreaM2);
    }

    /** Mass at the load's place that is as hard to turn about the hook, kg. */
    public double inertiaKg() {
        return massKg + lineMassKg / 3;
    }

    /** Mass at the load's place that pulls back to plumb as hard, kg. */
    public double restoringKg() {
        return massKg + lineMassKg / 2;
    }

    /** Drag area at the load's place with the same moment about the hook, m². */
    public double wholeDragAreaM2() {
        return dragAreaM2 + lineDragAreaM2 / 2;
    }

    /** Period of a small swing under a fixed hook, s. */
    public double periodS() {
        return Pendulum.periodS(lengthM * inertiaKg() / restoringKg(), 0);
    }

    /**
     * Steady angle from plumb in air moving past, rad, in [0, π/2).
     *
     * @param airspeedMPerS level, m/s, not negative
     * @param densityKgPerM3 kg/m³, above 0
     */
    public double trailRad(double airspeedMPerS, double densityKgPerM3) {
        Ranges.requireNotNegative(airspeedMPerS, "airspeedMPerS");
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        double drag = 0.5 * densityKgPerM3 * wholeDragAreaM2() * airspeedMPerS * airspeedMPerS;
        return Math.atan2(drag, restoringKg() * Units.STANDARD_GRAVITY_M_PER_S2);
    }
}
