package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Turns a wish into a day that keeps every rule: trips in the wished order, each as early as it may be.
 *
 * <p>What is not due yet is taken up as soon as it is; what cannot be flown now is tried again after
 * each trip that is; what is left at the end is dropped.
 */
final class Decoder {
    private static final long TOO_LATE_S = 3600;

    /** So many trips are looked at for one that need not wait. */
    private static final int MOST_AHEAD = 8;

    private final DayTable table;
    private final Run run;
    private final Run saved;
    private final Grounding grounding;
    private final TeamMoves teamMoves;
    private final Lifts lifts;
    private final double morningMostKg;
    private final int[] later;
    private Rates rates;
    private int laterCount;

    private int flownCount;

    /** How many turns of the wish were looked at. */
    private int seen;

    private final @Nullable Midday midday;

    /** The day that others are built from, and the one built last. */
    private final Trail known;

    private final Trail last;

    /** So many stands of the last are those of the known day. */
    private int alike;

    Decoder(DayTable table) {
        this(table, null);
    }

    /** Of the rest of a day, when it stands so. */
    Decoder(DayTable table, @Nullable Midday midday) {
        this.midday = midday;
        this.table = table;
        this.rates = table.rates;
        this.run = new Run(table);
        this.saved = new Run(table);
        this.grounding = new Grounding(run);
        this.teamMoves = new TeamMoves(run, grounding);
        this.lifts = new Lifts(run, grounding, teamMoves);
        this.morningMostKg = mostInTheMorningKg();
        this.later = new int[table.trips.length];
        this.known = new Trail(table);
        this.last = new Trail(table);
    }

    /** What a minute costs from now on. */
    void setRates(Rates newRates) {
        rates = newRates;
    }

    Rates rates() {
        return rates;
    }

    Run run() {
        return run;
    }

    /** Price of the wished day, cents. */
    long decode(Wish wish, @Nullable DayLog log) {
        begin(wish, log);
        return decodeFrom(0, wish, false);
    }

    /** The same without a log, with what would be too late flown all the same. */
    long decodeSoft(Wish wish) {
        run.soft = true;
        long cents = decode(wish, null);
        run.soft = false;
        return cents;
    }

    /**
     * The same without a log, built from where it parts from the known day; meant for guesses.
     *
     * <p>Nothing but time hangs on which day is known.
     */
    long decodeNear(Wish wish) {
        alike = known.serving(wish, run.soft);
        last.begin(wish, run.soft);
        if (alike == 0) {
            begin(wish, null);
            return decodeFrom(0, wish, true);
        }
        goOn(known.stand(alike - 1));
        return decodeFrom(Trail.turn(alike - 1), wish, true);
    }

    /** The day built near another just now is the known one from now on. */
    void keepKnown() {
        known.goOnAs(last, alike);
    }

    private void goOn(Trail.Stand stand) {
        run.copyFrom(stand.run);
        System.arraycopy(stand.later, 0, later, 0, stand.laterCount);
        laterCount = stand.laterCount;
        flownCount = stand.flownCount;
        seen = stand.seen;
        if (stand.guessed) {
            table.restOnGuesses();
        }
    }

    private void write(Trail.Stand stand) {
        stand.run.copyFrom(run);
        System.arraycopy(later, 0, stand.later, 0, laterCount);
        stand.laterCount = laterCount;
        stand.flownCount = flownCount;
        stand.seen = seen;
        stand.guessed = table.hasGuessed();
    }

    private long decodeFrom(int turn, Wish wish, boolean leavesTrail) {
        for (int i = turn; i < wish.tokens.length && flownCount < table.trips.length; i++) {
            if (leavesTrail && i > turn && Trail.isDueAt(i)) {
                write(last.at(i));
            }
            seen = Math.max(seen, i + 1);
            int token = wish.tokens[i];
            if (token >= table.trips.length) {
                hint(token - table.trips.length, i, wish);
            } else if (run.isLeft(token)) {
                flyAt(i, wish);
            }
        }
        takeUp(wish);
        while (laterCount > 0) {
            dropOne();
            takeUp(wish);
        }
        return finish();
    }

    /**
     * Price of a known day flown on as it has its steps, then of what else there is; empty when a step of it cannot be
     * done any more.
     */
    OptionalLong follow(List<RestOrder.Kept.Step> steps, Wish wish, DayLog log) {
        Wish resting = wish.copy();
        resting.restWaitS = DayTable.NEVER_S;
        begin(resting, log);
        if (!new Follower(run, grounding, teamMoves, lifts).follow(steps, resting)) {
            return OptionalLong.empty();
        }
        flownCount = countFlown();
        return OptionalLong.of(decodeFrom(0, tripsOf(wish), false));
    }

    /** Without its stops. */
    private Wish tripsOf(Wish wish) {
        Wish trips = wish.copy();
        trips.tokens =
                Arrays.stream(wish.tokens).filter(token -> token < table.trips.length).toArray();
        return trips;
    }

    /** Flies the trip at a turn, and before it what need not wait while it would wait too long. */
    private void flyAt(int at, Wish wish) {
        int trip = wish.tokens[at];
        while (run.isLeft(trip) && flyPatiently(at, wish)) {
            takeUp(wish);
        }
        if (run.isLeft(trip) && tryTrip(trip, wish)) {
            takeUp(wish);
        } else if (run.isLeft(trip)) {
            later[laterCount++] = trip;
        }
    }

    /** Gives up the first that nothing but itself holds back, so that what waits for it may go. */
    private void dropOne() {
        int first = 0;
        for (int i = laterCount - 1; i >= 0; i--) {
            if (lifts.readiness().isDue(later[i])) {
                first = i;
            }
        }
        run.dropped[later[first]] = true;
        laterCount--;
        System.arraycopy(later, first + 1, later, first, laterCount - first);
    }

    void begin(Wish wish, @Nullable DayLog log) {
        run.begin(Math.floor(Math.min(morningMostKg, wish.refuelToKg(0))), log);
        laterCount = 0;
        flownCount = 0;
        seen = 0;
        if (midday != null) {
            run.resume(midday);
            flownCount = countFlown();
        }
    }

    private int countFlown() {
        int count = 0;
        for (long released : run.releasedS) {
            count += released >= 0 ? 1 : 0;
        }
        return count;
    }

    /** Filled so far in the evening that the first people can be flown; whoever can walk everywhere takes no fuel's place. */
    private double mostInTheMorningKg() {
        double mostKg = table.fuel.usableKg();
        for (TeamRow team : table.teams) {
            if (teamMoves.mayBeFlown(team)) {
                mostKg = Math.min(mostKg, team.cabinFuelKg());
            }
        }
        return mostKg;
    }

    /** Flies a trip when it can be flown now; else nothing has happened. */
    boolean tryTrip(int trip, Wish wish) {
        if (!lifts.readiness().isDue(trip)) {
            return false;
        }
        saved.standAs(run);
        boolean flown = lifts.fly(trip, wish);
        if (!flown && lifts.ranTooLong()) {
            unfly(trip);
            flown = lifts.flyRested(trip, wish);
        }
        if (flown) {
            flownCount++;
            return true;
        }
        unfly(trip);
        return false;
    }

    /**
     * Flies the first trip from a turn on that need not wait too long; each team keeps its order. False where the
     * one at the turn could not be flown by waiting either, or where all would wait.
     */
    private boolean flyPatiently(int at, Wish wish) {
        if (wish.patienceS >= DayTable.NEVER_S || !lifts.readiness().isDue(wish.tokens[at])) {
            return false;
        }
        boolean[] passed = new boolean[table.teams.length];
        int looked = 0;
        for (int i = at; i < wish.tokens.length && looked < MOST_AHEAD; i++) {
            int trip = wish.tokens[i];
            seen = Math.max(seen, i + 1);
            if (trip >= table.trips.length || !run.isLeft(trip)) {
                continue;
            }
            looked++;
            if (!isPassed(passed, trip, wish) && flyUnlessWaiting(trip, wish)) {
                return true;
            }
            if (i == at && !lifts.waitsTooLong()) {
                return false;
            }
            for (int team = 0; team < passed.length; team++) {
                passed[team] |= table.placeFor(team, trip, wish.teamOf) >= 0;
            }
        }
        return false;
    }

    private boolean isPassed(boolean[] passed, int trip, Wish wish) {
        for (int team = 0; team < passed.length; team++) {
            if (passed[team] && table.placeFor(team, trip, wish.teamOf) >= 0) {
                return true;
            }
        }
        return false;
    }

    private boolean flyUnlessWaiting(int trip, Wish wish) {
        if (!lifts.readiness().isDue(trip)) {
            return false;
        }
        saved.standAs(run);
        if (lifts.fly(trip, wish, wish.patienceS)) {
            flownCount++;
            return true;
        }
        unfly(trip);
        return false;
    }

    private void unfly(int trip) {
        run.standAs(saved);
        run.releasedS[trip] = -1;
    }

    boolean tryTeam(int team, int place, Wish wish) {
        if (run.teamPlace[team] == place || !teamMoves.isFlown(team, place, wish)) {
            return false;
        }
        saved.standAs(run);
        if (teamMoves.fly(team, place, wish) && lifts.isWithinDay()) {
            return true;
        }
        run.standAs(saved);
        return false;
    }

    /** Goes back to an earlier state of this day. */
    void takeBack(Run before) {
        run.copyFrom(before);
        flownCount = countFlown();
    }

    private void takeUp(Wish wish) {
        for (int i = 0; i < laterCount; ) {
            int trip = later[i];
            if (tryTrip(trip, wish)) {
                laterCount--;
                System.arraycopy(later, i + 1, later, i, laterCount - i);
                i = 0;
            } else {
                i++;
            }
        }
    }

    private void hint(int hint, int at, Wish wish) {
        if (hint < table.teams.length) {
            int place = nextPlace(hint, at, wish);
            if (place >= 0) {
                tryTeam(hint, place, wish);
            }
            return;
        }
        int trip = nextTrip(at, wish);
        boolean fuel = hint > table.teams.length;
        double toKg = wish.refuelToKg(run.refuels);
        boolean wanted =
                fuel ? run.fuelKg < toKg - 30 : run.onSinceBreakS > table.rules.stretchS() / 3;
        if (trip < 0 || !wanted) {
            return;
        }
        saved.standAs(run);
        boolean stops =
                grounding.land(trip, fuel)
                        && !(fuel && grounding.refuellerWaitS(run.place) > wish.patienceS)
                        && stop(fuel, trip, toKg)
                        && lifts.isWithinDay();
        if (!stops) {
            run.standAs(saved);
        }
    }

    private boolean stop(boolean fuel, int trip, double toKg) {
        if (!table.spots[run.place].ground()) {
            return false;
        }
        if (fuel) {
            return grounding.refuel(toKg, Cause.of(Cause.Kind.FUEL, trip));
        }
        grounding.rest(Cause.of(Cause.Kind.EARLY_BREAK, trip));
        return true;
    }

    /** Where a team is wanted next from a position in the order on. */
    private int nextPlace(int team, int at, Wish wish) {
        for (int i = 0; i < laterCount; i++) {
            int place = table.placeFor(team, later[i], wish.teamOf);
            if (place >= 0 && run.isLeft(later[i])) {
                return place;
            }
        }
        for (int i = at + 1; i < wish.tokens.length; i++) {
            int token = wish.tokens[i];
            seen = Math.max(seen, i + 1);
            if (token < table.trips.length && run.isLeft(token)) {
                int place = table.placeFor(team, token, wish.teamOf);
                if (place >= 0) {
                    return place;
                }
            }
        }
        return DayTable.NONE;
    }

    private int nextTrip(int at, Wish wish) {
        for (int i = at + 1; i < wish.tokens.length; i++) {
            seen = Math.max(seen, i + 1);
            if (wish.tokens[i] < table.trips.length && run.isLeft(wish.tokens[i])) {
                return wish.tokens[i];
            }
        }
        return DayTable.NONE;
    }

    /** The last landing; price of the day, cents. */
    long finish() {
        for (int k = 0; k < table.trips.length; k++) {
            run.dropped[k] |= run.releasedS[k] < 0;
        }
        // A day that goes on after its last lift may do so over a site, where the machine cannot
        // stay.
        if (run.open >= 0 || !table.spots[run.place].ground()) {
            int home = table.spots[run.place].nearestGround();
            grounding.flyTo(home, new Cause(Cause.Kind.HOME, DayTable.NONE, home));
        }
        return priceCents();
    }

    /**
     * How early, in sum, the day does what the wind closes, s: less is better. It leads a search from a day in
     * which a lift just fails to one in which it just fits.
     */
    long pushS() {
        long sumS = 0;
        for (int k = 0; k < table.trips.length; k++) {
            if (table.windowEndS[k] < table.rules.endS() && table.windowEndS[k] >= 0) {
                long doneS =
                        run.releasedS[k] >= 0 ? run.releasedS[k] : table.windowEndS[k] + TOO_LATE_S;
                sumS += doneS - table.rules.startS();
            }
        }
        return sumS;
    }

    long priceCents() {
        return rates.cents(run.flightS, run.timeS - table.rules.startS(), run.countDropped())
                + run.comfortCents;
    }
}
