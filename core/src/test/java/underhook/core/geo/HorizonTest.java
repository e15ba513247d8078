package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class HorizonTest {
    private static final GridShape SHAPE = new GridShape(-2000, -2000, 10, 400, 400);
    private static final Horizon.Eye EYE = new Horizon.Eye(new PlanePoint(0, 0), 20);

    @Test
    void sees_a_ridge_at_its_angle() {
        // A wall of 320 m from 1,000 m east on; eye at 20 m: atan(300 / 1005) and a bend of 7 cm.
        HeightField wall = GridHeightField.of(SHAPE, (east, north) -> east >= 1000 ? 320 : 0);

        double angle = Horizon.elevationRad(wall, EYE, Math.PI / 2, 1900);

        // One cell of 10 m on the way up between two centres.
        assertThat(angle).isBetween(Math.atan2(299.8, 1010), Math.atan2(300, 1000));
    }

    @Test
    void looks_down_from_a_hill() {
        HeightField plain = GridHeightField.of(SHAPE, (east, north) -> 0);

        // The farthest cell stands highest: −20 m at 1,900 m and 0.25 m of bend.
        assertThat(Horizon.elevationRad(plain, EYE, 1.0, 1900))
                .isCloseTo(-20.25 / 1900, within(1e-4));
    }

    @Test
    void stops_at_the_end_of_the_known_terrain() {
        HeightField plain = GridHeightField.of(SHAPE, (east, north) -> 0);

        assertThat(Horizon.elevationRad(plain, EYE, 0, 50_000)).isLessThan(0);
        assertThatThrownBy(() -> Horizon.elevationRad(plain, EYE, 0, 0))
                .hasMessageContaining("reachM");
    }
}
