package underhook.core.crew;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Sun;
import underhook.core.geo.SunEvent;

/**
 * From when until when the sun is up for a day's work; over a flat horizon, so a valley has less.
 *
 * @param from sunrise, or a day before the work began where the sun has been up that long
 * @param until sunset, or a day after the work began where the sun stays up
 */
public record Daylight(Instant from, Instant until) {
    private static final Duration DAY = Duration.ofDays(1);
    private static final Duration HALF_DAY = Duration.ofHours(12);

    public Daylight {
        if (until.isBefore(from)) {
            throw new IllegalArgumentException("until (" + until + ") must not be before from.");
        }
    }

    /**
     * The light in which a day's work begins, else the next to come within a day; empty when none comes.
     *
     * <p>It hangs on the moment, not on a date of a zone: a job planned in universal time far from
     * Greenwich has its night in the middle of the date.
     *
     * @param begin from 1950 to 2099
     * @throws IllegalArgumentException outside those years
     * @source NOAA-SOLAR definition of sunrise and sunset
     */
    public static Optional<Daylight> find(GeoPoint place, Instant begin) {
        Optional<Instant> rise =
                Sun.isAbove(SunEvent.SUNRISE, place, begin)
                        ? Optional.of(lastRise(place, begin))
                        : Sun.find(SunEvent.SUNRISE, place, begin, begin.plus(DAY));
        return rise.map(
                from -> {
                    Instant up = from.isAfter(begin) ? from : begin;
                    Instant end = up.plus(DAY);
                    return new Daylight(
                            from, Sun.find(SunEvent.SUNSET, place, up, end).orElse(end));
                });
    }

    /** Looked for in half days: where nights are short the sun may have risen twice in a day. */
    private static Instant lastRise(GeoPoint place, Instant up) {
        Instant half = up.minus(HALF_DAY);
        return Sun.find(SunEvent.SUNRISE, place, half, up)
                .or(() -> Sun.find(SunEvent.SUNRISE, place, up.minus(DAY), half))
                .orElse(up.minus(DAY));
    }
}
