package underhook.app.port;

import java.util.Locale;
import underhook.core.finding.FindingCode;

/**
 * Text in a file that cannot be read as meant.
 *
 * @param file as job.yaml names it
 * @param line line or row of the file, from 1; 0 when the fault is about the whole file
 * @param field name of the field or column; empty when it is about the whole line
 * @param what what is wrong, in words, without value and remedy
 * @param value the text that was found; empty when there is none
 * @param allowed what is allowed, with the nearest known name where one is near
 */
public record Fault(
        FindingCode code,
        String file,
        int line,
        String field,
        String what,
        String value,
        String allowed) {
    /** {@code file:line: field: what, value, what is allowed}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(file);
        if (line > 0) {
            text.append(String.format(Locale.ROOT, ":%d", line));
        }
        text.append(": ");
        if (!field.isEmpty()) {
            text.append(field).append(": ");
        }
        text.append(what);
        if (!value.isEmpty()) {
            text.append(", found \"").append(value).append('"');
        }
        if (!allowed.isEmpty()) {
            text.append(", ").append(allowed);
        }
        return text.toString();
    }
}
