package underhook.app.desk;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import underhook.app.desk.DeskJob.FileInfo;
import underhook.app.port.Content;
import underhook.app.port.Sheets.Row;
import underhook.app.port.Sheets.Sheet;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;

/**
 * What would be if: put as a change of the job's files, so that the answer is a plan like any other.
 *
 * @param lift number of the lift that it is asked about
 * @param value the other line, machine, laydown, hour or most fuel; for a move the number of the lift
 *     after which it comes, 0 for the first place
 */
public record Question(What what, int lift, String value) {
    private static final String RATE = "flying-per-min";
    private static final String COUNTED = "flying-counts-percent";
    private static final String ANOTHER_DAY = "another_day";

    /** What is changed. */
    public enum What {
        MOVE,
        /** All day with this line alone. */
        LINE,
        /** With the machine of another file. */
        MACHINE,
        LAYDOWN,
        /** The day begins then. */
        HOUR,
        /** Never more fuel aboard than this, kg. */
        FUEL,
        /** A flying minute counted at so many percent of its rate, so that another day is the cheapest. */
        RATE,
        /** Loads left for another day until so many of 100 replayed days are in time. */
        SURE
    }

    /** In words, as it stands among the revisions when it is accepted. */
    public String words() {
        return switch (what) {
            case MOVE -> "lift " + lift + " moved behind lift " + value;
            case LINE -> "all day with line " + value;
            case MACHINE -> "machine of " + value;
            case LAYDOWN -> "lift " + lift + " from " + value;
            case HOUR -> "day from " + value;
            case FUEL -> "at most " + value + " kg of fuel";
            case RATE -> "a flying minute counted at " + value + " % of its rate";
            case SURE -> "loads left for another day, " + value + " of 100 days in time";
        };
    }

    /**
     * The changed files.
     *
     * @throws IllegalArgumentException when the question cannot be put to this job
     */
    Map<String, Content> changes(DeskJob job, Plan plan) throws IOException {
        return switch (what) {
            case MOVE -> moved(job, plan);
            case LINE -> yaml(job, "machine", text -> JobYaml.withItem(text, "lines", value));
            case MACHINE -> otherMachine(job);
            case LAYDOWN -> loads(job, loadsOf(plan, lift), "from", old -> value);
            case HOUR ->
                    yaml(
                            job,
                            "rules",
                            text -> JobYaml.withValue(text, "duty-from", JobYaml.quoted(value)));
            case FUEL ->
                    yaml(
                            job,
                            "machine",
                            text -> JobYaml.withValue(text, "fuel-usable-kg", number(value)));
            case RATE ->
                    yaml(
                            job,
                            "rules",
                            text -> JobYaml.withBeside(text, RATE, COUNTED, percent(value)));
            case SURE -> throw new IllegalArgumentException("Its loads are looked for first.");
        };
    }

    /**
     * Share of the replayed days that are to be in time.
     *
     * @throws IllegalArgumentException when it is none between 1 and 99 of 100
     */
    double inTimeFraction() {
        if (!value.matches("[1-9][0-9]?")) {
            throw new IllegalArgumentException(
                    "\"" + value + "\" is no number of days between 1 and 99 of 100.");
        }
        return Integer.parseInt(value) / 100.0;
    }

    /** The load list with some loads left for another day. */
    static Map<String, Content> leaving(DeskJob job, Set<LoadId> left) throws IOException {
        List<String> ids = left.stream().map(LoadId::value).toList();
        return loads(job, ids, ANOTHER_DAY, old -> "yes");
    }

    private static int percent(String text) {
        if (!text.matches("[1-9][0-9]{0,4}")) {
            throw new IllegalArgumentException("\"" + text + "\" is no percentage of a rate.");
        }
        return Integer.parseInt(text);
    }

    /** A load of the lift that is moved, and one of the lift after which it comes; none for the first turn. */
    record Turn(LoadId moved, Optional<LoadId> behind) {}

    /**
     * The turn that a moved lift is to have.
     *
     * @throws IllegalArgumentException when it has it, or the plan has no such lift
     */
    Turn turn(Plan plan) {
        int after = Integer.parseInt(number(value));
        if (after == lift || after == lift - 1) {
            throw new IllegalArgumentException("Lift " + lift + " is there already.");
        }
        return new Turn(
                new LoadId(lastOf(loadsOf(plan, lift))),
                after == 0
                        ? Optional.empty()
                        : Optional.of(new LoadId(lastOf(loadsOf(plan, after)))));
    }

    private static String number(String text) {
        if (!text.matches("[0-9]{1,5}(?:\\.[0-9]{1,3})?")) {
            throw new IllegalArgumentException("\"" + text + "\" is no mass in kg.");
        }
        return text;
    }

    /** Later: it waits for the lift before. Earlier: the lift behind waits for it. */
    private Map<String, Content> moved(DeskJob job, Plan plan) throws IOException {
        int after = Integer.parseInt(number(value));
        if (after == lift || after == lift - 1) {
            throw new IllegalArgumentException("Lift " + lift + " is there already.");
        }
        if (after > lift) {
            String first = lastOf(loadsOf(plan, after));
            return loads(job, loadsOf(plan, lift), "after", old -> joined(old, first));
        }
        String first = lastOf(loadsOf(plan, lift));
        return loads(job, loadsOf(plan, after + 1), "after", old -> joined(old, first));
    }

    private static String lastOf(List<String> loads) {
        return loads.get(loads.size() - 1);
    }

    private static String joined(String old, String load) {
        return old.isBlank() ? load : old + ";" + load;
    }

    private static List<String> loadsOf(Plan plan, int number) {
        return Lifts.find(plan, number)
                .map(one -> one.rotation().loads().stream().map(LoadId::value).toList())
                .orElseThrow(
                        () -> new IllegalArgumentException("The plan has no lift " + number + "."));
    }

    private Map<String, Content> otherMachine(DeskJob job) throws IOException {
        if (job.findFile(value).isEmpty()) {
            throw new IllegalArgumentException("The job has no file " + value + ".");
        }
        String yaml =
                job.findFile(JobYaml.NAME)
                        .orElseThrow(() -> new IllegalArgumentException("There is no job.yaml."))
                        .toText();
        return Map.of(JobYaml.NAME, Content.of(JobYaml.with(yaml, "machine", value, Map.of())));
    }

    private static Map<String, Content> yaml(DeskJob job, String role, UnaryOperator<String> change)
            throws IOException {
        String path = pathOf(job, role);
        String text =
                job.findFile(path)
                        .orElseThrow(
                                () -> new IllegalArgumentException("There is no " + path + "."))
                        .toText();
        return Map.of(path, Content.of(change.apply(text)));
    }

    private static String pathOf(DeskJob job, String role) throws IOException {
        return job.listFiles().stream()
                .filter(file -> file.role().equals(role))
                .map(FileInfo::path)
                .findFirst()
                .orElseThrow(
                        () ->
                                new IllegalArgumentException(
                                        "The job names no file for " + role + "."));
    }

    private static Map<String, Content> loads(
            DeskJob job, List<String> ids, String column, UnaryOperator<String> change)
            throws IOException {
        String path = pathOf(job, "loads");
        Sheet sheet =
                job.findSheet(path)
                        .orElseThrow(() -> new IllegalArgumentException(path + " is no table."));
        if (column.equals(ANOTHER_DAY) && findColumn(sheet, column).isEmpty()) {
            sheet = sheet.withColumn(column);
        }
        int idColumn = column(sheet, "id");
        Optional<Integer> found = findColumn(sheet, column);
        if (path.endsWith(".xlsx") || found.isEmpty()) {
            throw new IllegalArgumentException(
                    path
                            + " needs to be CSV with a column \""
                            + column
                            + "\" for this question: "
                            + String.join(", ", ids)
                            + ".");
        }
        List<Row> rows = new ArrayList<>();
        for (Row row : sheet.rows()) {
            List<String> cells = new ArrayList<>(row.cells());
            if (ids.contains(cells.get(idColumn).strip())) {
                cells.set(found.get(), change.apply(cells.get(found.get())));
            }
            rows.add(new Row(row.line(), cells));
        }
        Map<String, Content> changed = new TreeMap<>();
        changed.put(path, job.tools().sheets().write(sheet.withRows(rows)));
        return changed;
    }

    private static int column(Sheet sheet, String name) {
        return findColumn(sheet, name)
                .orElseThrow(
                        () ->
                                new IllegalArgumentException(
                                        "The loads have no column " + name + "."));
    }

    private static Optional<Integer> findColumn(Sheet sheet, String name) {
        for (int i = 0; i < sheet.columns().size(); i++) {
            if (sheet.columns().get(i).strip().equalsIgnoreCase(name)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }
}
