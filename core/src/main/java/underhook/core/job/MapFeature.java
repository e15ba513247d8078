package underhook.core.job;

import java.util.List;
import java.util.Objects;
import underhook.core.geo.GeoPoint;

/**
 * Something on the ground that matters to a leg.
 *
 * @param outline one point, a line, or a closed ring without its repeated last point
 * @param bufferM how far from it the track must keep where it may not be crossed, m
 * @param source file it is from
 */
public record MapFeature(
        String id,
        Kind kind,
        Shape shape,
        List<GeoPoint> outline,
        double bufferM,
        CrossingRule crossing,
        String source) {
    /** What it is. */
    public enum Kind {
        ROAD,
        TRAIL,
        HOUSE,
        PEOPLE
    }

    /** How the outline is meant. */
    public enum Shape {
        POINT,
        LINE,
        AREA
    }

    public MapFeature {
        Objects.requireNonNull(id, "id");
        outline = List.copyOf(outline);
        int least = shape == Shape.POINT ? 1 : shape == Shape.LINE ? 2 : 3;
        if (outline.size() < least) {
            throw new IllegalArgumentException("outline of " + id + " needs " + least + " points.");
        }
        if (!(bufferM >= 0 && bufferM < 10_000)) {
            throw new IllegalArgumentException("bufferM (" + bufferM + ") is out of range.");
        }
    }
}
