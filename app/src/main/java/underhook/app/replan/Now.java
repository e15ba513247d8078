package underhook.app.replan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * How the day stands. What is not told is taken from the plan of record.
 *
 * @param at now
 * @param done lifts done or in the air, in the order flown; none when nobody keeps a log
 * @param fuelKg fuel as read now, kg
 * @param crews crews that are elsewhere than planned
 */
public record Now(Instant at, List<Done> done, OptionalDouble fuelKg, List<CrewAt> crews) {
    /**
     * A lift that was begun.
     *
     * @param releasedAt its last release; empty while it is in the air
     */
    public record Done(List<LoadId> loads, Instant hookedAt, Optional<Instant> releasedAt) {
        public Done {
            loads = List.copyOf(loads);
        }
    }

    /** A crew's place and from when it is free there. */
    public record CrewAt(CrewId crew, PlaceId place, Instant freeFrom) {}

    public Now {
        done = List.copyOf(done);
        crews = List.copyOf(crews);
    }

    /** Everything as planned but these lifts. */
    public static Now of(Instant at, List<Done> done) {
        return new Now(at, done, OptionalDouble.empty(), List.of());
    }
}
