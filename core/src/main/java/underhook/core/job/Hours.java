package underhook.core.job;

import java.time.LocalTime;

/** Hours of every day, local time; not over midnight. */
public record Hours(LocalTime from, LocalTime until) {
    public static final Hours ALL_DAY = new Hours(LocalTime.MIN, LocalTime.MAX);

    public Hours {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException(
                    "hours end (" + until + ") before they begin (" + from + ").");
        }
    }

    public boolean isAllDay() {
        return equals(ALL_DAY);
    }

    /** As part of a sentence: "from 12:00 to 13:30"; nothing where they are the whole day. */
    public String say() {
        boolean toTheEnd = until.equals(ALL_DAY.until);
        if (from.equals(ALL_DAY.from)) {
            return toTheEnd ? "" : "until " + until;
        }
        return "from " + from + (toTheEnd ? " on" : " to " + until);
    }

    /** As a label: "12:00–13:30"; nothing where they are the whole day. */
    public String label() {
        return isAllDay() ? "" : from + "–" + (until.equals(ALL_DAY.until) ? "24:00" : until);
    }

    /** Whether they have some time in common with others; the end is not counted. */
    public boolean touches(LocalTime begin, LocalTime end) {
        return from.isBefore(end) && begin.isBefore(until);
    }

    /** Whether others lie within them. */
    public boolean covers(LocalTime begin, LocalTime end) {
        return !from.isAfter(begin) && !until.isBefore(end);
    }
}
