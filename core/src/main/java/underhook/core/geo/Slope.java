package underhook.core.geo;

import java.util.Optional;

/**
 * How steep the ground is at a point, and which way it falls.
 *
 * @param slopeRad angle of the ground from the horizontal, rad, in [0, π/2)
 * @param fallsTowardsGridRad bearing from grid north in which the ground falls most, rad, in [0, 2π);
 *     0 on level ground, where it means nothing
 */
public record Slope(double slopeRad, double fallsTowardsGridRad) {
    public Slope {
        if (!(slopeRad >= 0 && slopeRad < Math.PI / 2)) {
            throw new IllegalArgumentException("slopeRad (" + slopeRad + ") must lie in [0, π/2).");
        }
        if (!(fallsTowardsGridRad >= 0 && fallsTowardsGridRad < 2 * Math.PI)) {
            throw new IllegalArgumentException(
                    "fallsTowardsGridRad (" + fallsTowardsGridRad + ") must lie in [0, 2π).");
        }
    }

    /**
     * Slope from the eight points around one, weighted by thirds; exact on a plane. A hump narrower
     * than the spacing is not seen.
     *
     * @param centre the point
     * @param spacingM distance to the four next points, m, above 0; the field's cell size is usual
     * @return empty when one of the nine points has no height
     * @source HORN-1981 section on estimating slopes, weighted differences over 3 by 3 points
     */
    public static Optional<Slope> find(HeightField field, PlanePoint centre, double spacingM) {
        return find(field, centre, spacingM, spacingM);
    }

    /**
     * The same where the cells are not square.
     *
     * @param eastSpacingM distance to the points east and west, m, above 0
     * @param northSpacingM distance to the points north and south, m, above 0
     * @return empty when one of the nine points has no height
     */
    public static Optional<Slope> find(
            HeightField field, PlanePoint centre, double eastSpacingM, double northSpacingM) {
        return Gradient.find(field, centre, eastSpacingM, northSpacingM).map(Slope::of);
    }

    private static Slope of(Gradient rise) {
        double steepness =
                Math.sqrt(
                        rise.eastRatio() * rise.eastRatio()
                                + rise.northRatio() * rise.northRatio());
        double bearing = steepness > 0 ? Math.atan2(-rise.eastRatio(), -rise.northRatio()) : 0;
        // A tiny negative bearing plus a whole turn rounds to a whole turn.
        double turned = bearing < 0 ? bearing + 2 * Math.PI : bearing + 0.0;
        return new Slope(Math.atan(steepness), turned < 2 * Math.PI ? turned : 0);
    }
}
