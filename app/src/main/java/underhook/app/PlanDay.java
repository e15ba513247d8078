package underhook.app;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import underhook.app.port.Fault;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.OutputWriter;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.plan.Plan;
import underhook.core.plan.VerifierReport;
import underhook.planner.odds.DayOdds;
import underhook.planner.search.Effort;

/**
 * Plans a job folder's day, has the plan re-checked, and publishes it.
 *
 * <p>What the re-check refuses is never published: the folder then holds the findings alone.
 */
public final class PlanDay {
    /**
     * What is asked for.
     *
     * @param folder job folder
     * @param out output folder
     * @param seed of the search; the same input, seed and effort give the same plan
     * @param effort the time that the work of the search is meant for, whole seconds
     * @param ceiling longest time the search may take
     * @param inTimeFraction share of the replayed days that are to be in time, in (0, 1), for which loads may be left for
     *     another day; empty when all are to be flown, however sure
     * @param stopped says true when the search must end now with what it has
     */
    public record Request(
            Path folder,
            Path out,
            long seed,
            Duration effort,
            Duration ceiling,
            OptionalDouble inTimeFraction,
            BooleanSupplier stopped) {
        /** As much work as is usual. */
        public static final Duration USUAL_EFFORT = Duration.ofSeconds(Effort.USUAL_S);

        public Request(Path folder, Path out, long seed, Duration ceiling) {
            this(folder, out, seed, ceiling, () -> false);
        }

        public Request(
                Path folder, Path out, long seed, Duration ceiling, BooleanSupplier stopped) {
            this(folder, out, seed, USUAL_EFFORT, ceiling, stopped);
        }

        /** However sure the day is. */
        public Request(
                Path folder,
                Path out,
                long seed,
                Duration effort,
                Duration ceiling,
                BooleanSupplier stopped) {
            this(folder, out, seed, effort, ceiling, OptionalDouble.empty(), stopped);
        }

        /** The same, with so many of the replayed days in time. */
        public Request inTimeOn(double fraction) {
            return new Request(
                    folder, out, seed, effort, ceiling, OptionalDouble.of(fraction), stopped);
        }

        public Request {
            if (effort.toSeconds() < 1) {
                throw new IllegalArgumentException("effort (" + effort + ") must be at least 1 s.");
            }
            double wished = inTimeFraction.orElse(0.5);
            if (!(wished > 0 && wished < 1)) {
                throw new IllegalArgumentException(
                        "inTimeFraction (" + wished + ") must lie between 0 and 1.");
            }
            if (ceiling.isNegative() || ceiling.isZero()) {
                throw new IllegalArgumentException("ceiling (" + ceiling + ") must be above 0.");
            }
        }
    }

    /** Makes a plan; refused when none is possible. */
    public interface Planning {
        Outcome<Plan> plan(ReadJob job, Request request, Progress progress);
    }

    /** Re-checks a plan, with nothing but the job and the plan. */
    public interface Checking {
        VerifierReport check(ReadJob job, Plan plan);
    }

    /** The output folder. */
    public interface Publishing {
        /** Writes every file and swaps them in together; returns what was written. */
        List<Path> publish(OutputWriter.Output output, Path out) throws IOException;

        /** Fails where nothing could be written, before the long work; makes and changes nothing of a run. */
        default void tryOpen(Path out) throws IOException {}

        /** Moves what an earlier run left out of the way and writes the findings. */
        void refuse(List<Finding> findings, Path out) throws IOException;

        /** Moves what an earlier run left out of the way; where there is no plan of one, nothing is touched. */
        void withdraw(Path out) throws IOException;
    }

    /** What came of it. */
    public sealed interface Result {
        /** Reads the result: one function for each case. */
        <R> R fold(
                Function<? super InputRefused, ? extends R> inputRefused,
                Function<? super NoPlan, ? extends R> noPlan,
                Function<? super CheckRefused, ? extends R> checkRefused,
                Function<? super Planned, ? extends R> planned);
    }

    /** The job cannot be read as meant. */
    public record InputRefused(List<Fault> faults) implements Result {
        public InputRefused {
            faults = List.copyOf(faults);
        }

        @Override
        public <R> R fold(
                Function<? super InputRefused, ? extends R> inputRefused,
                Function<? super NoPlan, ? extends R> noPlan,
                Function<? super CheckRefused, ? extends R> checkRefused,
                Function<? super Planned, ? extends R> planned) {
            return inputRefused.apply(this);
        }
    }

    /**
     * No plan is possible.
     *
     * @param isStopped it was stopped before there was a day: nobody knows whether one is possible, and what an earlier
     *     run wrote stands as it was
     */
    public record NoPlan(List<Finding> findings, boolean isStopped) implements Result {
        public NoPlan {
            findings = List.copyOf(findings);
        }

        @Override
        public <R> R fold(
                Function<? super InputRefused, ? extends R> inputRefused,
                Function<? super NoPlan, ? extends R> noPlan,
                Function<? super CheckRefused, ? extends R> checkRefused,
                Function<? super Planned, ? extends R> planned) {
            return noPlan.apply(this);
        }
    }

    /** A plan was made, and the re-check found it wrong. */
    public record CheckRefused(VerifierReport report) implements Result {
        @Override
        public <R> R fold(
                Function<? super InputRefused, ? extends R> inputRefused,
                Function<? super NoPlan, ? extends R> noPlan,
                Function<? super CheckRefused, ? extends R> checkRefused,
                Function<? super Planned, ? extends R> planned) {
            return checkRefused.apply(this);
        }
    }

    /** The plan holds and is written. */
    public record Planned(OutputWriter.Output output, List<Path> files) implements Result {
        public Planned {
            files = List.copyOf(files);
        }

        @Override
        public <R> R fold(
                Function<? super InputRefused, ? extends R> inputRefused,
                Function<? super NoPlan, ? extends R> noPlan,
                Function<? super CheckRefused, ? extends R> checkRefused,
                Function<? super Planned, ? extends R> planned) {
            return planned.apply(this);
        }
    }

    /** Of the whole, for the day with all loads. */
    private static final double FIRST_FRACTION = 0.4;

    private static final double LAST_FRACTION = 0.95;

    private final JobReader reader;
    private final Planning planning;
    private final Checking checking;
    private final Publishing publishing;

    public PlanDay(JobReader reader, Planning planning, Checking checking, Publishing publishing) {
        this.reader = reader;
        this.planning = planning;
        this.checking = checking;
        this.publishing = publishing;
    }

    /** Re-checks a plan. */
    public VerifierReport check(ReadJob job, Plan plan) {
        return checking.check(job, plan);
    }

    /**
     * Plans and re-checks a day of which nothing is kept or written.
     *
     * @param request of which only seed, ceiling and stop count
     */
    public Result tryOut(ReadJob job, Request request, Progress progress) {
        Outcome<Plan> outcome = planning.plan(job, request, progress);
        if (!outcome.isDone()) {
            return noPlan(outcome.findings(), request);
        }
        Plan plan = outcome.getValue();
        VerifierReport report = checking.check(job, plan);
        return report.holds()
                ? new Planned(new OutputWriter.Output(job, plan, report), List.of())
                : new CheckRefused(report);
    }

    /**
     * Re-checks a plan that was made elsewhere, replays its day and writes its files; nothing is written where the re-check
     * refuses it.
     *
     * @throws IOException when the output folder cannot be written
     */
    public Result publish(ReadJob job, Plan plan, Path out, Progress progress) throws IOException {
        Checked checked = checked(job, plan, progress);
        return checked.report.holds()
                ? publish(new OutputWriter.Output(job, checked.plan, checked.report), out)
                : new CheckRefused(checked.report);
    }

    /** Writes the files of a plan that was made and re-checked elsewhere. */
    public Planned publish(OutputWriter.Output output, Path out) throws IOException {
        return new Planned(output, publishing.publish(output, out));
    }

    /**
     * Plans the day.
     *
     * @throws IOException when the output folder cannot be written; nothing half-written stays
     */
    public Result plan(Request request, Progress progress) throws IOException {
        progress.at("reading the job", 0);
        JobReading reading = reader.read(request.folder());
        if (reading.job().isEmpty()) {
            publishing.withdraw(request.out());
            return new InputRefused(reading.faults());
        }
        ReadJob job = reading.job().get();
        publishing.tryOpen(request.out());
        Progress all =
                request.inTimeFraction().isPresent() ? progress.part(0, FIRST_FRACTION) : progress;
        Outcome<Plan> outcome = planning.plan(job, request, all);
        if (!outcome.isDone()) {
            NoPlan none = noPlan(outcome.findings(), request);
            if (!none.isStopped()) {
                publishing.refuse(none.findings(), request.out());
            }
            return none;
        }
        Checked checked = checked(job, outcome.getValue(), all);
        if (request.inTimeFraction().isPresent() && checked.report.holds()) {
            checked = surer(job, checked, request, progress);
        }
        if (!checked.report.holds()) {
            publishing.refuse(checked.report.violations(), request.out());
            return new CheckRefused(checked.report);
        }
        progress.at("writing the files", 0.95);
        OutputWriter.Output output = new OutputWriter.Output(job, checked.plan, checked.report);
        List<Path> files = publishing.publish(output, request.out());
        progress.at("done", 1);
        return new Planned(output, files);
    }

    /** A plan with its odds, and what the re-check says of it. */
    private record Checked(Plan plan, VerifierReport report) {}

    private Checked checked(ReadJob job, Plan plan, Progress progress) {
        progress.at("re-checking the plan", 0.9);
        VerifierReport report = checking.check(job, plan);
        if (!report.holds()) {
            return new Checked(plan, report);
        }
        progress.at("replaying the day", 0.93);
        return new Checked(withOdds(job, plan), report);
    }

    /** A plan that is in time as often as is wished; the surest that was found when none is. */
    private Checked surer(ReadJob job, Checked first, Request request, Progress progress) {
        double wishedFraction = request.inTimeFraction().orElseThrow();
        Progress rest = progress.part(FIRST_FRACTION, LAST_FRACTION - FIRST_FRACTION);
        Optional<SurerDay.Found> found =
                SurerDay.find(
                        new SurerDay.Wish(job, first.plan, wishedFraction, request.stopped()),
                        (less, part) -> planned(planning.plan(less, request, part)),
                        rest);
        Checked best = found.map(day -> checked(job, day.plan(), rest)).orElse(first);
        // What was left might have been put back.
        boolean isLess =
                SurerDay.inTimeFraction(best.plan) < wishedFraction
                        || found.map(day -> !day.left().isEmpty()).orElse(false);
        return isLess && request.stopped().getAsBoolean()
                ? new Checked(best.plan.cutShort(), best.report)
                : best;
    }

    private static Optional<Plan> planned(Outcome<Plan> outcome) {
        return outcome.isDone() ? Optional.of(outcome.getValue()) : Optional.empty();
    }

    private static NoPlan noPlan(List<Finding> findings, Request request) {
        boolean isCut = findings.stream().anyMatch(one -> one.code() == FindingCode.SEARCH_CUT);
        return new NoPlan(findings, isCut && request.stopped().getAsBoolean());
    }

    /** How safe its finish is; the plan's own seed draws the days. */
    private static Plan withOdds(ReadJob job, Plan plan) {
        return plan.steps().isEmpty()
                ? plan
                : plan.withOdds(DayOdds.of(job.job(), plan, new SplittableRandom(plan.seed())));
    }
}
