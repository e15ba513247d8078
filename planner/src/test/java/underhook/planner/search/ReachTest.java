package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Whether anybody can come to a place: invented days of one load, expected by hand. */
class ReachTest {
    private static final int LAYDOWN = 0;
    private static final int SITE = 1;
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
    void a_path_is_not_enough_for_people_who_may_not_receive() {
        assertThat(day(600, SITE, false).isReached(0)).isFalse();
    }

    private static DayTable day(long walkS, int landing, boolean receives) {
        List<SpotRow> spots =
                List.of(
                        new SpotRow(false, true, true, 0, false, 0, 0, LAYDOWN, LAYDOWN),
                        new SpotRow(
                                true,
                                false,
                                false,
                                DayTable.NEVER_S,
                                false,
                                DayTable.NEVER_S,
                                DayTable.NEVER_S,
                                LAYDOWN,
                                LAYDOWN));
        TripRow bag =
                new TripRow(
                        LAYDOWN,
                        SITE,
                        75,
                        55,
                        45,
                        1,
                        false,
                        false,
                        0,
                        0,
                        List.of(),
                        false,
                        List.of(true));
        TeamRow team =
                new TeamRow(
                        LAYDOWN,
                        0,
                        true,
                        true,
                        receives,
                        List.of(SITE),
                        List.of(landing < 0 ? DayTable.NONE : LAYDOWN, landing),
                        9000);
        return new DayTable(
                spots,
                List.of(bag),
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(0, 0, 36_000, 36_000, 36_000, 1800, 60, 60, 0, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(3500, 1200, 1000)),
                        new DayTable.People(
                                List.of(team), List.of(List.of(0L, walkS), List.of(walkS, 0L))),
                        new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                        new Ways()));
    }

    private static final class Ways implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 90;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return from == to ? 0 : 60;
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return 90;
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return from == to ? 0 : 60;
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            return 20_000;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return true;
        }
    }
}
