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
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.LoadId;
import underhook.planner.order.Standing.Engine;
import underhook.planner.order.Standing.Log;
import underhook.planner.order.Standing.Spell;

/**
 * How the day stands. What is not told is taken from the plan of record.
 *
 * @param at now
 * @param log who says what was flown
 * @param done lifts done or in the air, in the order flown
 * @param fuelKg fuel as read now, kg
 * @param engine what was told of the engine
 */
public record Now(Instant at, Log log, List<Done> done, OptionalDouble fuelKg, Engine engine) {
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

    public Now {
        done = List.copyOf(done);
    }

    /** Flown up to now as planned. */
    public static Now asPlanned(Instant at, OptionalDouble fuelKg) {
        return new Now(at, Log.AS_PLANNED, List.of(), fuelKg, Engine.UNTOLD);
    }

    /** The machine has not moved. */
    public static Now notBegun(Instant at) {
        return new Now(at, Log.NOT_BEGUN, List.of(), OptionalDouble.empty(), Engine.UNTOLD);
    }

    /** As it was tapped: what nobody tapped was not lifted. */
    public static Now asTapped(Instant at, FlownDay flown, OptionalDouble fuelKg) {
        List<Done> done = new ArrayList<>();
        for (FlownLift lift : flown.lifts()) {
            // What was set down before the rest was given up stands there.
            List<LoadId> loads =
                    lift.aborted()
                            ? lift.offAt().stream().map(FlownLift.Off::load).toList()
                            : lift.loads();
            if (!loads.isEmpty()) {
                done.add(new Done(loads, lift.hookedAt(), released(lift, loads.size())));
            }
        }
        boolean moved = flown.taps().stream().anyMatch(tap -> MOVED.contains(tap.kind()));
        return new Now(
                at,
                moved ? Log.KEPT : Log.NOT_BEGUN,
                moved ? done : List.of(),
                fuelKg,
                engine(flown, at));
    }

    private static Engine engine(FlownDay flown, Instant now) {
        List<Spell> ran = new ArrayList<>();
        List<Spell> stood = new ArrayList<>();
        Optional<Instant> on = Optional.empty();
        Optional<Instant> off = Optional.empty();
        for (Tap tap : flown.taps()) {
            if (tap.kind() == TapKind.ENGINE_ON) {
                off.ifPresent(from -> stood.add(new Spell(from, tap.at())));
                off = Optional.empty();
                on = on.or(() -> Optional.of(tap.at()));
            } else if (tap.kind() == TapKind.ENGINE_OFF) {
                on.ifPresent(from -> ran.add(new Spell(from, tap.at())));
                on = Optional.empty();
                off = off.or(() -> Optional.of(tap.at()));
            } else if (MOVED.contains(tap.kind())) {
                // It moves, and nobody told since when it runs.
                off = Optional.empty();
            }
        }
        on.filter(from -> from.isBefore(now)).ifPresent(from -> ran.add(new Spell(from, now)));
        return new Engine(ran, stood, off);
    }

    /** When the last of its loads was free, or set down where nobody said that it was free. */
    private static Optional<Instant> released(FlownLift lift, int loads) {
        return lift.offAt().size() == loads
                ? lift.offAt().stream()
                        .map(off -> off.freeAt().orElse(off.at()))
                        .max(Instant::compareTo)
                : Optional.empty();
    }
}
