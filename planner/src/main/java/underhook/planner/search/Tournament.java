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
    /**
     * How many go on in each round, what share of all days it builds, and how hot it begins. Rounds of several are
     * judged by guessed ways.
     *
     * @param hotS one for each round, s
     */
    record Rounds(List<Integer> starters, List<Integer> percent, List<Double> hotS) {
        static final Rounds WHOLE =
                new Rounds(
                        List.of(16, 4, 1, 1), List.of(40, 25, 20, 15), List.of(84., 30., 20., 8.));

        /** Few: beside a search from a day that is known. */
        static final Rounds BESIDE = new Rounds(List.of(4, 1), List.of(50, 50), List.of(84., 30.));

        /** A day of few trips is searched hotter: one order may lie far from all that are nearly as good. */
        static final Rounds OF_FEW_TRIPS =
                new Rounds(List.of(10, 4, 1), List.of(30, 37, 33), List.of(240., 84., 54.));

        static Rounds whole(DayTable table) {
            return table.trips.length <= FEW_TRIPS ? OF_FEW_TRIPS : WHOLE;
        }
    }

    private static final int FEW_TRIPS = 10;
    private static final int ROUGH_DAYS = 120;

    /** How far first orders fill up, in hundredths of the tank; one after the other. */
    private static final List<Integer> FIRST_FUEL_PERCENT = List.of(68, 76, 85, 94);

    private final DayTable table;
    private final Decoder decoder;
    private final Rounds rounds;
    private final BooleanSupplier hurry;
    private final BooleanSupplier stop;
    private final DoubleConsumer progress;
    private int built;
    private boolean cut;

    Tournament(DayTable table, Decoder decoder, Rounds rounds, Watch watch) {
        this.table = table;
        this.decoder = decoder;
        this.rounds = rounds;
        this.hurry = watch.hurry();
        this.stop = watch.stop();
        this.progress = watch.progress();
    }

    /**
     * What ends a search, and what is told how far it is.
     *
     * @param hurry ends the rounds that are judged by guesses alone
     */
    record Watch(BooleanSupplier hurry, BooleanSupplier stop, DoubleConsumer progress) {
        Watch(BooleanSupplier stop, DoubleConsumer progress) {
            this(stop, stop, progress);
        }
    }

    int built() {
        return built;
    }

    boolean wasCut() {
        return cut;
    }

    /**
     * The best of all.
     *
     * @param days how many are built in all, those of the first orders not counted
     */
    Wish best(int days, SplittableRandom random) {
        List<Search> entrants = new ArrayList<>();
        RoughSearch rough = new RoughSearch(table, decoder);
        // A first order and the search from it take turns: a tournament cut early has searched all
        // the same.
        int first = rounds.starters().get(0);
        int count = rounds.starters().size();
        for (int i = 0; i < first && !isOver(0); i++) {
            progress.accept((double) i / first / count);
            Wish start = rough.find(firstLean(entrants), random.split(), ROUGH_DAYS, hurry);
            built += ROUGH_DAYS;
            entrants.add(new Search(decoder, start));
            run(entrants.get(i), random.split(), days, 0);
        }
        for (int round = 1; round < count; round++) {
            entrants = bestOf(entrants, rounds.starters().get(round));
            for (int i = 0; i < entrants.size() && !isOver(round); i++) {
                progress.accept((round + (double) i / entrants.size()) / count);
                run(entrants.get(i), random.split(), days, round);
            }
        }
        return entrants.get(0).best();
    }

    /** With many trips each of the levels once, then the two from which the best came in turn. */
    private Lean firstLean(List<Search> entrants) {
        if (!table.hasManyTrips()) {
            return Lean.none(table);
        }
        int count = FIRST_FUEL_PERCENT.size();
        int next = entrants.size();
        if (next >= count) {
            Search good = bestOf(entrants.subList(0, count), 2).get(next % 2);
            next = entrants.indexOf(good);
        }
        return Lean.filling(
                table, FIRST_FUEL_PERCENT.get(next) * (int) table.fuel.usableKg() / 100);
    }

    /** Rounds of guesses end early, so that a cut search still ends on days whose ways are found. */
    private boolean isOver(int round) {
        boolean isFirst = round == 0 && built == 0;
        boolean isOver = !isFirst && (isGuessed(round) ? hurry : stop).getAsBoolean();
        cut |= isOver;
        return isOver;
    }

    private boolean isGuessed(int round) {
        return rounds.starters().get(round) > 1;
    }

    private void run(Search search, SplittableRandom random, int days, int round) {
        long all = (long) days * rounds.percent().get(round) / 100;
        int before = search.built();
        search.run(
                random,
                (int) Math.max(1, all / rounds.starters().get(round)),
                new Search.Manner(
                        rounds.hotS().get(round),
                        !isGuessed(round),
                        isGuessed(round) ? hurry : stop));
        built += search.built() - before;
        cut |= search.wasCut();
    }

    private static List<Search> bestOf(List<Search> entrants, int count) {
        return entrants.stream()
                .sorted(Comparator.comparingLong(Search::bestCents))
                .limit(count)
                .toList();
    }
}
