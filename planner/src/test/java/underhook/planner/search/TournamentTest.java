package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How a search of so many days goes about it; common practice of this project, no source. */
class TournamentTest {
    private static final int DAYS = 600_000;

    @Test
    void with_all_hooked_up_at_one_place_a_long_search_begins_hotter() {
        assertThat(hotS(0)).isGreaterThan(hotS(1));
    }

    private static double hotS(int lastFrom) {
        TripRow row = trip(0);
        List<TripRow> trips = new ArrayList<>(Collections.nCopies(12, row));
        trips.set(11, trip(lastFrom));
        SpotRow ground = new SpotRow(false, true, true, 0, false, 0, 0, 0, 0);
        DayTable table =
                new DayTable(
                        Collections.nCopies(3, ground),
                        trips,
                        new DayTable.Parts(
                                new DayTable.Constants(
                                        new DayRules(
                                                0, 0, 36_000, 36_000, 36_000, 1800, 60, 60, 0, 0),
                                        new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                        new Rates(3500, 1200, 1000)),
                                new DayTable.People(List.of(), List.of()),
                                new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                                new Ways()));
        return Tournament.whole(table, DAYS).get(0).hotS();
    }

    private static TripRow trip(int from) {
        return new TripRow(
                from, 2, 75, 55, 45, 1, false, false, 0, 0, List.of(), false, List.of(true));
    }

    private static final class Ways implements WaysAllDay {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 120;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return 60;
        }
    }
}
