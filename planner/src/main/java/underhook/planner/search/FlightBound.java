package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * A lower bound on the seconds in the air, over every order of the placed loads and every way of combining
 * them that is offered.
 *
 * <p>The machine's path is one chain: a trip, an empty way to the next hook-up, and so on. Three things are
 * kept of it, the rest is left free. Each trip and each way takes at least what it takes in the hour in which
 * it begins. The ways join ends to beginnings ({@link PlacePrices}), from each end only to what may follow it
 * ({@link Posts}, {@link Joins}), and the day ends only after what nothing must follow. And an hour, or several in a
 * row, hold only so much flying: what does not fit into the cheap hours has to be flown in dearer ones, breaks and
 * fuelling counted. That last rule is priced: for any price of an hour's seconds, the priced total less the price of
 * what the hours hold is a bound; the prices are improved step by step, and the best one is told.
 *
 * <p>People who cannot walk to where only they may work are flown there at least once ({@link CrewFlights}). How they are
 * flown decides from when they may work where ({@link TeamChain}), so each flight is priced with all trips of its team.
 */
final class FlightBound {
    private static final int STEPS = 60;

    /** Steps once nothing is left to be looked up. */
    private static final int LAST_STEPS = 600;

    /** How short steps have become when none was of use. */
    private static final double LAST_PACE_RATIO = 0.08;

    private static final int ROUNDS = 60;

    private final DayTable table;
    private final HourLeast least;
    private final List<List<List<Integer>>> choices;

    /** Of each group the choice that is cheapest at the prices last asked for. */
    private final List<List<Integer>> cheapest;

    private final HourRoom room;
    private final CrewFlights crews;
    private final boolean beginsAtStart;
    private final Posts posts;
    private final WaysOn waysOn;
    private final boolean[] placed;

    /** Seconds that the cheapest choices put into each hour. */
    private final double[] loadS;

    /** Of each group which team that must be flown alone may do it; none where that is not so. */
    private final int[] owner;

    /** In which hour each trip of the cheapest choices is cheapest. */
    private final int[] hourOf;

    /** What it is worth to be at each post. */
    private double[] worthS;

    private int[][] flow = new int[0][];

    FlightBound(DayTable table, HookChoices hooks) {
        this(table, hooks, HeldDay.free(table));
    }

    /**
     * @param held what every order has in common with a known day
     */
    FlightBound(DayTable table, HookChoices hooks, HeldDay held) {
        this(table, hooks, held, true);
    }

    private FlightBound(DayTable table, HookChoices hooks, HeldDay held, boolean ofDay) {
        this.table = table;
        this.choices = hooks.groups();
        this.cheapest = new ArrayList<>(choices.stream().map(group -> group.get(0)).toList());
        this.placed = hooks.placed(table.trips.length);
        boolean[] certain = hooks.certain(table.trips.length);
        this.least = new HourLeast(table, placed, new Earliest(table, certain), held);
        this.beginsAtStart = ofDay;
        this.crews =
                held.flights()
                        .map(flights -> new CrewFlights(least, hooks, flights))
                        .orElseGet(
                                () ->
                                        ofDay
                                                ? new CrewFlights(least, hooks)
                                                : CrewFlights.none(least, hooks));
        this.owner = new int[choices.size()];
        for (int group = 0; group < owner.length; group++) {
            owner[group] = owner(choices.get(group));
        }
        this.room = new HourRoom(table);
        this.loadS = new double[least.hours];
        this.hourOf = new int[table.trips.length];
        this.posts = new Posts(least, placed, new Joins(table, placed, certain, held));
        this.worthS = new double[posts.count()];
        this.waysOn = new WaysOn(posts, least.hours);
    }

    /** Of the trips and the ways between them from anywhere on the ground, as if nobody had to be flown. */
    static FlightBound ofTrips(DayTable table, HookChoices hooks) {
        return new FlightBound(table, hooks, HeldDay.free(table), false);
    }

    /**
     * The bound, s.
     *
     * @param knownS seconds in the air of a day that is known, which only guides the steps
     */
    double boundS(double knownS) {
        return boundS(knownS, () -> false);
    }

    /**
     * The same, as far as it is proven.
     *
     * @param stop says true when it must not be raised any more
     */
    double boundS(double knownS, BooleanSupplier stop) {
        if (choices.isEmpty()) {
            return 0;
        }
        double[] bestRoom = new double[room.count()];
        int steps = STEPS;
        for (int round = 0; round < ROUNDS && !stop.getAsBoolean(); round++) {
            room.setSpillS(longestHookUpS() + longestS());
            bestRoom = improvedRatio(bestLevelRatio(bestRoom), steps, knownS, stop);
            valueS(bestRoom);
            if (!makeExact(bestRoom)) {
                if (steps > STEPS) {
                    break;
                }
                steps = LAST_STEPS;
            }
        }
        room.setSpillS(longestHookUpS() + longestS());
        return Math.max(0, valueS(bestRoom) - HourLeast.ROUNDING_S);
    }

    /** The best of known prices and of those that make hours equally dear up to one of them. */
    private double[] bestLevelRatio(double[] knownRoomRatio) {
        double[] allS = dayInEachHourS();
        double[] bestRoom = knownRoomRatio;
        double best = valueS(knownRoomRatio);
        for (double levelS : allS) {
            double[] now = room.levelledRatio(allS, levelS);
            double value = valueS(now);
            if (value > best) {
                best = value;
                bestRoom = now;
            }
        }
        return bestRoom;
    }

    /** How long all trips and the ways back from them take, all flown in one hour; guides, proves nothing. */
    private double[] dayInEachHourS() {
        double[] allS = new double[least.hours];
        for (List<List<Integer>> group : choices) {
            for (int k : group.get(0)) {
                TripRow trip = table.trips[k];
                addTo(allS, hour -> least.tripS(k, hour));
                addTo(allS, hour -> least.emptyS(trip.to(), trip.from(), hour));
            }
        }
        return allS;
    }

    /** Adds what something takes in each hour; where it may not be flown, its least. */
    private static void addTo(double[] allS, IntToDoubleFunction eachS) {
        double leastS = HourLeast.NONE_S;
        for (int hour = 0; hour < allS.length; hour++) {
            leastS = Math.min(leastS, eachS.applyAsDouble(hour));
        }
        for (int hour = 0; hour < allS.length && leastS < HourLeast.NONE_S; hour++) {
            double oneS = eachS.applyAsDouble(hour);
            allS[hour] += oneS < HourLeast.NONE_S ? oneS : leastS;
        }
    }

    /** Prices moved step by step toward what the hours are asked for. */
    private double[] improvedRatio(
            double[] startRoomRatio, int steps, double knownS, BooleanSupplier stop) {
        double[] bestRoom = startRoomRatio;
        double[] now = startRoomRatio.clone();
        double best = 0;
        double pace = 1;
        for (int step = 0; step < steps && !stop.getAsBoolean(); step++) {
            double value = valueS(now);
            if (value > best) {
                best = value;
                bestRoom = now.clone();
            } else {
                pace *= Math.pow(LAST_PACE_RATIO, 1.0 / steps);
            }
            if (!room.step(now, loadS, pace * Math.max(1, knownS - value))) {
                break;
            }
        }
        return bestRoom;
    }

    /** The bound at given prices of the hours; leaves behind what each hour is loaded with. */
    private double valueS(double[] roomRatio) {
        double[] hourFactor = room.hourFactor(roomRatio);
        Arrays.fill(loadS, 0);
        worthS = worthOfPostsS(hourFactor);
        waysOn.price(hourFactor, worthS);
        double sum = beginningS() - worthS[posts.end()];
        for (int group = 0; group < choices.size(); group++) {
            sum += owner[group] < 0 ? cheapestCoverS(group, hourFactor, null) : 0;
        }
        double[] standingS = standingS();
        for (int team = 0; team < crews.count(); team++) {
            sum += cheapestFlightS(team, hourFactor, standingS);
        }
        for (List<Integer> cover : cheapest) {
            load(cover);
        }
        loadWays(hourFactor);
        return sum - room.costS(roomRatio);
    }

    /** What it is worth to be where the chain begins. */
    private double beginningS() {
        if (beginsAtStart) {
            return worthS[posts.start()];
        }
        double leastS = HourLeast.NONE_S;
        for (int place = 0; place < table.spots.length; place++) {
            if (table.spots[place].ground()) {
                int post = posts.standing(place);
                leastS = Math.min(leastS, post < 0 ? -HourLeast.NONE_S : worthS[post]);
            }
        }
        return leastS;
    }

    private double[] standingS() {
        double[] standingS = new double[table.spots.length];
        for (int place = 0; place < standingS.length; place++) {
            int post = posts.standing(place);
            standingS[place] = post < 0 ? 0 : worthS[post];
        }
        return standingS;
    }

    /** A flight of a team with all trips that it alone may do. */
    private double cheapestFlightS(int team, double[] hourFactor, double[] standingS) {
        double bestSum = Double.POSITIVE_INFINITY;
        CrewFlights.Flight best = crews.ofTeam(team).get(0);
        for (CrewFlights.Flight flight : crews.ofTeam(team)) {
            double sum =
                    crews.costS(flight, hourFactor, standingS)
                            + ownedS(team, hourFactor, flight.soonest());
            if (sum < bestSum) {
                bestSum = sum;
                best = flight;
            }
        }
        ownedS(team, hourFactor, best.soonest());
        crews.choose(team, best, hourFactor, loadS);
        return bestSum;
    }

    private double ownedS(int team, double[] hourFactor, TeamChain.@Nullable From soonest) {
        double sum = 0;
        for (int group = 0; group < owner.length; group++) {
            sum += owner[group] == team ? cheapestCoverS(group, hourFactor, soonest) : 0;
        }
        return sum;
    }

    private int owner(List<List<Integer>> group) {
        int first = crews.owner(group.get(0).get(0));
        return group.stream().flatMap(List::stream).allMatch(k -> crews.owner(k) == first)
                ? first
                : DayTable.NONE;
    }

    private double cheapestCoverS(
            int group, double[] hourFactor, TeamChain.@Nullable From soonest) {
        double bestSum = Double.POSITIVE_INFINITY;
        for (List<Integer> cover : choices.get(group)) {
            double sum = 0;
            for (int k : cover) {
                hourOf[k] = cheapestHour(k, hourFactor, soonest);
                sum += tripCostS(k, hourOf[k], hourFactor, soonest);
            }
            if (sum < bestSum) {
                bestSum = sum;
                cheapest.set(group, cover);
            }
        }
        return bestSum;
    }

    private void load(List<Integer> cover) {
        for (int k : cover) {
            loadS[hourOf[k]] += Math.min(least.tripS(k, hourOf[k]), HourLeast.NONE_S / 100);
            waysOn.load(posts.leaving(k), hourOf[k], loadS);
        }
    }

    /** A trip and the way on, less what it is worth to be where it is hooked up. */
    private double tripCostS(
            int k, int hour, double[] hourFactor, TeamChain.@Nullable From soonest) {
        if (soonest != null && !soonest.mayBegin(k, hour, least.lastHour(k, hour))) {
            return HourLeast.NONE_S;
        }
        return least.tripS(k, hour) * hourFactor[hour]
                + waysOn.costS(posts.leaving(k), hour)
                - worthS[posts.hooking(k)];
    }

    private int cheapestHour(int k, double[] hourFactor, TeamChain.@Nullable From soonest) {
        int best = 0;
        for (int hour = 1; hour < least.hours; hour++) {
            if (tripCostS(k, hour, hourFactor, soonest) < tripCostS(k, best, hourFactor, soonest)) {
                best = hour;
            }
        }
        return best;
    }

    private int cheapestHour(int from, int to, double[] hourFactor) {
        double[] wayS = posts.waysS(from, to);
        int best = 0;
        for (int hour = 1; hour < wayS.length; hour++) {
            if (wayS[hour] * hourFactor[hour] < wayS[best] * hourFactor[best]) {
                best = hour;
            }
        }
        return best;
    }

    private double[] worthOfPostsS(double[] hourFactor) {
        int[] surplus = new int[posts.count()];
        surplus[posts.start()]++;
        for (List<List<Integer>> group : choices) {
            for (int k : group.get(0)) {
                surplus[posts.leaving(k)]++;
                surplus[posts.hooking(k)]--;
            }
        }
        crews.addTo(surplus, posts);
        double[][] costS = new double[posts.count()][posts.count()];
        for (int a = 0; a < costS.length; a++) {
            Arrays.fill(costS[a], HourLeast.NONE_S);
            for (int b : posts.next(a)) {
                int hour = cheapestHour(a, b, hourFactor);
                costS[a][b] = posts.waysS(a, b)[hour] * hourFactor[hour];
            }
        }
        boolean[] ends = new boolean[posts.count()];
        ends[posts.end()] = true;
        PlacePrices found = new PlacePrices(costS, surplus, ends);
        double[] all = found.pricesS();
        flow = found.flow();
        return all;
    }

    private void loadWays(double[] hourFactor) {
        eachWay(
                hourFactor,
                (a, b, hour) -> {
                    if (!posts.isLeft(a)) {
                        loadS[hour] += flow[a][b] * posts.waysS(a, b)[hour];
                    }
                    return false;
                });
    }

    /** Something about an empty way from where the machine stands, in its cheapest hour. */
    private interface WayUse {
        boolean use(int from, int to, int hour);
    }

    private boolean eachWay(double[] hourFactor, WayUse use) {
        boolean any = false;
        for (int a = 0; a < flow.length; a++) {
            for (int b = 0; b < flow.length; b++) {
                if (flow[a][b] > 0) {
                    any |= use.use(a, b, cheapestHour(a, b, hourFactor));
                }
            }
        }
        return any;
    }

    private double longestHookUpS() {
        double longest = 0;
        for (TripRow trip : table.trips) {
            longest = Math.max(longest, (double) trip.hookUpS());
        }
        return longest;
    }

    /** The longest that a single piece of flying is counted as, s. */
    private double longestS() {
        double longest = 0;
        for (int k = 0; k < placed.length; k++) {
            for (int hour = 0; hour < least.hours && placed[k]; hour++) {
                double one = least.tripS(k, hour);
                longest = one < HourLeast.NONE_S ? Math.max(longest, one) : longest;
            }
        }
        return Math.max(longest, Math.max(posts.longestS(), crews.longestS()));
    }

    /** Makes exact what the bound rests on at these prices; whether anything was not. */
    private boolean makeExact(double[] roomRatio) {
        double[] hourFactor = room.hourFactor(roomRatio);
        boolean any = false;
        for (List<Integer> cover : cheapest) {
            for (int k : cover) {
                any |= least.wantTrip(k, hourOf[k]);
                any |= waysOn.wantExact(posts.leaving(k), hourOf[k]);
            }
        }
        any |= eachWay(hourFactor, posts::wantExact);
        any |= crews.wantExact(hourFactor);
        return least.makeExact() && any;
    }
}
