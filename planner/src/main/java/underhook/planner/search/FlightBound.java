package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * A lower bound on the seconds in the air, over every order of the placed loads and every way of combining
 * them that is offered.
 *
 * <p>The machine's path is one chain: a trip, an empty way to the next hook-up, and so on. Three things are
 * kept of it, the rest is left free. Each trip and each way takes at least what it takes in the hour in which
 * it begins. The ways join ends to beginnings ({@link PlacePrices}). And an hour, or several in a row, hold
 * only so much flying: what does not fit into the cheap hours has to be flown in dearer ones, breaks and
 * fuelling counted. That last rule is priced: for any price of an hour's seconds, the priced total less the
 * price of what the hours hold is a bound; the placeS are improved step by step, and the best one is told.
 *
 * <p>People who cannot walk to where only they may work are flown there at least once.
 */
final class FlightBound {
    private static final int STEPS = 60;

    /** Steps once nothing is left to be looked up. */
    private static final int LAST_STEPS = 600;

    /** How short steps have become when none was of use. */
    private static final double LAST_PACE_RATIO = 0.08;

    private static final int ROUNDS = 60;

    /** Sums of seconds in floating point may be off by far less than this, s. */
    private static final double ROUNDING_S = 0.01;

    private final DayTable table;
    private final HourLeast least;
    private final List<List<List<Integer>>> choices;

    /** Of each group the choice that is cheapest at the prices last asked for. */
    private final List<List<Integer>> cheapest;

    private final HourRoom room;
    private final CrewFlights crews;
    private final WaysOn waysOn;
    private final boolean[] ends;
    private final boolean[] placed;

    /** Seconds that the cheapest choices put into each hour. */
    private final double[] loadS;

    /** What each trip costs at the prices last asked for, begun in its cheapest hour. */
    private final double[] tripCostS;

    private double[] placeS;
    private final boolean[] meets;
    private int[][] flow = new int[0][];

    FlightBound(DayTable table, HookChoices hooks) {
        this.table = table;
        this.choices = hooks.groups();
        this.cheapest = new ArrayList<>(choices.stream().map(group -> group.get(0)).toList());
        this.placed = hooks.placed(table.trips.length);
        boolean[] certain = hooks.certain(table.trips.length);
        this.least = new HourLeast(table, placed, new Earliest(table, certain));
        this.crews = new CrewFlights(table, least, placed);
        this.room = new HourRoom(table);
        this.loadS = new double[least.hours];
        this.tripCostS = new double[table.trips.length];
        this.ends = new boolean[2 * table.spots.length];
        for (int place = 0; place < table.spots.length; place++) {
            ends[place] = table.spots[place].ground();
        }
        this.placeS = new double[2 * table.spots.length];
        this.meets = new boolean[table.spots.length];
        Joins joins = new Joins(table, placed, certain);
        for (int place = 0; place < meets.length; place++) {
            meets[place] = !table.spots[place].site() || joins.isAny(place);
        }
        this.waysOn = new WaysOn(table, least, meets);
    }

    /** Where the machine is when it begins a trip from a place; where it is after one is the place itself. */
    private int hookAt(int place) {
        return table.spots.length + place;
    }

    /**
     * The bound, s.
     *
     * @param knownS seconds in the air of a day that is known, which only guides the steps
     */
    double boundS(double knownS) {
        double[] bestRoom = new double[room.count()];
        int steps = STEPS;
        for (int round = 0; round < ROUNDS; round++) {
            room.setSpillS(longestHookUpS() + longestS());
            bestRoom = improvedRatio(bestLevelRatio(bestRoom), steps, knownS);
            valueS(bestRoom);
            if (!makeExact(bestRoom)) {
                if (steps > STEPS) {
                    break;
                }
                steps = LAST_STEPS;
            }
        }
        room.setSpillS(longestHookUpS() + longestS());
        return Math.max(0, valueS(bestRoom) - ROUNDING_S);
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
    private double[] improvedRatio(double[] startRoomRatio, int steps, double knownS) {
        double[] bestRoom = startRoomRatio;
        double[] now = startRoomRatio.clone();
        double best = 0;
        double pace = 1;
        for (int step = 0; step < steps; step++) {
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

    /** The bound at given placeS of the hours; leaves behind what each hour is loaded with. */
    private double valueS(double[] roomRatio) {
        double[] hourFactor = room.hourFactor(roomRatio);
        Arrays.fill(loadS, 0);
        placeS = placePricesS(hourFactor);
        waysOn.price(hourFactor, placeS);
        double sum = placeS[table.rules.startPlace()] - highestEndS();
        priceTrips(hourFactor);
        for (int group = 0; group < choices.size(); group++) {
            sum += cheapestCoverS(group, hourFactor);
        }
        sum += crews.costS(hourFactor, placeS, loadS);
        loadWays(hourFactor);
        return sum - room.costS(roomRatio);
    }

    private double highestEndS() {
        double high = Double.NEGATIVE_INFINITY;
        for (int place = 0; place < ends.length; place++) {
            high = ends[place] ? Math.max(high, placeS[place]) : high;
        }
        return high;
    }

    private void priceTrips(double[] hourFactor) {
        for (int k = 0; k < tripCostS.length; k++) {
            tripCostS[k] = placed[k] ? tripCostS(k, cheapestHour(k, hourFactor), hourFactor) : 0;
        }
    }

    private double cheapestCoverS(int group, double[] hourFactor) {
        double bestSum = Double.POSITIVE_INFINITY;
        for (List<Integer> cover : choices.get(group)) {
            double sum = 0;
            for (int k : cover) {
                sum += tripCostS[k];
            }
            if (sum < bestSum) {
                bestSum = sum;
                cheapest.set(group, cover);
            }
        }
        for (int k : cheapest.get(group)) {
            int hour = cheapestHour(k, hourFactor);
            loadS[hour] += Math.min(least.tripS(k, hour), HourLeast.NONE_S / 100);
            waysOn.load(table.trips[k].to(), hour, loadS);
        }
        return bestSum;
    }

    /** A trip and, from a site, the way on, less what it is worth to be where it is hooked up. */
    private double tripCostS(int k, int hour, double[] hourFactor) {
        TripRow trip = table.trips[k];
        double onS =
                table.spots[trip.to()].site() ? waysOn.costS(trip.to(), hour) : placeS[trip.to()];
        return least.tripS(k, hour) * hourFactor[hour] + onS - placeS[hookAt(trip.from())];
    }

    private int cheapestHour(int k, double[] hourFactor) {
        int best = 0;
        for (int hour = 1; hour < least.hours; hour++) {
            if (tripCostS(k, hour, hourFactor) < tripCostS(k, best, hourFactor)) {
                best = hour;
            }
        }
        return best;
    }

    private int cheapestHour(int from, int to, double[] hourFactor) {
        int best = 0;
        for (int hour = 1; hour < least.hours; hour++) {
            if (least.emptyS(from, to, hour) * hourFactor[hour]
                    < least.emptyS(from, to, best) * hourFactor[best]) {
                best = hour;
            }
        }
        return best;
    }

    private double[] placePricesS(double[] hourFactor) {
        int places = table.spots.length;
        int[] surplus = new int[2 * places];
        surplus[table.rules.startPlace()]++;
        for (List<List<Integer>> group : choices) {
            for (int k : group.get(0)) {
                surplus[table.trips[k].to()]++;
                surplus[hookAt(table.trips[k].from())]--;
            }
        }
        crews.addTo(surplus);
        double[][] costS = new double[2 * places][2 * places];
        for (double[] row : costS) {
            Arrays.fill(row, HourLeast.NONE_S);
        }
        for (int a = 0; a < places; a++) {
            for (int b = 0; b < places; b++) {
                int hour = a == b ? 0 : cheapestHour(a, b, hourFactor);
                costS[a][b] = a == b ? 0 : least.emptyS(a, b, hour) * hourFactor[hour];
                costS[a][hookAt(b)] = a == b && !meets[a] ? HourLeast.NONE_S : costS[a][b];
            }
        }
        PlacePrices found = new PlacePrices(costS, surplus, ends);
        double[] all = found.pricesS();
        flow = found.flow();
        return all;
    }

    private void loadWays(double[] hourFactor) {
        eachWay(
                hourFactor,
                (a, b, hour) -> loadS[hour] += flownTimes(a, b) * least.emptyS(a, b, hour));
    }

    private int flownTimes(int from, int to) {
        return flow[from][to] + flow[from][hookAt(to)];
    }

    /** Something about an empty way between laydowns in its cheapest hour. */
    private interface WayUse {
        void use(int from, int to, int hour);
    }

    private void eachWay(double[] hourFactor, WayUse use) {
        int places = flow.length / 2;
        for (int a = 0; a < places; a++) {
            for (int b = 0; b < places; b++) {
                if (a != b && !table.spots[a].site() && flownTimes(a, b) > 0) {
                    use.use(a, b, cheapestHour(a, b, hourFactor));
                }
            }
        }
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
        return Math.max(longest, Math.max(least.longestEmptyS(), crews.longestS()));
    }

    /** Makes exact what the bound rests on at these placeS; whether anything was not. */
    private boolean makeExact(double[] roomRatio) {
        double[] hourFactor = room.hourFactor(roomRatio);
        boolean any = false;
        for (List<Integer> cover : cheapest) {
            for (int k : cover) {
                int hour = cheapestHour(k, hourFactor);
                any |= least.makeTripExact(k, hour);
                any |= waysOn.makeExact(table.trips[k].to(), hour);
            }
        }
        boolean[] moved = {false};
        eachWay(hourFactor, (a, b, hour) -> moved[0] |= least.makeEmptyExact(a, b, hour));
        any |= moved[0];
        any |= crews.makeExact(hourFactor);
        return any;
    }
}
