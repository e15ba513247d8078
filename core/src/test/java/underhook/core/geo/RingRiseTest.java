package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RingRiseTest {
    private static final GridShape SHAPE = new GridShape(-200, -200, 2, 200, 200);
    private static final PlanePoint TOP = new PlanePoint(0, 0);

    @Test
    void is_the_drop_round_a_cone() {
        HeightField cone = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * Math.hypot(e, n));

        // 0.2 of 100 m, less half a cell's rounding of the tip.
        assertThat(RingRise.findHighestM(cone, TOP, 100).orElseThrow()).isCloseTo(-20, within(0.3));
    }

    @Test
    void a_ridge_on_one_side_counts() {
        HeightField spur = GridHeightField.of(SHAPE, (e, n) -> e > 90 ? 103 : 100 - Math.abs(n));

        assertThat(RingRise.findHighestM(spur, TOP, 100).orElseThrow()).isCloseTo(4, within(1.1));
    }

    @Test
    void a_knoll_stands_free_and_a_ridge_does_not() {
        HeightField knoll = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.06 * Math.hypot(e, n));
        HeightField flat = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.04 * Math.hypot(e, n));
        HeightField ridge = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * Math.abs(n));
        HeightField slope = GridHeightField.of(SHAPE, (e, n) -> 90 - 0.2 * n);

        assertThat(RingRise.standsFree(knoll, TOP)).isTrue();
        assertThat(RingRise.standsFree(flat, TOP)).isFalse();
        assertThat(RingRise.standsFree(ridge, TOP)).isFalse();
        assertThat(RingRise.standsFree(slope, TOP)).isFalse();
        assertThat(RingRise.standsFree(knoll, new PlanePoint(150, 0))).isFalse();
    }

    @Test
    void is_empty_where_the_ground_is_not_known() {
        HeightField plain = GridHeightField.of(SHAPE, (e, n) -> 0);

        assertThat(RingRise.findHighestM(plain, TOP, 250)).isEmpty();
        assertThat(RingRise.findHighestM(plain, new PlanePoint(900, 0), 10)).isEmpty();
        assertThatThrownBy(() -> RingRise.findHighestM(plain, TOP, 0))
                .hasMessageContaining("radiusM");
    }
}
