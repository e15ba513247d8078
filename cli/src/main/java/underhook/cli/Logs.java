package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.FileHandler;
import java.util.logging.Formatter;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/** Logs in the data folder, a few files of bounded size, the oldest thrown away. */
final class Logs {
    static final String FOLDER = "logs";

    private static final int MOST_BYTES = 1 << 20;
    private static final int FILES = 5;

    private Logs() {}

    /** From now on everything that is logged is also written there. */
    static void keepIn(Path dataFolder) throws IOException {
        Path folder = Files.createDirectories(dataFolder.resolve(FOLDER));
        // The pattern's own signs must not be found in the folder's name.
        String pattern = folder.toString().replace("%", "%%") + "/underhook-%g.log";
        FileHandler handler = new FileHandler(pattern, MOST_BYTES, FILES, true);
        handler.setEncoding("UTF-8");
        handler.setLevel(Level.INFO);
        handler.setFormatter(new Lines());
        Logger.getLogger("").addHandler(handler);
    }

    /** Time in UTC and level first, then the message, then what was thrown. */
    private static final class Lines extends Formatter {
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
            if (record.getThrown() != null) {
                record.getThrown().printStackTrace(lines);
            }
            return text.toString();
        }
    }
}
