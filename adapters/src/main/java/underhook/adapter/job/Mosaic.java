package underhook.adapter.job;

import java.util.List;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/** Several rasters as one field; where they overlap the first counts for a point. */
record Mosaic(List<HeightField> fields) implements HeightField {
    static HeightField of(List<HeightField> fields) {
        return fields.size() == 1 ? fields.get(0) : new Mosaic(List.copyOf(fields));
    }

    @Override
    public boolean covers(double eastM, double northM) {
        return fields.stream().anyMatch(field -> field.covers(eastM, northM));
    }

    @Override
    public double heightM(double eastM, double northM) {
        return fields.stream()
                .filter(field -> field.covers(eastM, northM))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no raster covers the point."))
                .heightM(eastM, northM);
    }

    /** The highest of all rasters that know the whole disc; a disc across a seam is not known. */
    @Override
    public double highestWithinM(PlanePoint centre, double radiusM) {
        return fields.stream()
                .filter(field -> field.coversDisc(centre, radiusM))
                .mapToDouble(field -> field.highestWithinM(centre, radiusM))
                .max()
                .orElseThrow(() -> new IllegalArgumentException("no raster covers the disc."));
    }

    @Override
    public boolean coversDisc(PlanePoint centre, double radiusM) {
        return fields.stream().anyMatch(field -> field.coversDisc(centre, radiusM));
    }

    @Override
    public double cellSizeM() {
        return fields.stream().mapToDouble(HeightField::cellSizeM).max().orElse(0);
    }
}
