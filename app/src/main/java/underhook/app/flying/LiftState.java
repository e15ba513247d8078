package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.app.desk.Lifts;
import underhook.app.desk.Lifts.Lift;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.planner.order.Hung;

/**
 * A planned lift and how far it has come. Where not all of its loads hang, or some are free before the others were
 * hooked, it is the lift of those alone.
 *
 * @param hookedAt when its loads were hooked last
 * @param doneAt when the last of them was called free
 * @param readKg what the load cell read when just this hung there last and was weighed
 */
public record LiftState(
        Lift lift,
        Step step,
        State state,
        Optional<Instant> hookedAt,
        Optional<Instant> doneAt,
        OptionalDouble readKg) {
    /** How far a lift has come. */
    public enum State {
        WAITS,
        ON_HOOK,
        /** Down, but not called free by two people. */
        SET_DOWN,
        DONE,
        /** Given up; it waits again. */
        ABORTED
    }

    /** Whether it is still to be hooked. */
    public boolean isAhead() {
        return state == State.WAITS || state == State.ABORTED;
    }

    /** All lifts of a plan in its order. */
    public static List<LiftState> of(Job job, Plan plan, FlownDay flown) {
        Map<LoadId, Instant> free = new HashMap<>();
        Map<LoadId, FlownLift> last = new HashMap<>();
        for (FlownLift lift : flown.lifts()) {
            lift.loads().forEach(load -> last.put(load, lift));
            lift.offAt().forEach(off -> off.freeAt().ifPresent(at -> free.put(off.load(), at)));
        }
        return Lifts.of(plan).stream()
                .map(lift -> of(lift, new Seen(job, plan, flown, free, last)))
                .toList();
    }

    private record Seen(
            Job job,
            Plan plan,
            FlownDay flown,
            Map<LoadId, Instant> free,
            Map<LoadId, FlownLift> last) {
        /** What hung with a load that is not free yet. */
        private Stream<LoadId> hungWith(LoadId load) {
            boolean hangs =
                    flown.now().onHook().contains(load) || flown.now().notYetFree().contains(load);
            return Optional.ofNullable(last.get(load)).filter(any -> hangs).stream()
                    .flatMap(lift -> lift.loads().stream());
        }
    }

    /** Of what a lift was planned with: what was hooked of it while that goes on, and then what is left. */
    private static LiftState of(Lift planned, Seen seen) {
        List<LoadId> all = planned.rotation().loads();
        Set<LoadId> hung = all.stream().flatMap(seen::hungWith).collect(Collectors.toSet());
        List<LoadId> left = all.stream().filter(load -> !seen.free().containsKey(load)).toList();
        List<LoadId> loads =
                hung.isEmpty()
                        ? left.isEmpty() ? all : left
                        : all.stream().filter(hung::contains).toList();
        Step step = Hung.of(seen.job(), seen.plan().steps().get(planned.step()), loads);
        Lift lift =
                new Lift(
                        planned.number(),
                        planned.step(),
                        step.rotation().orElseThrow(),
                        planned.status(),
                        planned.words());
        Optional<FlownLift> flown =
                loads.stream()
                        .flatMap(load -> Optional.ofNullable(seen.last().get(load)).stream())
                        .reduce(
                                (one, other) ->
                                        one.hookedAt().isAfter(other.hookedAt()) ? one : other);
        boolean isDone = seen.free().keySet().containsAll(loads);
        Optional<Instant> doneAt =
                loads.stream()
                        .flatMap(load -> Optional.ofNullable(seen.free().get(load)).stream())
                        .max(Instant::compareTo)
                        .filter(at -> isDone);
        return new LiftState(
                lift,
                step,
                isDone ? State.DONE : state(loads, flown, seen.flown()),
                flown.map(FlownLift::hookedAt),
                doneAt,
                readKg(loads, seen.flown().lifts()));
    }

    /** Hooked again unweighed, loads weigh what they weighed when that was given up. */
    static OptionalDouble readKg(List<LoadId> loads, List<FlownLift> tries) {
        return tries.stream()
                .filter(one -> Set.copyOf(one.loads()).equals(Set.copyOf(loads)))
                .map(FlownLift::massReadKg)
                .filter(OptionalDouble::isPresent)
                .reduce((earlier, later) -> later)
                .orElse(OptionalDouble.empty());
    }

    private static State state(List<LoadId> loads, Optional<FlownLift> last, FlownDay flown) {
        Set<LoadId> mine = new HashSet<>(loads);
        if (flown.now().onHook().stream().anyMatch(mine::contains)) {
            return State.ON_HOOK;
        }
        if (flown.now().notYetFree().stream().anyMatch(mine::contains)) {
            return State.SET_DOWN;
        }
        return last.isPresent() && last.get().aborted() ? State.ABORTED : State.WAITS;
    }

    /**
     * How late the last hooked lift of the plan was, s; what comes is expected to be as late. One that was given up
     * says nothing: a new order has it where it waits again.
     */
    public static long lateS(List<LiftState> lifts) {
        return lifts.stream()
                .filter(lift -> lift.hookedAt().isPresent() && lift.state() != State.ABORTED)
                .max(Comparator.comparing(lift -> lift.hookedAt().orElseThrow()))
                .map(
                        lift ->
                                Duration.between(
                                                lift.lift().rotation().hookedAt(),
                                                lift.hookedAt().orElseThrow())
                                        .toSeconds())
                .orElse(0L);
    }

    /** The first that is still to be hooked. */
    public static Optional<LiftState> next(List<LiftState> lifts) {
        return lifts.stream().filter(LiftState::isAhead).findFirst();
    }

    /** The one under way: on the hook, or down and not yet free. */
    public static Optional<LiftState> current(List<LiftState> lifts) {
        return lifts.stream()
                .filter(one -> one.state() == State.ON_HOOK || one.state() == State.SET_DOWN)
                .findFirst();
    }
}
