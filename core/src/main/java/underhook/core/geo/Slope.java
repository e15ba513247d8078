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
        if (!(spacingM > 0 && spacingM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("spacingM (" + spacingM + ") must be above 0.");
        }
        double eastwards = 0;
        double northwards = 0;
        for (int i = -1; i <= 1; i++) {
            for (int j = -1; j <= 1; j++) {
                double east = centre.eastM() + i * spacingM;
                double north = centre.northM() + j * spacingM;
                if (!field.covers(east, north)) {
                    return Optional.empty();
                }
                double height = field.heightM(east, north);
                eastwards += i * (2 - Math.abs(j)) * height;
                northwards += j * (2 - Math.abs(i)) * height;
            }
        }
        eastwards /= 8 * spacingM;
        northwards /= 8 * spacingM;
        double steepness = Math.hypot(eastwards, northwards);
        double bearing = steepness > 0 ? Math.atan2(-eastwards, -northwards) : 0;
        // A tiny negative bearing plus a whole turn rounds to a whole turn.
        double turned = bearing < 0 ? bearing + 2 * Math.PI : bearing + 0.0;
        return Optional.of(new Slope(Math.atan(steepness), turned < 2 * Math.PI ? turned : 0));
    }
}
