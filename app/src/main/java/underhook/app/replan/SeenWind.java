package underhook.app.replan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;

/**
 * A wind that was seen at a place, laid over the forecast: seen there over the place's exposure is what blows
 * where nothing shelters, and everywhere else that times the exposure there, as with the forecast's own wind.
 */
public final class SeenWind {
    /** Nothing flies in half of it, and a forecast can hold no wind much above, m/s. */
    private static final double MOST_M_PER_S = 100;

    private final Change.WindSeen seen;
    private final double meanMPerS;
    private final double gustMPerS;

    /** @param exposureFactor of the place where it was seen, above 0 */
    public SeenWind(Change.WindSeen seen, double exposureFactor) {
        this.seen = seen;
        this.meanMPerS = Math.min(MOST_M_PER_S, seen.meanMPerS() / exposureFactor);
        this.gustMPerS = Math.min(MOST_M_PER_S, seen.gustMPerS() / exposureFactor);
    }

    /**
     * The forecast, but from now on no weaker than seen until what was seen is an hour old, and on to the row after
     * that: what holds between two rows hangs on both.
     */
    Weather over(Weather weather, Instant now) {
        Instant until = seen.at().plus(Change.WindSeen.GOOD_FOR);
        List<WeatherHour> rows = new ArrayList<>();
        for (int at = 0; at < weather.hours().size(); at++) {
            WeatherHour row = weather.hours().get(at);
            Instant end = endOf(weather, at);
            if (!now.isBefore(until) || !row.from().isBefore(until) || !end.isAfter(now)) {
                rows.add(row);
                continue;
            }
            if (row.from().isBefore(now)) {
                rows.add(row);
            }
            rows.add(over(row, row.from().isBefore(now) ? now : row.from()));
        }
        return weather.withHours(rows);
    }

    /** Whether the forecast has as much at some time. */
    public boolean isForecast(Weather weather, Instant at) {
        return weather.hours().stream()
                .filter(row -> !row.from().isAfter(at))
                .reduce((one, later) -> later)
                .filter(this::isIn)
                .isPresent();
    }

    /** When the forecast has as much as was seen, after a time; empty when it never has. */
    public Optional<Instant> findForecast(Weather weather, Instant after) {
        return weather.hours().stream()
                .filter(row -> row.from().isAfter(after) && isIn(row))
                .map(WeatherHour::from)
                .findFirst();
    }

    private boolean isIn(WeatherHour row) {
        return row.windMPerS() >= meanMPerS && row.gustMPerS() >= gustMPerS;
    }

    private static Instant endOf(Weather weather, int at) {
        return at + 1 < weather.hours().size()
                ? weather.hours().get(at + 1).from()
                : weather.until();
    }

    /** Of two winds the stronger, from where that one comes. */
    private WeatherHour over(WeatherHour row, Instant from) {
        return new WeatherHour(
                from,
                row.qnhPa(),
                row.temperatureK(),
                meanMPerS > row.windMPerS() ? seen.fromTrueRad() : row.windFromTrueRad(),
                Math.max(meanMPerS, row.windMPerS()),
                Math.max(gustMPerS, row.gustMPerS()),
                row.remarks());
    }
}
