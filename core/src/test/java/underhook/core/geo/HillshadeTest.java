package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HillshadeTest {
    /** Differences of heights of some hundred metres over 20 m. */
    private static final double ROUNDING = 1e-9;

    private static final PlanePoint HERE = new PlanePoint(3, -8);
    private static final double NORTH_WEST = 7 * Math.PI / 4;

    private static GridHeightField plane(double riseEastRatio, double riseNorthRatio) {
        return GridHeightField.of(
                GridShape.around(200, 10), (e, n) -> 500 + riseEastRatio * e + riseNorthRatio * n);
    }

    private static double brightness(Hillshade light, GridHeightField ground) {
        return light.findBrightnessFraction(ground, HERE, 10, 10).orElseThrow();
    }

    @Test
    void is_the_sine_of_the_elevation_on_level_ground() {
        Hillshade light = new Hillshade(1, Math.toRadians(30));

        assertThat(brightness(light, plane(0, 0))).isCloseTo(0.5, within(ROUNDING));
    }

    @Test
    void is_full_where_the_light_falls_straight_on() {
        // Light from the east at 45° on ground that falls east at 45°, and the other way round.
        Hillshade light = new Hillshade(Math.PI / 2, Math.PI / 4);

        assertThat(brightness(light, plane(-1, 0))).isCloseTo(1, within(ROUNDING));
        assertThat(brightness(light, plane(1, 0))).isCloseTo(0, within(ROUNDING));
        assertThat(brightness(light, plane(2, 0))).isZero();
        assertThat(brightness(new Hillshade(0, Math.PI / 4), plane(0, -1)))
                .isCloseTo(1, within(ROUNDING));
    }

    @Test
    void is_the_dot_product_of_light_and_perpendicular() {
        // Light from the north-west at 45°: (-1/2, 1/2, 1/√2). Ground rising 3 in 10 to the east
        // and
        // 4 in 10 to the north: perpendicular (-0.3, -0.4, 1) / √1.25. By hand:
        // (0.15 - 0.2 + 0.70710678) / 1.11803399 = 0.58773417.
        Hillshade light = new Hillshade(NORTH_WEST, Math.PI / 4);

        assertThat(brightness(light, plane(0.3, 0.4))).isCloseTo(0.58773417, within(5e-9));
    }

    @Test
    void does_not_change_when_light_and_ground_turn_together() {
        Random random = new Random(11);
        for (int i = 0; i < 200; i++) {
            double steepness = 2 * random.nextDouble();
            double towards = 7 * random.nextDouble();
            double turn = 7 * random.nextDouble();
            double elevation = 0.01 + 1.5 * random.nextDouble();

            double before = brightness(new Hillshade(1, elevation), ground(steepness, towards));
            double after =
                    brightness(
                            new Hillshade(1 + turn, elevation), ground(steepness, towards + turn));

            assertThat(after).isCloseTo(before, within(ROUNDING)).isBetween(0.0, 1.0);
        }
    }

    private static GridHeightField ground(double steepness, double towards) {
        return plane(steepness * Math.sin(towards), steepness * Math.cos(towards));
    }

    @Test
    void takes_the_spacing_of_each_direction() {
        Hillshade light = new Hillshade(NORTH_WEST, 0.6);
        GridHeightField ground = plane(0.3, -0.2);

        assertThat(light.findBrightnessFraction(ground, HERE, 20, 5).orElseThrow())
                .isCloseTo(brightness(light, ground), within(ROUNDING));
    }

    @Test
    void is_absent_where_a_height_is_missing_and_refuses_nonsense() {
        Hillshade light = new Hillshade(0, 1);

        assertThat(light.findBrightnessFraction(plane(0, 0), new PlanePoint(190, 0), 10, 10))
                .isEqualTo(OptionalDouble.empty());
        assertThatThrownBy(() -> light.findBrightnessFraction(plane(0, 0), HERE, 10, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> light.findBrightnessFraction(plane(0, 0), HERE, Double.NaN, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Hillshade(0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Hillshade(Double.NaN, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
