package underhook.core.line;

import underhook.core.unit.Ranges;

/**
 * A round line in the air.
 *
 * @param lengthM belly hook to load, m, above 0
 * @param massKg of the line alone, kg, not negative; the lighter bound is the safe side for trail
 * @param diameterM m, not negative; a flat line counts with its broad side
 */
public record HangingLine(double lengthM, double massKg, double diameterM) {
    /** Drag coefficient of a long cylinder across the flow. @source MATTHEWS-DATA p. 95, fig. 5.13b */
    public static final double CYLINDER_DRAG_COEFFICIENT = 1.20;

    public HangingLine {
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requireNotNegative(massKg, "massKg");
        Ranges.requireNotNegative(diameterM, "diameterM");
    }

    /** Drag coefficient times length times diameter, m². */
    public double dragAreaM2() {
        return CYLINDER_DRAG_COEFFICIENT * lengthM * diameterM;
    }

    /** The same kind of line in another length. */
    public HangingLine withLengthM(double otherM) {
        return new HangingLine(otherM, massKg * otherM / lengthM, diameterM);
    }

    /** With a load at its end, for swinging. */
    public SlungLoad carrying(double loadKg, double loadDragAreaM2) {
        return new SlungLoad(lengthM, loadKg, loadDragAreaM2, massKg, dragAreaM2());
    }
}
