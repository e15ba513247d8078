package underhook.adapter.geofile.aixm;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;
import underhook.core.job.MapFeature.Shape;

/**
 * Heights above ground of the parts of one obstacle.
 *
 * <p>A part's own extent counts from its foot, which may be a roof. Where elevations show how parts stand on
 * each other, the lowest foot within a few steps is the ground; where they do not, extents are added up.
 * Neither ever lowers a stated extent. An elevation alone says nothing without the ground, and the height is
 * then a default of the type.
 *
 * @source EUROCONTROL-OBS vertical extent, elevation and height; DERIVED adding up is the tallest that parts
 *     so placed can be
 */
final class Heights {
    /** Parts of one building, with the accuracy that registers ask for. */
    private static final double NEAR_M = 50;

    /** A rope's own thickness is no height. */
    private static final double LEAST_WIRE_M = 3;

    private final Slice slice;

    Heights(Slice slice) {
        this.slice = slice;
    }

    /**
     * A height above ground.
     *
     * @param isEstimated whether it is a default, or more than is stated
     */
    record Height(double topM, boolean isEstimated) {}

    /** Of a part that stands. */
    Height of(Part part) {
        if (part.heightM().isPresent()) {
            return new Height(part.heightM().getAsDouble(), false);
        }
        double shownM = 0;
        double piledM = 0;
        for (Part other : slice.parts()) {
            if (other.equals(part) || isLine(other) || !part.isNear(other, NEAR_M)) {
                continue;
            }
            if (part.topAmslM().isPresent() && other.footAmslM().isPresent()) {
                double aboveM = part.topAmslM().getAsDouble() - other.footAmslM().getAsDouble();
                shownM = Math.max(shownM, aboveM);
            } else {
                piledM += other.extentM().orElse(0);
            }
        }
        if (part.extentM().isEmpty()) {
            double defaultM = Kinds.heightM(slice.typeOf(part));
            return shownM > 0 && piledM <= 0
                    ? new Height(shownM, false)
                    : new Height(Math.max(shownM, defaultM + piledM), true);
        }
        double ownM = part.extentM().getAsDouble();
        double knownM = Math.max(shownM, ownM);
        return piledM > 0
                ? new Height(Math.max(knownM, ownM + piledM), true)
                : new Height(knownM, false);
    }

    private static boolean isLine(Part part) {
        return part.outlines().stream().anyMatch(outline -> outline.shape() == Shape.LINE);
    }

    /** Of the highest support of a part that hangs. */
    Height ofWire(Part part, List<GeoPoint> supports) {
        double standingM = 0;
        boolean isEverySupportKnown = true;
        for (GeoPoint support : supports) {
            OptionalDouble topM = supportTopM(new Outline(Shape.POINT, List.of(support)));
            standingM = Math.max(standingM, topM.orElse(0));
            isEverySupportKnown &= topM.isPresent();
        }
        double statedM = Math.max(part.heightM().orElse(0), part.extentM().orElse(0));
        if (statedM >= LEAST_WIRE_M) {
            return new Height(Math.max(statedM, standingM), false);
        }
        if (isEverySupportKnown) {
            return new Height(standingM, false);
        }
        return new Height(Math.max(standingM, Kinds.heightM(slice.typeOf(part))), true);
    }

    /** The greatest stated height of what stands where a wire is held. */
    private OptionalDouble supportTopM(Outline support) {
        return slice.parts().stream()
                .filter(other -> !isLine(other) && !other.outlines().isEmpty())
                .filter(
                        other ->
                                other.outlines().stream()
                                        .anyMatch(outline -> outline.isNear(support, NEAR_M)))
                .map(this::of)
                .filter(height -> !height.isEstimated())
                .mapToDouble(Height::topM)
                .max();
    }
}
