package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TinyDaysPropertyTest {
    private static final int DAYS = 200;
    private static final int PRICED_DAYS = 40;

    @Test
    void the_search_finds_the_cheapest_of_all_orders() {
        int whole = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.of(seed, 3 + seed % 5);
            EveryOrder every = new EveryOrder(day).run();
            Ordered found = DayOrder.find(day.table(), seed, () -> false, done -> {}).day();
            if (every.fliesAll()) {
                whole++;
                assertThat(found.cents()).as("day %d", seed).isEqualTo(every.bestCents());
            }
        }
        assertThat(whole).as("days on which everything can be flown").isGreaterThan(DAYS * 3 / 4);
    }

    @Test
    void the_search_finds_the_cheapest_of_all_orders_where_comforts_have_a_price() {
        int whole = 0;
        int turned = 0;
        for (int seed = 0; seed < PRICED_DAYS; seed++) {
            TinyDay plain = TinyDay.of(seed, 3 + seed % 4);
            TinyDay day = plain.withComforts(seed);
            EveryOrder every = new EveryOrder(day).run();
            Ordered found = DayOrder.find(day.table(), seed, () -> false, done -> {}).day();
            if (every.fliesAll()) {
                whole++;
                assertThat(found.cents()).as("day %d", seed).isEqualTo(every.bestCents());
                Ordered without = DayOrder.find(plain.table(), seed, () -> false, done -> {}).day();
                turned += found.releasedS().equals(without.releasedS()) ? 0 : 1;
            }
        }
        assertThat(whole).isGreaterThan(PRICED_DAYS * 3 / 4);
        assertThat(turned).as("days that comforts change").isGreaterThan(PRICED_DAYS / 8);
    }

    @Test
    void the_search_finds_the_cheapest_order_of_eight() {
        for (int seed = 1000; seed < 1004; seed++) {
            TinyDay day = TinyDay.of(seed, 8);
            EveryOrder every = new EveryOrder(day).run();
            Ordered found = DayOrder.find(day.table(), seed, () -> false, done -> {}).day();
            if (every.fliesAll()) {
                assertThat(found.cents()).as("day %d", seed).isEqualTo(every.bestCents());
            }
        }
    }

    @Test
    void the_search_finds_the_cheapest_of_all_orders_where_tools_go_on_with_a_team_at_either_end() {
        int whole = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.of(seed, 2 + seed % 4).withMoved(seed);
            EveryOrder every = new EveryOrder(day).run();
            DayTable table = day.table();
            Ordered found = DayOrder.find(table, seed, () -> false, done -> {}).day();
            if (every.fliesAll()) {
                whole++;
                double boundS = DayOrder.flightBoundS(table, found);
                assertThat(found.cents()).as("day %d", seed).isEqualTo(every.bestCents());
                assertThat(boundS)
                        .as("day %d", seed)
                        .isLessThanOrEqualTo((double) every.leastFlownS());
                assertThat(DayOrder.finishBoundS(table, found, boundS))
                        .as("day %d", seed)
                        .isLessThanOrEqualTo(every.earliestS());
            }
        }
        assertThat(whole).as("days on which everything can be flown").isGreaterThan(DAYS / 2);
    }

    @Test
    void no_order_flies_less_than_the_bound() {
        for (int seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, 3 + seed % 5).table();
            Ordered found = DayOrder.plain(table);
            double boundS = DayOrder.flightBoundS(table, found);

            assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) found.flownS());
            assertThat(boundS).as("day %d", seed).isGreaterThan(0.3 * found.flownS());
        }
    }

    @Test
    void the_same_seed_gives_the_same_day() {
        DayTable table = TinyDay.of(7, 7).table();

        Ordered one = DayOrder.find(table, 5, () -> false, done -> {}).day();
        Ordered other = DayOrder.find(TinyDay.of(7, 7).table(), 5, () -> false, done -> {}).day();

        assertThat(one).isEqualTo(other);
    }

    @Test
    void a_search_that_is_stopped_at_once_gives_a_day_all_the_same() {
        DayTable table = TinyDay.of(3, 6).table();

        DayOrder.Found found = DayOrder.find(table, 1, () -> true, done -> {});

        assertThat(found.cutShort()).isTrue();
        List<Long> flown = new ArrayList<>(found.day().releasedS());
        assertThat(flown).anyMatch(releasedS -> releasedS >= 0);
    }
}
