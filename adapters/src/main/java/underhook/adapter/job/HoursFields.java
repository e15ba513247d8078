package underhook.adapter.job;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.job.Hours;

/** Hours of every day, in the fields {@code hours_from} and {@code hours_until}; empty is the whole day. */
final class HoursFields {
    private HoursFields() {}

    /** Empty with a fault where they cannot be read or end before they begin. */
    static Optional<Hours> read(Fields fields) {
        Optional<LocalTime> from = clock(fields, "hours_from", Hours.ALL_DAY.from());
        Optional<LocalTime> until = clock(fields, "hours_until", Hours.ALL_DAY.until());
        if (from.isEmpty() || until.isEmpty()) {
            return Optional.empty();
        }
        if (!from.get().isBefore(until.get())) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "hours_until",
                    "is not after hours_from",
                    new Found(
                            fields.text("hours_until", ""),
                            "a later time; over midnight an entry for each day's hours"));
            return Optional.empty();
        }
        return Optional.of(new Hours(from.get(), until.get()));
    }

    private static Optional<LocalTime> clock(Fields fields, String field, LocalTime otherwise) {
        Optional<String> text = fields.findText(field).filter(written -> !written.isBlank());
        try {
            return Optional.of(text.map(LocalTime::parse).orElse(otherwise));
        } catch (DateTimeException unreadable) {
            fields.fault(
                    FindingCode.FIELD_UNREADABLE,
                    field,
                    "cannot be read",
                    new Found(text.orElse(""), "a time as 08:00"));
            return Optional.empty();
        }
    }
}
