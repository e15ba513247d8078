package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import underhook.app.PlanDay;
import underhook.app.PlanId;
import underhook.app.Progress;
import underhook.app.SurerDay;
import underhook.app.desk.DeskJob.KnownPlan;
import underhook.app.port.Content;
import underhook.app.port.KeptJob.Revision;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.order.TriedMove;

/**
 * Answers what would be if; nothing counts until it is accepted. A moved lift is tried in the order that is
 * known, on a day kept open; whatever else is asked, and what is accepted, is planned anew. Safe for threads;
 * one question at a time.
 */
public final class WhatIf {
    private static final Duration CEILING = Duration.ofMinutes(3);
    private final Path work;
    private final Map<String, Trial> trials = new HashMap<>();
    private final Map<String, AtomicBoolean> stops = new ConcurrentHashMap<>();
    private Optional<Opened> opened = Optional.empty();

    /** A day kept open for questions about one plan. */
    private record Opened(String plan, OpenDay day) {}

    /** A question answered for one head. */
    private record Trial(
            Question question, long on, Map<String, Content> changes, PlanDay.Result result) {}

    /**
     * The answer.
     *
     * @param why it is not possible; empty when it is
     * @param flightS time in the air more than in the plan of record, s
     * @param finishS how much later the day ends, s
     * @param fuelKg fuel burnt more, kg
     * @param leftOut loads that stay behind now and did not before
     * @param cutShort whether the search was stopped before it was through
     * @param inTime chance that all is in time then; empty where the day was not replayed
     */
    public record Answer(
            String why,
            double flightS,
            double finishS,
            double fuelKg,
            List<Finding> appeared,
            List<Finding> gone,
            List<String> leftOut,
            boolean cutShort,
            Optional<Odds.Chance> inTime) {
        public Answer {
            appeared = List.copyOf(appeared);
            gone = List.copyOf(gone);
            leftOut = List.copyOf(leftOut);
        }

        public boolean isPossible() {
            return why.isEmpty();
        }
    }

    /**
     * @param work folder for what can be thrown away
     */
    public WhatIf(Path work) {
        this.work = work;
    }

    /** What the day would be like. */
    public synchronized Answer ask(DeskJob job, Question question) throws IOException {
        KnownPlan known =
                job.findPlan()
                        .orElseThrow(
                                () -> new IllegalArgumentException("The job has no plan yet."));
        Plan record = known.plan();
        if (question.what() == Question.What.MOVE && !job.isStale(known.kept())) {
            trials.clear();
            return tried(job, question, record);
        }
        Optional<Trial> found = plan(job, question, record);
        // Each holds a whole job with its terrain.
        trials.clear();
        if (found.isEmpty()) {
            return impossible(
                    "The day is as sure as that already, or nothing that is left makes it surer.");
        }
        Trial trial = found.get();
        trials.put(job.id(), trial);
        return trial.result()
                .fold(
                        refused -> impossible(String.valueOf(refused.faults().get(0))),
                        none ->
                                impossible(
                                        none.isStopped()
                                                ? "Stopped before there was a day."
                                                : "No plan is possible then."),
                        wrong ->
                                impossible(
                                        "The re-check refused the plan: "
                                                + wrong.report().violations().get(0).message()),
                        planned -> compare(record, planned.output().plan()));
    }

    /** Ends the search of the question that is being worked out; the best so far is the answer. */
    public void stop(DeskJob job) {
        Optional.ofNullable(stops.get(job.id())).ifPresent(stop -> stop.set(true));
    }

    /**
     * Makes it the job's.
     *
     * @param on the head that was seen
     */
    public synchronized Revision accept(DeskJob job, Question question, long on)
            throws IOException {
        Trial trial = trials.get(job.id());
        if (trial == null || !trial.question().equals(question) || trial.on() != on) {
            trial =
                    plan(job, question, record(job))
                            .orElseThrow(
                                    () -> new IllegalArgumentException("That is not possible."));
        }
        if (!(trial.result() instanceof PlanDay.Planned planned)) {
            throw new IllegalArgumentException("That is not possible.");
        }
        Revision made = job.change(on, question.words(), trial.changes(), Set.of());
        PlanRuns.keep(job, made.id(), planned);
        trials.remove(job.id());
        return made;
    }

    private Answer tried(DeskJob job, Question question, Plan record) throws IOException {
        Question.Turn turn = question.turn(record);
        TriedMove tried =
                open(job, record)
                        .tryMove(
                                record,
                                turn.moved(),
                                turn.behind(),
                                new PlanSettings(
                                        "tried",
                                        job.now(),
                                        record.seed(),
                                        record.program(),
                                        () -> false));
        String held = tried.because().isEmpty() ? "" : " " + tried.because() + ".";
        String why = tried.comesThere() ? "" : "It is not flown at that turn." + held;
        return new Answer(
                why,
                tried.flightS(),
                tried.finishS(),
                tried.fuelKg(),
                missing(tried.findings(), record.findings()),
                missing(record.findings(), tried.findings()),
                tried.leftOut().stream()
                        .map(load -> load + ": in this order the day has no room for it.")
                        .toList(),
                false,
                Optional.empty());
    }

    /** Opened anew for each plan; that takes as long as finding its ways does. */
    private OpenDay open(DeskJob job, Plan record) throws IOException {
        // Plans of two jobs may have been made in the same second.
        String key = job.id() + " " + record.id();
        if (opened.filter(one -> one.plan().equals(key)).isEmpty()) {
            opened = Optional.empty();
            ReadJob read = readable(job);
            opened = Optional.of(new Opened(key, new OpenDay(read.job(), read.ground())));
        }
        return opened.orElseThrow().day();
    }

    private static ReadJob readable(DeskJob job) throws IOException {
        return job.findReadable()
                .orElseThrow(() -> new IllegalArgumentException("The job has faults."));
    }

    private static Plan record(DeskJob job) throws IOException {
        return job.findPlan()
                .orElseThrow(() -> new IllegalArgumentException("The job has no plan yet."))
                .plan();
    }

    /** Empty where no other day answers it. */
    private Optional<Trial> plan(DeskJob job, Question question, Plan record) throws IOException {
        AtomicBoolean stop = new AtomicBoolean();
        stops.put(job.id(), stop);
        try {
            Asking asking = new Asking(job, job.head().id(), stop);
            return question.what() == Question.What.SURE
                    ? surer(asking, question, record)
                    : Optional.of(
                            planned(
                                    asking,
                                    question,
                                    question.changes(job, record),
                                    asking.progress()));
        } finally {
            stops.remove(job.id(), stop);
        }
    }

    /** A question being worked out. */
    private record Asking(DeskJob job, long head, AtomicBoolean stop) {
        Progress progress() {
            return (doing, done) ->
                    job.events()
                            .tell(
                                    new DeskEvent(
                                            DeskEvent.Kind.ASKING, job.id(), head, doing, done));
        }
    }

    /** In another order, or with loads left for another day. */
    private Optional<Trial> surer(Asking asking, Question question, Plan record)
            throws IOException {
        DeskJob job = asking.job();
        ReadJob read = readable(job);
        PlanDay planDay = job.tools().planDay();
        PlanDay.Request request =
                new PlanDay.Request(work, work, record.seed(), CEILING, asking.stop()::get);
        Instant now = job.now().truncatedTo(ChronoUnit.SECONDS);
        Optional<SurerDay.Found> found =
                SurerDay.find(
                        new SurerDay.Wish(
                                read,
                                record,
                                PlanId.of(now),
                                now,
                                question.inTimeFraction(),
                                asking.stop()::get),
                        (less, part) -> planOf(planDay.tryOut(less, request, part)),
                        asking.progress());
        if (found.isEmpty()) {
            return Optional.empty();
        }
        Path root = work.resolve("what-if-" + job.id());
        WorkFolders.delete(root);
        Set<LoadId> left = found.get().left();
        return Optional.of(
                new Trial(
                        question,
                        asking.head(),
                        left.isEmpty() ? Map.of() : Question.leaving(job, left),
                        planDay.publish(
                                read.leaving(left),
                                found.get().plan(),
                                Files.createDirectories(root).resolve("out"),
                                asking.progress())));
    }

    private static Optional<Plan> planOf(PlanDay.Result result) {
        return result instanceof PlanDay.Planned planned
                ? Optional.of(planned.output().plan())
                : Optional.empty();
    }

    private Trial planned(
            Asking asking, Question question, Map<String, Content> changes, Progress progress)
            throws IOException {
        DeskJob job = asking.job();
        Path root = work.resolve("what-if-" + job.id());
        WorkFolders.delete(root);
        Path folder = Files.createDirectories(root.resolve("job"));
        for (Map.Entry<String, String> file : job.kept().listFiles(asking.head()).entrySet()) {
            Path target = folder.resolve(file.getKey());
            Files.createDirectories(Objects.requireNonNull(target.getParent()));
            Content changed = changes.get(file.getKey());
            Files.write(
                    target,
                    (changed == null ? job.kept().getContent(file.getValue()) : changed).toBytes());
        }
        PlanDay.Request request =
                new PlanDay.Request(
                        root.resolve("job"), root.resolve("out"), 1, CEILING, asking.stop()::get);
        return new Trial(
                question, asking.head(), changes, job.tools().planDay().plan(request, progress));
    }

    private static Answer impossible(String why) {
        return new Answer(why, 0, 0, 0, List.of(), List.of(), List.of(), false, Optional.empty());
    }

    private static Answer compare(Plan record, Plan other) {
        Duration later = Duration.between(record.summary().finishAt(), other.summary().finishAt());
        return new Answer(
                "",
                other.summary().flightS() - record.summary().flightS(),
                later.toMillis() / 1000.0,
                burntKg(other) - burntKg(record),
                missing(other.findings(), record.findings()),
                missing(record.findings(), other.findings()),
                other.leftOut().stream()
                        .filter(out -> find(record, out).isEmpty())
                        .map(out -> out.load() + ": " + out.message())
                        .toList(),
                other.summary().cutShort(),
                other.odds().map(Odds::allInTime));
    }

    private static Optional<LeftOut> find(Plan plan, LeftOut out) {
        return plan.leftOut().stream().filter(one -> one.load().equals(out.load())).findFirst();
    }

    private static double burntKg(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.kind() != StepKind.REFUEL)
                .mapToDouble(WhatIf::burntKg)
                .sum();
    }

    private static double burntKg(Step step) {
        return Math.max(0, step.fuelStartKg() - step.fuelEndKg());
    }

    /** Findings of one plan about things that the other says nothing of. */
    private static List<Finding> missing(List<Finding> one, List<Finding> other) {
        return one.stream()
                .filter(
                        finding ->
                                other.stream()
                                        .noneMatch(
                                                same ->
                                                        same.code() == finding.code()
                                                                && same.severity()
                                                                        == finding.severity()
                                                                && same.subject()
                                                                        .equals(finding.subject())))
                .toList();
    }
}
