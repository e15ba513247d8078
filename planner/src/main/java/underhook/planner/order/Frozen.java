package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * What of a plan is done or begun, with the times as they were: nothing changes it any more.
 *
 * <p>The step that is going on is done to its end, but a wait ends now. Later steps are free.
 */
final class Frozen {
    private static final Set<StepKind> STOPS =
            EnumSet.of(StepKind.REFUEL, StepKind.BREAK, StepKind.LINE_CHANGE);

    private final Job job;
    private final Standing standing;
    private final List<Step> steps = new ArrayList<>();
    private Duration behind = Duration.ZERO;
    private boolean waited;
    private boolean over;

    Frozen(Job job, Plan plan, Standing standing) {
        this.job = job;
        this.standing = standing;
        int last = lastDone(plan);
        boolean begun = standing.log() != Standing.Log.NOT_BEGUN;
        for (int i = 0; begun && i < plan.steps().size(); i++) {
            if (!take(plan.steps().get(i), i <= last)) {
                break;
            }
        }
        waitUntilNow();
        readFuel();
    }

    List<Step> steps() {
        return List.copyOf(steps);
    }

    /** Whether nothing goes on now, nor comes. */
    boolean isOver() {
        return over;
    }

    /** The same where nothing is flown any more: the day is over when its last work is, not now. */
    Frozen ended() {
        if (waited) {
            steps.remove(steps.size() - 1);
            waited = false;
            over = true;
        }
        return this;
    }

    /** What hung on the hook in each lift. */
    List<List<LoadId>> lifts() {
        return steps.stream()
                .flatMap(step -> step.rotation().stream())
                .map(Rotation::loads)
                .toList();
    }

    /** Whether a load was flown or hangs there. */
    boolean holds(LoadId load) {
        return steps.stream()
                .flatMap(step -> step.rotation().stream())
                .anyMatch(rotation -> rotation.loads().contains(load));
    }

    private int lastDone(Plan plan) {
        int last = -1;
        for (int i = 0; i < plan.steps().size(); i++) {
            if (plan.steps().get(i).rotation().flatMap(this::done).isPresent()) {
                last = i;
            }
        }
        return last;
    }

    private Optional<Standing.Done> done(Rotation rotation) {
        return standing.done().stream()
                .filter(one -> rotation.loads().stream().anyMatch(one.loads()::contains))
                .findFirst();
    }

    /** Takes a step over; false when it and all behind it are free. */
    private boolean take(Step step, boolean before) {
        Optional<Standing.Done> done = step.rotation().flatMap(this::done);
        boolean begun = step.startAt().plus(behind).isBefore(standing.at());
        boolean skipped = step.rotation().isPresent() && standing.log() != Standing.Log.AS_PLANNED;
        if (done.isPresent()) {
            steps.add(flown(step, step.rotation().orElseThrow(), done.get()));
            return true;
        }
        if (skipped) {
            return before;
        }
        if (!before && !begun) {
            return false;
        }
        Instant endAt = later(step.endAt().plus(behind), startOf(step));
        if (!before && step.kind() == StepKind.WAIT && endAt.isAfter(standing.at())) {
            Instant now = later(standing.at(), startOf(step));
            steps.add(timed(burntUntil(step, endAt, now), now, Optional.empty()));
            return true;
        }
        steps.add(timed(step, endAt, step.rotation().map(one -> shifted(one, behind))));
        return true;
    }

    /** Of a wait that ends sooner, only so much is burnt. */
    private Step burntUntil(Step wait, Instant wholeEnd, Instant end) {
        double wholeS = Duration.between(startOf(wait), wholeEnd).toMillis() / 1000.0;
        double partS = Duration.between(startOf(wait), end).toMillis() / 1000.0;
        double burntKg = wholeS > 0 ? (wait.fuelStartKg() - wait.fuelEndKg()) * partS / wholeS : 0;
        return fuelled(wait, wait.fuelStartKg() - burntKg);
    }

    private static Step fuelled(Step step, double endKg) {
        return new Step(
                step.kind(),
                step.from(),
                step.to(),
                step.startAt(),
                step.endAt(),
                step.fuelStartKg(),
                endKg,
                step.lineLengthM(),
                step.engineRunning(),
                step.rotation(),
                step.crew(),
                step.legs(),
                step.because());
    }

    private Instant startOf(Step step) {
        return steps.isEmpty() ? step.startAt().plus(behind) : steps.get(steps.size() - 1).endAt();
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private Step flown(Step step, Rotation rotation, Standing.Done done) {
        Instant planned = releasedAt(rotation);
        Duration hookBehind = Duration.between(rotation.hookedAt(), done.hookedAt());
        makeRoom(done.hookedAt().minus(Duration.between(step.startAt(), rotation.hookedAt())));
        behind = done.releasedAt().map(at -> Duration.between(planned, at)).orElse(hookBehind);
        Rotation moved = shifted(rotation, behind);
        Rotation flown =
                new Rotation(
                        moved.loads(),
                        done.hookedAt(),
                        moved.fuelAtHookKg(),
                        moved.massOnHookKg(),
                        moved.hogeMassKg(),
                        moved.fuelMaxKg(),
                        moved.ballastKg(),
                        moved.drops(),
                        moved.legs(),
                        moved.limits());
        return timed(step, later(step.endAt().plus(behind), startOf(step)), Optional.of(flown));
    }

    /**
     * Nobody told when what came before a lift was done; where the lift began sooner than planned, it was by then,
     * but not before the lift before it was let go. A stop is taken to have been as long as planned: what was shorter
     * is a wait or a way.
     */
    private void makeRoom(Instant wanted) {
        Instant released = Instant.MIN;
        for (Step step : steps) {
            released = step.rotation().map(Frozen::releasedAt).orElse(released);
        }
        Instant end = later(wanted, released);
        boolean more = true;
        for (int i = steps.size() - 1; more && i >= 0; i--) {
            Step step = steps.get(i);
            more = step.endAt().isAfter(end) && step.rotation().isEmpty();
            if (step.endAt().isAfter(end)) {
                Duration lasts = Duration.between(step.startAt(), step.endAt());
                Instant start = step.startAt().isBefore(end) ? step.startAt() : end;
                if (STOPS.contains(step.kind())) {
                    start = later(released, end.minus(lasts));
                }
                steps.set(i, timed(step, start, end));
                end = start;
            }
        }
    }

    private static Instant releasedAt(Rotation rotation) {
        return rotation.drops().get(rotation.drops().size() - 1).releasedAt();
    }

    private static Rotation shifted(Rotation rotation, Duration by) {
        return new Rotation(
                rotation.loads(),
                rotation.hookedAt().plus(by),
                rotation.fuelAtHookKg(),
                rotation.massOnHookKg(),
                rotation.hogeMassKg(),
                rotation.fuelMaxKg(),
                rotation.ballastKg(),
                rotation.drops().stream()
                        .map(
                                drop ->
                                        new Drop(
                                                drop.load(),
                                                drop.place(),
                                                drop.releasedAt().plus(by),
                                                drop.approachFromTrueRad(),
                                                drop.departureTrackTrueRad(),
                                                drop.headMPerS(),
                                                drop.crossMPerS(),
                                                drop.reasons()))
                        .toList(),
                rotation.legs(),
                rotation.limits());
    }

    private Step timed(Step step, Instant endAt, Optional<Rotation> rotation) {
        Step same = timed(step, startOf(step), endAt);
        return new Step(
                same.kind(),
                same.from(),
                same.to(),
                same.startAt(),
                same.endAt(),
                same.fuelStartKg(),
                same.fuelEndKg(),
                same.lineLengthM(),
                same.engineRunning(),
                rotation,
                same.crew(),
                same.legs(),
                same.because());
    }

    private static Step timed(Step step, Instant startAt, Instant endAt) {
        return new Step(
                step.kind(),
                step.from(),
                step.to(),
                startAt,
                endAt,
                step.fuelStartKg(),
                step.fuelEndKg(),
                step.lineLengthM(),
                step.engineRunning(),
                step.rotation(),
                step.crew(),
                step.legs(),
                step.because());
    }

    /** The time until now in which nothing was begun is a wait. */
    private void waitUntilNow() {
        if (steps.isEmpty()) {
            return;
        }
        Step last = steps.get(steps.size() - 1);
        if (last.endAt().isBefore(standing.at())) {
            waited = true;
            boolean stands = job.getPlace(last.to()).standing();
            steps.add(
                    new Step(
                            StepKind.WAIT,
                            last.to(),
                            last.to(),
                            last.endAt(),
                            standing.at(),
                            last.fuelEndKg(),
                            last.fuelEndKg(),
                            last.lineLengthM(),
                            !stands,
                            Optional.empty(),
                            Optional.empty(),
                            List.of(),
                            "waited"));
        }
    }

    /** What the gauge says now, less what the step that is going on still burns; else by the clock. */
    private void readFuel() {
        if (steps.isEmpty()) {
            return;
        }
        Step last = steps.remove(steps.size() - 1);
        Machine machine = job.machine();
        double mostKgPerS = Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        double goesOnS =
                Math.max(0, Duration.between(standing.at(), last.endAt()).toMillis() / 1000.0);
        boolean fuels = last.kind() == StepKind.REFUEL;
        double lateS = Math.max(0, behind.toMillis() / 1000.0);
        double endKg =
                standing.fuelKg().isPresent() && !fuels
                        ? standing.fuelKg().getAsDouble()
                                - (last.engineRunning() ? goesOnS * mostKgPerS : 0)
                        : last.fuelEndKg() - (fuels ? 0 : lateS * mostKgPerS);
        steps.add(fuelled(last, Math.max(0, endKg)));
    }
}
