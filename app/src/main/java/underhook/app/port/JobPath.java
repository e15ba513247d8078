package underhook.app.port;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Paths of files inside a job: what every system can write, and nothing that leads out of the folder or
 * means a device somewhere.
 */
public final class JobPath {
    private static final int MOST_LENGTH = 120;

    /** Letters of any script, digits, and a few signs; neither a dot nor a blank at either end. */
    private static final Pattern PART =
            Pattern.compile(
                    "[\\p{L}\\p{N}_](?:[\\p{L}\\p{M}\\p{N}_ .,()+-]*[\\p{L}\\p{M}\\p{N}_)+-])?");

    private static final Pattern DEVICE =
            Pattern.compile("(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\\..*)?");

    private JobPath() {}

    /** Whether a path may name a file of a job; parts are divided by "/". */
    public static boolean isGood(String path) {
        if (path.isEmpty() || path.length() > MOST_LENGTH) {
            return false;
        }
        for (String part : path.split("/", -1)) {
            if (!PART.matcher(part).matches()
                    || DEVICE.matcher(part.toLowerCase(Locale.ROOT)).matches()) {
                return false;
            }
        }
        return true;
    }

    /**
     * The path itself.
     *
     * @throws IllegalArgumentException when it may not name a file of a job
     */
    public static String check(String path) {
        if (!isGood(path)) {
            throw new IllegalArgumentException(
                    "A file of a job cannot be called \""
                            + path
                            + "\". Letters, digits, blanks, and the signs _ . , ( ) + - can be used.");
        }
        return path;
    }
}
