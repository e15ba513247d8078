package underhook.adapter.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Expected values: the demo day's own list of sites (invented), printed to 0.1 m and whole degrees,
 * and worked again from its formulas in Python's double arithmetic with central differences over 2 m.
 */
class DemoTerrainTest {
    private static final DemoGrid GRID = DemoGrid.of(DemoTerrain::groundAmslM);

    @ParameterizedTest
    @CsvSource({
        "S01,  380,  120, 178.0,  1, 239",
        "S02,  820,  260, 187.2,  4, 191",
        "S03, 1240,  420, 216.2, 13, 184",
        "S04, 1660,  640, 281.9, 16, 184",
        "S05, 2090,  840, 349.5, 17, 185",
        "S06, 2540, 1060, 489.3, 30, 205",
        "S07, 2960, 1120, 457.7, 18, 177",
        "S08, 3420, 1180, 492.0, 18, 190",
        "S09, 3830, 1290, 543.0, 19, 186",
        "S10, 4270, 1420, 603.4, 19, 186",
        "S11, 4700, 1530, 705.2, 23, 200",
        "S12, 5130, 1660, 723.2, 20, 187",
        "S13, 5600, 1790, 777.8, 10, 187",
        "S14, 6080, 1930, 789.6,  0, 187",
    })
    void lies_and_falls_as_the_list_of_sites_says(
            String site, double x, double y, double z, double slopeDeg, double fallsTowardDeg) {
        double east = (bilinear(x + 5, y) - bilinear(x - 5, y)) / 10;
        double north = (bilinear(x, y + 5) - bilinear(x, y - 5)) / 10;

        assertThat(bilinear(x, y)).as(site).isCloseTo(z, within(0.3));
        assertThat(Math.toDegrees(Math.atan(Math.hypot(east, north))))
                .as(site)
                .isCloseTo(slopeDeg, within(1.0));
        // Half a degree of print and the difference over 10 m instead of a point.
        double towards = (Math.toDegrees(Math.atan2(-east, -north)) + 360) % 360;
        assertThat(towards).as(site).isCloseTo(fallsTowardDeg, within(2.0));
    }

    @ParameterizedTest
    @CsvSource({
        "A,  260, -130, 177.1787",
        "A2, 640,  190, 182.1455",
        "H, 6080, 1895, 789.2963",
        "L,  345,  125, 177.6514",
        "B, 3740,  760, 362",
        "M, 3760,  745, 362",
        "inside the quarry's edge, 3740, 804.9, 362",
    })
    void gives_the_other_places_their_height(String place, double x, double y, double z) {
        // The expected values are printed to four decimals.
        assertThat(DemoTerrain.groundAmslM(x, y)).as(place).isCloseTo(z, within(0.00005));
    }

    @ParameterizedTest
    @MethodSource("rise")
    void rises_behind_the_tail_as_listed(String site, double x, double y, double riseM) {
        // Wind from 230°, so the tail points to 050°. The list takes the slope at the site over 10
        // m,
        // which on the knolls is up to half a metre more than the ground there; printed to 0.1 m.
        double east = Math.sin(Math.toRadians(50));
        double north = Math.cos(Math.toRadians(50));

        double ahead = DemoTerrain.groundAmslM(x + east, y + north);
        double rise = 10 * (ahead - DemoTerrain.groundAmslM(x - east, y - north)) / 2;

        assertThat(rise).as(site).isCloseTo(riseM, within(0.1));
    }

    static Stream<Object[]> rise() {
        return Stream.of(
                new Object[] {"S03", 1240, 420, 1.6},
                new Object[] {"S04", 1660, 640, 2.0},
                new Object[] {"S06", 2540, 1060, 5.3},
                new Object[] {"S11", 4700, 1530, 3.7},
                new Object[] {"S14", 6080, 1930, 0.1});
    }

    private static double bilinear(double x, double y) {
        double west = Math.floor((x - 2.5) / 5) * 5 + 2.5;
        double south = Math.floor((y - 2.5) / 5) * 5 + 2.5;
        double u = (x - west) / 5;
        double v = (y - south) / 5;
        return (1 - v) * ((1 - u) * GRID.valueM(west, south) + u * GRID.valueM(west + 5, south))
                + v
                        * ((1 - u) * GRID.valueM(west, south + 5)
                                + u * GRID.valueM(west + 5, south + 5));
    }
}
