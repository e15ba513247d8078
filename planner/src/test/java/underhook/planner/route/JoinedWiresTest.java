package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;

/** By thought, no source: spans of one line, a branch at a support, and lines that end near another without a support. */
class JoinedWiresTest {
    private static List<PlanePoint> line(double... eastNorthM) {
        List<PlanePoint> points = new java.util.ArrayList<>();
        for (int i = 0; i < eastNorthM.length; i += 2) {
            points.add(new PlanePoint(eastNorthM[i], eastNorthM[i + 1]));
        }
        return points;
    }

    @Test
    void spans_go_on_in_the_next_whichever_way_they_are_drawn() {
        assertThat(
                        JoinedWires.chains(
                                List.of(
                                        line(160, 0, 240, 3),
                                        line(-80, 5, 0, 0),
                                        line(500, 500, 600, 500),
                                        line(160.3, 0.3, 80, 0),
                                        line(0, 0, 80, 0))))
                .containsExactly(0, 0, 2, 0, 0);
    }

    @Test
    void a_branch_begins_at_a_support() {
        List<PlanePoint> main = line(0, 0, 100, 0, 200, 0);

        assertThat(JoinedWires.chains(List.of(main, line(100, 0, 100, 90)))).containsExactly(0, 0);
        assertThat(JoinedWires.chains(List.of(main, line(150, 0, 150, 90)))).containsExactly(0, 1);
        assertThat(JoinedWires.chains(List.of(main, line(100, 0.6, 100, 90))))
                .containsExactly(0, 1);
    }

    @Test
    void lines_that_cross_stay_two() {
        assertThat(JoinedWires.chains(List.of(line(0, 0, 100, 0), line(50, -50, 50, 50))))
                .containsExactly(0, 1);
    }
}
