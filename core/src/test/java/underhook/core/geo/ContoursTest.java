package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

class ContoursTest {
    private static final int SIZE = 61;

    private static Contours.Grid grid(DoubleBinaryOperator height) {
        List<Double> heights = new ArrayList<>();
        for (int row = 0; row < SIZE; row++) {
            for (int column = 0; column < SIZE; column++) {
                heights.add(height.applyAsDouble(column - 30, row - 30));
            }
        }
        return new Contours.Grid(SIZE, SIZE, heights);
    }

    private static double length(List<Contours.Node> line) {
        double length = 0;
        for (int i = 1; i < line.size(); i++) {
            length +=
                    Math.hypot(
                            line.get(i).columnRatio() - line.get(i - 1).columnRatio(),
                            line.get(i).rowRatio() - line.get(i - 1).rowRatio());
        }
        return length;
    }

    @Test
    void a_cone_gives_one_closed_circle() {
        List<List<Contours.Node>> lines = Contours.trace(grid(Math::hypot), 20.3);

        assertThat(lines).hasSize(1);
        assertThat(lines.get(0).get(0)).isEqualTo(lines.get(0).get(lines.get(0).size() - 1));
        // 2 pi r; chords of about one step on a circle of 20 steps are short by far less than 1 %.
        assertThat(length(lines.get(0))).isCloseTo(2 * Math.PI * 20.3, within(1.2));
    }

    @Test
    void a_plane_gives_one_straight_line_across() {
        List<List<Contours.Node>> lines = Contours.trace(grid((x, y) -> x + 0.25), 3);

        assertThat(lines).hasSize(1);
        // Exact: linear interpolation of a plane; 1e-9 for rounding.
        assertThat(length(lines.get(0))).isCloseTo(60, within(1e-9));
        assertThat(lines.get(0)).allMatch(node -> Math.abs(node.columnRatio() - 32.75) < 1e-9);
    }

    @Test
    void unknown_ground_carries_no_line() {
        List<List<Contours.Node>> lines =
                Contours.trace(grid((x, y) -> y < 0 ? Double.NaN : x + 0.25), 3);

        assertThat(lines).hasSize(1);
        assertThat(lines.get(0)).allMatch(node -> node.rowRatio() >= 30);
    }

    @Test
    void two_hills_give_two_lines_and_a_saddle_never_breaks_one() {
        DoubleBinaryOperator hills =
                (x, y) ->
                        Math.exp(-Math.hypot(x - 12, y) / 8) + Math.exp(-Math.hypot(x + 12, y) / 8);

        assertThat(Contours.trace(grid(hills), 0.6)).hasSize(2);
        assertThat(Contours.trace(grid((x, y) -> (x + 0.5) * (y + 0.5)), 0.1)).hasSize(2);
    }
}
