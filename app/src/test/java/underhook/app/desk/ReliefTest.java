package underhook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;

class ReliefTest {
    /** Places 0.02 degrees apart on either side of the meridian; the margin is a quarter of that. */
    @Test
    void a_box_across_the_180th_meridian_is_as_small_as_elsewhere() {
        List<GeoPoint> places = List.of(new GeoPoint(0, 179.99), new GeoPoint(0, -179.99));

        Relief.Box box = Relief.Box.around(places, 0.25);
        Relief.Box other = Relief.Box.around(List.of(places.get(1), places.get(0)), 0.25);

        // 1e-9 degrees are a tenth of a millimetre.
        assertThat(box.westDeg()).isCloseTo(179.985, within(1e-9));
        assertThat(box.eastDeg()).isCloseTo(180.015, within(1e-9));
        assertThat(other.westDeg()).isCloseTo(-180.015, within(1e-9));
        assertThat(other.eastDeg()).isCloseTo(-179.985, within(1e-9));
        assertThat(box.squared().eastDeg()).isCloseTo(180.015, within(1e-9));
    }

    /** A slope to the east: its contour of 100 m lies where the plane has it, in longitudes of the Earth. */
    @Test
    void relief_is_known_on_both_sides_of_the_180th_meridian() {
        Ground ground =
                new Ground(
                        LocalFrame.of(new GeoPoint(0, 180)),
                        GridHeightField.of(
                                new GridShape(-4000, -4000, 50, 161, 161), (e, n) -> 100 + e / 100),
                        Optional.empty(),
                        0);
        Relief.Box box = new Relief.Box(179.985, -0.01, 180.015, 0.01);

        Relief relief = Relief.of(ground, box, 60, 40);

        for (int column = 0; column < 60; column++) {
            assertThat(relief.isKnown(column, 20)).isTrue();
        }
        // By hand: half the box is 0.015 degrees of 111.3 km, 1670 m, less half a pixel of 28 m.
        assertThat(relief.heightAmslM(0, 20)).isCloseTo(100 - 16.56, within(0.5));
        assertThat(relief.heightAmslM(59, 20)).isCloseTo(100 + 16.56, within(0.5));
        assertThat(relief.contour(105).get(0))
                .allSatisfy(point -> assertThat(point.lonDeg()).isBetween(-180.0, -179.99));
    }
}
