package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.core.finding.Finding;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.Rules;
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
    private final Job job;
    private final List<Anew.Reading> readings;
    private final Past past;
    private List<Past.Part> parts;
    private List<Step> steps;
    private Set<LoadId> held;
    private boolean over;

    Frozen(Job job, Plan plan, Standing standing) {
        this(job, plan, standing, Set.of());
    }

    /**
     * @param without flights of crews of the plan on which they were not
     */
    Frozen(Job job, Plan plan, Standing standing, Set<Step> without) {
        this.job = job;
        this.readings = readings(plan, standing);
        this.past = new Past(job, plan, standing, without);
        this.parts = past.parts();
        this.steps = burnt();
        this.held = held();
    }

    /** What was tapped in less time than the plan's steps take, and what that leaves undone. */
    List<Finding> doubts() {
        return past.doubts();
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
        if (past.waits()) {
            parts = parts.subList(0, parts.size() - past.waiting());
            steps = burnt();
            held = held();
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
        return held.contains(load);
    }

    private Set<LoadId> held() {
        return lifts().stream().flatMap(List::stream).collect(Collectors.toSet());
    }

    /**
     * With the fuel that was left: what the engine ran longer than planned it burnt at its most, what it ran less it
     * did not burn. What the gauge said holds, less what the step that was going on still burnt.
     */
    private List<Step> burnt() {
        List<Step> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            double startKg =
                    i == 0 ? parts.get(i).planned().fuelStartKg() : all.get(i - 1).fuelEndKg();
            all.add(asFlown(i, startKg, Math.max(0, endKg(i, startKg))));
        }
        return List.copyOf(all);
    }

    private double endKg(int at, double startKg) {
        Past.Part part = parts.get(at);
        Step planned = part.planned();
        if (planned.kind() == StepKind.REFUEL) {
            return Math.max(startKg, Math.min(planned.fuelEndKg(), startKg + mostTakenKg(part)));
        }
        Optional<Anew.Reading> read = readDuring(part);
        if (read.isPresent()) {
            double goesOnS = spanS(read.get().at(), part.endAt());
            return read.get().fuelKg() - (part.running() ? mostKg(goesOnS) : 0);
        }
        if (wasRead(planned) || part.running() != planned.engineRunning()) {
            // What was read then is none of what the step burnt.
            return startKg - startKg(at) - (part.running() ? mostKg(lastedS(part)) : 0);
        }
        return planned.fuelEndKg()
                + (startKg - planned.fuelStartKg())
                - (part.running() ? moreKg(part) : 0)
                - moreStartKg(at);
    }

    /** No more fuel is taken than there was time for. */
    private double mostTakenKg(Past.Part part) {
        Rules.Refuelling rules = job.rules().refuelling();
        return Math.max(0, lastedS(part) - rules.refuelS()) * rules.refuelKgPerS();
    }

    /** The last reading after its begin and not after its end. */
    private Optional<Anew.Reading> readDuring(Past.Part part) {
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
        boolean started = parts.get(at).running() && (at == 0 || !parts.get(at - 1).running());
        return started ? job.machine().startFuelKg() : 0;
    }

    /** What starts took more than planned, where another step stood before it; less is negative. */
    private double moreStartKg(int at) {
        return startKg(at) - (parts.get(at).starts() ? job.machine().startFuelKg() : 0);
    }

    private static double lastedS(Past.Part part) {
        return spanS(part.startAt(), part.endAt());
    }

    /** What it burnt more than planned, as it lasted longer. */
    private double moreKg(Past.Part part) {
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
        Past.Part part = parts.get(at);
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
                part.running(),
                planned.rotation().map(turn -> asFlown(at, turn, startKg)),
                planned.crew(),
                planned.legs(),
                planned.because());
    }

    private Rotation asFlown(int at, Rotation turn, double startKg) {
        Past.Part part = parts.get(at);
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

    private static Drop asFlown(Past.Part part, Drop drop) {
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
