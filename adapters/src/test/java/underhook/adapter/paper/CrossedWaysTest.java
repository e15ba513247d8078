package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CrossedWaysTest {
    private static CrossedWays.At at(double x, double y, String id) {
        return new CrossedWays.At(new Sheet.Dot(x, y), id, "road, guarded");
    }

    @Test
    void numbers_run_from_north_to_south_and_keep_apart() {
        List<CrossedWays.Spot> spots =
                CrossedWays.of(List.of(at(100, 300, "R3"), at(100, 100, "R1"), at(100, 200, "R2")))
                        .spots();

        assertThat(spots).extracting(CrossedWays.Spot::number).containsExactly(1, 2, 3);
        assertThat(spots)
                .extracting(spot -> spot.crossed().keySet().iterator().next())
                .containsExactly("R1", "R2", "R3");
    }

    @Test
    void what_is_crossed_close_together_shares_a_number_and_is_said_once() {
        List<CrossedWays.Spot> spots =
                CrossedWays.of(
                                List.of(
                                        at(100, 100, "R1"),
                                        at(105, 104, "R2"),
                                        at(104, 102, "R1"),
                                        at(150, 100, "R1")))
                        .spots();

        assertThat(spots)
                .extracting(CrossedWays.Spot::crossed)
                .containsExactly(
                        Map.of("R1", "road, guarded", "R2", "road, guarded"),
                        Map.of("R1", "road, guarded"));
    }
}
