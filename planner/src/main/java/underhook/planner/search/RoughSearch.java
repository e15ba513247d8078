package underhook.planner.search;

import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/** Finds an order to start from: greedy ones that lean now this way, now that. */
final class RoughSearch {
    private static final long HOT_CENTS = 6000;
    private static final int BACK_TO_BEST = 200;
    private static final long PUSH_CENTS_PER_S = 5;

    private final DayTable table;
    private final Decoder decoder;
    private final Greedy greedy;

    RoughSearch(DayTable table, Decoder decoder) {
        this.table = table;
        this.decoder = decoder;
        this.greedy = new Greedy(table, decoder);
    }

    /** What seems the best of so many greedy orders, ways not yet asked for guessed. */
    Wish find(SplittableRandom random, int days, BooleanSupplier stop) {
        return find(Lean.none(table), random, days, stop);
    }

    /** The same, leaning so at first. */
    Wish find(Lean first, SplittableRandom random, int days, BooleanSupplier stop) {
        table.startGuessing();
        Wish best = guessed(first, random, days, stop);
        table.stopGuessing();
        return best;
    }

    private Wish guessed(Lean first, SplittableRandom random, int days, BooleanSupplier stop) {
        Lean now = first;
        Lean bestLean = now;
        Wish best = greedy.order(now);
        long nowGuide = guideCents(best);
        long bestGuide = nowGuide;
        long bestCents = decoder.priceCents();
        for (int i = 1; i < days && !stop.getAsBoolean(); i++) {
            Lean lean = now.changed(table, random);
            double heat = Math.max(1, HOT_CENTS * (1 - (double) i / days));
            double takeGuide = nowGuide - heat * Math.log(random.nextDouble());
            Wish wish = greedy.order(lean);
            long guide = guideCents(wish);
            if (guide <= takeGuide) {
                now = lean;
                nowGuide = guide;
                if (decoder.priceCents() < bestCents) {
                    bestCents = decoder.priceCents();
                    best = wish;
                }
            }
            if (nowGuide < bestGuide) {
                bestGuide = nowGuide;
                bestLean = now;
            }
            if (i % BACK_TO_BEST == 0) {
                now = bestLean;
                nowGuide = bestGuide;
            }
        }
        return best;
    }

    private long guideCents(Wish wish) {
        return decoder.decode(wish, null) + PUSH_CENTS_PER_S * decoder.pushS();
    }
}
