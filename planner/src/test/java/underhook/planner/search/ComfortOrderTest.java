package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A laydown A and two sites with people. One load goes from A to S1, one is fetched from S2.
 *
 * <p>By hand, in seconds. There first: line 300, hook 60, way 180, set down 40: let go at 580; on to S2 60 and 20,
 * hook 60, way 180, set down 40: down at 940, of which 640 in the air. Cents: 35 × 640 / 60 = 373.33, 12 × 300 / 60 =
 * 60.00, 10 × 940 / 60 = 156.66, together 589.99. Fetched first: line 300, way 120, hook 60, way 180, set down 40: 700;
 * hook 60, way 180, set down 40: let go at 980; home 120 and 20: 1120, of which 820 in the air: 478.33, 60.00 and
 * 186.66, together 724.99. So refusing a comfort before 900 turns the order where it costs more than 135.00.
 */
class ComfortOrderTest {
    private static final int THERE = 0;
    private static final int FETCHED = 1;
    private static final long SUN_UNTIL_S = 900;

    @Test
    void a_rate_below_the_detour_leaves_the_order_and_stands_in_the_price() {
        Ordered day = find(13_499);

        assertThat(day.releasedS()).containsExactly(580L, 940L);
        assertThat(day.cents()).isEqualTo(58_999 + 13_499);
    }

    @Test
    void a_rate_above_the_detour_turns_the_order() {
        Ordered day = find(13_501);

        assertThat(day.releasedS()).containsExactly(980L, 700L);
        assertThat(day.cents()).isEqualTo(72_499);
    }

    @Test
    void days_to_choose_from_show_what_fewer_refused_comforts_cost() {
        DayOrder.Found found = DayOrder.find(table(5000), 1, () -> false, done -> {});

        assertThat(found.front())
                .filteredOn(DayOrder.Offer::chosen)
                .singleElement()
                .satisfies(
                        one -> {
                            assertThat(one.comfortCents()).isEqualTo(5000);
                            assertThat(one.cents()).isEqualTo(58_999 + 5000);
                        });
    }

    @Test
    void the_sun_counts_as_it_stands_at_the_last_full_five_minutes() {
        SetDownPrice price = new SetDownPrice(7, 3700, List.of(100L, 200L, 300L));

        // The first piece began at 3600, before the hour that begins at 3700.
        assertThat(price.centsAt(3700)).isEqualTo(107);
        assertThat(price.centsAt(3899)).isEqualTo(107);
        assertThat(price.centsAt(3900)).isEqualTo(207);
        assertThat(price.centsAt(4499)).isEqualTo(307);
        assertThat(SetDownPrice.NONE.centsAt(3700)).isZero();
    }

    private static Ordered find(long sunCents) {
        return DayOrder.find(table(sunCents), 1, () -> false, done -> {}).day();
    }

    private static DayTable table(long sunCents) {
        long never = DayTable.NEVER_S;
        SpotRow ground = new SpotRow(false, true, true, 0, false, 0, 0, 0, 0);
        SpotRow site = new SpotRow(true, false, false, never, false, 0, 0, 0, 0);
        List<Long> row = Collections.nCopies(3, DayTable.NO_WALK_S);
        return new DayTable(
                List.of(ground, site, site),
                List.of(trip(0, 1), trip(2, 0)),
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(0, 0, 36_000, 90_000, 90_000, 1800, 60, 300, 20, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(3500, 1200, 1000)),
                        new DayTable.People(List.of(), Collections.nCopies(3, row)),
                        new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                        new Ways(sunCents)));
    }

    private static TripRow trip(int from, int to) {
        return new TripRow(
                from, to, 60, 40, 0, 1, false, false, 0, 0, List.of(), false, List.of(true));
    }

    private record Ways(long sunCents) implements WaysAllDay {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 180;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return from == to ? 0 : from + to == THERE + FETCHED + 2 ? 60 : 120;
        }

        @Override
        public SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
            if (trip != THERE) {
                return SetDownPrice.NONE;
            }
            List<Long> sun = new ArrayList<>();
            for (long timeS = 0; timeS < 40_000; timeS += SetDownPrice.STEP_S) {
                sun.add(timeS < SUN_UNTIL_S ? sunCents : 0);
            }
            return new SetDownPrice(0, 0, sun);
        }
    }
}
