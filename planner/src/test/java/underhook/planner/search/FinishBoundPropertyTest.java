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
        Ratios ratios = new Ratios();
        for (int seed = 0; seed < DAYS; seed++) {
            ratios.add(TinyDay.of(seed, 3 + seed % 5), seed);
        }

        assertThat(ratios.whole).as("days on which all can be flown").isGreaterThan(DAYS * 3 / 4);
        assertThat(ratios.sumRatio / ratios.whole)
                .as("mean of bound over earliest")
                .isGreaterThan(0.75);
        assertThat(ratios.tightest).as("bound over earliest at its best").isGreaterThan(0.99);
    }

    @Test
    void nor_where_crews_guy_for_long_and_the_wind_comes_and_goes() {
        Ratios ratios = new Ratios();
        for (int seed = 0; seed < 2 * DAYS; seed++) {
            ratios.add(TinyDay.ofLongGuying(seed, 3 + seed % 5), seed);
        }

        assertThat(ratios.whole).as("days on which all can be flown").isGreaterThan(DAYS);
        assertThat(ratios.sumRatio / ratios.whole)
                .as("mean of bound over earliest")
                .isGreaterThan(0.75);
        assertThat(ratios.tightest).as("bound over earliest at its best").isGreaterThan(0.99);
    }

    /** Bounds over the earliest of every order. */
    private static final class Ratios {
        int whole;
        double sumRatio;
        double tightest;

        void add(TinyDay day, int seed) {
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
    }

    private static Ordered everythingFlown(int trips) {
        return new Ordered(
                List.of(), List.of(), Collections.nCopies(trips, 0L), List.of(), 100_000, 0, 0);
    }
}
