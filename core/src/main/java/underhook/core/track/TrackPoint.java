package underhook.core.track;

import java.time.Instant;
import java.util.Objects;
import underhook.core.geo.PlanePoint;

/** Where the machine was at a moment, in the job's plane. */
public record TrackPoint(Instant at, PlanePoint point) {
    public TrackPoint {
        Objects.requireNonNull(at, "at");
        Objects.requireNonNull(point, "point");
    }
}
