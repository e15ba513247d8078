package underhook.app.replan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.job.PlaceId;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;

/** A forecast of four rows and a wind that was seen, all by hand. */
class SeenWindTest {
    private static final Weather FORECAST =
            new Weather(
                    List.of(row(6, 4, 6), row(9, 5, 8), row(10, 12, 16), row(11, 3, 5)),
                    at(13, 0),
                    Weather.Between.STRICTER,
                    100,
                    0.0065,
                    "by hand");

    @Test
    void for_an_hour_from_now_on_no_row_is_weaker_than_what_was_seen() {
        Weather after = seen(9, 20, 10, 14).over(FORECAST, at(9, 30));

        assertThat(after.hours().stream().map(WeatherHour::from))
                .containsExactly(at(6, 0), at(9, 0), at(9, 30), at(10, 0), at(11, 0));
        assertWind(after.hours().get(1), 0, 5, 8);
        assertWind(after.hours().get(2), 90, 10, 14);
        assertWind(after.hours().get(3), 0, 12, 16);
        assertWind(after.hours().get(4), 0, 3, 5);
        assertThat(after.until()).isEqualTo(FORECAST.until());
    }

    @Test
    void it_reaches_on_to_the_row_after_the_hour() {
        // Good until 11:40, which lies between 11:00 and the forecast's end.
        Weather after = seen(10, 40, 10, 14).over(FORECAST, at(10, 45));

        assertThat(after.hours()).hasSize(5);
        assertWind(after.hours().get(3), 0, 12, 16);
        assertWind(after.hours().get(4), 90, 10, 14);
    }

    @Test
    void an_hour_later_it_says_nothing_any_more() {
        assertThat(seen(9, 0, 30, 40).over(FORECAST, at(10, 0))).isEqualTo(FORECAST);
        assertThat(seen(9, 0, 30, 40).over(FORECAST, at(9, 59))).isNotEqualTo(FORECAST);
    }

    @Test
    void a_sheltered_place_stands_for_more_wind_elsewhere() {
        SeenWind wind =
                new SeenWind(
                        new Change.WindSeen(new PlaceId("S1"), Math.PI / 2, 5, 7, at(9, 0)), 0.5);

        assertWind(wind.over(FORECAST, at(9, 0)).hours().get(1), 90, 10, 14);
    }

    @Test
    void weaker_than_the_forecast_it_changes_nothing_but_a_stronger_gust() {
        Weather after = seen(9, 0, 4, 11).over(FORECAST, at(9, 0));

        assertWind(after.hours().get(1), 0, 5, 11);
        assertThat(after.hours().get(2)).isEqualTo(FORECAST.hours().get(2));
    }

    @Test
    void says_when_the_forecast_has_as_much() {
        SeenWind wind = seen(9, 0, 10, 14);

        assertThat(wind.isForecast(FORECAST, at(9, 0))).isFalse();
        assertThat(wind.isForecast(FORECAST, at(10, 20))).isTrue();
        assertThat(wind.findForecast(FORECAST, at(9, 0))).contains(at(10, 0));
        assertThat(wind.findForecast(FORECAST, at(10, 0))).isEmpty();
    }

    private static SeenWind seen(int hour, int minute, double meanMPerS, double gustMPerS) {
        return new SeenWind(
                new Change.WindSeen(
                        new PlaceId("S1"), Math.PI / 2, meanMPerS, gustMPerS, at(hour, minute)),
                1);
    }

    private static WeatherHour row(int hour, double meanMPerS, double gustMPerS) {
        return new WeatherHour(at(hour, 0), 101325, 288, 0, meanMPerS, gustMPerS, "");
    }

    private static void assertWind(
            WeatherHour row, double fromDeg, double meanMPerS, double gustMPerS) {
        assertThat(Math.toDegrees(row.windFromTrueRad())).isCloseTo(fromDeg, within(1e-9));
        assertThat(row.windMPerS()).isCloseTo(meanMPerS, within(1e-9));
        assertThat(row.gustMPerS()).isCloseTo(gustMPerS, within(1e-9));
    }

    private static Instant at(int hour, int minute) {
        return Instant.parse("2026-09-08T00:00:00Z").plusSeconds(hour * 3600L + minute * 60L);
    }
}
