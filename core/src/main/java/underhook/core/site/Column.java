package underhook.core.site;

import java.util.Objects;

/**
 * Something round and upright beside a place, solid up to its top.
 *
 * @param eastM its middle, m east of the place
 * @param northM its middle, m north of the place
 * @param topAmslM its top, m AMSL; infinite where no height is known
 * @param padM its radius, m; that of a cell reaches its corners
 * @param id of the thing or wire, {@link Surroundings#UNKNOWN_GROUND} where the raster says nothing;
 *     empty for ground and trees
 */
public record Column(double eastM, double northM, double topAmslM, double padM, String id) {
    public Column {
        Objects.requireNonNull(id, "id");
        if (!(Double.isFinite(eastM) && Double.isFinite(northM) && padM >= 0)
                || Double.isNaN(topAmslM)) {
            throw new IllegalArgumentException("a column has a value out of range.");
        }
    }

    double distanceM() {
        return Math.sqrt(eastM * eastM + northM * northM);
    }
}
