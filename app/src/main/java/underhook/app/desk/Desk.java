package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import underhook.app.PlanDay;
import underhook.app.port.Content;
import underhook.app.port.JobPath;
import underhook.app.port.JobStore;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptJob.Revision;

/** All jobs of one data folder. Safe for threads. */
public final class Desk implements AutoCloseable {
    /** A file larger than this is not taken, bytes. */
    public static final long MOST_FILE_BYTES = 256L << 20;

    private static final int MOST_FILES = 200;

    private final JobStore store;
    private final Path work;
    private final DeskTools tools;
    private final WhatIf whatIf;
    private final SideBySide sideBySide = new SideBySide();
    private final DeskEvents events = new DeskEvents();
    private final Map<String, DeskJob> open = new HashMap<>();

    /**
     * @param work folder for what can be thrown away
     */
    public Desk(JobStore store, Path work, DeskTools tools) {
        this.store = store;
        this.work = work;
        this.tools = tools;
        this.whatIf = new WhatIf(work);
    }

    /** Answers questions about the jobs. */
    public WhatIf whatIf() {
        return whatIf;
    }

    /** Sets the ways in which a job could be done side by side. */
    public SideBySide sideBySide() {
        return sideBySide;
    }

    public DeskEvents events() {
        return events;
    }

    /** Every job that has files. */
    public List<DeskJob> list() throws IOException {
        List<DeskJob> jobs = new ArrayList<>();
        for (String id : store.list()) {
            DeskJob job = get(id);
            if (job.kept().findHead().isPresent()) {
                jobs.add(job);
            }
        }
        return jobs;
    }

    public Optional<DeskJob> find(String id) throws IOException {
        return store.list().contains(id) ? Optional.of(get(id)) : Optional.empty();
    }

    private synchronized DeskJob get(String id) throws IOException {
        DeskJob job = open.get(id);
        if (job == null) {
            job = onDesk(store.open(id));
        }
        return job;
    }

    private DeskJob onDesk(KeptJob kept) throws IOException {
        DeskJob job = new DeskJob(kept, work.resolve(kept.id()), tools, events);
        open.put(kept.id(), job);
        return job;
    }

    /** Makes a job of files. */
    public synchronized DeskJob create(String name, Map<String, Content> files, String what)
            throws IOException {
        DeskJob job = onDesk(store.create(freeId(name), name));
        job.change(0, what, files, Set.of());
        return job;
    }

    /**
     * What is known of a job when it is begun; each may be empty, and is asked for later where it is needed.
     *
     * @param date day of flying; empty for tomorrow
     * @param zone of its times; empty for UTC
     * @param crs reference system of its places
     * @param variationDeg how far magnetic north lies east of true north there, degrees
     * @param machineStart place at which the machine starts
     */
    public record Beginning(
            String date, String zone, String crs, String variationDeg, String machineStart) {
        /** With its day alone. */
        public Beginning(String date, String zone) {
            this(date, zone, "", "", "");
        }
    }

    /** A new job without files. */
    public DeskJob createEmpty(String name, Beginning known) throws IOException {
        Map<String, String> stated = new LinkedHashMap<>();
        stated.put("name", name);
        stated.put("date", known.date().isEmpty() ? tomorrow() : known.date());
        stated.put("zone", known.zone().isEmpty() ? "UTC" : known.zone());
        stated.put("crs", known.crs());
        stated.put("magnetic-variation-deg", known.variationDeg());
        stated.put("machine-start", known.machineStart());
        String yaml = JobYaml.empty(stated);
        return create(name, Map.of(JobYaml.NAME, Content.of(yaml)), "begun");
    }

    /** The time by the program's clock, which may be set to a day that is rehearsed. */
    public Instant now() {
        return tools.clock().instant();
    }

    private String tomorrow() {
        return LocalDate.ofInstant(now(), ZoneOffset.UTC).plusDays(1).toString();
    }

    /** A new job made of the demo day. */
    public DeskJob createDemo(String name) throws IOException {
        Path folder = Files.createTempDirectory("underhook-demo");
        try {
            tools.demo().write(folder);
            return create(name, readFolder(folder), "the demo day");
        } finally {
            WorkFolders.delete(folder);
        }
    }

    /** Takes over a job from one file. */
    public synchronized DeskJob take(Path file) throws IOException {
        return onDesk(store.take(file, freeId("taken-over")));
    }

    /**
     * A job folder as a job: a new one, or, when one was made under this id before, a new revision of it
     * where the folder has changed.
     */
    public synchronized DeskJob importFolder(Path folder, String id) throws IOException {
        Map<String, Content> files = readFolder(folder);
        Optional<DeskJob> there = find(id);
        if (there.isEmpty()) {
            DeskJob made = onDesk(store.create(id, statedName(files, id)));
            made.change(0, "imported from a folder", files, Set.of());
            return made;
        }
        DeskJob job = there.get();
        if (job.kept().findHead().isEmpty()) {
            job.change(0, "imported from a folder", files, Set.of());
            return job;
        }
        Revision head = job.head();
        Set<String> gone = new TreeSet<>(job.kept().listFiles(head.id()).keySet());
        gone.removeAll(files.keySet());
        if (findRevision(job, files).isEmpty()) {
            job.change(head.id(), "imported again from its folder", files, gone);
        }
        return job;
    }

    /** An id for the job of a folder: the same for the same folder, another for any other. */
    public static String idOf(Path folder) throws IOException {
        Path real = folder.toRealPath();
        return id(String.valueOf(real.getFileName()))
                + "-"
                + Content.of(real.toString()).hash().substring(0, 4);
    }

    private static String statedName(Map<String, Content> files, String otherwise) {
        Content yaml = files.get(JobYaml.NAME);
        return yaml == null ? otherwise : JobYaml.name(yaml.toText()).orElse(otherwise);
    }

    /**
     * Keeps a plan that was made from a folder, with the newest revision that holds just its files; one
     * that has a plan already needs no other.
     */
    public void keepPlan(DeskJob job, Path folder, PlanDay.Planned planned) throws IOException {
        Optional<Long> revision = findRevision(job, readFolder(folder));
        boolean isKnown =
                job.kept().listPlans().stream()
                        .anyMatch(plan -> revision.filter(at -> at == plan.revision()).isPresent());
        if (revision.isPresent() && !isKnown) {
            PlanRuns.keep(job, revision.get(), planned);
        }
    }

    private static Optional<Long> findRevision(DeskJob job, Map<String, Content> files)
            throws IOException {
        Optional<Long> found = Optional.empty();
        Map<String, String> hashes = new TreeMap<>();
        files.forEach((path, content) -> hashes.put(path, content.hash()));
        for (Revision revision : job.kept().listRevisions()) {
            if (job.kept().listFiles(revision.id()).equals(hashes)) {
                found = Optional.of(revision.id());
            }
        }
        return found;
    }

    private static Map<String, Content> readFolder(Path folder) throws IOException {
        List<Path> all;
        try (Stream<Path> walk = Files.walk(folder, 4)) {
            all =
                    walk.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                            .sorted()
                            .toList();
        }
        Map<String, Content> files = new TreeMap<>();
        for (Path file : all) {
            String path = folder.relativize(file).toString().replace('\\', '/');
            if (JobPath.isGood(path) && Files.size(file) <= MOST_FILE_BYTES) {
                files.put(path, Content.of(Files.readAllBytes(file)));
            }
        }
        if (files.size() > MOST_FILES) {
            throw new IOException(folder + " holds more than " + MOST_FILES + " files.");
        }
        return files;
    }

    private String freeId(String name) throws IOException {
        Set<String> taken = new TreeSet<>(store.list());
        String id = id(name);
        String free = id;
        for (int i = 2; taken.contains(free); i++) {
            free = id + "-" + i;
        }
        return free;
    }

    /** A name as an id: small letters, digits, hyphens. */
    static String id(String name) {
        String plain =
                Normalizer.normalize(name, Normalizer.Form.NFD)
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^-+|-+$", "");
        String shortened = plain.length() > 40 ? plain.substring(0, 40) : plain;
        String trimmed = shortened.replaceAll("-+$", "");
        return trimmed.isEmpty() ? "job" : trimmed;
    }

    @Override
    public synchronized void close() throws IOException {
        for (DeskJob job : open.values()) {
            job.close();
        }
        open.clear();
    }
}
