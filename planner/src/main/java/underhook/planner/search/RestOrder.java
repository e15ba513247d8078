package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

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

    /**
     * An order that people know.
     *
     * @param tokens what is done in turn: trips by number, from their count on each team to be flown, then a
     *     rest, then fuel
     * @param teamOf for each place the team that works there; {@link DayTable#NONE} where that is not known:
     *     the one that may do most of what is to be done there comes
     * @param lines for each trip its line; {@link DayTable#NONE} where any will do
     * @param refuelToKg how far is filled up at each refuelling to come, kg; at least one
     */
    public record Kept(
            List<Integer> tokens,
            List<Integer> teamOf,
            List<Integer> lines,
            List<Integer> refuelToKg) {
        public Kept {
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
    private final Wish kept;
    private final int[] rank;

    private RestOrder(DayTable table, @Nullable Midday midday, Kept order) {
        this.table = table;
        this.midday = midday;
        this.decoder = new Decoder(table, midday);
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

    private Wish wish(Kept order) {
        int[] tokens = new int[order.tokens().size() + table.trips.length];
        boolean[] named = new boolean[table.trips.length];
        int count = 0;
        for (int token : order.tokens()) {
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
        Wish wish = new Wish(Arrays.copyOf(tokens, count), teamOf(order), table.trips.length);
        for (int trip = 0; trip < named.length; trip++) {
            wish.line[trip] = order.lines().get(trip);
        }
        List<Integer> levels = order.refuelToKg();
        for (int i = 0; i < Wish.LEVELS; i++) {
            wish.refuelToKg[i] = levels.get(Math.min(i, levels.size() - 1));
        }
        return wish;
    }

    /** A place without a team would lose its trips. */
    private int[] teamOf(Kept order) {
        int[] teamOf = Lean.firstTeams(table);
        for (int place = 0; place < teamOf.length; place++) {
            int known = order.teamOf().get(place);
            teamOf[place] = known >= 0 ? known : teamOf[place];
        }
        return teamOf;
    }

    /** The known order, flown as soon as may be. */
    public Ordered first() {
        return build(kept);
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
        SplittableRandom random = new SplittableRandom(seed);
        Search best = search(kept, random, days, stop);
        RoughSearch rough = new RoughSearch(table, decoder);
        for (int i = 0; i < OTHER_STARTS && !stop.getAsBoolean(); i++) {
            Wish start = rough.find(random.split(), ROUGH_DAYS, stop);
            Search other = search(start, random, days, stop);
            best = other.bestCents() < best.bestCents() ? other : best;
        }
        return build(best.best());
    }

    private Search search(Wish start, SplittableRandom random, int days, BooleanSupplier stop) {
        Search search = new Search(decoder, start, this::strayCents);
        search.run(random.split(), days, new Search.Manner(HOT_S, true, stop));
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

    private Ordered build(Wish wish) {
        DayLog log = new DayLog();
        long cents = decoder.decode(wish, log);
        return Ordered.of(decoder.run(), log, cents);
    }

    private long strayCents(Wish wish) {
        return STRAY_MINUTES * Math.max(1, table.rates.minuteCents()) * strays(wish.tokens);
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

    /**
     * What no order of the trips that a day flies from now on ends before, s: each is hooked up, flown and set
     * down at its quickest, and from all but the last the machine goes empty to the nearest hook-up of
     * another.
     *
     * @source DERIVED a sum of least times; waits, fuel and people are left out
     */
    public long finishBoundS(Ordered day) {
        double sumS = midday == null ? table.rules.startS() : midday.timeS();
        double longestEmptyS = 0;
        for (int trip = 0; trip < table.trips.length; trip++) {
            if (day.isFlown(trip) && !isDone(trip)) {
                TripRow row = table.trips[trip];
                double emptyS = leastOnS(day, trip);
                sumS += row.hookUpS() + leastLoadedS(trip) + row.setDownS() + emptyS;
                longestEmptyS = Math.max(longestEmptyS, emptyS);
            }
        }
        return (long) Math.floor(sumS - longestEmptyS);
    }

    private double leastLoadedS(int trip) {
        double least = Double.POSITIVE_INFINITY;
        for (int slot = 0; slot < table.slots(); slot++) {
            least = Math.min(least, table.leastLoadedS(trip, slot));
        }
        return least;
    }

    private double leastOnS(Ordered day, int trip) {
        double least = Double.POSITIVE_INFINITY;
        for (int next = 0; next < table.trips.length; next++) {
            if (next != trip && day.isFlown(next) && !isDone(next)) {
                for (int slot = 0; slot < table.slots(); slot++) {
                    least =
                            Math.min(
                                    least,
                                    table.leastEmptyS(
                                            table.trips[trip].to(),
                                            table.trips[next].from(),
                                            slot));
                }
            }
        }
        return least < Double.POSITIVE_INFINITY ? least : 0;
    }
}
