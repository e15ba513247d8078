package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Lengths of right triangles, by hand; 1e-9 m is rounding. */
class PlaneLineTest {
    private static final PlaneLine EAST = line(0, 0, 100, 0);

    private static PlanePoint at(double eastM, double northM) {
        return new PlanePoint(eastM, northM);
    }

    private static PlaneLine line(double e1, double n1, double e2, double n2) {
        return new PlaneLine(at(e1, n1), at(e2, n2));
    }

    @Test
    void a_point_beside_is_as_far_as_its_foot_and_one_beyond_as_the_end() {
        assertThat(EAST.distanceToM(at(40, -7))).isCloseTo(7, within(1e-9));
        assertThat(EAST.distanceToM(at(103, 4))).isCloseTo(5, within(1e-9));
        assertThat(line(2, 2, 2, 2).distanceToM(at(5, 6))).isCloseTo(5, within(1e-9));
    }

    @Test
    void lines_that_cross_have_no_distance_and_others_that_of_an_end() {
        assertThat(EAST.distanceToM(line(50, -5, 60, 5))).isZero();
        assertThat(EAST.distanceToM(line(50, 8, 60, 3))).isCloseTo(3, within(1e-9));
        assertThat(EAST.distanceToM(line(103, 4, 200, 90))).isCloseTo(5, within(1e-9));
        assertThat(EAST.distanceToM(line(100, 0, 200, 90))).isCloseTo(0, within(1e-9));
    }

    @Test
    void distance_is_the_same_from_either_line() {
        PlaneLine other = line(-31, 17, 12, 90);

        assertThat(EAST.distanceToM(other)).isCloseTo(other.distanceToM(EAST), within(1e-9));
    }

    @Test
    void knows_inside_of_a_ring_with_a_bay() {
        List<PlanePoint> ring = List.of(at(0, 0), at(10, 0), at(10, 10), at(5, 4), at(0, 10));

        assertThat(PlaneLine.isInside(at(5, 2), ring)).isTrue();
        assertThat(PlaneLine.isInside(at(1, 7), ring)).isTrue();
        assertThat(PlaneLine.isInside(at(5, 7), ring)).isFalse();
        assertThat(PlaneLine.isInside(at(-1, 5), ring)).isFalse();
    }
}
