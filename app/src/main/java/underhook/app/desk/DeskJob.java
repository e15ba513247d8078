package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import underhook.app.PlanDay;
import underhook.app.port.Content;
import underhook.app.port.JobPath;
import underhook.app.port.JobReading;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptJob.Revision;
import underhook.app.port.OutputWriter;
import underhook.app.port.ReadJob;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Sheets;
import underhook.core.finding.Finding;
import underhook.core.finding.Outcome;
import underhook.core.job.InputFile;
import underhook.core.plan.Plan;

/** One job on the desk. Safe for threads. */
public final class DeskJob implements AutoCloseable {
    private static final int READINGS_KEPT = 2;

    private final KeptJob kept;
    private final DeskTools tools;
    private final DeskEvents events;
    private final WorkFolders folders;
    private final Map<Long, JobReading> readings = new LinkedHashMap<>();
    private @Nullable KnownPlan known;

    /** A plan with its files' home. */
    public record KnownPlan(KeptPlan kept, Plan plan) {}

    /** A file of the head. */
    public record FileInfo(String path, String hash, String role, long bytes) {}

    DeskJob(KeptJob kept, Path work, DeskTools tools, DeskEvents events) {
        this.kept = kept;
        this.tools = tools;
        this.events = events;
        this.folders = new WorkFolders(kept, work);
    }

    public String id() {
        return kept.id();
    }

    public String name() throws IOException {
        return kept.name();
    }

    /** Everything that was ever changed. */
    public KeptJob kept() {
        return kept;
    }

    public Revision head() throws IOException {
        return kept.findHead().orElseThrow(() -> new IOException("The job is empty."));
    }

    /** A folder with the files of a revision. */
    public synchronized Path folder(long revision) throws IOException {
        return folders.folder(revision);
    }

    /** The files of the head with what job.yaml names them as. */
    public List<FileInfo> listFiles() throws IOException {
        long head = head().id();
        Map<String, String> roles = new LinkedHashMap<>();
        for (InputFile input : tools.inputs().list(folder(head))) {
            roles.merge(input.path(), input.role(), (one, other) -> one);
        }
        List<FileInfo> files = new ArrayList<>();
        Path folder = folder(head);
        for (Map.Entry<String, String> file : kept.listFiles(head).entrySet()) {
            String path = file.getKey();
            long bytes = Files.size(folder.resolve(path));
            String role = roles.getOrDefault(path, "");
            files.add(new FileInfo(path, file.getValue(), role, bytes));
        }
        return files;
    }

    /** A file of the head. */
    public Optional<Content> findFile(String path) throws IOException {
        String hash = kept.listFiles(head().id()).get(path);
        return hash == null ? Optional.empty() : Optional.of(kept.getContent(hash));
    }

    /** The reference system that counts for a file of the head. */
    public Optional<ReferenceSystem> findSystem(String path) throws IOException {
        return tools.inputs().findSystem(folder(head().id()), path);
    }

    /** A table of the head as it was typed; empty when there is none of that path. */
    public Optional<Sheets.Sheet> findSheet(String path) throws IOException {
        long head = head().id();
        String hash = kept.listFiles(head).get(path);
        return hash == null
                ? Optional.empty()
                : tools.sheets().read(folder(head).resolve(JobPath.check(path)));
    }

    /** The head as read: the job, or its faults. */
    public JobReading read() throws IOException {
        return read(head().id());
    }

    /** A revision as read. */
    public synchronized JobReading read(long revision) throws IOException {
        JobReading reading = readings.get(revision);
        if (reading == null) {
            reading = tools.reader().read(folders.folder(revision));
            readings.put(revision, reading);
            if (readings.size() > READINGS_KEPT) {
                readings.remove(readings.keySet().iterator().next());
            }
        }
        return reading;
    }

    /** The newest revision that can be read, from the head backwards. */
    public Optional<ReadJob> findReadable() throws IOException {
        Map<Long, Revision> all = new LinkedHashMap<>();
        kept.listRevisions().forEach(one -> all.put(one.id(), one));
        Revision next = head();
        while (next != null) {
            Optional<ReadJob> job = read(next.id()).job();
            if (job.isPresent()) {
                return job;
            }
            next = all.get(next.parent());
        }
        return Optional.empty();
    }

    /** The newest plan made from the files as they are now, else the newest of all; not read. */
    public Optional<KeptPlan> findKeptPlan() throws IOException {
        Optional<KeptPlan> newest = Optional.empty();
        Optional<KeptPlan> chosen = Optional.empty();
        for (KeptPlan plan : kept.listPlans()) {
            newest = Optional.of(plan);
            if (!isStale(plan)) {
                chosen = newest;
            }
        }
        return chosen.isPresent() ? chosen : newest;
    }

    /** The same, read. */
    public synchronized Optional<KnownPlan> findPlan() throws IOException {
        Optional<KeptPlan> chosen = findKeptPlan();
        if (chosen.isEmpty()) {
            return Optional.empty();
        }
        if (known == null || !known.kept().equals(chosen.get())) {
            known = readPlan(chosen.get());
        }
        return Optional.of(known);
    }

    void keepPlan(KeptPlan plan, Map<String, Content> files) throws IOException {
        kept.keepPlan(plan, files);
    }

    /** Plans and re-checks days. */
    public PlanDay planDay() {
        return tools.planDay();
    }

    /** Keeps an order of the day that was accepted while it was flown, with all its papers. */
    public void keepOrder(OutputWriter.Output output) throws IOException {
        Path out = Files.createTempDirectory("underhook-order");
        try {
            PlanRuns.keep(this, head().id(), tools.planDay().publish(output, out));
        } finally {
            WorkFolders.delete(out);
        }
        events.tell(
                new DeskEvent(
                        DeskEvent.Kind.PLANNED, id(), head().id(), "A new order was accepted.", 1));
    }

    KnownPlan readPlan(KeptPlan plan) throws IOException {
        Content json =
                kept.findPlanFile(plan.id(), "plan.json")
                        .orElseThrow(() -> new IOException("The plan's file is missing."));
        Path file = Files.createTempFile("underhook", ".json");
        try {
            Files.write(file, json.toBytes());
            Outcome<Plan> read = tools.plans().read(file);
            if (!read.isDone()) {
                throw new IOException(
                        read.findings().stream()
                                .map(Finding::message)
                                .collect(Collectors.joining(" ", "The plan cannot be read: ", "")));
            }
            return new KnownPlan(plan, read.getValue());
        } finally {
            Files.delete(file);
        }
    }

    /** Whether the files have changed since a plan was made. */
    public boolean isStale(KeptPlan plan) throws IOException {
        long head = head().id();
        return plan.revision() != head
                && !kept.listFiles(plan.revision()).equals(kept.listFiles(head));
    }

    /**
     * Writes files in the place of others, as one revision.
     *
     * @param on the head that was seen
     * @throws KeptJob.MovedException when there is another head by now
     */
    public Revision change(long on, String what, Map<String, Content> written, Set<String> removed)
            throws IOException {
        written.keySet().forEach(JobPath::check);
        Revision made =
                kept.add(new KeptJob.Change(on, tools.clock().instant(), what, written, removed));
        tellChanged(made);
        return made;
    }

    public Revision undo(long on) throws IOException {
        Revision made = kept.undo(on);
        tellChanged(made);
        return made;
    }

    public Revision redo(long on) throws IOException {
        Revision made = kept.redo(on);
        tellChanged(made);
        return made;
    }

    private void tellChanged(Revision head) {
        events.tell(new DeskEvent(DeskEvent.Kind.CHANGED, id(), head.id(), head.what(), 1));
    }

    /** Tells whoever listens that the log of taps has grown. */
    public void tellTapped(long number, String what) {
        events.tell(new DeskEvent(DeskEvent.Kind.TAPPED, id(), number, what, 1));
    }

    /** The time by the server's clock. */
    public Instant now() {
        return tools.clock().instant();
    }

    public DeskTools tools() {
        return tools;
    }

    DeskEvents events() {
        return events;
    }

    @Override
    public synchronized void close() throws IOException {
        kept.close();
        folders.clear();
    }
}
