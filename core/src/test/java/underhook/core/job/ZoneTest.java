package underhook.core.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;

class ZoneTest {
    private static final LocalDate TENTH = LocalDate.of(2026, 6, 10);

    private static Zone zone(Hours hours, Optional<LocalDate> until) {
        return new Zone(
                "Z",
                "",
                List.of(new GeoPoint(46, 8)),
                100,
                Zone.Rule.NO_OVERFLIGHT,
                List.of(),
                0,
                Optional.empty(),
                until,
                hours,
                "zones");
    }

    private static Hours hours(String from, String until) {
        return new Hours(LocalTime.parse(from), LocalTime.parse(until));
    }

    private static Zone.Spell spell(String from, String until) {
        return new Zone.Spell(Instant.parse(from), Instant.parse(until));
    }

    @Test
    void its_hours_are_those_of_the_local_clock() {
        Zone noon = zone(hours("12:00", "13:30"), Optional.empty());

        assertThat(noon.listSpells(TENTH, ZoneId.of("Europe/Oslo")))
                .containsExactly(
                        spell("2026-06-09T10:00:00Z", "2026-06-09T11:30:00Z"),
                        spell("2026-06-10T10:00:00Z", "2026-06-10T11:30:00Z"),
                        spell("2026-06-11T10:00:00Z", "2026-06-11T11:30:00Z"));
        assertThat(noon.listSpells(TENTH, ZoneId.of("-01:00")).get(1))
                .isEqualTo(spell("2026-06-10T13:00:00Z", "2026-06-10T14:30:00Z"));
    }

    /** Central European clocks go on at 01:00 UTC on the last Sunday of March, and back on that of October (directive 2000/84/EC). */
    @Test
    void where_the_clock_changes_the_longer_counts() {
        ZoneId oslo = ZoneId.of("Europe/Oslo");
        Zone night = zone(hours("02:30", "04:00"), Optional.empty());

        // There is no 02:30: it begins when the clock skips it.
        assertThat(night.listSpells(LocalDate.of(2026, 3, 29), oslo).get(1))
                .isEqualTo(spell("2026-03-29T01:00:00Z", "2026-03-29T02:00:00Z"));
        // There are two: from the first on, and until the second.
        assertThat(night.listSpells(LocalDate.of(2026, 10, 25), oslo).get(1))
                .isEqualTo(spell("2026-10-25T00:30:00Z", "2026-10-25T03:00:00Z"));
        Zone before = zone(hours("01:00", "02:30"), Optional.empty());
        assertThat(before.listSpells(LocalDate.of(2026, 10, 25), oslo).get(1))
                .isEqualTo(spell("2026-10-24T23:00:00Z", "2026-10-25T01:30:00Z"));
    }

    @Test
    void out_of_season_it_holds_at_no_hour() {
        Zone over = zone(hours("12:00", "13:30"), Optional.of(TENTH.minusDays(1)));

        assertThat(over.listSpells(TENTH, ZoneOffset.UTC)).isEmpty();
        assertThat(zone(Hours.ALL_DAY, Optional.of(TENTH)).listSpells(TENTH, ZoneOffset.UTC))
                .containsExactly(spell("2026-06-09T00:00:00Z", "2026-06-12T00:00:00Z"));
    }

    @Test
    void the_instant_in_which_it_is_over_is_free() {
        Zone.Spell noon = spell("2026-06-10T10:00:00Z", "2026-06-10T11:30:00Z");
        Instant begins = noon.from();
        Instant ends = noon.until();

        assertThat(noon.touches(ends, ends.plusSeconds(60))).isFalse();
        assertThat(noon.touches(begins.minusSeconds(60), begins)).isFalse();
        assertThat(noon.touches(begins.minusSeconds(60), begins.plusMillis(1))).isTrue();
        assertThat(noon.touches(ends.minusMillis(1), ends.plusSeconds(60))).isTrue();
        assertThat(noon.touches(begins.minusSeconds(60), ends.plusSeconds(60))).isTrue();
    }

    @Test
    void hours_are_told_as_they_are_stated() {
        assertThat(hours("12:00", "13:30").say()).isEqualTo("from 12:00 to 13:30");
        assertThat(new Hours(LocalTime.of(18, 0), LocalTime.MAX).say()).isEqualTo("from 18:00 on");
        assertThat(new Hours(LocalTime.MIN, LocalTime.of(7, 0)).say()).isEqualTo("until 07:00");
        assertThat(new Hours(LocalTime.MIN, LocalTime.of(7, 0)).label()).isEqualTo("00:00–07:00");
        assertThat(new Hours(LocalTime.of(18, 0), LocalTime.MAX).label()).isEqualTo("18:00–24:00");
        assertThat(Hours.ALL_DAY.label()).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> hours("13:00", "13:00"));
    }

    /** A degree of longitude on the equator is 111,319 m on WGS 84 (NIMA TR8350.2: a = 6,378,137 m). */
    @Test
    void lies_as_far_off_a_place_as_its_nearest_edge() {
        Zone circle = on(List.of(new GeoPoint(0, 0.01)), 100);
        Zone area =
                on(
                        List.of(
                                new GeoPoint(-0.01, 0.01),
                                new GeoPoint(-0.01, 0.02),
                                new GeoPoint(0.01, 0.02),
                                new GeoPoint(0.01, 0.01)),
                        0);

        assertThat(circle.distanceToM(at(0))).isCloseTo(1013.2, within(0.5));
        assertThat(circle.distanceToM(at(0.0105))).isZero();
        assertThat(area.distanceToM(at(0))).isCloseTo(1113.2, within(0.5));
        assertThat(area.distanceToM(at(0.015))).isZero();
    }

    private static Place at(double lonDeg) {
        return new Place(
                new PlaceId("S"),
                PlaceKind.SITE,
                "",
                new GeoPoint(0, lonDeg),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                50,
                1,
                true,
                false,
                false,
                false,
                List.of(),
                "");
    }

    private static Zone on(List<GeoPoint> outline, double radiusM) {
        return new Zone(
                "Z",
                "",
                outline,
                radiusM,
                Zone.Rule.NO_OVERFLIGHT,
                List.of(),
                0,
                Optional.empty(),
                Optional.empty(),
                Hours.ALL_DAY,
                "zones");
    }
}
