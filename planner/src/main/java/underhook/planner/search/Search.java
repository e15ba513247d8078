package underhook.planner.search;

import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * Improves an order by seeded local search of a fixed number of days built.
 *
 * <p>A worse day is sometimes taken, less and less often; the best day ever built is kept. Prices are whole
 * cents; ties keep the newer day while searching and the older as the best.
 */
final class Search {
    /** Days built for each trip of the day, and at least in all. */
    private static final int DAYS_PER_TRIP = 1500;

    private static final int LEAST_DAYS = 4000;
    private static final double HOT_CENTS = 15_000;
    private static final double COLD_CENTS = 150;
    private static final int STEPS_BETWEEN_WORDS = 500;

    private final DayTable table;
    private final Decoder decoder;
    private final WishChanger changer;

    private Wish best;
    private long bestCents;
    private int built;
    private boolean cut;

    Search(DayTable table, Decoder decoder, Wish start) {
        this.table = table;
        this.decoder = decoder;
        this.changer = new WishChanger(table);
        this.best = start.copy();
        this.bestCents = decoder.decode(start, null);
    }

    Wish best() {
        return best;
    }

    long bestCents() {
        return bestCents;
    }

    int built() {
        return built;
    }

    boolean wasCut() {
        return cut;
    }

    /** How many days a search of this day builds. */
    static int days(DayTable table) {
        return Math.max(LEAST_DAYS, DAYS_PER_TRIP * table.trips.length);
    }

    /** Searches from the best so far. */
    void run(SplittableRandom random, int days, BooleanSupplier stop, DoubleConsumer progress) {
        Wish now = best.copy();
        Wish next = best.copy();
        long nowCents = bestCents;
        double cooling = Math.pow(COLD_CENTS / HOT_CENTS, 1.0 / days);
        double heat = HOT_CENTS;
        for (int i = 0; i < days; i++) {
            if (i % STEPS_BETWEEN_WORDS == 0) {
                progress.accept((double) i / days);
                if (stop.getAsBoolean()) {
                    cut = true;
                    return;
                }
            }
            next.take(now);
            changer.change(next, random);
            long cents = decoder.decode(next, null);
            built++;
            boolean take =
                    cents <= nowCents
                            || random.nextDouble() < Math.exp((nowCents - cents) / heat);
            if (take) {
                Wish old = now;
                now = next;
                next = old;
                nowCents = cents;
                if (cents < bestCents) {
                    bestCents = cents;
                    best.take(now);
                }
            }
            heat *= cooling;
        }
    }
}
