package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Whether anybody can come to a place: invented days of one load, expected by hand. */
class ReachTest {
    private static final int LAYDOWN = 0;
    private static final int SITE = 1;
    private static final int OTHER = 2;
    private static final long NO_WALK = DayTable.NO_WALK_S;

    @Test
    void nobody_comes_where_no_path_leads_and_nobody_lands() {
        assertThat(day(NO_WALK, DayTable.NONE, true).isReached(0)).isFalse();
    }

    @Test
    void a_load_that_nobody_can_receive_is_left_out_by_every_order() {
        DayTable table = day(NO_WALK, DayTable.NONE, true);

        assertThat(DayOrder.plain(table).isFlown(0)).isFalse();
        assertThat(DayOrder.find(table, 1, () -> false, done -> {}).day().isFlown(0)).isFalse();
    }

    @Test
    void a_path_or_a_place_to_land_is_enough() {
        assertThat(day(600, DayTable.NONE, true).isReached(0)).isTrue();
        assertThat(day(NO_WALK, SITE, true).isReached(0)).isTrue();
    }

    @Test
    void people_landed_at_one_site_walk_on_to_the_next() {
        List<List<Long>> walks =
                List.of(
                        List.of(0L, NO_WALK, NO_WALK),
                        List.of(NO_WALK, 0L, 600L),
                        List.of(NO_WALK, 600L, 0L));
        List<Integer> landing = List.of(LAYDOWN, DayTable.NONE, OTHER);

        assertThat(day(walks, landing, true).isReached(0)).isTrue();
        assertThat(day(walks, List.of(DayTable.NONE, DayTable.NONE, OTHER), true).isReached(0))
                .as("nobody can board")
                .isFalse();
    }

    @Test
    void a_flight_to_a_site_is_bounded_like_any_other() {
        DayTable table = day(NO_WALK, SITE, true);

        // There and back with people, boarding twice: 240 s; the load 220 s and the way back 60 s.
        assertThat(DayOrder.plain(table).flownS()).isEqualTo(520);
        assertThat(DayOrder.flightBoundS(table, DayOrder.plain(table))).isEqualTo(520);
    }

    @Test
    void who_cannot_walk_on_is_flown_twice() {
        List<List<Long>> walks =
                List.of(
                        List.of(0L, NO_WALK, NO_WALK),
                        List.of(NO_WALK, 0L, NO_WALK),
                        List.of(NO_WALK, NO_WALK, 0L));
        DayTable table = day(walks, List.of(LAYDOWN, SITE, OTHER), true, List.of(SITE, OTHER));
        Ordered plain = DayOrder.plain(table);

        // Two flights of 180 s and two loads of 220 s at least.
        assertThat(plain.isFlown(0) && plain.isFlown(1)).isTrue();
        assertThat(DayOrder.flightBoundS(table, plain)).isBetween(800.0, (double) plain.flownS());
    }

    /** An hour on foot, or there and back with people, boarding twice: 240 s more in the air. */
    @Test
    void a_known_order_keeps_its_far_walks() {
        DayTable table = day(3600, SITE, true);
        List<Integer> none = List.of(DayTable.NONE);
        List<Integer> teams = List.of(DayTable.NONE, 0);

        Ordered walked =
                RestOrder.ofDay(
                                table,
                                new RestOrder.Kept(
                                        List.of(0), teams, none, List.of(9000), Set.of(SITE)))
                        .first();
        Ordered flown =
                RestOrder.ofDay(table, new RestOrder.Kept(List.of(0), teams, none, List.of(9000)))
                        .first();

        assertThat(walked.flownS()).isEqualTo(280);
        assertThat(flown.flownS()).isEqualTo(520);
    }

    @Test
    void a_path_is_not_enough_for_people_who_may_not_receive() {
        assertThat(day(600, SITE, false).isReached(0)).isFalse();
    }

    private static DayTable day(long walkS, int landing, boolean receives) {
        return day(
                List.of(List.of(0L, walkS), List.of(walkS, 0L)),
                List.of(landing < 0 ? DayTable.NONE : LAYDOWN, landing),
                receives);
    }

    private static DayTable day(List<List<Long>> walks, List<Integer> landing, boolean receives) {
        return day(walks, landing, receives, List.of(SITE));
    }

    private static DayTable day(
            List<List<Long>> walks, List<Integer> landing, boolean receives, List<Integer> bagsTo) {
        SpotRow site =
                new SpotRow(
                        true,
                        false,
                        false,
                        DayTable.NEVER_S,
                        false,
                        DayTable.NEVER_S,
                        DayTable.NEVER_S,
                        LAYDOWN,
                        LAYDOWN);
        List<SpotRow> spots = new ArrayList<>(Collections.nCopies(walks.size(), site));
        spots.set(LAYDOWN, new SpotRow(false, true, true, 0, false, 0, 0, LAYDOWN, LAYDOWN));
        List<TripRow> bags = bagsTo.stream().map(ReachTest::bag).toList();
        TeamRow team = new TeamRow(LAYDOWN, 0, true, true, receives, bagsTo, landing, 9000);
        return new DayTable(
                spots,
                bags,
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(0, 0, 36_000, 36_000, 36_000, 1800, 60, 60, 0, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(3500, 1200, 1000)),
                        new DayTable.People(List.of(team), walks),
                        new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                        new Ways()));
    }

    private static TripRow bag(int to) {
        return new TripRow(
                LAYDOWN, to, 75, 55, 45, 1, false, false, 0, 0, List.of(), false, List.of(true));
    }

    private static final class Ways implements WaysAllDay {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 90;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return from == to ? 0 : 60;
        }
    }
}
