package underhook.core.geo;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much the ground rises east and north at a point, metres for each metre.
 *
 * @param eastRatio rise towards the east
 * @param northRatio rise towards the north
 */
record Gradient(double eastRatio, double northRatio) {

    /**
     * From the eight points around one, weighted by thirds.
     *
     * @param eastSpacingM distance to the points east and west, m, above 0
     * @param northSpacingM distance to the points north and south, m, above 0
     * @return empty when one of the nine points has no height
     * @source HORN-1981 section on estimating slopes, weighted differences over 3 by 3 points
     */
    static Optional<Gradient> find(
            HeightField field, PlanePoint centre, double eastSpacingM, double northSpacingM) {
        if (!(eastSpacingM > 0 && eastSpacingM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "eastSpacingM (" + eastSpacingM + ") must be above 0.");
        }
        if (!(northSpacingM > 0 && northSpacingM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "northSpacingM (" + northSpacingM + ") must be above 0.");
        }
        double eastwards = 0;
        double northwards = 0;
        for (int i = -1; i <= 1; i++) {
            for (int j = -1; j <= 1; j++) {
                double east = centre.eastM() + i * eastSpacingM;
                double north = centre.northM() + j * northSpacingM;
                OptionalDouble known = field.findHeightM(east, north);
                if (known.isEmpty()) {
                    return Optional.empty();
                }
                double height = known.getAsDouble();
                eastwards += i * (2 - Math.abs(j)) * height;
                northwards += j * (2 - Math.abs(i)) * height;
            }
        }
        return Optional.of(
                new Gradient(eastwards / (8 * eastSpacingM), northwards / (8 * northSpacingM)));
    }
}
