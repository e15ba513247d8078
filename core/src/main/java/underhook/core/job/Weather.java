package underhook.core.job;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * The day's weather.
 *
 * @param hours in time order
 * @param until end of the last hour's validity
 * @param between which value holds between two rows
 * @param referenceElevationAmslM where the temperatures hold, m AMSL
 * @param lapseKPerM how much colder it gets with height, K/m, not negative
 * @param source where the weather is from and when it was issued
 */
public record Weather(
        List<WeatherHour> hours,
        Instant until,
        Between between,
        double referenceElevationAmslM,
        double lapseKPerM,
        String source) {
    /** Which value holds between two rows. */
    public enum Between {
        /** For each limit the worse of the two neighbours. */
        STRICTER,
        /** The earlier row until the next; optimistic while the wind rises. */
        HOLD
    }

    public Weather {
        hours = List.copyOf(hours);
        Objects.requireNonNull(until, "until");
        if (hours.isEmpty()) {
            throw new IllegalArgumentException("hours must not be empty.");
        }
    }

    /** The same with other rows. */
    public Weather withHours(List<WeatherHour> rows) {
        return new Weather(rows, until, between, referenceElevationAmslM, lapseKPerM, source);
    }
}
