package underhook.core.ahead;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import underhook.core.geo.GeoPoint;
import underhook.core.unit.Units;

/**
 * A notice to those who fly, as far as it can be read.
 *
 * @param number series, number and year; empty where the text has no notice's head
 * @param kind what it does
 * @param refersTo the notice that it replaces or cancels; empty when none
 * @param subject the five letters that say what it is about, as {@code QOBCE}; empty when not read
 * @param levels lowest and highest flight level of item Q as written, {@code 000/999}
 * @param circle where it holds; empty when not read
 * @param validity when it is in force; empty when not read
 * @param schedule item D: at which times within its validity
 * @param named positions that its text names, each with how far its writing leaves it open
 * @param unread what of it cannot be read
 * @param raw every letter of it as it came
 */
public record Notice(
        String number,
        Kind kind,
        String refersTo,
        String subject,
        String levels,
        Optional<Circle> circle,
        Optional<Validity> validity,
        String schedule,
        List<Circle> named,
        List<Unread> unread,
        String raw) {
    /** What a notice does to an earlier one. */
    public enum Kind {
        NEW,
        REPLACES,
        CANCELS,
        /** Text that has no notice's head. */
        NONE
    }

    /**
     * Where it holds.
     *
     * @param radiusM as written, m, not negative
     */
    public record Circle(GeoPoint centre, double radiusM) {
        /** What a place to the whole minute may be off: half of it north and half of it east. @source DERIVED */
        static final double HALF_MINUTE_M = Math.hypot(Units.nmiToM(0.5), Units.nmiToM(0.5));

        /** The same to the whole second. */
        static final double HALF_SECOND_M = HALF_MINUTE_M / 60;
    }

    /**
     * When it is in force.
     *
     * @param until empty when it is permanent
     * @param isEstimated the end is a guess: it lasts until another notice says otherwise
     */
    public record Validity(Instant from, Optional<Instant> until, boolean isEstimated) {
        /** Whether it may be in force at some time from begin to end; an estimated end is none. */
        public boolean mayTouch(Instant begin, Instant end) {
            boolean isOver = !isEstimated && until.filter(last -> last.isBefore(begin)).isPresent();
            return !isOver && !from.isAfter(end);
        }
    }

    /**
     * Something that cannot be read.
     *
     * @param line of the file, from 1
     * @param item letter of the item
     * @param value what stands there
     * @param allowed what could be read there
     */
    public record Unread(int line, String item, String value, String allowed) {}

    /** Its number; of text without one the line where it begins. */
    public String nameOrLine() {
        return number.isEmpty() ? "line " + unread.get(0).line() : number;
    }

    public Notice {
        named = List.copyOf(named);
        unread = List.copyOf(unread);
    }
}
