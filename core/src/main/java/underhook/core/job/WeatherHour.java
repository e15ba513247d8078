package underhook.core.job;

import java.time.Instant;
import java.util.Objects;

/**
 * Forecast from one time on.
 *
 * @param from from when it holds
 * @param qnhPa altimeter setting, Pa
 * @param temperatureK air temperature at the weather's reference elevation, K
 * @param windFromTrueRad wind direction, rad from true north
 * @param windMPerS mean wind at exposure 1, m/s
 * @param gustMPerS gust at exposure 1, m/s, not below the mean
 */
public record WeatherHour(
        Instant from,
        double qnhPa,
        double temperatureK,
        double windFromTrueRad,
        double windMPerS,
        double gustMPerS,
        String remarks) {
    public WeatherHour {
        Objects.requireNonNull(from, "from");
        if (!(qnhPa > 80000 && qnhPa < 110000 && temperatureK > 180 && temperatureK < 340)) {
            throw new IllegalArgumentException(
                    "pressure or temperature at " + from + " is out of range.");
        }
        if (!(windMPerS >= 0 && gustMPerS >= windMPerS && gustMPerS < 150)) {
            throw new IllegalArgumentException("wind at " + from + " is out of range.");
        }
    }
}
