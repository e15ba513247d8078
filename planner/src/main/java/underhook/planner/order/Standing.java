package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.ToldPlace;

/**
 * How a day that is being flown stands. What is not told is taken from its plan.
 *
 * @param at now
 * @param log what the lifts named stand for
 * @param done lifts done or in the air, in the order flown
 * @param fuelKg fuel as read now, kg
 * @param told where crews were said to be, in that order
 * @param late crews that are not there before a time
 * @param closed places where nothing is hooked up or set down any more
 * @param dropped loads that are not flown today
 * @param engine what was told of the engine
 */
public record Standing(
        Instant at,
        Log log,
        List<Done> done,
        OptionalDouble fuelKg,
        List<ToldPlace> told,
        Map<CrewId, Instant> late,
        Set<PlaceId> closed,
        Set<LoadId> dropped,
        Engine engine) {
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
    public record Done(List<LoadId> loads, Instant hookedAt, Optional<Instant> releasedAt) {
        public Done {
            loads = List.copyOf(loads);
            if (loads.isEmpty()) {
                throw new IllegalArgumentException("a lift without a load was not done.");
            }
        }
    }

    /**
     * What was told of the engine. Where somebody tells what was flown, it counts as running whenever nobody told that
     * it was off.
     *
     * @param ran when it ran
     * @param stood when it was off, in that order, and is over
     * @param offSince since when it is off; empty while it runs
     */
    public record Engine(List<Spell> ran, List<Spell> stood, Optional<Instant> offSince) {
        /** Nobody told anything. */
        public static final Engine UNTOLD = new Engine(List.of(), List.of(), Optional.empty());

        public Engine {
            ran = List.copyOf(ran);
            stood = List.copyOf(stood);
        }
    }

    /** From a time to another. */
    public record Spell(Instant from, Instant to) {}

    public Standing {
        done = List.copyOf(done);
        told = List.copyOf(told);
        late = Map.copyOf(late);
        closed = Set.copyOf(closed);
        dropped = Set.copyOf(dropped);
        if (log != Log.KEPT && !done.isEmpty()) {
            throw new IllegalArgumentException(
                    "lifts are named where somebody tells what was flown.");
        }
    }

    /** Whether it was told that the engine ran throughout, as far as that is over. */
    boolean ran(Instant from, Instant to) {
        Instant end = to.isAfter(at) ? at : to;
        return from.isBefore(end)
                && engine.ran().stream()
                        .anyMatch(
                                spell -> !spell.from().isAfter(from) && !spell.to().isBefore(end));
    }

    /** When it was told that the engine was off, up to now, in that order; a spell that goes on ends now. */
    List<Spell> stood() {
        List<Spell> all = new ArrayList<>(engine.stood());
        engine.offSince()
                .filter(from -> from.isBefore(at))
                .ifPresent(from -> all.add(new Spell(from, at)));
        return List.copyOf(all);
    }

    /** Since when the engine is off, where that was told. */
    Optional<Instant> offSince() {
        return engine.offSince();
    }
}
