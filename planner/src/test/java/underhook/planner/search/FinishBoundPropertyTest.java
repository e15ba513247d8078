package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The expected values are brute force, written from the rules of the invented days. */
class FinishBoundPropertyTest {
    private static final int DAYS = 200;

    @Test
    void no_order_is_down_before() {
        int whole = 0;
        double sumRatio = 0;
        double tightest = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.of(seed, 3 + seed % 5);
            EveryOrder every = new EveryOrder(day).run();
            if (every.fliesAll()) {
                whole++;
                DayTable table = day.table();
                Ordered all = everythingFlown(table.trips());
                double flownS = DayOrder.flightBoundS(table, all);
                long boundS = DayOrder.finishBoundS(table, all, flownS);

                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo(every.earliestS());
                sumRatio += (double) boundS / every.earliestS();
                tightest = Math.max(tightest, (double) boundS / every.earliestS());
            }
        }
        assertThat(whole).as("days on which everything can be flown").isGreaterThan(DAYS * 3 / 4);
        assertThat(sumRatio / whole).as("mean of bound over earliest").isGreaterThan(0.6);
        assertThat(tightest).as("bound over earliest where it is tightest").isGreaterThan(0.95);
    }

    private static Ordered everythingFlown(int trips) {
        return new Ordered(
                List.of(), List.of(), Collections.nCopies(trips, 0L), List.of(), 100_000, 0, 0);
    }
}
