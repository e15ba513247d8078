package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.logging.ConsoleHandler;
import java.util.logging.FileHandler;
import java.util.logging.Formatter;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/** Logs in the data folder, a few files of bounded size, the oldest thrown away. */
final class Logs {
    static final String FOLDER = "logs";

    /** Logger of commands that failed: whoever typed them is told in a line of its own. */
    static final String OF_COMMANDS = "underhook.command";

    private static final int MOST_BYTES = 1 << 20;
    private static final int FILES = 5;

    private Logs() {}

    /**
     * From now on everything that is logged is also written there, and where a failure arose only there: the
     * console is for people.
     */
    static void keepIn(Path dataFolder) throws IOException {
        Logger root = Logger.getLogger("");
        if (Arrays.stream(root.getHandlers()).anyMatch(FileHandler.class::isInstance)) {
            return;
        }
        Path folder = Files.createDirectories(dataFolder.resolve(FOLDER));
        // The pattern's own signs must not be found in the folder's name.
        String pattern = folder.toString().replace("%", "%%") + "/underhook-%g.log";
        FileHandler handler = new FileHandler(pattern, MOST_BYTES, FILES, true);
        handler.setEncoding("UTF-8");
        handler.setLevel(Level.INFO);
        handler.setFormatter(new Lines(true));
        for (Handler console : root.getHandlers()) {
            if (console instanceof ConsoleHandler) {
                console.setFormatter(new Lines(false));
                console.setFilter(Logs::isForConsole);
            }
        }
        root.addHandler(handler);
    }

    static boolean isForConsole(LogRecord record) {
        return !OF_COMMANDS.equals(record.getLoggerName());
    }

    /** Time in UTC and level first, then the message, then what was thrown. */
    static final class Lines extends Formatter {
        private final boolean whereItArose;

        Lines(boolean whereItArose) {
            this.whereItArose = whereItArose;
        }

        @Override
        public String format(LogRecord record) {
            StringWriter text = new StringWriter();
            PrintWriter lines = new PrintWriter(text);
            lines.println(
                    record.getInstant()
                            + " "
                            + record.getLevel().getName()
                            + " "
                            + formatMessage(record));
            if (whereItArose && record.getThrown() != null) {
                record.getThrown().printStackTrace(lines);
            }
            return text.toString();
        }
    }
}
