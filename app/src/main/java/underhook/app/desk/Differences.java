package underhook.app.desk;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.Sheets.Row;
import underhook.app.port.Sheets.Sheet;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.unit.Units;

/** Says in words what changed between two versions of a job: its files, and the plans made from them. */
public final class Differences {
    private static final int MOST_LINES = 200;

    private final DeskJob job;
    private final List<String> words = new ArrayList<>();

    private Differences(DeskJob job) {
        this.job = job;
    }

    /** One line for each difference of two revisions. */
    public static List<String> between(DeskJob job, long older, long newer) throws IOException {
        Differences differences = new Differences(job);
        differences.files(older, newer);
        differences.plans(older, newer);
        return differences.words.size() <= MOST_LINES
                ? List.copyOf(differences.words)
                : List.copyOf(differences.words.subList(0, MOST_LINES));
    }

    private void files(long older, long newer) throws IOException {
        Map<String, String> before = job.kept().listFiles(older);
        Map<String, String> after = job.kept().listFiles(newer);
        Set<String> paths = new TreeSet<>(before.keySet());
        paths.addAll(after.keySet());
        for (String path : paths) {
            if (!after.containsKey(path)) {
                words.add(path + " is gone.");
            } else if (!before.containsKey(path)) {
                words.add(path + " is new.");
            } else if (!String.valueOf(before.get(path)).equals(after.get(path))) {
                file(path, older, newer);
            }
        }
    }

    private void file(String path, long older, long newer) throws IOException {
        String lower = path.toLowerCase(java.util.Locale.ROOT);
        Optional<Sheet> before = Optional.empty();
        Optional<Sheet> after = Optional.empty();
        if (lower.endsWith(".csv") || lower.endsWith(".xlsx")) {
            before = job.tools().sheets().read(job.folder(older).resolve(path));
            after = job.tools().sheets().read(job.folder(newer).resolve(path));
        }
        if (before.isPresent() && after.isPresent()) {
            table(path, before.get(), after.get());
        } else {
            words.add(path + " has changed.");
        }
    }

    /** The first column names a row. */
    private void table(String path, Sheet before, Sheet after) {
        Map<String, Row> old = new LinkedHashMap<>();
        before.rows().forEach(row -> old.putIfAbsent(key(row), row));
        for (Row row : after.rows()) {
            Row was = old.remove(key(row));
            if (was == null) {
                words.add(path + ": " + key(row) + " is new.");
            } else {
                cells(path, before, was, after, row);
            }
        }
        old.keySet().forEach(key -> words.add(path + ": " + key + " is gone."));
    }

    private static String key(Row row) {
        return row.cells().isEmpty() ? "" : row.cells().get(0).strip();
    }

    private void cells(String path, Sheet before, Row was, Sheet after, Row is) {
        Map<String, String> old = new HashMap<>();
        for (int i = 0; i < before.columns().size(); i++) {
            old.put(before.columns().get(i), was.cells().get(i));
        }
        for (int i = 0; i < after.columns().size(); i++) {
            String name = after.columns().get(i);
            String from = old.getOrDefault(name, "");
            String to = is.cells().get(i);
            if (!from.equals(to)) {
                words.add(
                        path + ": " + key(is) + ", " + name + " \"" + from + "\" → \"" + to
                                + "\".");
            }
        }
    }

    private void plans(long older, long newer) throws IOException {
        Optional<Plan> before = plan(older);
        Optional<Plan> after = plan(newer);
        if (before.isEmpty() || after.isEmpty() || before.get().id().equals(after.get().id())) {
            return;
        }
        Plan old = before.get();
        Plan now = after.get();
        double minutes = Units.sToMinutes(now.summary().flightS() - old.summary().flightS());
        words.add("Flying: " + signed(minutes) + " min.");
        Duration later = Duration.between(old.summary().finishAt(), now.summary().finishAt());
        words.add("Finish: " + signed(Units.sToMinutes(later.toMillis() / 1000.0)) + " min.");
        Map<String, LeftOut> out = new LinkedHashMap<>();
        old.leftOut().forEach(one -> out.put(one.load().value(), one));
        for (LeftOut one : now.leftOut()) {
            if (out.remove(one.load().value()) == null) {
                words.add(one.load() + " is left out now: " + one.message());
            }
        }
        out.keySet().forEach(load -> words.add(load + " is flown now."));
        order(old, now);
    }

    private static String signed(double minutes) {
        long whole = Math.round(minutes);
        return whole > 0 ? "+" + whole : Long.toString(whole);
    }

    private void order(Plan old, Plan now) {
        Map<List<LoadId>, Integer> before = new HashMap<>();
        Lifts.of(old).forEach(lift -> before.put(lift.rotation().loads(), lift.number()));
        for (Lifts.Lift lift : Lifts.of(now)) {
            List<LoadId> loads = lift.rotation().loads();
            Integer was = before.get(loads);
            if (was != null && was != lift.number()) {
                words.add(
                        loads.stream().map(LoadId::value).collect(Collectors.joining(", "))
                                + (loads.size() == 1 ? " is lift " : " are lift ")
                                + lift.number()
                                + " now, was lift "
                                + was
                                + ".");
            }
        }
    }

    private Optional<Plan> plan(long revision) throws IOException {
        Optional<KeptPlan> newest = Optional.empty();
        for (KeptPlan plan : job.kept().listPlans()) {
            if (plan.revision() == revision) {
                newest = Optional.of(plan);
            }
        }
        return newest.isPresent()
                ? Optional.of(job.readPlan(newest.get()).plan())
                : Optional.empty();
    }
}
