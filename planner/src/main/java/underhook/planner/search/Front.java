package underhook.planner.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/** Looks on from a day for others that fly less or finish earlier: the same search at other rates. */
final class Front {
    /** A flying minute at so much of its own rate: what finds the fewest flying minutes, and a middle way. */
    private static final int LEAST_PERCENT = 2000;

    private static final int MIDDLE_PERCENT = 300;

    private static final double HOT_S = 18;

    /** Of all days: three for the fewest flying minutes, one for each other rate. */
    private static final int SHARES = 6;

    private final DayTable table;
    private final Decoder decoder;
    private final BooleanSupplier stop;

    Front(DayTable table, Decoder decoder, BooleanSupplier stop) {
        this.table = table;
        this.decoder = decoder;
        this.stop = stop;
    }

    /** One wish with the share of the flying rate at which it was found. */
    record Point(
            Wish wish,
            int flyingRatePercent,
            long flownS,
            long finishS,
            long comfortCents,
            long cents) {}

    /**
     * The days that none beats in both flying and finish without costing more, and leaves out no more; fewest flying first. The first wish
     * is among those compared, so the cheapest of them costs no more.
     *
     * @param days how many are built in all; half of them look for the fewest flying minutes, mostly from first
     *     orders of their own
     */
    List<Point> find(Wish first, int days, SplittableRandom random) {
        List<Point> all = new ArrayList<>();
        all.add(point(first, 100));
        long least = decoder.run().countDropped();
        for (int percent : percents()) {
            if (stop.getAsBoolean()) {
                break;
            }
            Rates rates = table.rates.withFlying(percent);
            List<Wish> found = new ArrayList<>();
            found.add(better(cheapest(all, rates).wish(), rates, days / SHARES, random));
            if (percent == LEAST_PERCENT) {
                found.add(anew(rates, 2 * days / SHARES, random));
            }
            for (Wish wish : found) {
                Point point = point(wish, percent);
                if (decoder.run().countDropped() == least) {
                    all.add(point);
                }
            }
        }
        return kept(all);
    }

    private Wish better(Wish from, Rates rates, int days, SplittableRandom random) {
        decoder.setRates(rates);
        Search search = new Search(decoder, from);
        search.run(random.split(), Math.max(1, days), new Search.Manner(HOT_S, true, stop));
        decoder.setRates(table.rates);
        return search.best();
    }

    private Wish anew(Rates rates, int days, SplittableRandom random) {
        decoder.setRates(rates);
        Wish best =
                new Tournament(
                                table,
                                decoder,
                                Tournament.Rounds.BESIDE,
                                new Tournament.Watch(stop, done -> {}))
                        .best(days, random.split());
        decoder.setRates(table.rates);
        return best;
    }

    private Point cheapest(List<Point> points, Rates rates) {
        return points.stream()
                .min(
                        Comparator.comparingLong(
                                one ->
                                        rates.cents(
                                                        one.flownS(),
                                                        one.finishS() - table.rules.startS(),
                                                        0)
                                                + one.comfortCents()))
                .orElseThrow();
    }

    /** The cheapest of them by the job's own rates. */
    static Point cheapest(List<Point> points) {
        return points.stream().min(Comparator.comparingLong(Point::cents)).orElseThrow();
    }

    private List<Integer> percents() {
        List<Integer> all = new ArrayList<>();
        if (table.rates.flyingCents() > 0) {
            all.add(LEAST_PERCENT);
            all.add(MIDDLE_PERCENT);
            // Then flying costs no more than standing: only the finish counts.
            int finishPercent =
                    (int) (100 * table.rates.standingCents() / table.rates.flyingCents());
            if (finishPercent < 100) {
                all.add((100 + finishPercent) / 2);
                all.add(finishPercent);
            }
        }
        return all;
    }

    private Point point(Wish wish, int percent) {
        long cents = decoder.decode(wish, null);
        // What keeps the search from dropping loads is no money that anybody pays.
        long paid = cents - decoder.run().countDropped() * Rates.DROPPED_CENTS;
        Run run = decoder.run();
        return new Point(wish, percent, run.flightS, run.timeS, run.comfortCents, paid);
    }

    private static List<Point> kept(List<Point> all) {
        List<Point> sorted =
                all.stream()
                        .sorted(
                                Comparator.comparingLong(Point::flownS)
                                        .thenComparingLong(Point::finishS)
                                        .thenComparingLong(Point::comfortCents)
                                        .thenComparingLong(Point::flyingRatePercent))
                        .toList();
        List<Point> kept = new ArrayList<>();
        for (Point point : sorted) {
            boolean beaten =
                    kept.stream()
                            .anyMatch(
                                    less ->
                                            less.finishS() <= point.finishS()
                                                    && (less.comfortCents() <= point.comfortCents()
                                                            || less.cents() <= point.cents()));
            if (!beaten) {
                kept.add(point);
            }
        }
        return kept;
    }
}
