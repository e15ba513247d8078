package underhook.core.job;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;

/**
 * Something on the ground that matters to a leg.
 *
 * @param outline one point, a line, or a closed ring without its repeated last point
 * @param bufferM how far from it the track must keep where it may not be crossed, m
 * @param heightM height above ground, m, where it stands up and the height counts
 * @param heightEstimated whether that height is a default of the kind and was never measured
 * @param source file it is from
 */
public record MapFeature(
        String id,
        Kind kind,
        Shape shape,
        List<GeoPoint> outline,
        double bufferM,
        CrossingRule crossing,
        OptionalDouble heightM,
        boolean heightEstimated,
        String source) {
    /** What it is. */
    public enum Kind {
        ROAD,
        TRACK,
        TRAIL,
        RAILWAY,
        HOUSE,
        PEOPLE,
        /** Anything that stands up alone: mast, pylon, pole, chimney, tower, crane. */
        MAST,
        WATER,
        FOREST,
        PROTECTED
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
        if (heightM.isPresent() && !(heightM.getAsDouble() >= 0 && heightM.getAsDouble() < 2000)) {
            throw new IllegalArgumentException("heightM of " + id + " is out of range.");
        }
        if (!(bufferM >= 0 && bufferM < 10_000)) {
            throw new IllegalArgumentException("bufferM (" + bufferM + ") is out of range.");
        }
    }
}
