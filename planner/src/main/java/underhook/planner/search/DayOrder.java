package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/** Finds an order of the day: the best of a seeded search of fixed length. */
public final class DayOrder {
    private DayOrder() {}

    /**
     * What came of a search.
     *
     * @param day the best day built
     * @param built how many days were built
     * @param cutShort whether it was stopped before its end
     */
    public record Found(Ordered day, int built, boolean cutShort) {}

    /**
     * Searches a day's order.
     *
     * @param seed the same table and seed give the same day
     * @param stop asked now and then; the best so far is returned once it says true
     * @param progress is told how far the search is, in [0, 1]
     */
    public static Found find(
            DayTable table, long seed, BooleanSupplier stop, DoubleConsumer progress) {
        Decoder decoder = new Decoder(table);
        Tournament tournament = new Tournament(table, decoder, stop, progress);
        Wish best = tournament.best(new SplittableRandom(seed));
        return new Found(build(decoder, best), tournament.built(), tournament.wasCut());
    }

    /** The plain order: at each step what can be let go soonest. */
    public static Ordered plain(DayTable table) {
        Decoder decoder = new Decoder(table);
        return build(decoder, new Greedy(table, decoder).plain());
    }

    /**
     * What no order of the same trips goes below, s in the air: every leg at its cheapest hour, positioning and
     * the flights of people that cannot be done without included.
     */
    public static double flightBoundS(DayTable table, Ordered day) {
        List<List<List<Integer>>> flown = new ArrayList<>();
        for (int k = 0; k < table.trips(); k++) {
            if (day.isFlown(k)) {
                flown.add(List.of(List.of(k)));
            }
        }
        return new FlightBound(table, flown).boundS((double) day.flownS());
    }

    private static Ordered build(Decoder decoder, Wish wish) {
        DayLog log = new DayLog();
        long cents = decoder.decode(wish, log);
        return Ordered.of(decoder.run(), log, cents);
    }
}
