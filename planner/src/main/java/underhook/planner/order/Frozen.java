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
import underhook.core.plan.Anew;
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
    private final List<Anew.Reading> readings;
    private final List<Part> parts = new ArrayList<>();
    private List<Step> steps = List.of();
    private Duration behind = Duration.ZERO;
    private boolean starts;
    private boolean waited;
    private boolean over;

    /**
     * A step of the plan with the times as they were.
     *
     * @param hookedAt when a lift was hooked up; of no meaning where nothing is lifted
     * @param behind how much later than planned its loads were let go
     * @param starts whether the engine was planned to be started for it
     */
    private record Part(
            Step planned,
            Instant startAt,
            Instant endAt,
            Instant hookedAt,
            Duration behind,
            boolean starts) {
        Part during(Instant otherStart, Instant otherEnd) {
            return new Part(planned, otherStart, otherEnd, hookedAt, behind, starts);
        }

        Optional<Instant> releasedAt() {
            return planned.rotation().map(turn -> plannedRelease(turn).plus(behind));
        }
    }

    Frozen(Job job, Plan plan, Standing standing) {
        this.job = job;
        this.standing = standing;
        this.readings = readings(plan, standing);
        int last = lastDone(plan);
        boolean begun = standing.log() != Standing.Log.NOT_BEGUN;
        for (int i = 0; begun && i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            starts = step.engineRunning() && (i == 0 || !plan.steps().get(i - 1).engineRunning());
            if (!take(step, i <= last)) {
                break;
            }
        }
        waitUntilNow();
        steps = burnt();
    }

    List<Step> steps() {
        return steps;
    }

    /** What the gauge said, now and before. */
    List<Anew.Reading> readings() {
        return readings;
    }

    private static List<Anew.Reading> readings(Plan plan, Standing standing) {
        List<Anew.Reading> all = new ArrayList<>();
        plan.summary().anew().ifPresent(anew -> all.addAll(anew.readings()));
        standing.fuelKg().ifPresent(readKg -> all.add(new Anew.Reading(standing.at(), readKg)));
        return List.copyOf(all);
    }

    /** Whether nothing goes on now, nor comes. */
    boolean isOver() {
        return over;
    }

    /** The same where nothing is flown any more: the day is over when its last work is, not now. */
    Frozen ended() {
        if (waited) {
            parts.remove(parts.size() - 1);
            steps = burnt();
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
        return lifts().stream().anyMatch(loads -> loads.contains(load));
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
            takeFlown(step, step.rotation().orElseThrow(), done.get());
            return true;
        }
        if (skipped) {
            return before;
        }
        if (!before && !begun) {
            return false;
        }
        boolean cut = !before && step.kind() == StepKind.WAIT;
        Instant endAt = step.endAt().plus(behind);
        add(
                step,
                cut && endAt.isAfter(standing.at()) ? standing.at() : endAt,
                step.rotation().map(Rotation::hookedAt).orElse(step.startAt()).plus(behind));
        return true;
    }

    private void takeFlown(Step step, Rotation rotation, Standing.Done done) {
        Instant planned = plannedRelease(rotation);
        Duration hookBehind = Duration.between(rotation.hookedAt(), done.hookedAt());
        makeRoom(done.hookedAt().minus(Duration.between(step.startAt(), rotation.hookedAt())));
        behind = done.releasedAt().map(at -> Duration.between(planned, at)).orElse(hookBehind);
        add(step, step.endAt().plus(behind), done.hookedAt());
    }

    private void add(Step step, Instant endAt, Instant hookedAt) {
        Instant startAt =
                parts.isEmpty() ? step.startAt().plus(behind) : parts.get(parts.size() - 1).endAt();
        parts.add(new Part(step, startAt, later(endAt, startAt), hookedAt, behind, starts));
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    /**
     * Nobody told when what came before a lift was done; where the lift began sooner than planned, it was by then,
     * but not before the lift before it was let go. A stop is taken to have been as long as planned: what was shorter
     * is a wait or a way.
     */
    private void makeRoom(Instant wanted) {
        Instant released =
                parts.stream()
                        .flatMap(part -> part.releasedAt().stream())
                        .reduce(Instant.MIN, (one, other) -> other);
        Instant end = later(wanted, released);
        boolean more = true;
        for (int i = parts.size() - 1; more && i >= 0; i--) {
            Part part = parts.get(i);
            more = part.endAt().isAfter(end) && part.planned().rotation().isEmpty();
            if (part.endAt().isAfter(end)) {
                Duration lasts = Duration.between(part.startAt(), part.endAt());
                Instant start = part.startAt().isBefore(end) ? part.startAt() : end;
                if (STOPS.contains(part.planned().kind())) {
                    start = later(released, end.minus(lasts));
                }
                parts.set(i, part.during(start, end));
                end = start;
            }
        }
    }

    private static Instant plannedRelease(Rotation rotation) {
        return rotation.drops().get(rotation.drops().size() - 1).releasedAt();
    }

    /** The time until now in which nothing was begun is a wait. */
    private void waitUntilNow() {
        if (parts.isEmpty()) {
            return;
        }
        Part last = parts.get(parts.size() - 1);
        if (last.endAt().isBefore(standing.at())) {
            waited = true;
            Step before = last.planned();
            boolean stands = job.getPlace(before.to()).standing();
            Step none =
                    new Step(
                            StepKind.WAIT,
                            before.to(),
                            before.to(),
                            last.endAt(),
                            last.endAt(),
                            before.fuelEndKg(),
                            before.fuelEndKg(),
                            before.lineLengthM(),
                            !stands,
                            Optional.empty(),
                            Optional.empty(),
                            List.of(),
                            "waited");
            parts.add(
                    new Part(
                            none, last.endAt(), standing.at(), last.endAt(), Duration.ZERO, false));
        }
    }

    /**
     * With the fuel that was left: what the engine ran longer than planned it burnt at its most, what it ran less it
     * did not burn. What the gauge said holds, less what the step that was going on still burnt.
     */
    private List<Step> burnt() {
        List<Step> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            Step planned = part.planned();
            double startKg = i == 0 ? planned.fuelStartKg() : all.get(i - 1).fuelEndKg();
            boolean fuels = planned.kind() == StepKind.REFUEL;
            double moreKg = planned.engineRunning() ? moreKg(part) : 0;
            double endKg =
                    fuels
                            ? Math.max(startKg, planned.fuelEndKg())
                            : planned.fuelEndKg()
                                    + (startKg - planned.fuelStartKg())
                                    - moreKg
                                    - moreStartKg(i);
            if (!fuels && wasRead(planned)) {
                // What was read then is none of what the step burnt.
                double mostKg = planned.engineRunning() ? mostKg(lastedS(part)) : 0;
                endKg = startKg - startKg(i) - mostKg;
            }
            Optional<Anew.Reading> read = fuels ? Optional.empty() : readDuring(part);
            if (read.isPresent()) {
                double goesOnS = spanS(read.get().at(), part.endAt());
                endKg = read.get().fuelKg() - (planned.engineRunning() ? mostKg(goesOnS) : 0);
            }
            all.add(asFlown(i, startKg, Math.max(0, endKg)));
        }
        return List.copyOf(all);
    }

    /** The last reading after its begin and not after its end. */
    private Optional<Anew.Reading> readDuring(Part part) {
        return readings.stream()
                .filter(read -> part.startAt().isBefore(read.at()))
                .filter(read -> !part.endAt().isBefore(read.at()))
                .reduce((one, other) -> other);
    }

    /** Whether the gauge was read in a step as it was planned last: fuel jumps there to what it said. */
    private boolean wasRead(Step planned) {
        return readings.stream()
                .filter(read -> planned.startAt().isBefore(read.at()))
                .anyMatch(read -> !planned.endAt().isBefore(read.at()));
    }

    /** What a start before it took, kg. */
    private double startKg(int at) {
        boolean started =
                parts.get(at).planned().engineRunning()
                        && (at == 0 || !parts.get(at - 1).planned().engineRunning());
        return started ? job.machine().startFuelKg() : 0;
    }

    /** What starts took more than planned, where another step stood before it; less is negative. */
    private double moreStartKg(int at) {
        return startKg(at) - (parts.get(at).starts() ? job.machine().startFuelKg() : 0);
    }

    private static double lastedS(Part part) {
        return spanS(part.startAt(), part.endAt());
    }

    /** What it burnt more than planned, as it lasted longer. */
    private double moreKg(Part part) {
        double longerS = lastedS(part) - spanS(part.planned().startAt(), part.planned().endAt());
        return longerS > 0 ? mostKg(longerS) : longerS * job.machine().burnKgPerS();
    }

    private double flowKg(Instant from, Instant to) {
        return spanS(from, to) * job.machine().burnKgPerS();
    }

    private double mostKg(double lastsS) {
        Machine machine = job.machine();
        return lastsS * Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS());
    }

    private static double spanS(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }

    private Step asFlown(int at, double startKg, double endKg) {
        Part part = parts.get(at);
        Step planned = part.planned();
        return new Step(
                planned.kind(),
                planned.from(),
                planned.to(),
                part.startAt(),
                part.endAt(),
                startKg,
                endKg,
                planned.lineLengthM(),
                planned.engineRunning(),
                planned.rotation().map(turn -> asFlown(at, turn, startKg)),
                planned.crew(),
                planned.legs(),
                planned.because());
    }

    private Rotation asFlown(int at, Rotation turn, double startKg) {
        Part part = parts.get(at);
        Step planned = part.planned();
        double laterS =
                spanS(part.startAt(), part.hookedAt()) - spanS(planned.startAt(), turn.hookedAt());
        double reckonedKg =
                wasRead(planned)
                        ? startKg - startKg(at) - flowKg(part.startAt(), part.hookedAt())
                        : turn.fuelAtHookKg()
                                + (startKg - planned.fuelStartKg())
                                - moreStartKg(at)
                                - laterS * job.machine().burnKgPerS();
        double atHookKg =
                readDuring(part)
                        .filter(read -> !read.at().isAfter(part.hookedAt()))
                        .map(read -> read.fuelKg() - flowKg(read.at(), part.hookedAt()))
                        .orElse(reckonedKg);
        return new Rotation(
                turn.loads(),
                part.hookedAt(),
                Math.max(0, atHookKg),
                turn.massOnHookKg(),
                turn.hogeMassKg(),
                turn.fuelMaxKg(),
                turn.ballastKg(),
                turn.drops().stream().map(drop -> asFlown(part, drop)).toList(),
                turn.legs(),
                turn.limits());
    }

    private static Drop asFlown(Part part, Drop drop) {
        return new Drop(
                drop.load(),
                drop.place(),
                drop.releasedAt().plus(part.behind()),
                drop.approachFromTrueRad(),
                drop.departureTrackTrueRad(),
                drop.headMPerS(),
                drop.crossMPerS(),
                drop.reasons());
    }
}
