package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
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

    /** A share is one of so many of all days; five look for the fewest flying minutes, one at each other rate. */
    private static final int SHARES = 6;

    private final DayTable table;
    private final Lanes lanes;
    private final Decoder decoder;
    private final BooleanSupplier stop;
    private volatile boolean cut;

    Front(DayTable table, Lanes lanes, BooleanSupplier stop) {
        this.table = table;
        this.lanes = lanes;
        this.decoder = lanes.first();
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
     * One search at another rate.
     *
     * @param shares of the days that are built
     * @param anew from first orders of its own, else from the day known that is cheapest at that rate
     */
    private record Look(int percent, int shares, boolean anew) {}

    /**
     * The days of the same trips that none beats in both flying and finish without costing more; fewest flying
     * first. The first wish is among those compared, so the cheapest of them costs no more.
     *
     * @param days what shares are of
     */
    List<Point> find(Wish first, int days, SplittableRandom random) {
        List<Point> all = new ArrayList<>();
        all.add(point(first, 100));
        boolean[] dropped = decoder.run().dropped.clone();
        int leftOut = decoder.run().countDropped();
        for (List<Look> pair : looks()) {
            if (stop.getAsBoolean()) {
                cut = true;
                break;
            }
            Wish[] found = new Wish[pair.size()];
            List<SplittableRandom> randoms = pair.stream().map(look -> random.split()).toList();
            List<Point> known = List.copyOf(all);
            lanes.each(
                    0,
                    found.length,
                    (i, lane) -> {
                        Look look = pair.get(i);
                        lane.setRates(table.rates.withFlying(look.percent()));
                        int share = Math.max(1, look.shares() * days / SHARES);
                        found[i] =
                                look.anew()
                                        ? anew(lane, share, randoms.get(i))
                                        : better(lane, known, share, randoms.get(i));
                        lane.setRates(table.rates);
                    });
            for (int i = 0; i < found.length; i++) {
                Point point = point(found[i], pair.get(i).percent());
                if (decoder.run().countDropped() < leftOut) {
                    // Days of fewer lifts are none to choose beside it.
                    all.clear();
                    dropped = decoder.run().dropped.clone();
                    leftOut = decoder.run().countDropped();
                }
                if (Arrays.equals(decoder.run().dropped, dropped)) {
                    all.add(point);
                }
            }
        }
        return kept(all);
    }

    boolean wasCut() {
        return cut;
    }

    private Wish better(Decoder lane, List<Point> known, int days, SplittableRandom random) {
        Search search = new Search(lane, cheapest(known, lane.rates()).wish());
        search.run(random, days, new Search.Manner(HOT_S, true, stop));
        note(search.wasCut());
        return search.best();
    }

    private Wish anew(Decoder lane, int days, SplittableRandom random) {
        Tournament.Watch watch = new Tournament.Watch(TimeGone.once(stop), done -> {});
        Tournament tournament = new Tournament(Lanes.of(lane), Tournament.BESIDE, watch);
        Wish best = tournament.best(days, random);
        note(tournament.wasCut());
        return best;
    }

    private void note(boolean wasCut) {
        if (wasCut) {
            cut = true;
        }
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

    /** Side by side in pairs. */
    private List<List<Look>> looks() {
        if (table.rates.flyingCents() == 0) {
            return List.of();
        }
        Look known = new Look(LEAST_PERCENT, 1, false);
        List<List<Look>> all = new ArrayList<>();
        all.add(List.of(new Look(LEAST_PERCENT, 2, true), new Look(LEAST_PERCENT, 2, false)));
        Look middle = new Look(MIDDLE_PERCENT, 1, false);
        // Then flying costs no more than standing: only the finish counts.
        int finishPercent = (int) (100 * table.rates.standingCents() / table.rates.flyingCents());
        if (finishPercent < 100) {
            all.add(List.of(middle, new Look((100 + finishPercent) / 2, 1, false)));
            all.add(List.of(new Look(finishPercent, 1, false), known));
        } else {
            all.add(List.of(middle, known));
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
