package underhook.app.evening;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.app.port.EveningFiles;
import underhook.app.port.Fault;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.PlanReader;
import underhook.app.port.Reading;
import underhook.core.billing.Quote;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.learn.Figure;
import underhook.core.learn.Measure;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Works out what a planned day, flown so often, will take and cost. */
public final class QuoteJob {
    /** Spread of one lift's time where nothing was learned. @source PRACTICE an own guess, said so */
    private static final double GUESSED_SPREAD_RATIO = 0.15;

    /** The plan's own figures count as so many flights. @source PRACTICE as in learning */
    private static final double PLAN_SAMPLES = 10;

    /** What is asked for. */
    public record Request(Path folder, Path plan, Path books, Optional<Path> learned) {}

    /**
     * What came of it.
     *
     * @param faults of what was read; when there are any there is no quote
     * @param refusals why the plan could not be read
     * @param assumptions what the quote stands on, a sentence each
     * @param currency of the tariff
     */
    public record Result(
            List<Fault> faults,
            List<Finding> refusals,
            Optional<Quote> quote,
            List<String> assumptions,
            String currency) {
        public Result {
            faults = List.copyOf(faults);
            refusals = List.copyOf(refusals);
            assumptions = List.copyOf(assumptions);
        }

        private static Result refused(List<Fault> faults, List<Finding> refusals) {
            return new Result(faults, refusals, Optional.empty(), List.of(), "");
        }
    }

    private final JobReader jobs;
    private final PlanReader plans;
    private final EveningFiles files;

    public QuoteJob(JobReader jobs, PlanReader plans, EveningFiles files) {
        this.jobs = jobs;
        this.plans = plans;
        this.files = files;
    }

    /** Makes the quote; writes nothing. */
    public Result quote(Request request) {
        JobReading reading = jobs.read(request.folder());
        Outcome<Plan> plan = plans.read(request.plan());
        Reading<EveningFiles.Books> books = files.readBooks(request.books());
        Optional<Reading<List<Figure>>> learned = request.learned().map(files::readFigures);
        List<Fault> faults = new ArrayList<>(reading.faults());
        faults.addAll(books.faults());
        learned.ifPresent(read -> faults.addAll(read.faults()));
        books.value().ifPresent(kept -> faults.addAll(missing(kept, request.books())));
        if (!faults.isEmpty() || !plan.isDone()) {
            return Result.refused(faults, plan.isDone() ? List.of() : plan.findings());
        }
        EveningFiles.Books kept = books.value().orElseThrow();
        EveningFiles.Offer offer = kept.offer().orElseThrow();
        Job job = reading.job().orElseThrow().job();
        List<Figure> figures = learned.flatMap(Reading::value).orElse(List.of());
        Quote quote =
                Quote.of(
                        day(job, plan.getValue(), figures),
                        kept.tariff().orElseThrow(),
                        offer.terms());
        return new Result(
                List.of(),
                List.of(),
                Optional.of(quote),
                assumptions(job, plan.getValue(), figures, offer),
                kept.tariff().orElseThrow().currency());
    }

    private static List<Fault> missing(EveningFiles.Books books, Path file) {
        List<Fault> faults = new ArrayList<>();
        String name = String.valueOf(file.getFileName());
        if (books.tariff().isEmpty()) {
            faults.add(
                    new Fault(
                            FindingCode.FIELD_MISSING,
                            name,
                            0,
                            "tariff-items",
                            "is missing",
                            "",
                            "at least one item to charge"));
        }
        if (books.offer().isEmpty()) {
            faults.add(
                    new Fault(
                            FindingCode.FIELD_MISSING,
                            name,
                            0,
                            "offer",
                            "is missing",
                            "",
                            "days, flyable-percent, flyable-source and waiting-day-cents"));
        }
        return faults;
    }

    private static Quote.Day day(Job job, Plan plan, List<Figure> figures) {
        List<Quote.Lift> lifts = new ArrayList<>();
        double inLiftsS = 0;
        double standbyS = 0;
        double engineS = 0;
        double burntKg = 0;
        int poles = 0;
        for (Step step : plan.steps()) {
            double lastsS = seconds(step.startAt(), step.endAt());
            engineS += step.engineRunning() ? lastsS : 0;
            standbyS += step.engineRunning() ? 0 : lastsS;
            burntKg += Math.max(0, step.fuelStartKg() - step.fuelEndKg());
            if (step.rotation().isPresent()) {
                Rotation rotation = step.rotation().get();
                Instant done = lastRelease(rotation);
                double cycleS = seconds(rotation.hookedAt(), done);
                inLiftsS += cycleS;
                lifts.add(lift(cycleS, job.getLoad(rotation.loads().get(0)), step, figures, job));
                poles +=
                        (int)
                                rotation.loads().stream()
                                        .filter(id -> isPole(job, job.getLoad(id)))
                                        .count();
            }
        }
        double flyingS = plan.summary().flightS();
        return new Quote.Day(
                lifts,
                poles,
                Math.max(0, flyingS - inLiftsS),
                Math.max(0, engineS - flyingS),
                standbyS,
                engineS > 0 ? burntKg / engineS : 0);
    }

    private static boolean isPole(Job job, Load load) {
        return job.getKind(load.kind()).standsUp();
    }

    private static Instant lastRelease(Rotation rotation) {
        return rotation.drops().stream()
                .map(Drop::releasedAt)
                .max(Instant::compareTo)
                .orElse(rotation.hookedAt());
    }

    private static Quote.Lift lift(
            double cycleS, Load load, Step step, List<Figure> figures, Job job) {
        String place = job.getPlace(load.to()).kind().name().toLowerCase(Locale.ROOT);
        String group = load.kind() + " / " + place + " / " + Math.round(step.lineLengthM()) + " m";
        List<Figure> times =
                figures.stream().filter(f -> f.quantity() == Measure.LIFT_TIME).toList();
        return times.stream()
                .filter(figure -> figure.group().equals(group))
                .findFirst()
                .or(() -> times.stream().filter(f -> f.kind().equals(load.kind())).findFirst())
                .map(
                        figure ->
                                new Quote.Lift(
                                        cycleS,
                                        figure.believedRatio(),
                                        Math.max(figure.spreadRatio(), GUESSED_SPREAD_RATIO / 3),
                                        figure.samples() + PLAN_SAMPLES))
                .orElseGet(() -> new Quote.Lift(cycleS, 1, GUESSED_SPREAD_RATIO, PLAN_SAMPLES));
    }

    private static List<String> assumptions(
            Job job, Plan plan, List<Figure> figures, EveningFiles.Offer offer) {
        List<String> all = new ArrayList<>();
        long placed = plan.steps().stream().filter(s -> s.kind() == StepKind.ROTATION).count();
        all.add(
                "Each day is like plan "
                        + plan.id()
                        + ": trips "
                        + placed
                        + "; loads of the list that are not in it: "
                        + plan.leftOut().size()
                        + ".");
        long known = figures.stream().filter(f -> f.quantity() == Measure.LIFT_TIME).count();
        all.add(
                known == 0
                        ? "No lift times were learned: times are the plan's, and that one lift is off by"
                                + " 15 % is a guess."
                        : "Lift times follow "
                                + known
                                + " learned groups, held towards the plan; other lifts are the plan's,"
                                + " off by 15 %, a guess.");
        if (job.readingFindings().stream().anyMatch(f -> f.code() == FindingCode.LEARNED_FIGURE)
                && known > 0) {
            all.add(
                    "The plan itself uses learned set-down times: where lifts took longer this counts"
                            + " twice.");
        }
        all.add(
                "One day in "
                        + String.format(Locale.ROOT, "%.2f", 1 / offer.terms().flyableFraction())
                        + " can be flown ("
                        + offer.source()
                        + "), each regardless of the one before; bad weather comes in spells, so the"
                        + " most days may be too few.");
        all.add(
                "The range is from the 10 % to the 90 % point, low times with few lost days and high"
                        + " times with many.");
        return all;
    }

    private static double seconds(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }
}
