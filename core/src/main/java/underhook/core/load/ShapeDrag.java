package underhook.core.load;

/**
 * Drag coefficients of plain shapes, each on the area that faces the flow.
 *
 * <p>Between printed values straight lines; where a shape's own value depends on roughness or speed, the
 * larger one.
 */
public final class ShapeDrag {
    /** Flat plate across the flow. @source NASA-GLENN-SHAPE */
    public static final double PLATE_COEFFICIENT = 1.28;

    /** Long flat plate across the flow: pipes' racks, boards, panels. @source MATTHEWS-DATA p. 95 */
    public static final double LONG_PLATE_COEFFICIENT = 1.98;

    /** Prism with its flat side to the flow. @source NASA-GLENN-SHAPE */
    public static final double PRISM_COEFFICIENT = 1.14;

    /** Cube with a side to the flow. @source HOERNER-1965 from memory */
    public static final double CUBE_COEFFICIENT = 1.05;

    /** Ball: 0.07 to 0.5 by speed and roughness, the largest counts. @source NASA-GLENN-SHAPE */
    public static final double BALL_COEFFICIENT = 0.5;

    private static final double[] SLENDERNESS_RATIO = {1, 2, 5, 10, 40};
    private static final double[] CYLINDER_COEFFICIENT = {0.63, 0.68, 0.74, 0.82, 0.98};
    private static final double LONG_CYLINDER_COEFFICIENT = 1.20;

    private ShapeDrag() {}

    /**
     * Cylinder across the flow, on length times diameter.
     *
     * @param slendernessRatio length over diameter, at least 1; above the last printed 40 the endless
     *     cylinder's 1.20 counts
     * @throws IllegalArgumentException below 1
     * @source MATTHEWS-DATA p. 95, fig. 5.13b
     */
    public static double cylinderCoefficient(double slendernessRatio) {
        if (!(slendernessRatio >= 1)) {
            throw new IllegalArgumentException(
                    "slendernessRatio (" + slendernessRatio + ") must be at least 1.");
        }
        for (int i = 1; i < SLENDERNESS_RATIO.length; i++) {
            if (slendernessRatio <= SLENDERNESS_RATIO[i]) {
                double part =
                        (slendernessRatio - SLENDERNESS_RATIO[i - 1])
                                / (SLENDERNESS_RATIO[i] - SLENDERNESS_RATIO[i - 1]);
                return CYLINDER_COEFFICIENT[i - 1]
                        + part * (CYLINDER_COEFFICIENT[i] - CYLINDER_COEFFICIENT[i - 1]);
            }
        }
        return LONG_CYLINDER_COEFFICIENT;
    }
}
