package underhook.core.site;

import java.util.Objects;
import underhook.core.geo.PlanePoint;

/**
 * Something upright between two points, solid from the ground to a straight top: a span of wire, an edge
 * of a house; both points the same for a mast.
 *
 * @param id of the wire or thing
 * @param cause WIRE or THING
 * @param topAAmslM top at the first point, m AMSL; infinite where it is not known
 * @param topBAmslM top at the second point, m AMSL; infinite where it is not known
 * @param halfWidthM half its width, its uncertainty in plan included, m, not negative
 */
public record Wall(
        String id,
        Cause cause,
        PlanePoint a,
        PlanePoint b,
        double topAAmslM,
        double topBAmslM,
        double halfWidthM) {
    public Wall {
        Objects.requireNonNull(id, "id");
        if (cause != Cause.WIRE && cause != Cause.THING) {
            throw new IllegalArgumentException("cause (" + cause + ") must be WIRE or THING.");
        }
        if (!(topAAmslM > Double.NEGATIVE_INFINITY && topBAmslM > Double.NEGATIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "topAAmslM ("
                            + topAAmslM
                            + ") and topBAmslM ("
                            + topBAmslM
                            + ") must be known.");
        }
        if (!(halfWidthM >= 0 && halfWidthM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "halfWidthM (" + halfWidthM + ") must not be negative.");
        }
    }
}
