package underhook.core.geo;

import java.util.OptionalDouble;

/**
 * Heights over the local plane, from a raster.
 *
 * <p>A point outside the raster or on nodata has no height: ask {@link #covers} first.
 */
public interface HeightField {
    /** Whether every cell that the value at this point needs is known. */
    boolean covers(double eastM, double northM);

    /**
     * Height at a point by bilinear interpolation between cell centres, m.
     *
     * @throws IllegalArgumentException if the point is not covered
     */
    double heightM(double eastM, double northM);

    /** The same where the point may not be covered. */
    default OptionalDouble findHeightM(double eastM, double northM) {
        return covers(eastM, northM)
                ? OptionalDouble.of(heightM(eastM, northM))
                : OptionalDouble.empty();
    }

    /**
     * Highest cell value within a distance of a point, m: every cell whose square touches the disc
     * counts, so the answer errs high.
     *
     * @throws IllegalArgumentException if any cell of the disc is not known
     */
    double highestWithinM(PlanePoint centre, double radiusM);

    /** The same where some cell of the disc may not be known. */
    default OptionalDouble findHighestWithinM(PlanePoint centre, double radiusM) {
        return coversDisc(centre, radiusM)
                ? OptionalDouble.of(highestWithinM(centre, radiusM))
                : OptionalDouble.empty();
    }

    /** Whether every cell that touches the disc is known. */
    boolean coversDisc(PlanePoint centre, double radiusM);

    /** Side of a cell on the ground, m; the larger one where they differ. */
    double cellSizeM();
}
