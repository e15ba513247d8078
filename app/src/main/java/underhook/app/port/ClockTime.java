package underhook.app.port;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Optional;

/** A time by the clock of a zone; where the clock is changed, a time is skipped or comes twice. */
public record ClockTime(LocalDateTime time, ZoneId zone) {
    /** When it is; empty unless the clock shows it exactly once. */
    public Optional<Instant> find() {
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(time);
        return offsets.size() == 1 ? Optional.of(time.toInstant(offsets.get(0))) : Optional.empty();
    }

    /** What is wrong with a time that the clock does not show exactly once. */
    public String wrong() {
        ZoneOffsetTransition change = change();
        return (change.isGap() ? "is skipped by the clock in " : "comes twice by the clock in ")
                + zone
                + ", which goes from "
                + change.getDateTimeBefore().toLocalTime()
                + " to "
                + change.getDateTimeAfter().toLocalTime();
    }

    /** What can stand in its place. */
    public String allowed() {
        ZoneOffsetTransition change = change();
        return change.isGap()
                ? "a time before "
                        + change.getDateTimeBefore().toLocalTime()
                        + " or not before "
                        + change.getDateTimeAfter().toLocalTime()
                : time.atOffset(change.getOffsetBefore())
                        + " or "
                        + time.atOffset(change.getOffsetAfter());
    }

    private ZoneOffsetTransition change() {
        return Optional.ofNullable(zone.getRules().getTransition(time))
                .orElseThrow(() -> new IllegalStateException(time + " comes once in " + zone));
    }
}
