package underhook.app.desk;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import underhook.app.port.Content;
import underhook.app.port.JobPath;
import underhook.app.port.KeptJob.Revision;
import underhook.app.port.Sheets.Sheet;
import underhook.core.finding.FindingCode;
import underhook.core.job.Waiver;

/** Changes that people make to the files of a job, each one revision. */
public final class DeskChanges {
    private final DeskJob job;
    private final long on;

    /**
     * @param on the head that was seen
     */
    public DeskChanges(DeskJob job, long on) {
        this.job = job;
        this.on = on;
    }

    /**
     * Changes a table. A workbook becomes a CSV file beside which no workbook is left, for its other
     * sheets, formulas and colours cannot be kept.
     *
     * @return the path of the table from now on
     */
    public String editTable(String path, TableEdit edit, String what) throws IOException {
        Sheet sheet =
                job.findSheet(path)
                        .orElseThrow(() -> new IllegalArgumentException(path + " is no table."));
        Content changed = job.tools().sheets().write(edit.on(sheet));
        if (!path.toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            job.change(on, what, Map.of(path, changed), Set.of());
            return path;
        }
        String csv = freePath(path.substring(0, path.length() - ".xlsx".length()), ".csv");
        Map<String, Content> written = new TreeMap<>(Map.of(csv, changed));
        job.findFile(JobYaml.NAME)
                .ifPresent(
                        yaml ->
                                written.put(
                                        JobYaml.NAME,
                                        Content.of(JobYaml.renamed(yaml.toText(), path, csv))));
        job.change(on, what + "; " + path + " became " + csv, written, Set.of(path));
        return csv;
    }

    private String freePath(String stem, String ending) throws IOException {
        List<String> taken = job.listFiles().stream().map(DeskJob.FileInfo::path).toList();
        String free = stem + ending;
        for (int i = 2; taken.contains(free); i++) {
            free = stem + "-" + i + ending;
        }
        return free;
    }

    /** Writes a text file. */
    public Revision writeText(String path, String text, String what) throws IOException {
        return job.change(on, what, Map.of(path, Content.of(text)), Set.of());
    }

    /** Writes a text file that the job did not have, and names it in job.yaml. */
    public Revision begin(String path, String text, String role, String what) throws IOException {
        if (job.findFile(path).isPresent()) {
            throw new IllegalArgumentException("There is a file " + path + " already.");
        }
        String yaml = job.findFile(JobYaml.NAME).map(Content::toText).orElse("version: 1\n");
        String named = JobYaml.with(yaml, role, path, Map.of());
        Map<String, Content> written =
                Map.of(path, Content.of(text), JobYaml.NAME, Content.of(named));
        return job.change(on, what, written, Set.of());
    }

    /** Takes a file in; one of that name is replaced. */
    public Revision takeFile(String path, Content content) throws IOException {
        JobPath.check(path);
        boolean isNew = job.findFile(path).isEmpty();
        String what = path + (isNew ? " added" : " replaced");
        return job.change(on, what, Map.of(path, content), Set.of());
    }

    /** Takes a file away. */
    public Revision remove(String path) throws IOException {
        if (job.findFile(path).isEmpty()) {
            throw new IllegalArgumentException("The job has no file " + path + ".");
        }
        return job.change(on, path + " removed", Map.of(), Set.of(path));
    }

    /** Writes down that somebody answers for a finding. */
    public Revision override(Answered answered) throws IOException {
        String yaml = job.findFile(JobYaml.NAME).map(Content::toText).orElse("version: 1\n");
        Optional<String> named =
                job.listFiles().stream()
                        .filter(file -> file.role().equals("overrides"))
                        .map(DeskJob.FileInfo::path)
                        .findFirst();
        String path = named.orElse("overrides.yaml");
        String before = job.findFile(path).map(Content::toText).orElse("version: 1\noverrides:\n");
        String day = LocalDate.ofInstant(job.tools().clock().instant(), ZoneOffset.UTC).toString();
        String entry =
                "  - code: "
                        + answered.code()
                        + "\n    subject: "
                        + JobYaml.quoted(answered.subject())
                        + "\n    reason: "
                        + JobYaml.quoted(answered.reason())
                        + "\n    by: "
                        + JobYaml.quoted(answered.by())
                        + "\n    \"on\": "
                        + day
                        + "\n";
        Map<String, Content> written = new TreeMap<>();
        written.put(path, Content.of(before.stripTrailing() + "\n" + entry));
        if (named.isEmpty()) {
            String linked = JobYaml.with(yaml, "overrides", path, Map.of());
            written.put(JobYaml.NAME, Content.of(linked));
        }
        String what = answered.code() + " of " + answered.subject() + " overridden";
        return job.change(on, what, written, Set.of());
    }

    /**
     * Somebody answers for a finding.
     *
     * @param by role of who does
     */
    public record Answered(FindingCode code, String subject, String reason, String by) {
        public Answered {
            if (Waiver.isFixed(code)) {
                throw new IllegalArgumentException(
                        code
                                + " is a limit of machine, hook, line or terrain; no reason lifts it.");
            }
        }
    }

    /** Says in job.yaml what a file is. */
    public Revision setRole(String path, String role, Map<String, String> details)
            throws IOException {
        if (job.findFile(path).isEmpty()) {
            throw new IllegalArgumentException("The job has no file " + path + ".");
        }
        String yaml = job.findFile(JobYaml.NAME).map(Content::toText).orElse("version: 1\n");
        String changed = JobYaml.with(yaml, role, path, details);
        return writeText(JobYaml.NAME, changed, path + " is the job's " + role);
    }
}
