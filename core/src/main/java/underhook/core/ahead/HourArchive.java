package underhook.core.ahead;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Hours of the job's month as they were in past years.
 *
 * @param hours in time order; several may be of one hour of the clock
 * @param needs what makes a day usable
 * @param source where the rows are from
 */
public record HourArchive(List<Hour> hours, Needs needs, String source) {
    /**
     * What was seen.
     *
     * @param windMPerS mean wind at exposure 1, m/s
     * @param gustMPerS gust at exposure 1, m/s, not below the mean
     * @param cloudBaseM above the station, m; empty when not known
     * @param visibilityM m; empty when not known
     */
    public record Hour(
            Instant at,
            double windMPerS,
            double gustMPerS,
            OptionalDouble cloudBaseM,
            OptionalDouble visibilityM) {
        public Hour {
            Objects.requireNonNull(at, "at");
            if (!(windMPerS >= 0 && gustMPerS >= windMPerS && gustMPerS < 150)) {
                throw new IllegalArgumentException("wind at " + at + " is out of range.");
            }
        }
    }

    /**
     * What makes a day usable besides wind and light.
     *
     * @param hoursTogether so many usable hours in a row, 1 to 24
     * @param leastCloudBaseM empty when cloud does not count
     * @param leastVisibilityM empty when visibility does not count
     */
    public record Needs(
            int hoursTogether, OptionalDouble leastCloudBaseM, OptionalDouble leastVisibilityM) {
        public Needs {
            if (hoursTogether < 1 || hoursTogether > 24) {
                throw new IllegalArgumentException(
                        "hoursTogether (" + hoursTogether + ") must lie between 1 and 24.");
            }
        }
    }

    public HourArchive {
        hours = List.copyOf(hours);
        if (hours.isEmpty()) {
            throw new IllegalArgumentException("hours must not be empty.");
        }
    }
}
