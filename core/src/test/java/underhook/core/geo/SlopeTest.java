package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SlopeTest {
    /** Differences of heights of some hundred metres over 20 m. */
    private static final double ROUNDING = 1e-9;

    private static final GridShape SHAPE = GridShape.around(200, 10);

    private static GridHeightField plane(double riseEastRatio, double riseNorthRatio) {
        return GridHeightField.of(SHAPE, (e, n) -> 500 + riseEastRatio * e + riseNorthRatio * n);
    }

    @Test
    void is_the_angle_of_a_plane_and_its_fall() {
        // Rises 3 m east and 4 m north in 100 m: 5 %; falls towards the south-west by south,
        // atan2(-3, -4).
        Slope slope = Slope.find(plane(0.03, 0.04), new PlanePoint(3, -8), 10).orElseThrow();

        assertThat(slope.slopeRad()).isCloseTo(Math.atan(0.05), within(ROUNDING));
        assertThat(slope.fallsTowardsGridRad())
                .isCloseTo(Math.PI + Math.atan2(3, 4), within(ROUNDING * 100));
    }

    @Test
    void falls_to_each_side() {
        PlanePoint here = new PlanePoint(0, 0);

        // Ground that rises southwards falls north, and so on round.
        assertThat(Slope.find(plane(0, -0.1), here, 10).orElseThrow().fallsTowardsGridRad())
                .isCloseTo(0, within(ROUNDING * 100));
        assertThat(Slope.find(plane(-0.1, 0), here, 10).orElseThrow().fallsTowardsGridRad())
                .isCloseTo(Math.PI / 2, within(ROUNDING * 100));
        assertThat(Slope.find(plane(0, 0.1), here, 10).orElseThrow().fallsTowardsGridRad())
                .isCloseTo(Math.PI, within(ROUNDING * 100));
        assertThat(Slope.find(plane(0.1, 0), here, 10).orElseThrow().fallsTowardsGridRad())
                .isCloseTo(3 * Math.PI / 2, within(ROUNDING * 100));
    }

    @Test
    void is_zero_on_level_ground() {
        assertThat(Slope.find(plane(0, 0), new PlanePoint(0, 0), 10)).contains(new Slope(0, 0));
    }

    @Test
    void weights_the_nine_heights_as_printed() {
        // South row 1 2 4, middle 3 9 7, north 5 8 6 (m), cells of 1 m.
        // East: ((4 + 2·7 + 6) - (1 + 2·3 + 5)) / 8 = (24 - 12) / 8 = 1.5
        // North: ((5 + 2·8 + 6) - (1 + 2·2 + 4)) / 8 = (27 - 9) / 8 = 2.25
        GridHeightField field =
                GridHeightField.of(
                        new GridShape(0, 0, 1, 3, 3),
                        List.of(1.0, 2.0, 4.0, 3.0, 9.0, 7.0, 5.0, 8.0, 6.0));

        Slope slope = Slope.find(field, new PlanePoint(1.5, 1.5), 1).orElseThrow();

        assertThat(slope.slopeRad()).isCloseTo(Math.atan(Math.hypot(1.5, 2.25)), within(ROUNDING));
        assertThat(slope.fallsTowardsGridRad())
                .isCloseTo(Math.PI + Math.atan2(1.5, 2.25), within(ROUNDING));
    }

    @Test
    void does_not_depend_on_the_spacing_over_planes() {
        Random random = new Random(3);
        for (int i = 0; i < 200; i++) {
            GridHeightField field = plane(random.nextDouble() * 2 - 1, random.nextDouble() * 2 - 1);
            PlanePoint here = new PlanePoint(random.nextDouble() * 50, random.nextDouble() * 50);

            double fine = Slope.find(field, here, 2).orElseThrow().slopeRad();
            double coarse = Slope.find(field, here, 60).orElseThrow().slopeRad();

            assertThat(fine).isCloseTo(coarse, within(ROUNDING));
        }
    }

    @Test
    void is_absent_where_a_height_is_missing() {
        GridHeightField holed = plane(0, 0).withUnknown(22, 20);

        assertThat(Slope.find(holed, new PlanePoint(5, 5), 10)).isPresent();
        assertThat(Slope.find(holed, new PlanePoint(12, 5), 10)).isEmpty();
        assertThat(Slope.find(holed, new PlanePoint(190, 0), 10)).isEmpty();
        assertThatThrownBy(() -> Slope.find(holed, new PlanePoint(0, 0), 0))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
