package underhook.planner.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * Many short searches from different first orders, a longer one from the best few, the longest from the best:
 * where a search begins decides more than how long it lasts.
 */
final class Tournament {
    private static final int[] STARTERS = {16, 4, 1};

    /** Of all days, how many hundredths each round builds. */
    private static final int[] PERCENT = {40, 30, 30};

    private static final double[] HOT_S = {84, 54, 54};

    private static final int[] STARTERS_OF_FEW = {10, 4, 1};
    private static final int[] PERCENT_OF_FEW = {30, 37, 33};

    /** A day of few trips is searched hotter: one order may lie far from all that are nearly as good. */
    private static final double[] HOT_OF_FEW_S = {240, 84, 54};

    private static final int FEW_TRIPS = 10;
    private static final int ROUGH_DAYS = 120;

    private final DayTable table;
    private final Decoder decoder;
    private final int days;
    private final BooleanSupplier stop;
    private final DoubleConsumer progress;
    private int built;
    private boolean cut;

    /**
     * @param days how many are built in all, those of the first orders not counted
     */
    Tournament(DayTable table, Decoder decoder, int days, Watch watch) {
        this.table = table;
        this.decoder = decoder;
        this.days = days;
        this.stop = watch.stop();
        this.progress = watch.progress();
    }

    /** What ends a search, and what is told how far it is. */
    record Watch(BooleanSupplier stop, DoubleConsumer progress) {}

    int built() {
        return built;
    }

    boolean wasCut() {
        return cut;
    }

    Wish best(SplittableRandom random) {
        List<Search> entrants = new ArrayList<>();
        RoughSearch rough = new RoughSearch(table, decoder);
        // A first order and the search from it take turns: a tournament cut early has searched all
        // the same.
        int[] starters = isOfFew() ? STARTERS_OF_FEW : STARTERS;
        for (int i = 0; i < starters[0] && !cut; i++) {
            progress.accept((double) i / starters[0] / starters.length);
            Wish start = rough.find(random.split(), ROUGH_DAYS, stop);
            built += ROUGH_DAYS;
            entrants.add(new Search(decoder, start, stop));
            run(entrants.get(i), random.split(), 0);
        }
        for (int round = 1; round < starters.length && !cut; round++) {
            entrants = bestOf(entrants, starters[round]);
            for (int i = 0; i < entrants.size() && !cut; i++) {
                progress.accept((round + (double) i / entrants.size()) / starters.length);
                run(entrants.get(i), random.split(), round);
            }
        }
        return bestOf(entrants, 1).get(0).best();
    }

    private void run(Search search, SplittableRandom random, int round) {
        long all = (long) days * (isOfFew() ? PERCENT_OF_FEW : PERCENT)[round] / 100;
        int before = search.built();
        search.run(
                random,
                (int) Math.max(1, all / (isOfFew() ? STARTERS_OF_FEW : STARTERS)[round]),
                (isOfFew() ? HOT_OF_FEW_S : HOT_S)[round]);
        built += search.built() - before;
        cut = search.wasCut();
    }

    private boolean isOfFew() {
        return table.trips.length <= FEW_TRIPS;
    }

    private static List<Search> bestOf(List<Search> entrants, int count) {
        return entrants.stream()
                .sorted(Comparator.comparingLong(Search::bestCents))
                .limit(count)
                .toList();
    }
}
