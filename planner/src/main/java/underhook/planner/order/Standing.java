package underhook.planner.order;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * How a day that is being flown stands. What is not told is taken from its plan.
 *
 * @param at now
 * @param log what the lifts named stand for
 * @param done lifts done or in the air, in the order flown
 * @param fuelKg fuel as read now, kg
 * @param crews where crews are, when other than planned
 * @param late crews that are not there before a time
 * @param closed places where nothing is hooked up or set down any more
 * @param dropped loads that are not flown today
 */
public record Standing(
        Instant at,
        Log log,
        List<Done> done,
        OptionalDouble fuelKg,
        Map<CrewId, CrewAt> crews,
        Map<CrewId, Instant> late,
        Set<PlaceId> closed,
        Set<LoadId> dropped) {
    /** Who says what was flown. */
    public enum Log {
        /** Nobody: the plan counts as flown up to now. */
        AS_PLANNED,
        /** Somebody, and the machine has not moved yet. */
        NOT_BEGUN,
        /** Somebody: what is not named was not lifted. */
        KEPT
    }

    /**
     * A lift that was begun.
     *
     * @param releasedAt its last release; empty while it is in the air: then as long after hook-up as planned
     */
    public record Done(
            List<LoadId> loads, Instant hookedAt, java.util.Optional<Instant> releasedAt) {
        public Done {
            loads = List.copyOf(loads);
            if (loads.isEmpty()) {
                throw new IllegalArgumentException("a lift without a load was not done.");
            }
        }
    }

    /** A crew's place and from when it is free there. */
    public record CrewAt(PlaceId place, Instant freeFrom) {}

    public Standing {
        done = List.copyOf(done);
        crews = Map.copyOf(crews);
        late = Map.copyOf(late);
        closed = Set.copyOf(closed);
        dropped = Set.copyOf(dropped);
    }
}
