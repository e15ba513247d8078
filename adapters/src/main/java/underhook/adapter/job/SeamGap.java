package underhook.adapter.job;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/**
 * Height between the outermost cell centres of rasters that touch.
 *
 * <p>The point is interpolated between the nearest known points to either side, which belong to two
 * rasters and are at most about a cell apart: with grids that continue each other this is the same as
 * within one grid. Where four rasters meet, the points to either side lie in a gap themselves.
 */
final class SeamGap {
    /** Grids of neighbours may be turned against the plane by a little: their meshes are wider there. */
    private static final double WIDEST_CELLS = 1.1;

    private static final int STEPS = 8;
    private static final int HALVINGS = 40;

    private final List<HeightField> fields;
    private final double cellM;

    SeamGap(List<HeightField> fields) {
        this.fields = fields;
        this.cellM = fields.stream().mapToDouble(HeightField::cellSizeM).max().orElse(1);
    }

    /** A height and the raster that it is from; -1 when it is from several. */
    private record Known(double heightM, int field) {}

    private interface Rule {
        Optional<Known> at(PlanePoint point);
    }

    private record Step(double east, double north) {
        PlanePoint from(PlanePoint point, double distanceM) {
            return new PlanePoint(
                    point.eastM() + distanceM * east, point.northM() + distanceM * north);
        }
    }

    private record Side(double distanceM, Known known) {}

    /** Empty when it is no gap of a seam. */
    OptionalDouble find(PlanePoint point) {
        PlanePoint beside =
                new PlanePoint(point.eastM() + 1e-3 * cellM, point.northM() + 7e-4 * cellM);
        boolean isInCell =
                fields.stream()
                        .anyMatch(
                                field -> field.coversDisc(point, 0) || field.coversDisc(beside, 0));
        if (!isInCell) {
            return OptionalDouble.empty();
        }
        Rule sideways = at -> between(at, new Step(1, 0), this::own);
        Rule across = at -> between(at, new Step(0, 1), this::own);
        Rule corner =
                at -> between(at, new Step(1, 0), side -> own(side).or(() -> across.at(side)));
        return sideways.at(point)
                .or(() -> across.at(point))
                .or(() -> corner.at(point))
                .map(known -> OptionalDouble.of(known.heightM))
                .orElse(OptionalDouble.empty());
    }

    private Optional<Known> own(PlanePoint point) {
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).covers(point.eastM(), point.northM())) {
                return Optional.of(
                        new Known(fields.get(i).heightM(point.eastM(), point.northM()), i));
            }
        }
        return Optional.empty();
    }

    private Optional<Known> between(PlanePoint point, Step step, Rule rule) {
        Optional<Side> behind = side(point, new Step(-step.east, -step.north), rule);
        Optional<Side> ahead = behind.isEmpty() ? Optional.empty() : side(point, step, rule);
        if (behind.isEmpty() || ahead.isEmpty()) {
            return Optional.empty();
        }
        double aM = behind.get().distanceM;
        double bM = ahead.get().distanceM;
        Known a = behind.get().known;
        Known b = ahead.get().known;
        // Two sides of one raster are the edges of a hole in it, and a hole is not known.
        if (aM + bM > WIDEST_CELLS * cellM || (a.field >= 0 && a.field == b.field)) {
            return Optional.empty();
        }
        double share = aM + bM > 0 ? aM / (aM + bM) : 0;
        return Optional.of(new Known(a.heightM + share * (b.heightM - a.heightM), -1));
    }

    /** The nearest known point in a direction, to a millionth of a cell. */
    private Optional<Side> side(PlanePoint point, Step step, Rule rule) {
        double unknownM = 0;
        for (int i = 1; i <= STEPS; i++) {
            double knownM = WIDEST_CELLS * cellM * i / STEPS;
            if (rule.at(step.from(point, knownM)).isPresent()) {
                for (int k = 0; k < HALVINGS && knownM - unknownM > 1e-7 * cellM; k++) {
                    double middleM = (knownM + unknownM) / 2;
                    if (rule.at(step.from(point, middleM)).isPresent()) {
                        knownM = middleM;
                    } else {
                        unknownM = middleM;
                    }
                }
                double edgeM = knownM;
                return rule.at(step.from(point, edgeM)).map(known -> new Side(edgeM, known));
            }
            unknownM = knownM;
        }
        return Optional.empty();
    }
}
