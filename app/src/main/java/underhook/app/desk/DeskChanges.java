package underhook.app.desk;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import underhook.app.port.Content;
import underhook.app.port.JobPath;
import underhook.app.port.KeptJob.Revision;
import underhook.app.port.Sheets.Sheet;

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
