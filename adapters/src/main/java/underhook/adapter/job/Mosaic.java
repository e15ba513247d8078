package underhook.adapter.job;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/**
 * Several rasters as one field; where they overlap the first counts for a point.
 *
 * <p>What lies within one raster is that raster's own answer. Across a seam between rasters that touch,
 * a disc counts the cells of both, and a point between the outermost centres of two is interpolated
 * between them.
 */
record Mosaic(List<HeightField> fields) implements HeightField {
    static HeightField of(List<HeightField> fields) {
        return fields.size() == 1 ? fields.get(0) : new Mosaic(List.copyOf(fields));
    }

    @Override
    public boolean covers(double eastM, double northM) {
        return findHeightM(eastM, northM).isPresent();
    }

    @Override
    public double heightM(double eastM, double northM) {
        return findHeightM(eastM, northM)
                .orElseThrow(() -> new IllegalArgumentException("no raster covers the point."));
    }

    @Override
    public OptionalDouble findHeightM(double eastM, double northM) {
        for (HeightField field : fields) {
            OptionalDouble known = field.findHeightM(eastM, northM);
            if (known.isPresent()) {
                return known;
            }
        }
        return new SeamGap(fields).find(new PlanePoint(eastM, northM));
    }

    /** The highest of all rasters that know the whole disc, else of all cells of a disc on a seam. */
    @Override
    public double highestWithinM(PlanePoint centre, double radiusM) {
        return findHighestWithinM(centre, radiusM)
                .orElseThrow(() -> new IllegalArgumentException("no rasters cover the disc."));
    }

    @Override
    public boolean coversDisc(PlanePoint centre, double radiusM) {
        return fields.stream().anyMatch(field -> field.coversDisc(centre, radiusM))
                || findHighestWithinM(centre, radiusM).isPresent();
    }

    @Override
    public OptionalDouble findHighestWithinM(PlanePoint centre, double radiusM) {
        OptionalDouble within =
                fields.stream()
                        .map(field -> field.findHighestWithinM(centre, radiusM))
                        .flatMapToDouble(OptionalDouble::stream)
                        .max();
        return within.isPresent() ? within : new SeamDisc(fields).findHighest(centre, radiusM);
    }

    /** Where rasters overlap the highest counts, which errs high. */
    @Override
    public OptionalDouble findHighestKnownWithinM(PlanePoint centre, double radiusM) {
        OptionalDouble throughout = findHighestWithinM(centre, radiusM);
        return throughout.isPresent()
                ? throughout
                : fields.stream()
                        .map(field -> field.findHighestKnownWithinM(centre, radiusM))
                        .flatMapToDouble(OptionalDouble::stream)
                        .max();
    }

    @Override
    public double cellSizeM() {
        return fields.stream().mapToDouble(HeightField::cellSizeM).max().orElse(0);
    }
}
