package underhook.planner.search;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Many short searches from different first orders, longer ones from the best few or from orders crossed of them, the
 * longest from the best two: where a search begins decides more than how long it lasts, unless it is long and hot.
 */
final class Tournament {
    /**
     * One round.
     *
     * @param starters how many go on
     * @param percent what share of the days asked for they build together
     * @param hotS how hot they begin, s
     */
    record Round(int starters, int percent, double hotS, Way way) {
        boolean finds() {
            return way == Way.FINDING;
        }
    }

    /** How a round goes about it; by guesses alone unless it finds ways. */
    enum Way {
        GUESSING,
        /** Pairs of those that go on are crossed again and again, and each new order searched on. */
        CROSSING,
        FINDING
    }

    /** The last rounds are of two: side by side they take the time of one. */
    private static final List<Round> WHOLE =
            List.of(
                    new Round(16, 40, 84, Way.GUESSING),
                    new Round(4, 25, 30, Way.GUESSING),
                    new Round(2, 40, 20, Way.FINDING),
                    new Round(2, 30, 8, Way.FINDING));

    /**
     * With orders to cross a day comes nearer the best than with as much work on the best few; not with many trips,
     * where fuel levels decide, nor where all is hooked up at one place.
     */
    private static final List<Round> CROSSED =
            List.of(
                    new Round(8, 20, 84, Way.GUESSING),
                    new Round(8, 100, 84, Way.CROSSING),
                    new Round(2, 10, 20, Way.FINDING),
                    new Round(2, 5, 8, Way.FINDING));

    /** A day of few trips is searched hotter: one order may lie far from all that are nearly as good. */
    private static final List<Round> OF_FEW_TRIPS =
            List.of(
                    new Round(10, 30, 240, Way.GUESSING),
                    new Round(4, 37, 84, Way.GUESSING),
                    new Round(2, 66, 54, Way.FINDING));

    /**
     * With so much work each search can begin so hot that it leaves what its first order is like: then where it
     * begins decides little.
     */
    private static final List<Round> LONG =
            List.of(
                    new Round(8, 80, 450, Way.GUESSING),
                    new Round(2, 40, 20, Way.FINDING),
                    new Round(2, 15, 8, Way.FINDING));

    /** So many days make a search long. @source PRACTICE own measure */
    private static final int LONG_DAYS = 500_000;

    /** So many orders are crossed at a time. */
    private static final int CROSSED_AT_ONCE = 4;

    /** Orders are crossed once for so many days. @source PRACTICE own measure: some 12,000 for each new order */
    private static final int DAYS_FOR_CROSSING = 50_000;

    private static final int LEAST_CROSSINGS = 6;
    private static final int MOST_CROSSINGS = 24;

    /** Few, beside a search from a day that is known; in every second people walk far rather than are flown. */
    static final List<Round> BESIDE =
            List.of(new Round(4, 50, 84, Way.GUESSING), new Round(1, 50, 30, Way.FINDING));

    /** Of the time that the order has, for the rounds that are judged by guesses alone. @source PRACTICE own measure */
    private static final double GUESSES_RATIO = 0.74;

    private static final int FEW_TRIPS = 10;
    private static final int ROUGH_DAYS = 120;

    /** How far first orders fill up, in hundredths of the tank; one after the other. */
    private static final List<Integer> FIRST_FUEL_PERCENT = List.of(68, 76, 85, 94);

    private final Lanes lanes;
    private final List<Round> rounds;
    private final Watch watch;
    private int built;
    private boolean cut;

    /** What was nearest before, to be crossed with what another search begins with. */
    private List<Search> known = List.of();

    Tournament(Lanes lanes, List<Round> rounds, Watch watch) {
        this.lanes = lanes;
        this.rounds = rounds;
        this.watch = watch;
    }

    /** Rounds for so many days in all. */
    static List<Round> whole(DayTable table, int days) {
        if (table.trips.length <= FEW_TRIPS) {
            return OF_FEW_TRIPS;
        }
        if (table.hasManyTrips()) {
            return WHOLE;
        }
        if (table.isAllHookedUpAtOnePlace()) {
            return days >= LONG_DAYS ? LONG : WHOLE;
        }
        return CROSSED;
    }

    /** The time that a search may take, asked on every lane; and what is told how far it is, on the first. */
    record Watch(TimeGone gone, DoubleConsumer progress) {
        /** Rounds of guesses end early, so that a cut search still ends on days whose ways are found. */
        TimeGone gone(Round round) {
            return round.finds() ? gone : gone.first(GUESSES_RATIO);
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
     * @param days what shares are of, those of the first orders not counted
     */
    Wish best(int days, SplittableRandom random) {
        int starters = rounds.get(0).starters();
        int levels = Math.min(FIRST_FUEL_PERCENT.size(), starters);
        @Nullable Search[] begun = new Search[starters];
        // With many trips each fuel level once, then the two from which the best came in turn.
        begin(begun, 0, levels, new Work(days, random));
        begin(begun, levels, starters, new Work(days, random));
        List<Search> entrants = Stream.of(begun).filter(Objects::nonNull).toList();
        cut |= entrants.size() < starters;
        built += entrants.size() * ROUGH_DAYS;
        count(entrants);
        for (int i = 1; i < rounds.size(); i++) {
            Work work = new Work(days, random);
            if (rounds.get(i).way() == Way.CROSSING) {
                entrants = cross(i, entrants, work);
            } else {
                entrants = goOn(i, entrants, work);
                count(entrants);
            }
        }
        while (cut && !watch.gone().isOver()) {
            // Rounds that were cut short leave the last one time that is there for it.
            entrants = goOn(rounds.size() - 1, entrants, new Work(days, random));
            count(entrants);
        }
        known = Stream.concat(entrants.stream(), known.stream()).toList();
        return cheapest(entrants).best();
    }

    /** Lets go of what was nearest before: what two searches could not mend would only draw the next one to it. */
    void forget() {
        known = List.of();
    }

    /** Whether what was found nearest, flown too late where it must, leaves out one at most that may be flown. */
    boolean isNearlyAll() {
        Decoder decoder = lanes.first();
        decoder.decodeSoft(bestOf(known, 1).get(0).near());
        Run run = decoder.run();
        return run.countDropped() <= run.table.countNeverFlown() + 1;
    }

    private record Work(int days, SplittableRandom random) {
        SplittableRandom[] split(int count) {
            return Stream.generate(random::split).limit(count).toArray(SplittableRandom[]::new);
        }
    }

    private void count(List<Search> searches) {
        for (Search search : searches) {
            built += search.built();
            cut |= search.wasCut();
        }
    }

    /**
     * First orders and the searches from them in turns: a tournament cut early has searched all the same. The very
     * first is made in any case.
     */
    private void begin(@Nullable Search[] begun, int from, int until, Work work) {
        SplittableRandom[] randoms = work.split(2 * until);
        TimeGone gone = watch.gone(rounds.get(0));
        List<Search> known = Stream.of(begun).filter(Objects::nonNull).toList();
        lanes.each(
                from,
                until,
                (i, decoder) -> {
                    if (i > 0 && gone.isOver()) {
                        return;
                    }
                    tell(decoder, 0, (double) i / until);
                    DayTable table = decoder.run().table;
                    Wish start =
                            new RoughSearch(table, decoder)
                                    .find(
                                            firstLean(table, known, i),
                                            randoms[2 * i],
                                            ROUGH_DAYS,
                                            gone::isOver);
                    begun[i] = new Search(decoder, start);
                    run(begun[i], new Turn(0, i), new Work(work.days(), randoms[2 * i + 1]));
                });
    }

    private List<Search> cross(int round, List<Search> first, Work work) {
        Round how = rounds.get(round);
        List<Search> before = known;
        List<Search> pool = nearest(how, first, List.of());
        TimeGone gone = watch.gone(how);
        int times =
                Math.max(
                        LEAST_CROSSINGS, Math.min(MOST_CROSSINGS, work.days() / DAYS_FOR_CROSSING));
        long all = (long) work.days() * how.percent() / 100;
        int each = (int) Math.max(1, all / times / CROSSED_AT_ONCE);
        for (int i = 0; i < times && !gone.isOver(); i++) {
            tell(lanes.first(), round, (double) i / times);
            Search[] crossed = new Search[CROSSED_AT_ONCE];
            SplittableRandom[] randoms = work.split(crossed.length);
            List<Search> from = pool;
            double shareRatio = 1.0 / (times - i);
            lanes.each(
                    0,
                    crossed.length,
                    (k, decoder) -> {
                        Wish start = crossed(decoder.run().table, from, randoms[k]);
                        crossed[k] = new Search(decoder, start);
                        TimeGone own =
                                gone.ofWhatIsLeft(shareRatio / lanes.turnsFrom(k, crossed.length));
                        crossed[k].run(randoms[k], each, new Search.Manner(how.hotS(), false, own));
                    });
            count(List.of(crossed));
            pool = nearest(how, pool, List.of(crossed));
            if (i + 1 == times / 2) {
                // Joined sooner, what was found before would leave nothing of what is new.
                pool = nearest(how, pool, before);
            }
        }
        cut |= gone.isOver();
        known = pool;
        return pool;
    }

    /** Of two that are known, the first more often a good one. */
    private static Wish crossed(DayTable table, List<Search> from, SplittableRandom random) {
        int one = Math.min(random.nextInt(from.size()), random.nextInt(from.size()));
        int other = random.nextInt(Math.max(1, from.size() - 1));
        other += other >= one && from.size() > 1 ? 1 : 0;
        return Crossing.of(table, from.get(one).near(), from.get(other).near(), random);
    }

    /** The nearest of both, of equally near ones the first. */
    private static List<Search> nearest(Round how, List<Search> some, List<Search> more) {
        Map<Long, Search> apart = new TreeMap<>();
        Stream.concat(some.stream(), more.stream())
                .forEach(one -> apart.putIfAbsent(one.nearCents(), one));
        return bestOf(List.copyOf(apart.values()), how.starters());
    }

    private List<Search> goOn(int round, List<Search> before, Work work) {
        Round next = rounds.get(round);
        // Where it is over already, all that is still found are the ways of the best.
        boolean last = next.finds() && watch.gone(next).isOver();
        List<Search> entrants = last ? List.of(cheapest(before)) : bestOf(before, next.starters());
        Search[] gone = new Search[entrants.size()];
        SplittableRandom[] randoms = work.split(gone.length);
        lanes.each(
                0,
                gone.length,
                (i, decoder) -> {
                    tell(decoder, round, (double) i / gone.length);
                    gone[i] = new Search(decoder, entrants.get(i));
                    run(gone[i], new Turn(round, i), new Work(work.days(), randoms[i]));
                });
        return List.of(gone);
    }

    /** One search of a round, by its number in it. */
    private record Turn(int round, int number) {}

    private void run(Search search, Turn turn, Work work) {
        Round round = rounds.get(turn.round());
        long all = (long) work.days() * round.percent() / 100;
        search.run(
                work.random(),
                (int) Math.max(1, all / round.starters()),
                new Search.Manner(
                        round.hotS(),
                        round.finds(),
                        watch.gone(round).ofWhatIsLeft(shareRatio(turn))));
    }

    /** Of the work that one lane still has in rounds that are judged alike, how much this turn is. */
    private double shareRatio(Turn turn) {
        Round round = rounds.get(turn.round());
        double own = (double) round.percent() / round.starters();
        double left = own * lanes.turnsFrom(turn.number(), round.starters());
        for (Round later : rounds.subList(turn.round() + 1, rounds.size())) {
            if (later.finds() == round.finds()) {
                left +=
                        later.percent()
                                * lanes.turnsFrom(0, later.starters())
                                / (double) later.starters();
            }
        }
        return own / left;
    }

    private void tell(Decoder decoder, int round, double doneRatio) {
        if (decoder == lanes.first()) {
            watch.progress().accept((round + doneRatio) / rounds.size());
        }
    }

    private Lean firstLean(DayTable table, List<Search> known, int number) {
        Lean lean = Lean.filling(table, firstFuelKg(table, known, number));
        return rounds == BESIDE && number % 2 == 1 ? lean.walking() : lean;
    }

    private static int firstFuelKg(DayTable table, List<Search> known, int number) {
        if (!table.hasManyTrips()) {
            return Lean.FIRST_FUEL_KG;
        }
        int level = number;
        if (!known.isEmpty()) {
            Search good = bestOf(known, 2).get(number % Math.min(2, known.size()));
            level = known.indexOf(good);
        }
        return FIRST_FUEL_PERCENT.get(level) * (int) table.fuel.usableKg() / 100;
    }

    private static Search cheapest(List<Search> entrants) {
        return entrants.stream().min(Comparator.comparingLong(Search::bestCents)).orElseThrow();
    }

    /** Those nearest to a good day. */
    private static List<Search> bestOf(List<Search> entrants, int count) {
        return entrants.stream()
                .sorted(
                        Comparator.comparingLong(Search::nearCents)
                                .thenComparingLong(Search::bestCents))
                .limit(count)
                .toList();
    }
}
