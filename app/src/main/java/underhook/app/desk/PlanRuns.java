package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import underhook.app.PlanDay;
import underhook.app.port.Content;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.core.finding.Finding;

/** Plans jobs in the background, one after the other. Safe for threads. */
public final class PlanRuns implements AutoCloseable {
    private static final System.Logger LOG = System.getLogger("underhook");

    private final Path work;
    private final ExecutorService thread =
            Executors.newSingleThreadExecutor(
                    work -> {
                        Thread made = new Thread(work, "planning");
                        made.setDaemon(true);
                        return made;
                    });
    private final Map<String, Run> runs = new HashMap<>();

    /** What is asked for. */
    public record Wish(long seed, Duration ceiling) {}

    /**
     * A run as it stands.
     *
     * @param text what it does, or why it ended without a plan
     */
    public record State(boolean isRunning, String text, double doneFraction) {}

    private static final class Run {
        final AtomicBoolean stopped = new AtomicBoolean();
        private State state = new State(true, "waiting for its turn", 0);

        synchronized State state() {
            return state;
        }

        synchronized void set(State other) {
            state = other;
        }
    }

    /**
     * @param work folder for what can be thrown away
     */
    public PlanRuns(Path work) {
        this.work = work;
    }

    /** Begins a run for the job's head; false when one is going on. */
    public synchronized boolean start(DeskJob job, Wish wish) throws IOException {
        Run before = runs.get(job.id());
        if (before != null && before.state().isRunning()) {
            return false;
        }
        Run run = new Run();
        runs.put(job.id(), run);
        long revision = job.head().id();
        thread.execute(() -> runAndTell(job, revision, wish, run));
        return true;
    }

    /** Ends the search of a job's run; the best plan so far is kept. */
    public synchronized void stop(DeskJob job) {
        Run run = runs.get(job.id());
        if (run != null) {
            run.stopped.set(true);
        }
    }

    /** The newest run of a job. */
    public synchronized Optional<State> find(DeskJob job) {
        return Optional.ofNullable(runs.get(job.id())).map(Run::state);
    }

    private void runAndTell(DeskJob job, long revision, Wish wish, Run run) {
        try {
            PlanDay.Result result = plan(job, revision, wish, run);
            Optional<String> refusal = refusal(result);
            run.set(new State(false, refusal.orElse("planned"), 1));
            DeskEvent.Kind kind =
                    refusal.isPresent() ? DeskEvent.Kind.FAILED : DeskEvent.Kind.PLANNED;
            tell(job, kind, revision, run.state());
        } catch (IOException | RuntimeException failed) {
            LOG.log(System.Logger.Level.ERROR, "planning " + job.id(), failed);
            run.set(new State(false, "The run failed: " + failed.getMessage(), 1));
            tell(job, DeskEvent.Kind.FAILED, revision, run.state());
        }
    }

    private PlanDay.Result plan(DeskJob job, long revision, Wish wish, Run run) throws IOException {
        Path out = work.resolve("out-" + job.id());
        WorkFolders.delete(out);
        PlanDay.Request request =
                new PlanDay.Request(
                        job.folder(revision),
                        out,
                        wish.seed(),
                        wish.ceiling(),
                        () -> run.stopped.get());
        PlanDay.Result result =
                job.tools()
                        .planDay()
                        .plan(
                                request,
                                (doing, done) -> {
                                    run.set(new State(true, doing, done));
                                    tell(job, DeskEvent.Kind.PROGRESS, revision, run.state());
                                });
        if (result instanceof PlanDay.Planned planned) {
            keep(job, revision, planned);
        }
        WorkFolders.delete(out);
        return result;
    }

    private static void tell(DeskJob job, DeskEvent.Kind kind, long revision, State state) {
        job.events()
                .tell(new DeskEvent(kind, job.id(), revision, state.text(), state.doneFraction()));
    }

    /** Keeps a plan that was made from a revision. */
    public static void keep(DeskJob job, long revision, PlanDay.Planned planned)
            throws IOException {
        Map<String, Content> files = new TreeMap<>();
        for (Path file : planned.files()) {
            files.put(String.valueOf(file.getFileName()), Content.of(Files.readAllBytes(file)));
        }
        KeptPlan plan =
                new KeptPlan(
                        planned.output().plan().id(),
                        revision,
                        planned.output().plan().plannedAt());
        job.keepPlan(plan, files);
    }

    /** Why there is no plan, in words; empty when there is one. */
    private static Optional<String> refusal(PlanDay.Result result) {
        return result.fold(
                refused ->
                        Optional.of(
                                (refused.faults().size() == 1
                                                ? "The files have a fault: "
                                                : "The files have "
                                                        + refused.faults().size()
                                                        + " faults, the first: ")
                                        + refused.faults().get(0)),
                none ->
                        Optional.of(
                                none.isStopped()
                                        ? "Stopped before there was a day."
                                        : "No plan is possible. " + first(none.findings())),
                wrong ->
                        Optional.of(
                                "The re-check refused the plan. "
                                        + first(wrong.report().violations())),
                planned -> Optional.empty());
    }

    private static String first(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.severity().name().equals("STOP"))
                .findFirst()
                .or(() -> findings.stream().findFirst())
                .map(finding -> finding.subject() + ": " + finding.message())
                .orElse("");
    }

    @Override
    public void close() {
        synchronized (this) {
            runs.values().forEach(run -> run.stopped.set(true));
        }
        thread.shutdownNow();
    }
}
