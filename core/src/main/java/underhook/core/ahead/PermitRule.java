package underhook.core.ahead;

import java.time.MonthDay;
import java.util.Objects;
import underhook.core.job.Hours;

/**
 * What a letter says of one thing that is done in a zone or at a place, or anywhere.
 *
 * @param subject id of a zone, a thing of the map or a place; {@link #ANYWHERE} for the whole region
 * @param season when of the year it holds, both days included; may run over the new year
 * @param hours when of the day it holds
 * @param letter where it is written
 * @param granted the permit that is at hand; empty when none is
 */
public record PermitRule(
        String subject,
        Activity activity,
        Ruling ruling,
        Season season,
        Hours hours,
        String letter,
        String granted) {
    /** The subject of what holds in the whole region. */
    public static final String ANYWHERE = "*";

    private static final MonthDay LEAP_DAY = MonthDay.of(2, 29);
    private static final MonthDay DAY_BEFORE = MonthDay.of(2, 28);

    /** What is done. */
    public enum Activity {
        LANDING,
        HOVER,
        LOW_FLIGHT,
        UNLOADING
    }

    /** What the letter says of it; the stricter later. */
    public enum Ruling {
        ALLOWED,
        NEEDS_PERMIT,
        FORBIDDEN
    }

    /** Days of every year; the whole year when it begins and ends with it. */
    public record Season(MonthDay from, MonthDay until) {
        public static final Season ALL_YEAR = new Season(MonthDay.of(1, 1), MonthDay.of(12, 31));

        boolean holds(MonthDay day) {
            return from.isAfter(until)
                    ? !day.isBefore(from) || !day.isAfter(until)
                    : !day.isBefore(from) && !day.isAfter(until);
        }
    }

    /**
     * Whether it counts on a day. What forbids until 28 February, the last of that month in most years, forbids on the
     * 29th too; nothing is allowed by that.
     */
    boolean holdsOn(MonthDay day) {
        boolean forbids =
                ruling == Ruling.FORBIDDEN || (ruling == Ruling.NEEDS_PERMIT && granted.isBlank());
        return season.holds(day)
                || (forbids && day.equals(LEAP_DAY) && season.until().equals(DAY_BEFORE));
    }

    public PermitRule {
        Objects.requireNonNull(subject, "subject");
        if (letter.isBlank()) {
            throw new IllegalArgumentException("a rule for " + subject + " needs its letter.");
        }
    }
}
