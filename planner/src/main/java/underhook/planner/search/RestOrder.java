package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import underhook.core.plan.StepKind;

/**
 * Orders the rest of a day anew, near an order that people know already. Not safe for threads.
 *
 * <p>The first answer is the known order, flown from how the day stands now. A better one is searched from
 * there; each trip that leaves its place in the known order has a price.
 */
public final class RestOrder {
    /** What a trip that leaves its place costs, minutes of everything. @source PRACTICE own choice */
    private static final long STRAY_MINUTES = 3;

    private static final double HOT_S = 54;

    /** Orders of their own from which a search begins besides: a day may be so changed that none is near. */
    private static final int OTHER_STARTS = 4;

    private static final int ROUGH_DAYS = 120;

    /** How long a trip may wait while another could be flown, s. @source PRACTICE own choice */
    private static final List<Long> PATIENCES_S = List.of(1800L, 600L, 60L);

    /**
     * An order that people know.
     *
     * @param tokens what is done in turn: trips by number, from their count on each team to be flown, then a
     *     rest, then fuel
     * @param teamOf for each place the team that works there; {@link DayTable#NONE} where that is not known:
     *     the one that may do most of what is to be done there comes
     * @param lines for each trip its line; {@link DayTable#NONE} where any will do
     * @param refuelToKg how far is filled up at each refuelling to come, kg; at least one
     * @param walksTo places to which people walk, however far
     * @param steps as the day has them; empty where that is not known
     * @param finishS when that day ends, s
     */
    public record Kept(
            List<Integer> tokens,
            List<Integer> teamOf,
            List<Integer> lines,
            List<Integer> refuelToKg,
            Set<Integer> walksTo,
            List<Step> steps,
            long finishS) {
        /**
         * Something that the machine does.
         *
         * @param what the trip of a lift, {@link DayTable#NONE} when it is not flown any more; the team of a flight of
         *     people
         * @param to where it ends
         * @param line fitted during it, after a line change the new one
         * @param fuelKg after it
         */
        public record Step(StepKind kind, int what, int to, int line, double fuelKg, long lastsS) {}

        public Kept(
                List<Integer> tokens,
                List<Integer> teamOf,
                List<Integer> lines,
                List<Integer> refuelToKg) {
            this(tokens, teamOf, lines, refuelToKg, Set.of());
        }

        public Kept(
                List<Integer> tokens,
                List<Integer> teamOf,
                List<Integer> lines,
                List<Integer> refuelToKg,
                Set<Integer> walksTo) {
            this(tokens, teamOf, lines, refuelToKg, walksTo, List.of(), DayTable.NEVER_S);
        }

        public Kept {
            steps = List.copyOf(steps);
            walksTo = Set.copyOf(walksTo);
            tokens = List.copyOf(tokens);
            teamOf = List.copyOf(teamOf);
            lines = List.copyOf(lines);
            refuelToKg = List.copyOf(refuelToKg);
            if (refuelToKg.isEmpty()) {
                throw new IllegalArgumentException("refuelToKg must not be empty.");
            }
        }
    }

    private final DayTable table;
    private final @Nullable Midday midday;
    private final Decoder decoder;
    private final Kept order;
    private final Wish kept;
    private final int[] rank;

    private RestOrder(DayTable table, @Nullable Midday midday, Kept order) {
        this.table = table;
        this.midday = midday;
        this.decoder = new Decoder(table, midday);
        this.order = order;
        this.kept = wish(order);
        this.rank = new int[table.trips.length];
        int next = 0;
        for (int token : kept.tokens) {
            if (token < rank.length) {
                rank[token] = next++;
            }
        }
    }

    /** Of what is left of a day. */
    public static RestOrder of(DayTable table, Midday midday, Kept order) {
        return new RestOrder(table, midday, order);
    }

    /** Of a whole day from the morning on. */
    public static RestOrder ofDay(DayTable table, Kept order) {
        return new RestOrder(table, null, order);
    }

    private Wish wish(Kept known) {
        int[] tokens = new int[known.tokens().size() + table.trips.length];
        boolean[] named = new boolean[table.trips.length];
        int count = 0;
        for (int token : known.tokens()) {
            tokens[count++] = token;
            if (token < named.length) {
                named[token] = true;
            }
        }
        for (int trip = 0; trip < named.length; trip++) {
            if (!named[trip]) {
                tokens[count++] = trip;
            }
        }
        Wish wish = new Wish(Arrays.copyOf(tokens, count), teamOf(known), table.trips.length);
        for (int trip = 0; trip < named.length; trip++) {
            wish.line[trip] = known.lines().get(trip);
        }
        known.walksTo().forEach(place -> wish.walksTo[place] = true);
        List<Integer> levels = known.refuelToKg();
        for (int i = 0; i < Wish.LEVELS; i++) {
            wish.refuelToKg[i] = levels.get(Math.min(i, levels.size() - 1));
        }
        return wish;
    }

    /** A place without a team would lose its trips. */
    private int[] teamOf(Kept known) {
        int[] teamOf = Lean.firstTeams(table);
        for (int place = 0; place < teamOf.length; place++) {
            int team = known.teamOf().get(place);
            teamOf[place] = team >= 0 ? team : teamOf[place];
        }
        return teamOf;
    }

    /**
     * The known order as it is known, with its stops, each lift as soon as may be. Where one without them is better by
     * more than a trip that leaves its place costs, it is that.
     */
    public Ordered first() {
        Ordered known = followed();
        boolean asGood =
                known != null
                        && known.finishS() <= order.finishS()
                        && fliesAll(known)
                        && dropped(known) <= countLost();
        if (known != null && asGood) {
            return known;
        }
        Ordered free = withOwnStops();
        return known != null && known.cents() <= free.cents() + strayCents(1) ? known : free;
    }

    /** Whether a day flies every lift of the known one. */
    private boolean fliesAll(Ordered day) {
        return order.steps().stream()
                .filter(step -> step.kind() == StepKind.ROTATION)
                .allMatch(step -> step.what() >= 0 && day.isFlown(step.what()));
    }

    private @Nullable Ordered followed() {
        if (order.steps().isEmpty()) {
            return null;
        }
        DayLog log = new DayLog();
        OptionalLong cents = decoder.follow(order.steps(), kept, log);
        return cents.isPresent() ? Ordered.of(decoder.run(), log, cents.getAsLong()) : null;
    }

    /**
     * The known order with stops where it needs them, flown as soon as may be. Where a trip of it were lost by waiting
     * for another one, what need not wait is flown meanwhile.
     */
    public Ordered withOwnStops() {
        Ordered best = build(kept);
        long fewest = countLost();
        for (long patienceS : PATIENCES_S) {
            if (dropped(best) <= fewest) {
                return best;
            }
            Wish patient = kept.copy();
            patient.patienceS = patienceS;
            Ordered other = build(patient);
            best = other.cents() < best.cents() ? other : best;
        }
        return best;
    }

    private static long dropped(Ordered day) {
        return day.releasedS().stream().filter(at -> at < 0).count();
    }

    /** Trips that no order flies: closed ones, and what waits for such. */
    private long countLost() {
        boolean[] lost = new boolean[table.trips.length];
        boolean more = true;
        while (more) {
            more = false;
            for (int k = 0; k < lost.length; k++) {
                if (!lost[k] && !isDone(k) && isLost(k, lost)) {
                    lost[k] = true;
                    more = true;
                }
            }
        }
        return IntStream.range(0, lost.length).filter(k -> lost[k]).count();
    }

    private boolean isLost(int trip, boolean[] lost) {
        return table.waitsForLeftOut(trip)
                || table.windowEndS(trip) < (midday == null ? 0 : midday.timeS())
                || (midday != null && midday.closed().contains(trip))
                || table.trips[trip].after().stream().anyMatch(after -> lost[after.trip()]);
    }

    /**
     * The best of searches of so many days each, from the known order and from a few others; never worse than
     * the known one.
     *
     * @param seed the same seed gives the same day unless it is stopped
     * @param stop asked now and then; the best so far is returned once it says true
     */
    public Ordered better(long seed, int days, BooleanSupplier stop) {
        table.forget();
        if (table.trips.length == 0) {
            // What came left nothing that may be flown.
            return first();
        }
        Wish best = best(new SplittableRandom(seed), days, new Looking(this::strayCents, stop));
        Ordered known = first();
        Ordered found = build(best);
        return found.cents() + strayCents(best) < known.cents() ? found : known;
    }

    /**
     * The best for an aim of the same searches, in which no trip is bound to its place: nobody knows the order yet. It
     * may cost more than the known one.
     */
    public Ordered aimed(long seed, int days, Aim aim, BooleanSupplier stop) {
        table.forget();
        if (table.trips.length == 0) {
            return first();
        }
        decoder.setRates(table.rates.withFlying(aim.flyingPercent()));
        Looking looking = new Looking(wish -> aim.cents(decoder.run()), stop);
        Wish best = best(new SplittableRandom(seed), days, looking);
        decoder.setRates(table.rates);
        return build(best);
    }

    /** What a wish costs besides, asked when its day was just built, and when to end. */
    private record Looking(ToLongFunction<Wish> besidesCents, BooleanSupplier stop) {}

    private Wish best(SplittableRandom random, int days, Looking looking) {
        Search best = search(kept, random, days, looking);
        RoughSearch rough = new RoughSearch(table, decoder);
        for (int i = 0; i < OTHER_STARTS && !looking.stop().getAsBoolean(); i++) {
            Wish start = rough.find(random.split(), ROUGH_DAYS, looking.stop());
            Search other = search(start, random, days, looking);
            best = other.bestCents() < best.bestCents() ? other : best;
        }
        return best.best();
    }

    private Search search(Wish start, SplittableRandom random, int days, Looking looking) {
        Search search = new Search(decoder, start, looking.besidesCents());
        search.run(random.split(), days, new Search.Manner(HOT_S, true, looking.stop()));
        return search;
    }

    /** The known order with one trip flown straight after another; first of all when that is none. */
    public Ordered moved(int trip, int after) {
        Wish wish = kept.copy();
        int at = 0;
        int[] without = new int[wish.tokens.length - 1];
        for (int token : wish.tokens) {
            if (token != trip) {
                without[at++] = token;
            }
        }
        int to = 0;
        for (int i = 0; i < without.length; i++) {
            to = without[i] == after ? i + 1 : to;
        }
        System.arraycopy(without, 0, wish.tokens, 0, to);
        wish.tokens[to] = trip;
        System.arraycopy(without, to, wish.tokens, to + 1, without.length - to);
        return build(wish);
    }

    /** What is behind the last lift is done for none. */
    private Ordered build(Wish wish) {
        Ordered whole = built(wish);
        if (whole.events().isEmpty() || !isStop(whole.events().get(whole.events().size() - 1))) {
            return whole;
        }
        Ordered shorter = built(withoutLastStops(wish, whole));
        return shorter.cents() < whole.cents() ? shorter : whole;
    }

    private Ordered built(Wish wish) {
        DayLog log = new DayLog();
        long cents = decoder.decode(wish, log);
        return Ordered.of(decoder.run(), log, cents);
    }

    private static boolean isStop(DayEvent event) {
        return event.kind() != StepKind.ROTATION && event.kind() != StepKind.CREW_MOVE;
    }

    /** The same wish without stops behind the last trip that is flown. */
    private Wish withoutLastStops(Wish wish, Ordered day) {
        int last = -1;
        for (int i = 0; i < wish.tokens.length; i++) {
            int token = wish.tokens[i];
            last = token < rank.length && flies(day, token) ? i : last;
        }
        int[] tokens = new int[wish.tokens.length];
        int count = 0;
        for (int i = 0; i < wish.tokens.length; i++) {
            if (i <= last || wish.tokens[i] < rank.length) {
                tokens[count++] = wish.tokens[i];
            }
        }
        Wish shorter = wish.copy();
        shorter.tokens = Arrays.copyOf(tokens, count);
        return shorter;
    }

    private long strayCents(Wish wish) {
        return strayCents(strays(wish.tokens));
    }

    private long strayCents(int strays) {
        return STRAY_MINUTES * Math.max(1, table.rates.minuteCents()) * strays;
    }

    /**
     * How many trips left must move for the known order to become another.
     *
     * @source DERIVED all but a longest row of trips whose order is kept
     */
    private int strays(int[] tokens) {
        int[] ends = new int[rank.length];
        int longest = 0;
        int left = 0;
        for (int token : tokens) {
            if (token >= rank.length || isDone(token)) {
                continue;
            }
            left++;
            int at = Arrays.binarySearch(ends, 0, longest, rank[token]);
            int place = at < 0 ? -at - 1 : at;
            ends[place] = rank[token];
            longest = Math.max(longest, place + 1);
        }
        return left - longest;
    }

    private boolean isDone(int trip) {
        return midday != null && midday.releasedS().get(trip) >= 0;
    }

    /** Whether a day flies a trip from now on. */
    public boolean flies(Ordered day, int trip) {
        return day.isFlown(trip) && !isDone(trip);
    }

    /** What a day flies from now on, in the trips that it flies it in. */
    public HookChoices asFlown(Ordered day) {
        return new HookChoices(
                IntStream.range(0, table.trips.length)
                        .filter(trip -> flies(day, trip))
                        .mapToObj(trip -> List.of(List.of(trip)))
                        .toList());
    }

    /**
     * What no order ends before that flies certain loads from now on, s: each is hooked up, flown and set down at
     * its quickest, and from all but the last the machine goes empty to the nearest hook-up of another.
     *
     * @param trips all that they may hang together in, by the numbers of the hooks
     * @param hooks how they may hang together
     * @source DERIVED a sum of least times, of each group of loads the least of its ways; waits, fuel and people are
     *     left out
     */
    public long finishBoundS(DayTable trips, HookChoices hooks) {
        double sumS = midday == null ? trips.rules.startS() : midday.timeS();
        double longestEmptyS = 0;
        int[] all =
                hooks.groups().stream()
                        .flatMap(List::stream)
                        .flatMapToInt(way -> way.stream().mapToInt(trip -> trip))
                        .distinct()
                        .toArray();
        double[] emptyS = new double[trips.trips.length];
        double[] liftS = new double[trips.trips.length];
        for (int trip : all) {
            TripRow row = trips.trips[trip];
            emptyS[trip] = leastOnS(trips, all, trip);
            liftS[trip] = row.hookUpS() + leastLoadedS(trips, trip) + row.setDownS() + emptyS[trip];
            longestEmptyS = Math.max(longestEmptyS, emptyS[trip]);
        }
        for (List<List<Integer>> ways : hooks.groups()) {
            sumS +=
                    ways.stream()
                            .mapToDouble(way -> way.stream().mapToDouble(trip -> liftS[trip]).sum())
                            .min()
                            .orElse(0);
        }
        return (long) Math.floor(sumS - longestEmptyS);
    }

    private static double leastLoadedS(DayTable trips, int trip) {
        return IntStream.range(0, trips.slots())
                .mapToDouble(slot -> trips.leastLoadedS(trip, slot))
                .min()
                .orElse(0);
    }

    /** Of a trip that no other follows nothing is said. */
    private static double leastOnS(DayTable trips, int[] all, int trip) {
        double least = Double.POSITIVE_INFINITY;
        for (int next : all) {
            for (int slot = 0; next != trip && slot < trips.slots(); slot++) {
                least =
                        Math.min(
                                least,
                                trips.leastEmptyS(
                                        trips.trips[trip].to(), trips.trips[next].from(), slot));
            }
        }
        return least < Double.POSITIVE_INFINITY ? least : 0;
    }
}
