package underhook.planner.search;

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
        Greedy greedy = new Greedy(table, decoder);
        Wish start = greedy.order(true);
        Wish plain = greedy.order(false);
        if (decoder.decode(plain, null) < decoder.decode(start, null)) {
            start = plain;
        }
        Search search = new Search(table, decoder, start);
        search.run(new SplittableRandom(seed), Search.days(table), stop, progress);
        return new Found(build(decoder, search.best()), search.built(), search.wasCut());
    }

    /** The plain order: at each step what can be let go soonest. */
    public static Ordered plain(DayTable table) {
        Decoder decoder = new Decoder(table);
        return build(decoder, new Greedy(table, decoder).order(false));
    }

    private static Ordered build(Decoder decoder, Wish wish) {
        DayLog log = new DayLog();
        long cents = decoder.decode(wish, log);
        return Ordered.of(decoder.run(), log, cents);
    }
}
