package underhook.planner.search;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/** Finds an order of the day: the best of a seeded search of so much work. */
public final class DayOrder {
    /** Of all days, how many hundredths look for others to choose from. */
    private static final int OTHERS_PERCENT = 40;

    /** A day that leaves out what may fit is searched anew so often; more than once only where little is missing. */
    private static final int MOST_AGAIN = 3;

    private DayOrder() {}

    /**
     * What came of a search.
     *
     * @param day the best day built
     * @param built how many days were built
     * @param cutShort whether it was stopped before its end
     * @param front days to choose from, fewest flying first, the best day among them
     */
    public record Found(Ordered day, int built, boolean cutShort, List<Offer> front) {
        public Found {
            front = List.copyOf(front);
        }
    }

    /**
     * A day that could be flown instead.
     *
     * @param comfortCents of its price, of refused comforts
     * @param flyingRatePercent the share of a flying minute's rate at which it is the cheapest that was found
     */
    public record Offer(
            long flownS,
            long finishS,
            long comfortCents,
            long cents,
            int flyingRatePercent,
            boolean chosen) {}

    /**
     * What ends a search.
     *
     * @param gone of the time in which a better day may be looked for
     * @param stop says true when no other day to choose from may be looked for either
     */
    public record Stops(TimeGone gone, BooleanSupplier stop) {
        public Stops(BooleanSupplier stop) {
            this(TimeGone.once(stop), stop);
        }
    }

    /** A day that is there before a better one is looked for: the plain order with its ways found. */
    public static final class First {
        private final DayTable table;
        private final @Nullable Wish wish;
        private final boolean fliesAny;

        private First(DayTable table, @Nullable Wish wish, boolean fliesAny) {
            this.table = table;
            this.wish = wish;
            this.fliesAny = fliesAny;
        }

        /** The day's. */
        public DayTable table() {
            return table;
        }

        /** Whether anything is flown in it. */
        public boolean fliesAny() {
            return fliesAny;
        }
    }

    /** Searches a day's order as long as is usual, or until it is stopped. */
    public static Found find(
            DayTable table, long seed, BooleanSupplier stop, DoubleConsumer progress) {
        return find(table, Effort.usual(seed), new Stops(stop), progress);
    }

    /**
     * Searches a day's order.
     *
     * @param effort the same table and effort give the same day
     * @param stops asked now and then; the best so far is returned once they say true
     * @param progress is told how far the search is, in [0, 1]
     */
    public static Found find(DayTable table, Effort effort, Stops stops, DoubleConsumer progress) {
        return find(new First(table, null, false), effort, stops, progress);
    }

    /** Makes a first day. What it asks for is not known to the search, which finds the same with it and without. */
    public static First first(DayTable table) {
        DayTable own = table.fork();
        Decoder decoder = new Decoder(own);
        own.startGuessing();
        Wish wish = new Greedy(own, decoder).order(Lean.none(own));
        own.stopGuessing();
        decoder.decode(wish, null);
        return new First(table, wish, decoder.run().countDropped() < table.trips.length);
    }

    /** The same with a first day, which is what a search cut short gives where it has found nothing better. */
    public static Found find(First first, Effort effort, Stops stops, DoubleConsumer progress) {
        DayTable table = first.table;
        table.forget();
        Lanes lanes = Lanes.of(table);
        int days = effort.days(table.trips());
        int others = days * OTHERS_PERCENT / 100;
        Tournament tournament =
                new Tournament(
                        lanes,
                        Tournament.whole(table, days - others),
                        new Tournament.Watch(stops.gone(), progress));
        SplittableRandom random = new SplittableRandom(effort.seed());
        Wish best = tournament.best(days - others, random);
        for (int i = 0; i < MOST_AGAIN && !tournament.wasCut(); i++) {
            // Where little time is left at a place, only some first orders lead to a day with all
            // in it.
            if (!leavesOut(lanes.first(), best) || (i > 0 && !tournament.isNearlyAll())) {
                break;
            }
            if (i > 0) {
                tournament.forget();
            }
            best = cheaper(lanes.first(), best, tournament.best(days - others, random));
        }
        if (tournament.wasCut() && first.wish != null) {
            best = cheaper(lanes.first(), best, first.wish);
        }
        Front beside = new Front(table, lanes, stops.stop());
        List<Front.Point> front = beside.find(best, others, random);
        Front.Point chosen = Front.cheapest(front);
        List<Offer> offers =
                front.stream()
                        .map(
                                one ->
                                        new Offer(
                                                one.flownS(),
                                                one.finishS(),
                                                one.comfortCents(),
                                                one.cents(),
                                                one.equals(chosen) ? 100 : one.flyingRatePercent(),
                                                one.equals(chosen)))
                        .toList();
        return new Found(
                build(lanes.first(), chosen.wish()),
                tournament.built(),
                tournament.wasCut() || beside.wasCut(),
                offers);
    }

    /** The plain order: at each step what can be let go soonest. */
    public static Ordered plain(DayTable table) {
        Decoder decoder = new Decoder(table);
        return build(decoder, new Greedy(table, decoder).plain());
    }

    /** What no order of the same trips goes below, s in the air. */
    public static double flightBoundS(DayTable table, Ordered day) {
        return flightBoundS(table, HookChoices.asFlown(day), day.flownS());
    }

    /**
     * What no order of the same loads goes below, s in the air: every leg at its cheapest hour, positioning and
     * the flights of people that cannot be done without included. Every way takes whole seconds, so it is whole too.
     *
     * @param hooks ways of combining the loads, over all of which it holds
     * @param knownS seconds in the air of a day that is known, which only guides
     */
    public static double flightBoundS(DayTable table, HookChoices hooks, long knownS) {
        return flightBoundS(table, hooks, knownS, () -> false);
    }

    /**
     * The same, as far as it is proven.
     *
     * @param stop says true when it must not be raised any more
     */
    public static double flightBoundS(
            DayTable table, HookChoices hooks, long knownS, BooleanSupplier stop) {
        return Math.ceil(new FlightBound(table, hooks).boundS((double) knownS, stop));
    }

    /**
     * What no order of the same trips flies less than in which people are flown from where to where the day flies them, s
     * in the air.
     *
     * @param stop says true when it must not be raised any more
     */
    public static double flightBoundWithPeopleS(DayTable table, Ordered day, BooleanSupplier stop) {
        HookChoices hooks = HookChoices.asFlown(day);
        return Math.ceil(
                new FlightBound(table, hooks, HeldDay.people(day))
                        .boundS((double) day.flownS(), stop));
    }

    /**
     * The same, and each trip and each of those flights begins in the hour of the weather in which the day begins it;
     * none where there is too much in one hour to look at every order.
     *
     * @param stop says true when it must not be raised any more
     */
    public static OptionalDouble flightBoundWithHoursS(
            DayTable table, Ordered day, BooleanSupplier stop) {
        OptionalDouble boundS = HeldOrders.boundS(table, day, stop);
        return boundS.isPresent()
                ? OptionalDouble.of(Math.ceil(boundS.getAsDouble() - HourLeast.ROUNDING_S))
                : boundS;
    }

    /**
     * When no order of the same trips is down before, s.
     *
     * @param flownS what no order flies less than, s
     */
    public static long finishBoundS(DayTable table, Ordered day, double flownS) {
        return finishBoundS(table, HookChoices.asFlown(day), flownS);
    }

    /**
     * When no order of the same loads is down before, s.
     *
     * @param hooks ways of combining the loads, over all of which it holds
     * @param flownS what no order flies less than, s
     */
    public static long finishBoundS(DayTable table, HookChoices hooks, double flownS) {
        return new FinishBound(table, hooks).finishS(flownS);
    }

    /** Whether a day leaves out what might be flown. */
    private static boolean leavesOut(Decoder decoder, Wish wish) {
        decoder.decode(wish, null);
        return decoder.run().countDropped() > decoder.run().table.countNeverFlown();
    }

    private static Wish cheaper(Decoder decoder, Wish one, Wish other) {
        return decoder.decode(other, null) < decoder.decode(one, null) ? other : one;
    }

    private static Ordered build(Decoder decoder, Wish wish) {
        DayLog log = new DayLog();
        long cents = decoder.decode(wish, log);
        return Ordered.of(decoder.run(), log, cents);
    }
}
