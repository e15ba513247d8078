package underhook.cli;

import java.io.PrintWriter;
import java.util.Locale;
import underhook.app.Progress;

/** Shows progress on the standard error until it is closed: as a bar on a terminal, as lines elsewhere. */
final class ProgressLines implements Progress, AutoCloseable {
    private static final int WIDTH = 30;

    private final PrintWriter err;
    private final boolean bar;
    private String last = "";

    /** Whether the cursor stands behind a bar. */
    private boolean isOpen;

    private boolean isClosed;

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
        if (isClosed) {
            return;
        }
        if (bar) {
            int filled = (int) Math.round(WIDTH * Math.max(0, Math.min(1, doneFraction)));
            String full = "#".repeat(filled) + ".".repeat(WIDTH - filled);
            err.print(String.format(Locale.ROOT, "\r[%s] %-40s", full, doing));
            isOpen = true;
        } else if (!doing.equals(last)) {
            err.println(doing);
        }
        last = doing;
        err.flush();
    }

    /** Something else on a line of its own. */
    synchronized void say(String words) {
        endLine();
        err.println(words);
        err.flush();
    }

    /** Whatever ended the work: from now on nothing is shown, and what is printed next begins a line. */
    @Override
    public synchronized void close() {
        isClosed = true;
        endLine();
        err.flush();
    }

    private void endLine() {
        if (isOpen) {
            err.println();
            isOpen = false;
        }
    }
}
