package underhook.adapter.planfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;

/** Collects everything that is wrong with one file. */
final class Faults {
    private final String file;
    private final List<Finding> found = new ArrayList<>();

    Faults(String file) {
        this.file = file;
    }

    /**
     * Notes a fault.
     *
     * @param path where in the file: {@code steps[3].endAt}
     * @param value what stands there, with its line
     * @param allowed what may stand there
     */
    void add(String path, Located value, String allowed) {
        String text =
                value.text().length() > 60 ? value.text().substring(0, 60) + "…" : value.text();
        add(path, value.line(), new Problem(FindingCode.PLAN_UNREADABLE, text, allowed));
    }

    void add(String path, int line, Problem problem) {
        String message =
                String.format(
                        Locale.ROOT,
                        "%s:%d: %s: found \"%s\", allowed is %s.",
                        file,
                        line,
                        path,
                        problem.value(),
                        problem.allowed());
        found.add(
                new Finding(
                        problem.code(),
                        Severity.STOP,
                        path,
                        problem.value(),
                        problem.allowed(),
                        "",
                        file,
                        message));
    }

    List<Finding> list() {
        return List.copyOf(found);
    }

    /** What is wrong, without the place. */
    record Problem(FindingCode code, String value, String allowed) {}
}
