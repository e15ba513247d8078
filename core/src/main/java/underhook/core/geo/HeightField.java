package underhook.core.geo;

import java.util.OptionalDouble;

/**
 * Heights over the local plane, from a raster.
 *
 * <p>A point outside the raster or on nodata has no height: ask {@link #covers} first.
 */
public interface HeightField {
    /** So near each other that a point lies in every cell, however it is cut. */
    int KNOWN_STEPS_IN_A_CELL = 8;

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

    /**
     * How much further cells count where the ground between their centres is meant, m: a height there leans on cells up
     * to half a cell's diagonal beyond the one it lies in.
     */
    default double leansM() {
        return 0.75 * cellSizeM();
    }

    /** The same where some cell of the disc may not be known. */
    default OptionalDouble findHighestWithinM(PlanePoint centre, double radiusM) {
        return coversDisc(centre, radiusM)
                ? OptionalDouble.of(highestWithinM(centre, radiusM))
                : OptionalDouble.empty();
    }

    /**
     * The same of those cells of the disc that are known; empty when none is. Where not all are, the answer
     * errs high by up to a quarter of a cell more, and a cell must be at most eight times as long as wide.
     */
    default OptionalDouble findHighestKnownWithinM(PlanePoint centre, double radiusM) {
        OptionalDouble throughout = findHighestWithinM(centre, radiusM);
        if (throughout.isPresent()) {
            return throughout;
        }
        double stepM = cellSizeM() / KNOWN_STEPS_IN_A_CELL;
        double reachM = radiusM + stepM * Math.sqrt(2);
        int steps = (int) Math.ceil(reachM / stepM);
        OptionalDouble highest = OptionalDouble.empty();
        for (int right = -steps; right <= steps; right++) {
            for (int up = -steps; up <= steps; up++) {
                if (Math.hypot(right, up) * stepM <= reachM) {
                    PlanePoint at =
                            new PlanePoint(
                                    centre.eastM() + right * stepM, centre.northM() + up * stepM);
                    OptionalDouble here = findHighestWithinM(at, 0);
                    if (here.isPresent()
                            && here.getAsDouble() > highest.orElse(Double.NEGATIVE_INFINITY)) {
                        highest = here;
                    }
                }
            }
        }
        return highest;
    }

    /** Whether every cell that touches the disc is known. */
    boolean coversDisc(PlanePoint centre, double radiusM);

    /** Side of a cell on the ground, m; the larger one where they differ. */
    double cellSizeM();
}
