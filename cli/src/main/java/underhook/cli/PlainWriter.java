package underhook.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;

/**
 * Writes text for a terminal: a character of a name or a file that would steer it, or turn the words round, is shown by
 * its number.
 */
final class PlainWriter extends FilterWriter {
    private static final char RETURN = '\r';

    /** Whether a line may be begun anew, as progress does. */
    private final boolean returns;

    /** Whether a return was heard of which the next character says whether it ends a line. */
    private boolean returned;

    PlainWriter(Writer out, boolean returns) {
        super(out);
        this.returns = returns;
    }

    @Override
    public void write(int c) throws IOException {
        if (returned) {
            returned = false;
            if (c == '\n') {
                out.write(RETURN);
            } else {
                show(RETURN);
            }
        }
        if (c == RETURN && !returns) {
            returned = true;
        } else if (steers((char) c)) {
            show(c);
        } else {
            out.write(c);
        }
    }

    @Override
    public void write(char[] text, int from, int count) throws IOException {
        for (int i = from; i < from + count; i++) {
            write(text[i]);
        }
    }

    @Override
    public void write(String text, int from, int count) throws IOException {
        for (int i = from; i < from + count; i++) {
            write(text.charAt(i));
        }
    }

    private static boolean steers(char c) {
        boolean isLine = c == '\n' || c == '\t' || c == RETURN;
        boolean isTurn = (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
        return (Character.isISOControl(c) && !isLine) || isTurn;
    }

    private void show(int c) throws IOException {
        out.write(String.format(Locale.ROOT, "\\u%04x", c));
    }
}
