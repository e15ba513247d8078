package underhook.planner.search;

import java.util.Arrays;

/**
 * What a day is built from: preferences, never rules.
 *
 * <p>Mutable and not safe for threads; it never leaves this package.
 */
final class Wish {
    /** How many refuellings have a wished level of their own; later ones share the last. */
    static final int LEVELS = 10;

    /** A wait this long is made a whole break where the job's break is longer, s. */
    static final long NO_EARLY_REST_S = 1800;

    /** Trips, and hints numbered from the count of trips on: each team, then rest, then fuel. */
    int[] tokens;

    /** Which team works at each place. */
    int[] teamOf;

    /** Whether people walk far to a place to which they could be flown. */
    final boolean[] walksTo;

    /** Fill up to so much, kg, at the first refuelling, the second and so on; the evening's first. */
    int[] refuelToKg;

    /** Line wished for each trip; none: the fitted one or the shortest that will do. */
    int[] line;

    /** Whether each fuelling is made a whole break. */
    final boolean[] restsAt = new boolean[LEVELS];

    long restWaitS = NO_EARLY_REST_S;
    boolean fuelsWhileWaiting;

    /** What waits longer than this lets later ones of other teams go first, s. */
    long patienceS = DayTable.NEVER_S;

    Wish(int[] tokens, int[] teamOf, int trips) {
        this.tokens = tokens;
        this.teamOf = teamOf;
        this.walksTo = new boolean[teamOf.length];
        this.refuelToKg = new int[LEVELS];
        this.line = new int[trips];
        Arrays.fill(line, DayTable.NONE);
    }

    Wish copy() {
        Wish other = new Wish(tokens.clone(), teamOf.clone(), line.length);
        other.take(this);
        return other;
    }

    void take(Wish from) {
        if (tokens.length != from.tokens.length) {
            tokens = new int[from.tokens.length];
        }
        System.arraycopy(from.tokens, 0, tokens, 0, tokens.length);
        System.arraycopy(from.teamOf, 0, teamOf, 0, teamOf.length);
        System.arraycopy(from.walksTo, 0, walksTo, 0, walksTo.length);
        System.arraycopy(from.refuelToKg, 0, refuelToKg, 0, LEVELS);
        System.arraycopy(from.line, 0, line, 0, line.length);
        System.arraycopy(from.restsAt, 0, restsAt, 0, LEVELS);
        restWaitS = from.restWaitS;
        fuelsWhileWaiting = from.fuelsWhileWaiting;
        patienceS = from.patienceS;
    }

    /** Whether the last of so many fuellings is made a whole break. */
    boolean restsAt(int done) {
        return done <= LEVELS && restsAt[done - 1];
    }

    int refuelToKg(int done) {
        return refuelToKg[Math.min(done, LEVELS - 1)];
    }
}
