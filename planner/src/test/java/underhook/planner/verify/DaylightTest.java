package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;

class DaylightTest {
    @Test
    void rises_and_sets_as_the_almanac_rule_of_the_demo_latitude_says() {
        GeoPoint at = new GeoPoint(46.8, -12.0);

        Daylight light = Daylight.from(Instant.parse("2026-09-08T06:45:00Z"), at).orElseThrow();

        // By hand: declination 5.7 degrees, cos H = (sin(-0.833) - sin 46.8 sin 5.7) / (cos 46.8
        // cos 5.7)
        // = (-0.01454 - 0.72897 x 0.09932) / (0.68455 x 0.99506) = -0.12763, H = 97.33 degrees = 6
        // h 29.3
        // min. Transit: 12:00 + 48 min (12 degrees west) - 1 h (zone) - 2.3 min (equation of time,
        // early
        // September) = 11:45.7 local. So 05:16.4 and 18:15.0. Three minutes cover the declination's
        // tenth of a degree and the equation's tenth of a minute, as taken from memory.
        assertThat(light.sunrise())
                .isCloseTo(Instant.parse("2026-09-08T06:16:24Z"), within(3, ChronoUnit.MINUTES));
        assertThat(light.sunset())
                .isCloseTo(Instant.parse("2026-09-08T19:15:00Z"), within(3, ChronoUnit.MINUTES));
    }

    @Test
    void lasts_half_the_day_and_a_little_on_the_equator_at_the_equinox() {
        Daylight light =
                Daylight.from(Instant.parse("2026-03-20T06:00:00Z"), new GeoPoint(0, 0))
                        .orElseThrow();

        // 12 h and twice 0.833 degrees at 4 min a degree = 12 h 6.7 min; the sun moves little in
        // that time
        assertThat(ChronoUnit.SECONDS.between(light.sunrise(), light.sunset()))
                .isCloseTo(43600L, within(30L));
    }

    @Test
    void is_none_in_the_polar_night() {
        assertThat(Daylight.from(Instant.parse("2026-12-21T06:00:00Z"), new GeoPoint(75, 20)))
                .isEmpty();
    }

    @Test
    void is_that_of_the_duty_where_the_date_of_the_zone_has_two() {
        GeoPoint east = new GeoPoint(46, 177);

        Daylight morning = Daylight.from(Instant.parse("2026-09-08T01:00:00Z"), east).orElseThrow();
        Daylight evening = Daylight.from(Instant.parse("2026-09-08T18:00:00Z"), east).orElseThrow();
        Daylight waited = Daylight.from(Instant.parse("2026-09-08T09:00:00Z"), east).orElseThrow();

        // By hand: transit at 12 h - 177/15 h - 2.3 min = 00:09.7 UTC, half a day of 6 h 28 min.
        assertThat(morning.sunrise())
                .isCloseTo(Instant.parse("2026-09-07T17:41:00Z"), within(3, ChronoUnit.MINUTES));
        assertThat(morning.sunset())
                .isCloseTo(Instant.parse("2026-09-08T06:38:00Z"), within(3, ChronoUnit.MINUTES));
        assertThat(evening.sunrise())
                .isCloseTo(Instant.parse("2026-09-08T17:42:00Z"), within(3, ChronoUnit.MINUTES));
        assertThat(waited.sunrise()).isCloseTo(evening.sunrise(), within(5, ChronoUnit.SECONDS));
    }

    @Test
    void outlasts_any_duty_in_the_polar_day() {
        Instant begin = Instant.parse("2026-06-21T20:00:00Z");

        Daylight light = Daylight.from(begin, new GeoPoint(75, 20)).orElseThrow();

        assertThat(light.sunrise()).isBefore(begin.minus(1, ChronoUnit.DAYS));
        assertThat(light.sunset()).isAfter(begin.plus(1, ChronoUnit.DAYS));
    }
}
