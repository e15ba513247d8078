package underhook.core.track;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * A lift as planned: hooked at a place, then set down at one or more.
 *
 * @param drops in the order of release
 */
public record PlannedLift(
        List<LoadId> loads, PlaceId hookedWhere, Instant hookedAt, List<Drop> drops) {
    /** Where and when one load is set down. */
    public record Drop(LoadId load, PlaceId place, Instant at) {
        public Drop {
            Objects.requireNonNull(load, "load");
            Objects.requireNonNull(place, "place");
        }
    }

    public PlannedLift {
        loads = List.copyOf(loads);
        drops = List.copyOf(drops);
        if (drops.isEmpty()) {
            throw new IllegalArgumentException("a lift must be set down somewhere.");
        }
    }
}
