package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class GlareTest {
    private static SunPosition sun(double azimuthDeg, double elevationDeg) {
        double elevation = Math.toRadians(elevationDeg);
        return new SunPosition(Math.toRadians(azimuthDeg), elevation, elevation);
    }

    @Test
    void is_the_elevation_when_flown_straight_at_it() {
        Glare glare = Glare.of(sun(245, 25), Math.toRadians(245), -1, true);

        assertThat(glare.aheadRad()).isCloseTo(Math.toRadians(25), within(1e-12));
        assertThat(glare.isAhead()).isTrue();
        assertThat(glare.isBeside()).isFalse();
    }

    @Test
    void is_beside_on_the_side_that_the_pilot_leans_to() {
        assertThat(Glare.of(sun(90, 10), 0, -1, true).isBeside()).isTrue();
        assertThat(Glare.of(sun(90, 10), 0, -1, false).isBeside()).isFalse();
        assertThat(Glare.of(sun(270, 10), 0, -1, false).isBeside()).isTrue();
    }

    @Test
    void is_none_behind_a_ridge() {
        assertThat(Glare.of(sun(245, 15), Math.toRadians(245), Math.toRadians(16), true).isAhead())
                .isFalse();
        assertThat(Glare.of(sun(245, -2), Math.toRadians(245), -1, true).isAhead()).isFalse();
    }

    @Test
    void comes_in_the_late_afternoon_on_a_heading_to_the_west_south_west() {
        // Demo figures (invented place, sun by the low-accuracy almanac formula): 16:00 local,
        // UTC−1: 254° and 22°.
        SunPosition late =
                Sun.position(new GeoPoint(46.8, -12), Instant.parse("2026-09-08T17:00:00Z"));

        assertThat(Math.toDegrees(late.azimuthTrueRad())).isCloseTo(254, within(1.0));
        assertThat(Glare.of(late, Math.toRadians(245), -1, true).isAhead()).isTrue();
        assertThat(Glare.of(late, Math.toRadians(180), -1, true).isAhead()).isFalse();
    }
}
