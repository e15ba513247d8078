package underhook.core.crew;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Sun;
import underhook.core.geo.SunEvent;

/**
 * From when until when the sun is up on a date; over a flat horizon, so a valley has less.
 *
 * @param from sunrise, or the date's first moment when the sun is up then
 * @param until sunset, or the date's end when the sun stays up
 */
public record Daylight(Instant from, Instant until) {
    public Daylight {
        if (until.isBefore(from)) {
            throw new IllegalArgumentException("until (" + until + ") must not be before from.");
        }
    }

    /**
     * The window of a date of a zone; empty when the sun does not come up on it.
     *
     * <p>A sunset that falls on the next date of the zone still ends this window.
     *
     * @param date from 1950 to 2098
     * @throws IllegalArgumentException outside those years
     * @source NOAA-SOLAR definition of sunrise and sunset
     */
    public static Optional<Daylight> find(GeoPoint place, LocalDate date, ZoneId zone) {
        Instant start = date.atStartOfDay(zone).toInstant();
        Instant end = date.plusDays(1).atStartOfDay(zone).toInstant();
        Optional<Instant> rise = Sun.find(SunEvent.SUNRISE, place, date, zone);
        if (rise.isEmpty()) {
            if (!Sun.isAbove(SunEvent.SUNRISE, place, start)) {
                return Optional.empty();
            }
            Instant set = Sun.find(SunEvent.SUNSET, place, date, zone).orElse(end);
            return Optional.of(new Daylight(start, set));
        }
        Instant until =
                Sun.find(SunEvent.SUNSET, place, date, zone)
                        .filter(set -> set.isAfter(rise.get()))
                        .or(() -> Sun.find(SunEvent.SUNSET, place, date.plusDays(1), zone))
                        .orElse(end);
        return Optional.of(new Daylight(rise.get(), until));
    }
}
