package underhook.app.replan;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import underhook.app.PlanDay;
import underhook.app.Progress;
import underhook.app.port.EveningFiles;
import underhook.app.port.Fault;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.OutputWriter;
import underhook.app.port.PlanReader;
import underhook.app.port.Reading;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.flown.TrainedHands;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;

/** Orders the rest of a written plan's day anew and publishes the plan when the re-check lets it. */
public final class ReplanDay {
    /**
     * What is asked for.
     *
     * @param taps table of what was tapped; empty when nobody did: then the plan counts as flown up to now
     * @param at now
     * @param fuelKg fuel as read now, kg
     * @param stopped says true when the search must end now with what it has
     */
    public record Request(
            Path folder,
            Path plan,
            Optional<Path> taps,
            Instant at,
            OptionalDouble fuelKg,
            List<Change> changes,
            Path out,
            BooleanSupplier stopped) {
        public Request {
            changes = List.copyOf(changes);
        }
    }

    /**
     * What came of it.
     *
     * @param faults of the files; when there are any, nothing was planned
     * @param refusals of the written plan
     * @param proposal empty when the input was refused
     * @param files written; none when the re-check refused the plan
     */
    public record Result(
            List<Fault> faults,
            List<Finding> refusals,
            Optional<Proposal> proposal,
            List<Path> files) {
        public Result {
            faults = List.copyOf(faults);
            refusals = List.copyOf(refusals);
            files = List.copyOf(files);
        }

        static Result refused(List<Fault> faults, List<Finding> refusals) {
            return new Result(faults, refusals, Optional.empty(), List.of());
        }
    }

    /** What reads the files. */
    public record Readers(JobReader jobs, PlanReader plans, EveningFiles taps) {}

    private final Readers readers;
    private final PlanDay.Checking checking;
    private final PlanDay.Publishing publishing;

    public ReplanDay(Readers readers, PlanDay.Checking checking, PlanDay.Publishing publishing) {
        this.readers = readers;
        this.checking = checking;
        this.publishing = publishing;
    }

    /** When the job's day begins, in its zone; empty when the job cannot be read. */
    public Optional<ZonedDateTime> findDay(Path folder) {
        return readers.jobs()
                .read(folder)
                .job()
                .map(read -> read.job().date().atStartOfDay(read.job().zone()));
    }

    /**
     * Plans the rest of the day.
     *
     * @throws IOException when the output folder cannot be written
     */
    public Result replan(Request request, Progress progress) throws IOException {
        progress.at("reading the job", 0);
        JobReading reading = readers.jobs().read(request.folder());
        if (reading.job().isEmpty()) {
            return Result.refused(reading.faults(), List.of());
        }
        Outcome<Plan> plan = readers.plans().read(request.plan());
        if (!plan.isDone()) {
            return Result.refused(List.of(), plan.findings());
        }
        Job asRead = reading.job().get().job();
        List<Finding> cannotBe = new ArrayList<>();
        Reading<EveningFiles.Tapped> read =
                request.taps()
                        .map(
                                file ->
                                        readers.taps()
                                                .readTaps(file, asRead, Optional.of(request.at())))
                        .orElse(Reading.of(EveningFiles.Tapped.NONE));
        FlownDay flown =
                FlownDay.ofRows(
                        read.value().orElse(EveningFiles.Tapped.NONE).taps(), TrainedHands.UNNAMED);
        List<Change> changes = new ArrayList<>(told(flown));
        changes.addAll(request.changes());
        changes.stream()
                .filter(change -> !change.isOf(asRead))
                .forEach(change -> cannotBe.add(unknown(change, asRead)));
        cannotBe.addAll(outside(request, asRead));
        Machine machine = asRead.machine();
        double fullKg = machine.fuelUsableKg() + machine.fuelGaugeSpreadKg();
        request.fuelKg().ifPresent(kg -> cannotBe.addAll(misread(kg, fullKg)));
        cannotBe.addAll(gone(plan.getValue(), asRead));
        if (!cannotBe.isEmpty() || !read.faults().isEmpty()) {
            return Result.refused(read.faults(), cannotBe);
        }
        Now now =
                request.taps().isPresent()
                        ? Now.asTapped(request.at(), flown, request.fuelKg())
                        : Now.asPlanned(request.at(), request.fuelKg());
        progress.at("finding the ways", 0.1);
        RestOfDay day = new RestOfDay(reading.job().get(), plan.getValue(), checking);
        progress.at("ordering what is left", 0.6);
        progress.hasDay();
        Proposal proposal = day.propose(now, changes, RestOfDay.Patience.BOUND, request.stopped());
        List<Finding> elsewhere =
                proposal.broken().stream()
                        .filter(one -> one.code() == FindingCode.PLAN_UNREADABLE)
                        .toList();
        if (!elsewhere.isEmpty()) {
            return Result.refused(List.of(), elsewhere);
        }
        if (!proposal.isVerified()) {
            publishing.refuse(proposal.broken(), request.out());
            return new Result(List.of(), List.of(), Optional.of(proposal), List.of());
        }
        progress.at("writing the files", 0.95);
        List<Path> files =
                publishing.publish(
                        new OutputWriter.Output(proposal.job(), proposal.plan(), proposal.report()),
                        request.out());
        return new Result(List.of(), List.of(), Optional.of(proposal), files);
    }

    /** Where crews are, as the table of taps has it; all else that is told there the caller states. */
    private static List<Change> told(FlownDay flown) {
        List<Change> all = new ArrayList<>();
        for (Tap tap : flown.taps()) {
            if (Report.of(tap).orElse(null) instanceof Report.CrewHere here) {
                all.add(new Change.CrewHere(here.crew(), here.place(), tap.at()));
            }
        }
        return all;
    }

    /** Before and after the day nothing is ordered, and nobody is anywhere later than now. */
    private static List<Finding> outside(Request request, Job job) {
        List<Finding> all = new ArrayList<>();
        Rules.Duty duty = job.rules().duty();
        ZonedDateTime begin = duty.from().atZone(job.zone()).truncatedTo(ChronoUnit.DAYS);
        if (request.at().isBefore(begin.toInstant())) {
            all.add(
                    outside(
                            "--at",
                            request.at().atZone(job.zone()),
                            "not before " + begin.toOffsetDateTime(),
                            "The job's day has not begun then. Perhaps the date is another one."));
        }
        Instant end = duty.from().plusMillis((long) Math.ceil(duty.longestS() * 1000));
        if (request.at().isAfter(end)) {
            all.add(
                    outside(
                            "--at",
                            request.at().atZone(job.zone()),
                            "not after " + end.atZone(job.zone()).toOffsetDateTime(),
                            "The day's duty is over then. Perhaps the date is another one."));
        }
        for (Change change : request.changes()) {
            if (change instanceof Change.CrewHere here
                    && here.at().isAfter(request.at().plusSeconds(1))) {
                all.add(
                        outside(
                                here.crew().value(),
                                here.at().atZone(job.zone()),
                                "not after " + request.at().atZone(job.zone()).toOffsetDateTime(),
                                "Where a crew will be is no order's: it is where it was said to be."));
            }
        }
        return all;
    }

    private static Finding outside(String subject, ZonedDateTime at, String allowed, String words) {
        return new Finding(
                FindingCode.FIELD_OUT_OF_RANGE,
                Severity.STOP,
                subject,
                at.toOffsetDateTime().toString(),
                allowed,
                "",
                "rules",
                words);
    }

    /** A reading that no gauge of this machine shows, kg, nor one of a full tank, kg. */
    static List<Finding> misread(double fuelKg, double fullKg) {
        if (fuelKg >= 0 && fuelKg <= fullKg) {
            return List.of();
        }
        return List.of(
                new Finding(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        Severity.STOP,
                        "fuel",
                        Figure.beside(fuelKg, fuelKg < 0 ? 0 : fullKg),
                        "0 to " + Figure.most(fullKg, fuelKg),
                        "kg",
                        "machine",
                        "No gauge of this machine reads that. Perhaps it is in another unit."));
    }

    /** What the plan flies, to where and with whom, that is in the files no more. */
    private static List<Finding> gone(Plan plan, Job job) {
        List<Finding> all = new ArrayList<>();
        Stream<LoadId> loads =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(turn -> turn.loads().stream());
        loads.distinct()
                .filter(id -> job.findLoad(id).isEmpty())
                .forEach(
                        id ->
                                all.add(
                                        gone(
                                                "load",
                                                id.value(),
                                                "Perhaps take it off the day instead, and leave it in the"
                                                        + " list.")));
        Stream<PlaceId> places =
                Stream.concat(
                        plan.steps().stream().flatMap(step -> Stream.of(step.from(), step.to())),
                        plan.crews().stream().map(CrewStay::place));
        places.distinct()
                .filter(id -> job.findPlace(id).isEmpty())
                .forEach(id -> all.add(gone("place", id.value(), "Perhaps close it instead.")));
        return all;
    }

    private static Finding gone(String what, String id, String perhaps) {
        return Finding.of(
                FindingCode.ID_UNKNOWN,
                Severity.STOP,
                id,
                "plan",
                "The plan that is flown has " + what + " " + id + ", the job no more. " + perhaps);
    }

    private static Finding unknown(Change change, Job job) {
        return Finding.of(
                FindingCode.ID_UNKNOWN,
                Severity.STOP,
                job.name(),
                "changes",
                "The job has nothing of that id: " + change.words(job.zone()) + ".");
    }
}
