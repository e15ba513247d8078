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
        return find(eastM, northM).isPresent();
    }

    @Override
    public double heightM(double eastM, double northM) {
        return find(eastM, northM)
                .orElseThrow(() -> new IllegalArgumentException("no raster covers the point."));
    }

    private OptionalDouble find(double eastM, double northM) {
        for (HeightField field : fields) {
            if (field.covers(eastM, northM)) {
                return OptionalDouble.of(field.heightM(eastM, northM));
            }
        }
        return new SeamGap(fields).find(new PlanePoint(eastM, northM));
    }

    /** The highest of all rasters that know the whole disc, else of all cells of a disc on a seam. */
    @Override
    public double highestWithinM(PlanePoint centre, double radiusM) {
        return findHighest(centre, radiusM)
                .orElseThrow(() -> new IllegalArgumentException("no rasters cover the disc."));
    }

    @Override
    public boolean coversDisc(PlanePoint centre, double radiusM) {
        return fields.stream().anyMatch(field -> field.coversDisc(centre, radiusM))
                || findHighest(centre, radiusM).isPresent();
    }

    private OptionalDouble findHighest(PlanePoint centre, double radiusM) {
        OptionalDouble within =
                fields.stream()
                        .filter(field -> field.coversDisc(centre, radiusM))
                        .mapToDouble(field -> field.highestWithinM(centre, radiusM))
                        .max();
        return within.isPresent() ? within : new SeamDisc(fields).findHighest(centre, radiusM);
    }

    @Override
    public double cellSizeM() {
        return fields.stream().mapToDouble(HeightField::cellSizeM).max().orElse(0);
    }
}
