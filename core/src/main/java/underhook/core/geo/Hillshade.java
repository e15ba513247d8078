package underhook.core.geo;

import java.util.OptionalDouble;

/**
 * How brightly a far light shines on the ground, to show relief on a map. Hills cast no shadow on others.
 *
 * @param lightFromGridRad bearing from grid north that the light comes from, rad; north-west (7/4 π) is
 *     usual on maps
 * @param lightElevationRad angle of the light above the horizontal, rad, in (0, π/2]
 */
public record Hillshade(double lightFromGridRad, double lightElevationRad) {
    public Hillshade {
        if (!Double.isFinite(lightFromGridRad)) {
            throw new IllegalArgumentException(
                    "lightFromGridRad (" + lightFromGridRad + ") must be finite.");
        }
        if (!(lightElevationRad > 0 && lightElevationRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "lightElevationRad (" + lightElevationRad + ") must lie in (0, π/2].");
        }
    }

    /**
     * Cosine of the angle between the light and the perpendicular of the ground; 0 where the ground is
     * turned away from the light. Level ground gives the sine of the light's elevation.
     *
     * @param centre the point
     * @param eastSpacingM distance to the points east and west, m, above 0; a cell's width is usual
     * @param northSpacingM distance to the points north and south, m, above 0; a cell's height is usual
     * @return in [0, 1]; empty when one of the nine points has no height
     * @source HORN-1981 sections on estimating slopes and on reflectance of a matt surface
     */
    public OptionalDouble findBrightnessFraction(
            HeightField field, PlanePoint centre, double eastSpacingM, double northSpacingM) {
        return Gradient.find(field, centre, eastSpacingM, northSpacingM).stream()
                .mapToDouble(this::brightnessFraction)
                .findFirst();
    }

    private double brightnessFraction(Gradient rise) {
        double level = Math.cos(lightElevationRad);
        // The ground's perpendicular is (-east, -north, 1), longer than 1 on a slope.
        double towards =
                Math.sin(lightElevationRad)
                        - rise.eastRatio() * level * Math.sin(lightFromGridRad)
                        - rise.northRatio() * level * Math.cos(lightFromGridRad);
        double length = Math.hypot(1, Math.hypot(rise.eastRatio(), rise.northRatio()));
        return Math.max(0, Math.min(1, towards / length));
    }
}
