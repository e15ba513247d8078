package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RingRiseTest {
    private static final GridShape SHAPE = new GridShape(-200, -200, 2, 200, 200);
    private static final PlanePoint TOP = new PlanePoint(0, 0);

    @Test
    void a_knoll_its_shoulder_and_a_ridge_stand_free_and_a_slope_does_not() {
        HeightField knoll = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.06 * Math.hypot(e, n));
        HeightField flat = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.04 * Math.hypot(e, n));
        HeightField ridge = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * Math.abs(n));
        HeightField slope = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * n);

        assertThat(free(knoll, TOP)).isTrue();
        assertThat(free(flat, TOP)).isFalse();
        assertThat(free(ridge, TOP)).isTrue();
        assertThat(free(slope, TOP)).isFalse();
        // Ground 100 m off is 5 m lower from 50 m farther from the tip on: up to 115° aside, then
        // 97°.
        HeightField cone = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.1 * Math.hypot(e, n));
        assertThat(free(cone, new PlanePoint(40, 0))).isTrue();
        assertThat(free(cone, new PlanePoint(60, 0))).isFalse();
    }

    @Test
    void the_ground_falls_away_on_the_part_of_the_horizon_that_the_angle_gives() {
        // 0.2 of 100 m times the cosine is 5 m at 75.5°: 15 of 36 bearings, 0° to 70° on both
        // sides.
        HeightField slope = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * n);
        // The same to both sides of a ridge: 30.
        HeightField ridge = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * Math.abs(n));

        assertThat(RingRise.fallsAwayRad(slope, TOP).orElseThrow())
                .isCloseTo(Math.toRadians(150), within(1e-9));
        assertThat(RingRise.fallsAwayRad(ridge, TOP).orElseThrow())
                .isCloseTo(Math.toRadians(300), within(1e-9));
    }

    @Test
    void is_empty_where_the_ground_is_not_known() {
        HeightField plain = GridHeightField.of(SHAPE, (e, n) -> 0);

        assertThat(RingRise.fallsAwayRad(plain, new PlanePoint(150, 0))).isEmpty();
        assertThat(free(plain, new PlanePoint(900, 0))).isFalse();
    }

    private static boolean free(HeightField ground, PlanePoint place) {
        return RingRise.standsFree(RingRise.fallsAwayRad(ground, place).orElse(0));
    }
}
