package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import underhook.planner.route.NoWayIn.Cause;
import underhook.planner.route.NoWayIn.Found;

/** Limits of 2.5 m/s from behind and 10 m/s from the side. */
class NoWayInTest {
    private static final NoWayIn.Limits LIMITS = new NoWayIn.Limits(2.5, 10);

    @Test
    void names_houses_all_round() {
        Found found =
                NoWayIn.find(
                        below(from -> List.of(from < Math.PI ? "H1" : "H2")),
                        List.of(new PlaceWind(0, 0)),
                        LIMITS);

        assertThat(found.cause()).isEqualTo(Cause.BLOCKED);
        assertThat(found.ids()).containsExactly("H1", "H2");
    }

    @Test
    void says_that_the_wind_refuses_the_only_open_side() {
        // Open only to whoever comes from the north and flies south; 8 m/s from the north are all
        // from behind, 2 m/s are within the limit, 8 m/s from the south are ahead.
        DoubleFunction<List<String>> northOnly = from -> from < 0.01 ? List.of() : List.of("W1");

        Found behind = NoWayIn.find(below(northOnly), List.of(new PlaceWind(0, 8)), LIMITS);

        assertThat(behind.cause()).isEqualTo(Cause.WIND);
        assertThat(behind.openGridRad()).containsExactly(0.0);
        assertThat(behind.ids()).containsExactly("W1");
        assertThat(cause(northOnly, new PlaceWind(0, 2))).isEqualTo(Cause.ROOM);
        assertThat(cause(northOnly, new PlaceWind(Math.PI, 8))).isEqualTo(Cause.ROOM);
        assertThat(cause(northOnly, new PlaceWind(Math.PI / 2, 9))).isEqualTo(Cause.ROOM);
        assertThat(cause(northOnly, new PlaceWind(Math.PI / 2, 11))).isEqualTo(Cause.WIND);
    }

    @Test
    void blames_the_room_when_one_hour_would_do() {
        DoubleFunction<List<String>> northOnly = from -> from < 0.01 ? List.of() : List.of("W1");

        Found found =
                NoWayIn.find(
                        below(northOnly),
                        List.of(new PlaceWind(0, 8), new PlaceWind(Math.PI, 3)),
                        LIMITS);

        assertThat(found.cause()).isEqualTo(Cause.ROOM);
    }

    @Test
    void finds_the_fewest_that_would_open_a_direction_with_wind_enough() {
        // 12 m/s from the north: only who comes from the south, or up to 55° beside it, keeps the
        // limits.
        // Straight from the south lie two houses, from 170° one, from 190° a wire and nothing else.
        DoubleFunction<List<String>> blockers =
                from ->
                        switch ((int) Math.round(Math.toDegrees(from))) {
                            case 180 -> List.of("H1", "H2");
                            case 170 -> List.of("H3");
                            case 190 -> List.of("W1");
                            case 0 -> List.of("H4");
                            default -> List.of("H5", "H6", "H7");
                        };

        Found found = NoWayIn.find(below(blockers), List.of(new PlaceWind(0, 12)), LIMITS);

        assertThat(found.cause()).isEqualTo(Cause.BLOCKED);
        assertThat(found.fewest()).containsExactly("H3");
    }

    private static NoWayIn.Below below(DoubleFunction<List<String>> passed) {
        return new NoWayIn.Below(passed, id -> id.startsWith("H"));
    }

    private static Cause cause(DoubleFunction<List<String>> blockers, PlaceWind wind) {
        return NoWayIn.find(below(blockers), List.of(wind), LIMITS).cause();
    }
}
