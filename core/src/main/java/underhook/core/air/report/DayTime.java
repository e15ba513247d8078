package underhook.core.air.report;

/**
 * Day of the month and time, UTC, as reports give it.
 *
 * @param day 1 to 31, or 0 where only the time is given
 * @param hour 0 to 24; 24 is the end of the day
 * @param minute 0 to 59
 */
public record DayTime(int day, int hour, int minute) {
    public DayTime {
        if (day < 0 || day > 31 || hour < 0 || hour > 24 || minute < 0 || minute > 59) {
            throw new IllegalArgumentException(
                    "day " + day + " " + hour + ":" + minute + " is no time.");
        }
    }
}
