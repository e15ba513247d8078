package underhook.app.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.ClosedDay.Told;
import underhook.app.port.EveningFiles;
import underhook.app.port.FlownSample;
import underhook.app.port.ReadJob;
import underhook.app.port.TrackReader;
import underhook.core.billing.Invoice;
import underhook.core.billing.Tariff;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.track.PlannedLift;
import underhook.core.track.TrackMatch;
import underhook.core.track.TrackPoint;
import underhook.core.track.Visit;
import underhook.core.track.Visits;

/** Puts the facts of a day beside its plan. */
final class Evening {
    /**
     * What was told of the day.
     *
     * @param told all taps, those that were taken back too
     * @param clocks what must be said of the devices' clocks
     * @param planSums of the files that the plan was made of; empty where it says none
     */
    record Facts(
            FlownDay flown,
            List<Tap> told,
            List<Finding> clocks,
            List<TrackReader.Fix> track,
            EveningFiles.Books books,
            List<FlownSample> earlier,
            Map<String, String> planSums) {}

    private final ReadJob readJob;
    private final Job job;
    private final Plan plan;
    private final Map<LoadId, Planned> planned = new LinkedHashMap<>();
    private final List<Finding> findings = new ArrayList<>();

    /** A load in the plan. */
    private record Planned(Step step, Rotation rotation, Drop drop) {}

    Evening(ReadJob readJob, Plan plan) {
        this.readJob = readJob;
        this.job = readJob.job();
        this.plan = plan;
        for (Step step : plan.steps()) {
            step.rotation()
                    .ifPresent(
                            rotation -> {
                                for (Drop drop : rotation.drops()) {
                                    planned.put(drop.load(), new Planned(step, rotation, drop));
                                }
                            });
        }
    }

    ClosedDay close(Facts facts) {
        FlownDay flown = facts.flown();
        otherJob(facts.planSums());
        findings.addAll(facts.clocks());
        flown.conflicts().forEach(conflict -> findings.add(named(conflict)));
        findings.addAll(Charged.corrected(job, facts.told(), flown));
        List<TrackPoint> points = points(facts.track());
        TrackMatch match = match(points);
        List<LiftLine> lines = new ArrayList<>();
        for (Load load : job.loads()) {
            lines.add(line(load, flown, match));
        }
        unknownLoads(flown);
        int engineRuns = count(flown, TapKind.ENGINE_ON);
        if (flown.sums().takeOffs() == 0 || flown.sums().missesTimes() || engineRuns == 0) {
            findings.add(
                    Finding.of(
                            FindingCode.MACHINE_TIMES_MISSING,
                            Severity.CAUTION,
                            plan.id(),
                            "taps",
                            "Take-offs, landings or engine starts were not tapped: hours, landings"
                                    + " and what is charged by them are not those of the day."));
        }
        flown.lastAt()
                .filter(last -> flown.now().engineOn())
                .ifPresent(
                        last ->
                                findings.add(
                                        Finding.of(
                                                FindingCode.MACHINE_TIMES_MISSING,
                                                Severity.CAUTION,
                                                plan.id(),
                                                "taps",
                                                "The engine was not told to be off; its time is"
                                                        + " counted up to the last tap, at "
                                                        + Charged.clock(job, last)
                                                        + ".")));
        Learning learning = new Learning(readJob, plan);
        List<FlownSample> samples = learning.samples(lines, flown);
        findings.addAll(Learning.far(samples, facts.earlier()));
        Charged charged = Charged.of(job, lines, flown);
        findings.addAll(charged.findings());
        facts.books()
                .tariff()
                .filter(Evening::chargesStandby)
                .flatMap(tariff -> Charged.standbyAfter(job, flown))
                .ifPresent(findings::add);
        return new ClosedDay(
                readJob,
                plan,
                flown,
                lines,
                facts.books().parts().stream()
                        .map(
                                part ->
                                        new ClosedDay.PartLine(
                                                part,
                                                part.after(flown.sums(), engineRuns, job.date())))
                        .toList(),
                facts.books().tariff().map(tariff -> Invoice.of(tariff, charged.quantities())),
                Learning.learned(samples, facts.earlier()),
                samples,
                match.unmatched(),
                points.isEmpty() ? List.of() : OverZones.of(job, points),
                findings);
    }

    private static boolean chargesStandby(Tariff tariff) {
        return tariff.items().stream().anyMatch(item -> item.basis() == Tariff.Basis.STANDBY_TIME);
    }

    /** With the tap that it is about, to be found again in the table. */
    private Finding named(FlownDay.Conflict conflict) {
        Finding why = conflict.finding();
        String which = why.value() + Charged.told(job, conflict.tap());
        return new Finding(
                why.code(),
                why.severity(),
                why.subject(),
                which,
                why.limit(),
                why.unit(),
                why.source(),
                why.message());
    }

    /** What is said of the day is said with the folder as it is now. */
    private void otherJob(Map<String, String> planSums) {
        Map<String, String> now = readJob.sums();
        List<String> others = new ArrayList<>();
        if (!plan.job().equals(job.name())) {
            others.add(
                    "it is of the job \"" + plan.job() + "\", the folder \"" + job.name() + "\"");
        }
        // Plans from before say no files.
        if (!planSums.isEmpty()) {
            named(others, "changed", planSums.keySet(), file -> isOther(planSums, now, file));
            named(others, "gone", planSums.keySet(), file -> !now.containsKey(file));
            named(others, "new", now.keySet(), file -> !planSums.containsKey(file));
        }
        if (!others.isEmpty()) {
            findings.add(
                    Finding.of(
                            FindingCode.JOB_CHANGED,
                            Severity.CAUTION,
                            plan.id(),
                            "plan",
                            "The job folder is not the one that the plan was made of: "
                                    + String.join("; ", others)
                                    + ". All of this is said with the folder as it is now."));
        }
    }

    private static boolean isOther(
            Map<String, String> planned, Map<String, String> now, String file) {
        return now.containsKey(file) && !now.get(file).equals(planned.get(file));
    }

    private static void named(
            List<String> others, String how, Set<String> files, Predicate<String> which) {
        List<String> all = files.stream().filter(which).sorted().toList();
        if (!all.isEmpty()) {
            others.add(how + " " + String.join(", ", all));
        }
    }

    private List<TrackPoint> points(List<TrackReader.Fix> track) {
        LocalFrame frame = LocalFrame.of(job.origin());
        List<TrackPoint> points = new ArrayList<>();
        int far = 0;
        for (TrackReader.Fix fix : track) {
            if (Math.abs(fix.point().lonDeg() - job.origin().lonDeg()) < 1
                    && Math.abs(fix.point().latDeg() - job.origin().latDeg()) < 1) {
                points.add(new TrackPoint(fix.at(), frame.toPlane(fix.point())));
            } else {
                far++;
            }
        }
        if (far > 0) {
            findings.add(
                    new Finding(
                            FindingCode.TRACK_ELSEWHERE,
                            Severity.CAUTION,
                            plan.id(),
                            Integer.toString(far),
                            "",
                            "points",
                            "track",
                            "Points of the track lie over a degree from the job and were not used."));
        }
        return points;
    }

    private TrackMatch match(List<TrackPoint> points) {
        LocalFrame frame = LocalFrame.of(job.origin());
        Map<PlaceId, PlanePoint> places = new HashMap<>();
        // A landing place beside a laydown would take its stays.
        for (Load load : job.loads()) {
            for (PlaceId id : List.of(load.from(), load.to())) {
                places.put(id, frame.toPlane(job.getPlace(id).position()));
            }
        }
        List<Visit> visits =
                points.isEmpty() ? List.of() : Visits.find(points, places, Visits.Settings.USUAL);
        return TrackMatch.of(plannedLifts(), visits);
    }

    private List<PlannedLift> plannedLifts() {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .map(
                        rotation ->
                                new PlannedLift(
                                        rotation.loads(),
                                        job.getLoad(rotation.loads().get(0)).from(),
                                        rotation.hookedAt(),
                                        rotation.drops().stream().map(Evening::drop).toList()))
                .toList();
    }

    private static PlannedLift.Drop drop(Drop drop) {
        return new PlannedLift.Drop(drop.load(), drop.place(), drop.releasedAt());
    }

    private LiftLine line(Load load, FlownDay flown, TrackMatch match) {
        Optional<TrackMatch.Found> seen =
                match.lifts().stream()
                        .filter(found -> found.planned().loads().contains(load.id()))
                        .findFirst();
        Optional<Planned> in = Optional.ofNullable(planned.get(load.id()));
        List<FlownLift> of =
                flown.lifts().stream().filter(l -> l.loads().contains(load.id())).toList();
        Optional<FlownLift> done =
                of.stream().filter(lift -> doneAt(lift, load.id()).isPresent()).findFirst();
        Optional<FlownLift> tapped = done.or(() -> of.stream().reduce((earlier, later) -> later));
        Optional<Visit> stay = seen.flatMap(found -> dropVisit(found, load.id()));
        boolean byTrack =
                tapped.isEmpty() && seen.isPresent() && seen.get().isWhole() && stay.isPresent();
        Optional<Instant> hookedAt = tapped.map(FlownLift::hookedAt);
        Optional<Instant> doneAt = done.flatMap(lift -> doneAt(lift, load.id()));
        if (byTrack) {
            hookedAt = seen.flatMap(TrackMatch.Found::hook).map(Visit::until);
            doneAt = stay.map(visit -> setDownAt(load, visit, match));
        }
        Told told = tapped.isPresent() ? Told.TAPPED : byTrack ? Told.TRACK : Told.NOT_FLOWN;
        return new LiftLine(
                load.id(),
                load.kind(),
                load.from(),
                load.to(),
                lineM(in, tapped),
                in.map(p -> p.rotation().hookedAt()),
                in.map(p -> p.drop().releasedAt()),
                told,
                in.filter(this::isTakenOver).isPresent(),
                hookedAt,
                doneAt,
                load.massKg(),
                tapped.map(Evening::readAloneKg).orElse(OptionalDouble.empty()),
                // A stay that served something else besides is no measure of this set-down.
                stay.filter(visit -> visit.certain() && served(visit, match) == 1)
                        .map(visit -> OptionalDouble.of(seconds(visit.from(), visit.until())))
                        .orElse(OptionalDouble.empty()),
                of.stream()
                        .filter(FlownLift::aborted)
                        .map(lift -> new LiftLine.GivenUp(lift.hookedAt(), readAloneKg(lift)))
                        .toList());
    }

    /** A new order has what was done by then as it was told, rightly or not. */
    private boolean isTakenOver(Planned one) {
        return plan.summary()
                .anew()
                .filter(anew -> !one.drop().releasedAt().isAfter(anew.fromAt()))
                .isPresent();
    }

    /** What hangs beside others nobody weighed. */
    private static OptionalDouble readAloneKg(FlownLift lift) {
        return lift.loads().size() == 1 ? lift.massReadKg() : OptionalDouble.empty();
    }

    /** The stay's end; where it served more than this set-down, its beginning and the usual time. */
    private Instant setDownAt(Load load, Visit visit, TrackMatch match) {
        Instant usual =
                visit.from().plusMillis((long) (job.getKind(load.kind()).setDownS() * 1000));
        return served(visit, match) > 1 && usual.isBefore(visit.until()) ? usual : visit.until();
    }

    /** How many hook-ups and set-downs a stay served. */
    private static long served(Visit visit, TrackMatch match) {
        return match.lifts().stream()
                .flatMap(found -> Stream.concat(found.hook().stream(), dropStays(found)))
                .filter(visit::equals)
                .count();
    }

    private static Stream<Visit> dropStays(TrackMatch.Found found) {
        return found.drops().stream().flatMap(Optional::stream);
    }

    private static OptionalDouble lineM(Optional<Planned> in, Optional<FlownLift> tapped) {
        OptionalDouble told = tapped.map(FlownLift::lineM).orElse(OptionalDouble.empty());
        return told.isPresent() || in.isEmpty()
                ? told
                : OptionalDouble.of(in.get().step().lineLengthM());
    }

    /** When this load of the lift stood and was free; before it was given up, perhaps. */
    private static Optional<Instant> doneAt(FlownLift lift, LoadId load) {
        return lift.offAt().stream()
                .filter(down -> down.load().equals(load))
                .flatMap(down -> down.freeAt().stream())
                .findFirst();
    }

    private static Optional<Visit> dropVisit(TrackMatch.Found found, LoadId load) {
        List<PlannedLift.Drop> drops = found.planned().drops();
        for (int d = 0; d < drops.size(); d++) {
            if (drops.get(d).load().equals(load)) {
                return found.drops().get(d);
            }
        }
        return Optional.empty();
    }

    private void unknownLoads(FlownDay flown) {
        for (FlownLift lift : flown.lifts()) {
            for (LoadId load : lift.loads()) {
                if (job.findLoad(load).isEmpty()) {
                    findings.add(
                            Finding.of(
                                    FindingCode.LOAD_UNLISTED,
                                    Severity.CAUTION,
                                    load.value(),
                                    "taps",
                                    "A load was lifted that the job does not list."));
                }
            }
        }
    }

    private static int count(FlownDay flown, TapKind kind) {
        return (int) flown.taps().stream().filter(tap -> tap.kind() == kind).count();
    }

    private static double seconds(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }
}
