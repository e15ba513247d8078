package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.planner.route.Directions.Judge;
import underhook.planner.route.Directions.Ranked;
import underhook.planner.route.Directions.Said;

class DirectionsTest {
    private static final double WIND = Math.toRadians(230);

    /** Refuses tracks between two bearings, degrees. */
    private static Judge refuse(double fromDeg, double toDeg, String why) {
        return track -> {
            double degrees = Math.toDegrees(track);
            boolean inside =
                    fromDeg <= toDeg
                            ? degrees >= fromDeg - 1e-6 && degrees <= toDeg + 1e-6
                            : degrees >= fromDeg - 1e-6 || degrees <= toDeg + 1e-6;
            return inside ? Said.refused(why) : Said.NOTHING;
        };
    }

    @Test
    void goes_straight_into_the_wind_when_nothing_speaks_against_it() {
        Ranked ranked = Directions.rank(WIND, List.of());

        assertThat(ranked.all()).hasSize(36);
        assertThat(ranked.best().orElseThrow().trackGridRad()).isCloseTo(WIND, within(1e-9));
        assertThat(Math.toDegrees(ranked.second().orElseThrow().trackGridRad()))
                .isCloseTo(220, within(1e-9));
    }

    @Test
    void goes_beside_what_is_refused_and_says_why() {
        Ranked ranked = Directions.rank(WIND, List.of(refuse(200, 250, "cabin C1 lies under it")));

        assertThat(Math.toDegrees(ranked.best().orElseThrow().trackGridRad()))
                .isCloseTo(260, within(1e-9));
        assertThat(ranked.whyNot(0)).containsExactly("tracks 200° to 250°: cabin C1 lies under it");
    }

    @Test
    void a_price_outweighs_the_wind_where_it_is_higher() {
        Judge sun =
                track ->
                        Math.abs(Math.toDegrees(track) - 230) < 25
                                ? Said.priced(4, "the sun stands ahead")
                                : Said.NOTHING;

        Ranked ranked = Directions.rank(WIND, List.of(sun));

        assertThat(Math.toDegrees(ranked.best().orElseThrow().trackGridRad()))
                .isCloseTo(200, within(1e-9));
        assertThat(ranked.all().get(0).words()).isEmpty();
    }

    @Test
    void spans_run_over_north() {
        Ranked ranked =
                Directions.rank(0, List.of(refuse(330, 40, "wire"), refuse(180, 180, "tree")));

        assertThat(ranked.whyNot(0))
                .containsExactly("tracks 330° to 040°: wire", "tracks 180°: tree");
        assertThat(ranked.whyNot(Math.toRadians(10)))
                .containsExactly("tracks 340° to 050°: wire", "tracks 190°: tree");
    }

    @Test
    void without_any_allowed_direction_there_is_no_best() {
        Ranked ranked = Directions.rank(WIND, List.of(track -> Said.refused("no room")));

        assertThat(ranked.best()).isEmpty();
        assertThat(ranked.gaps(0)).isEmpty();
        assertThat(ranked.whyNot(0)).containsExactly("tracks 000° to 350°: no room");
    }

    @Test
    void a_gap_runs_over_north_and_over_reasons_to_the_nearest_allowed_on_each_side() {
        Ranked ranked =
                Directions.rank(
                        0,
                        List.of(
                                refuse(330, 40, "wire"),
                                refuse(50, 60, "tree"),
                                refuse(180, 180, "tree")));

        assertThat(ranked.gaps(0))
                .extracting(
                        Directions.Gap::tracks,
                        gap -> Math.round(Math.toDegrees(gap.left().trackGridRad())),
                        gap -> Math.round(Math.toDegrees(gap.right().trackGridRad())))
                .containsExactlyInAnyOrder(
                        tuple("330° to 060°", 320L, 70L), tuple("180°", 170L, 190L));
    }
}
