package underhook.core.track;

import java.time.Instant;
import java.util.Objects;
import underhook.core.job.PlaceId;

/**
 * A stay over one place.
 *
 * @param certain whether no hole in the track hides when it began or ended
 */
public record Visit(PlaceId place, Instant from, Instant until, boolean certain) {
    public Visit {
        Objects.requireNonNull(place, "place");
        if (until.isBefore(from)) {
            throw new IllegalArgumentException("until (" + until + ") must not be before from.");
        }
    }
}
