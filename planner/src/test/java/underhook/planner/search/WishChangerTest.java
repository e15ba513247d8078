package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a search changes where crews walk round, are flown in once, or are flown about; invented days. */
class WishChangerTest {
    private static final int CHANGES = 2000;
    private static final double CABIN_FUEL_KG = 250;
    private static final long FAR_WALK_S = 3600;

    @Test
    void crews_landed_at_one_place_let_others_go_first_and_walk_far() {
        Changed changed = Changed.of(landedAt(Collections.nCopies(TinyDay.PLACES, 0)));

        assertThat(changed.patience()).isPositive();
        assertThat(changed.walks()).isPositive();
    }

    @Test
    void crews_flown_from_place_to_place_are_waited_for() {
        Changed changed = Changed.of(landedAt(IntStream.range(0, TinyDay.PLACES).boxed().toList()));

        assertThat(changed.patience()).isZero();
        assertThat(changed.walks()).isPositive();
    }

    /** How often a wish came to differ. */
    private record Changed(int patience, int walks) {
        static Changed of(DayTable table) {
            WishChanger changer = new WishChanger(table);
            SplittableRandom random = new SplittableRandom(1);
            Wish first = new Greedy(table, new Decoder(table)).plain();
            int patience = 0;
            int walks = 0;
            for (int i = 0; i < CHANGES; i++) {
                Wish next = first.copy();
                changer.change(next, random);
                patience += next.patienceS != first.patienceS ? 1 : 0;
                walks += Arrays.equals(next.walksTo, first.walksTo) ? 0 : 1;
            }
            return new Changed(patience, walks);
        }
    }

    private static DayTable landedAt(List<Integer> landing) {
        DayTable tiny = TinyDay.ofChangingWind(1, 24).table();
        TeamRow team =
                new TeamRow(0, 0, true, true, true, tiny.teams[0].serves(), landing, CABIN_FUEL_KG);
        List<List<Long>> walks =
                Collections.nCopies(
                        TinyDay.PLACES, Collections.nCopies(TinyDay.PLACES, FAR_WALK_S));
        return new DayTable(
                List.of(tiny.spots),
                List.of(tiny.trips),
                new DayTable.Parts(
                        new DayTable.Constants(tiny.rules, tiny.fuel, tiny.rates),
                        new DayTable.People(List.of(team), walks),
                        new DayTable.Hours(
                                0, Arrays.stream(TinyDay.UNTIL_S).boxed().toList(), List.of(0)),
                        new Ways()));
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
