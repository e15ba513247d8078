package underhook.app.port;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;

/** Distances by hand, and against a search that looks at everything. */
class StripTest {
    private static PlanePoint at(double eastM, double northM) {
        return new PlanePoint(eastM, northM);
    }

    private static Strip strip(PlanePoint... path) {
        Strip strip = new Strip(100);
        strip.add(List.of(path));
        return strip;
    }

    @Test
    void a_point_is_near_up_to_the_distance_itself() {
        Strip strip = strip(at(0, 0), at(1000, 0));

        assertThat(strip.touches(List.of(at(500, 100)))).isTrue();
        assertThat(strip.touches(List.of(at(500, 100.01)))).isFalse();
        assertThat(strip.touches(List.of(at(-60, -80)))).isTrue();
        assertThat(strip.touches(List.of(at(-60.1, -80)))).isFalse();
    }

    @Test
    void a_line_is_near_when_it_crosses_though_its_ends_are_far() {
        assertThat(strip(at(0, 0), at(1000, 0)).touches(List.of(at(500, -5000), at(500, 5000))))
                .isTrue();
        assertThat(strip(at(0, 0)).touches(List.of(at(-5000, 99), at(5000, 99)))).isTrue();
        assertThat(strip(at(0, 0)).touches(List.of(at(-5000, 101), at(5000, 101)))).isFalse();
    }

    @Test
    void an_area_far_around_holds_it() {
        List<PlanePoint> ring = List.of(at(-9000, -9000), at(9000, -9000), at(0, 9000));

        assertThat(strip(at(0, 0)).isAnyInside(ring)).isTrue();
        assertThat(strip(at(9000, 9000)).isAnyInside(ring)).isFalse();
    }

    @Test
    void finds_what_a_search_over_all_points_of_the_lines_finds() {
        Random random = new Random(11);
        for (int i = 0; i < 300; i++) {
            PlanePoint a = at(coordinate(random), coordinate(random));
            PlanePoint b = at(coordinate(random), coordinate(random));
            PlanePoint c = at(coordinate(random), coordinate(random));
            PlanePoint d = at(coordinate(random), coordinate(random));
            double leastM = Double.POSITIVE_INFINITY;
            for (int k = 0; k <= 400; k++) {
                for (int m = 0; m <= 400; m++) {
                    leastM = Math.min(leastM, between(a, b, k).distanceToM(between(c, d, m)));
                }
            }

            // Steps of the search are at most 15 m, so it is at most about 15 m too far.
            if (leastM < 100 || leastM > 116) {
                assertThat(strip(a, b).touches(List.of(c, d))).isEqualTo(leastM < 100);
            }
        }
    }

    private static double coordinate(Random random) {
        return 4000 * random.nextDouble() - 2000;
    }

    private static PlanePoint between(PlanePoint a, PlanePoint b, int step) {
        double share = step / 400.0;
        return at(
                a.eastM() + share * (b.eastM() - a.eastM()),
                a.northM() + share * (b.northM() - a.northM()));
    }
}
