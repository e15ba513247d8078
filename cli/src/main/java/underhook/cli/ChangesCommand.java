package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;
import underhook.app.MapChanges;
import underhook.app.MapChanges.Change;
import underhook.app.port.Written;

/** Compares a job's map with a newer edition of it. */
@Command(
        name = "changes",
        mixinStandardHelpOptions = true,
        description = {
            "Lists what appeared, moved, changed or vanished on a newer edition of one of a job's map"
                    + " or wire files, within 5 km of its places; nearest to a place or a straight"
                    + " way first. Exit code 0 whether or not something changed, 2 when the input is"
                    + " refused."
        })
final class ChangesCommand implements Callable<Integer> {
    /** Compares a job folder and a newer file, in place of the job's file that is named or empty. */
    interface Comparing {
        MapChanges.Result compare(Path folder, Path newer, String replaces);
    }

    private final Comparing comparing;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Option(
            names = "--map",
            required = true,
            paramLabel = "FILE",
            description = "newer edition of a map or wire file")
    private Path newer;

    @Option(
            names = "--for",
            paramLabel = "NAME",
            defaultValue = "",
            description =
                    "the job's file that it stands for, as job.yaml names it; else the one of the"
                            + " same name, or the only one of its format")
    private String replaces;

    @Option(names = "--json", description = "as one JSON object")
    private boolean json;

    ChangesCommand(Comparing comparing) {
        this.comparing = comparing;
    }

    @Override
    public Integer call() {
        MapChanges.Result result = comparing.compare(folder, newer, replaces);
        PrintWriter out = spec.commandLine().getOut();
        if (!result.faults().isEmpty()) {
            result.faults().forEach(out::println);
            return Exit.INPUT_REFUSED;
        }
        if (json) {
            out.println(JsonMapper.shared().writeValueAsString(object(result)));
            return Exit.DONE;
        }
        result.changes().forEach(change -> out.println(line(change)));
        out.println(
                (result.changes().isEmpty()
                                ? "Nothing changed"
                                : Words.counted(result.changes().size(), "change"))
                        + " against "
                        + result.replaced()
                        + "; "
                        + Words.counted(result.compared(), "thing")
                        + " compared.");
        return Exit.DONE;
    }

    private static String line(Change change) {
        return word(change.what())
                + " "
                + change.kind()
                + " "
                + change.id()
                + ", "
                + distanceM(change)
                + " m from "
                + change.place()
                + (change.detail().isEmpty() ? "" : ": " + change.detail());
    }

    private static String word(MapChanges.What what) {
        return what.name().toLowerCase(Locale.ROOT);
    }

    private static long distanceM(Change change) {
        return (long) Math.floor(change.distanceM());
    }

    private static Map<String, Object> object(MapChanges.Result result) {
        List<Map<String, Object>> changes = new ArrayList<>();
        for (Change change : result.changes()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("what", word(change.what()));
            one.put("kind", change.kind());
            one.put("id", change.id());
            one.put("detail", change.detail());
            one.put("latDeg", Written.nearest(change.at().latDeg(), 7));
            one.put("lonDeg", Written.nearest(change.at().lonDeg(), 7));
            one.put("nearestPlace", change.place());
            one.put("distanceM", distanceM(change));
            changes.add(one);
        }
        Map<String, Object> object = new LinkedHashMap<>();
        object.put("replaced", result.replaced());
        object.put("compared", result.compared());
        object.put("changes", changes);
        return object;
    }
}
