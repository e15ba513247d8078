package underhook.adapter.job;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/**
 * The highest cell of a disc that no raster covers alone.
 *
 * <p>The square around the disc is quartered until each piece lies within one raster, which is asked for
 * the circle around the piece. Pieces a few hundredths of a cell wide that still lie astride are the seam
 * itself: they are known when points all over them are. The disc is first widened by a quarter of a cell;
 * so every cell that the disc touches holds a piece of its own, however little of it the disc touches,
 * and the answer errs high.
 */
final class SeamDisc {
    private static final double WIDENED_BY_CELLS = 0.25;

    /** A piece this wide with the circle around it fits into the corner that the widening leaves. */
    private static final double LEAST_PIECE_CELLS = 0.125;

    private final List<HeightField> fields;
    private final double cellM;

    SeamDisc(List<HeightField> fields) {
        this.fields = fields;
        this.cellM = fields.stream().mapToDouble(HeightField::cellSizeM).min().orElse(1);
    }

    private record Disc(PlanePoint centre, double radiusM) {}

    private record Piece(double eastM, double northM, double halfM) {
        PlanePoint at(double eastShare, double northShare) {
            return new PlanePoint(eastM + eastShare * halfM, northM + northShare * halfM);
        }

        double aroundM() {
            return halfM * Math.sqrt(2);
        }

        boolean touches(Disc disc) {
            double offEast = Math.max(0, Math.abs(disc.centre.eastM() - eastM) - halfM);
            double offNorth = Math.max(0, Math.abs(disc.centre.northM() - northM) - halfM);
            return Math.hypot(offEast, offNorth) <= disc.radiusM;
        }

        boolean isWithin(Disc disc) {
            double offEast = Math.abs(disc.centre.eastM() - eastM) + halfM;
            double offNorth = Math.abs(disc.centre.northM() - northM) + halfM;
            return Math.hypot(offEast, offNorth) <= disc.radiusM;
        }
    }

    /** Empty when the rasters do not cover the disc together. */
    OptionalDouble findHighest(PlanePoint centre, double radiusM) {
        Disc disc = new Disc(centre, radiusM + WIDENED_BY_CELLS * cellM);
        boolean isAnywhereNear =
                fields.stream().anyMatch(field -> field.coversDisc(centre, 0))
                        || isKnown(centre, 1e-3 * cellM);
        return isAnywhereNear
                ? highest(new Piece(centre.eastM(), centre.northM(), disc.radiusM), disc)
                : OptionalDouble.empty();
    }

    private OptionalDouble highest(Piece piece, Disc disc) {
        if (!piece.touches(disc)) {
            return OptionalDouble.of(Double.NEGATIVE_INFINITY);
        }
        boolean isLeast = 2 * piece.halfM <= LEAST_PIECE_CELLS * cellM;
        if (isLeast || piece.isWithin(disc)) {
            OptionalDouble within = highestOfOne(piece);
            if (within.isPresent() || isLeast) {
                return within.isPresent() || !isKnownAllOver(piece)
                        ? within
                        : OptionalDouble.of(Double.NEGATIVE_INFINITY);
            }
        }
        double quarterM = piece.halfM / 2;
        double highestM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 4; i++) {
            PlanePoint middle = piece.at(i % 2 == 0 ? -0.5 : 0.5, i < 2 ? -0.5 : 0.5);
            OptionalDouble part =
                    highest(new Piece(middle.eastM(), middle.northM(), quarterM), disc);
            if (part.isEmpty()) {
                return part;
            }
            highestM = Math.max(highestM, part.getAsDouble());
        }
        return OptionalDouble.of(highestM);
    }

    private OptionalDouble highestOfOne(Piece piece) {
        PlanePoint middle = piece.at(0, 0);
        return fields.stream()
                .filter(field -> field.coversDisc(middle, piece.aroundM()))
                .mapToDouble(field -> field.highestWithinM(middle, piece.aroundM()))
                .max();
    }

    private boolean isKnownAllOver(Piece piece) {
        for (double eastShare : new double[] {-0.9, 0, 0.9}) {
            for (double northShare : new double[] {-0.9, 0, 0.9}) {
                if (!isKnown(piece.at(eastShare, northShare), 0.05 * piece.halfM)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** A point exactly on the common edge may belong to neither; then one just beside it counts. */
    private boolean isKnown(PlanePoint point, double besideM) {
        PlanePoint beside = new PlanePoint(point.eastM() + besideM, point.northM() + 0.7 * besideM);
        return fields.stream()
                .anyMatch(field -> field.coversDisc(point, 0) || field.coversDisc(beside, 0));
    }
}
