package underhook.core.finding;

import java.util.Objects;

/**
 * One thing that a person must know about a load, a place, a leg or a field.
 *
 * @param code stable word, explained in docs/findings.md
 * @param severity NOTE, CAUTION or STOP
 * @param subject id of the load, place or leg ("A-S03"), or the key of a calculation
 * @param value value found, as text with the digits that count; empty when there is none
 * @param limit what is allowed, as text; empty when there is none
 * @param unit unit of value and limit; empty when there is none
 * @param source key of the limit's source in docs/references.md, or the file that states it
 * @param message what is wrong with its value; a second sentence that starts with "Perhaps" when the
 *     cause can be guessed
 */
public record Finding(
        FindingCode code,
        Severity severity,
        String subject,
        String value,
        String limit,
        String unit,
        String source,
        String message) {
    public Finding {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(severity, "severity");
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(message, "message");
    }

    /** A finding without numbers. */
    public static Finding of(
            FindingCode code, Severity severity, String subject, String source, String message) {
        return new Finding(code, severity, subject, "", "", "", source, message);
    }

    /** The same with another severity. */
    public Finding withSeverity(Severity other) {
        return new Finding(code, other, subject, value, limit, unit, source, message);
    }
}
