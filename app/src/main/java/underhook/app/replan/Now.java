package underhook.app.replan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.flown.TapKind;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.planner.order.Standing.Log;

/**
 * How the day stands. What is not told is taken from the plan of record.
 *
 * @param at now
 * @param log who says what was flown
 * @param done lifts done or in the air, in the order flown
 * @param fuelKg fuel as read now, kg
 * @param crews crews that are elsewhere than planned
 */
public record Now(Instant at, Log log, List<Done> done, OptionalDouble fuelKg, List<CrewAt> crews) {
    /** Nobody taps these on a machine that has not moved. */
    private static final Set<TapKind> MOVED =
            EnumSet.of(TapKind.TAKE_OFF, TapKind.PEOPLE_ABOARD, TapKind.HOOKED);

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

    /** Flown up to now as planned. */
    public static Now asPlanned(Instant at, OptionalDouble fuelKg) {
        return new Now(at, Log.AS_PLANNED, List.of(), fuelKg, List.of());
    }

    /** As it was tapped: what nobody tapped was not lifted. */
    public static Now asTapped(Instant at, FlownDay flown, OptionalDouble fuelKg) {
        List<Done> done = new ArrayList<>();
        for (FlownLift lift : flown.lifts()) {
            if (!lift.aborted() && !lift.loads().isEmpty()) {
                done.add(new Done(lift.loads(), lift.hookedAt(), released(lift)));
            }
        }
        boolean moved = flown.taps().stream().anyMatch(tap -> MOVED.contains(tap.kind()));
        return new Now(at, moved ? Log.KEPT : Log.NOT_BEGUN, done, fuelKg, List.of());
    }

    /** When the last of its loads was free, or set down where nobody said that it was free. */
    private static Optional<Instant> released(FlownLift lift) {
        return lift.offAt().size() == lift.loads().size()
                ? lift.offAt().stream()
                        .map(off -> off.freeAt().orElse(off.at()))
                        .max(Instant::compareTo)
                : Optional.empty();
    }
}
