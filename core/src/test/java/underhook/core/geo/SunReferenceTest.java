package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import net.e175.klaus.solarpositioning.DeltaT;
import net.e175.klaus.solarpositioning.SPA;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.testkit.ReferenceCases;
import underhook.testkit.SeededSamples;

class SunReferenceTest {
    static List<ReferenceCases.Case> azimuths() {
        return ReferenceCases.read("sun-azimuth").cases();
    }

    static List<ReferenceCases.Case> zeniths() {
        return ReferenceCases.read("sun-zenith").cases();
    }

    static List<ReferenceCases.Case> events() {
        return ReferenceCases.read("sun-events").cases();
    }

    static List<ReferenceCases.Case> twilight() {
        return ReferenceCases.read("sun-twilight").cases();
    }

    @ParameterizedTest
    @MethodSource("azimuths")
    void azimuth_is_as_published(ReferenceCases.Case row) {
        double azimuthDeg = Math.toDegrees(position(row).azimuthTrueRad());

        assertThat(azimuthDeg).isCloseTo(row.expected(), within(row.tolerance()));
    }

    @ParameterizedTest
    @MethodSource("zeniths")
    void zenith_is_as_published(ReferenceCases.Case row) {
        SunPosition sun = position(row);
        double elevationRad =
                row.text("refraction").equals("yes")
                        ? sun.elevationApparentRad()
                        : sun.elevationGeometricRad();

        assertThat(90 - Math.toDegrees(elevationRad))
                .isCloseTo(row.expected(), within(row.tolerance()));
    }

    @ParameterizedTest
    @MethodSource({"events", "twilight"})
    void event_comes_at_the_published_time(ReferenceCases.Case row) {
        ZoneId zone = ZoneId.of(row.text("offset"));

        double secondOfDay =
                Sun.find(
                                SunEvent.valueOf(row.text("event")),
                                place(row),
                                LocalDate.parse(row.text("date")),
                                zone)
                        .orElseThrow()
                        .atZone(zone)
                        .toLocalTime()
                        .toSecondOfDay();

        assertThat(secondOfDay).isCloseTo(row.expected(), within(row.tolerance()));
    }

    @Test
    void the_sun_neither_rises_nor_sets_at_the_north_cape_in_june() {
        // NREL-SPA row by way of SOLARPOSITIONING: 70.978056 N, 25.974722 E, up all day.
        GeoPoint cape = new GeoPoint(70.978056, 25.974722);
        LocalDate day = LocalDate.of(2015, 6, 17);
        ZoneId zone = ZoneId.of("+02:00");

        for (SunEvent event : SunEvent.values()) {
            assertThat(Sun.find(event, cape, day, zone)).as(event.name()).isEmpty();
        }
        assertThat(Sun.isAbove(SunEvent.SUNRISE, cape, day.atStartOfDay(zone).toInstant()))
                .isTrue();
    }

    @Test
    void stays_within_a_hundredth_of_a_degree_of_the_full_algorithm() {
        SeededSamples.of(20260908)
                .forEach(
                        3000,
                        sample -> {
                            GeoPoint place =
                                    new GeoPoint(
                                            sample.between(-89, 89), sample.between(-180, 180));
                            ZonedDateTime when =
                                    ZonedDateTime.of(1970, 1, 1, 0, 0, 0, 0, ZoneOffset.UTC)
                                            .plusSeconds(sample.longBetween(0, 90L * 31557600));
                            var full =
                                    SPA.calculateSolarPosition(
                                            when,
                                            place.latDeg(),
                                            place.lonDeg(),
                                            0,
                                            DeltaT.estimate(when.toLocalDate()));

                            SunPosition ours = Sun.position(place, when.toInstant());

                            double elevationDeg = Math.toDegrees(ours.elevationGeometricRad());
                            assertThat(elevationDeg)
                                    .as("elevation at %s, %s", place, when)
                                    .isCloseTo(90 - full.zenithAngle(), within(0.01));
                            // On the sky a degree of azimuth shrinks with the cosine of elevation.
                            double turnDeg =
                                    Math.IEEEremainder(
                                            Math.toDegrees(ours.azimuthTrueRad()) - full.azimuth(),
                                            360);
                            assertThat(turnDeg * Math.cos(ours.elevationGeometricRad()))
                                    .as("azimuth at %s, %s", place, when)
                                    .isCloseTo(0, within(0.01));
                        });
    }

    private static SunPosition position(ReferenceCases.Case row) {
        return Sun.position(place(row), OffsetDateTime.parse(row.text("at")).toInstant());
    }

    private static GeoPoint place(ReferenceCases.Case row) {
        return new GeoPoint(row.number("latDeg"), row.number("lonDeg"));
    }
}
