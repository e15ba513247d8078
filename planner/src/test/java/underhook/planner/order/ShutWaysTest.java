package underhook.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.planner.route.Approaches;

class ShutWaysTest {
    private static final double NORTH_RAD = 0;
    private static final double EAST_RAD = Math.PI / 2;

    private final ShutWays ways = new ShutWays();

    @Test
    void a_bearing_that_is_flown_after_all_is_not_shut() {
        ways.look(NORTH_RAD, List.of("house-1"));
        ways.look(EAST_RAD, List.of("house-2"));

        assertThat(ways.seenBeside(NORTH_RAD))
                .containsOnlyKeys(Approaches.millionths(EAST_RAD))
                .containsValue(List.of("house-2"));
    }

    @Test
    void a_rounding_of_the_bearing_that_is_flown_does_not_shut_it() {
        ways.look(EAST_RAD, List.of("house-2"));

        assertThat(ways.seenBeside(EAST_RAD + 1e-6)).isEmpty();
    }

    @Test
    void what_was_tried_stays_shut_and_its_neighbours_open_again() {
        ways.add(EAST_RAD, List.of("house-2"));

        assertThat(ways.all()).hasSize(3);
        assertThat(ways.hasUnseen()).isTrue();
        assertThat(ways.seenBeside(NORTH_RAD)).containsOnlyKeys(Approaches.millionths(EAST_RAD));
    }
}
