package underhook.cli;

import java.io.PrintWriter;
import java.util.Locale;
import underhook.app.Progress;

/** Shows progress on the standard error: as a bar on a terminal, as lines elsewhere. */
final class ProgressLines implements Progress {
    private static final int WIDTH = 30;

    private final PrintWriter err;
    private final boolean bar;
    private String last = "";

    ProgressLines(PrintWriter err, boolean bar) {
        this.err = err;
        this.bar = bar;
    }

    /** The launcher says whether the standard error is a terminal; Java cannot tell. */
    static ProgressLines on(PrintWriter err) {
        return new ProgressLines(err, "bar".equals(System.getProperty("underhook.progress")));
    }

    @Override
    public synchronized void at(String doing, double doneFraction) {
        if (bar) {
            int filled = (int) Math.round(WIDTH * Math.max(0, Math.min(1, doneFraction)));
            String full = "#".repeat(filled) + ".".repeat(WIDTH - filled);
            String line = String.format(Locale.ROOT, "\r[%s] %-40s", full, doing);
            err.print(doneFraction >= 1 ? line + System.lineSeparator() : line);
        } else if (!doing.equals(last)) {
            err.println(doing);
        }
        last = doing;
        err.flush();
    }
}
