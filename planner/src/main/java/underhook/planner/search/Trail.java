package underhook.planner.search;

import java.util.Arrays;

/**
 * How a day stood at some of its turns, so that a wish which differs from its own in later turns only need not be
 * built from the morning on.
 *
 * <p>A stand serves another wish when nothing differs of all that was read of the wish until then: turns looked
 * ahead at, teams, their walks and lines of the trips in them, fuel levels of the refuellings done or tried. And it serves as long as no
 * way was found since: what was guessed would now be known. Mutable and not safe for threads.
 */
final class Trail {
    /** Turns from one stand to the next. @source PRACTICE own measure: 3, 5 and 8 take the same time */
    private static final int STRIDE = 6;

    private final DayTable table;
    private final Wish wish;
    private Stand[] stands = new Stand[0];

    /** Of the stands so many hold. */
    private int count;

    private long finds = -1;
    private boolean soft;

    /** A day before one of its turns. */
    static final class Stand {
        final Run run;
        final int[] later;
        int laterCount;
        int flownCount;

        /** How many turns were looked at until then. */
        int seen;

        boolean guessed;

        Stand(DayTable table) {
            this.run = new Run(table);
            this.later = new int[table.trips.length];
        }
    }

    Trail(DayTable table) {
        this.table = table;
        this.wish = new Wish(new int[0], new int[table.spots.length], table.trips.length);
    }

    static boolean isDueAt(int turn) {
        return turn > 0 && turn % STRIDE == 0;
    }

    static int turn(int stand) {
        return (stand + 1) * STRIDE;
    }

    /** Room for how a day stands before a turn. */
    Stand at(int turn) {
        int index = turn / STRIDE - 1;
        if (index >= stands.length) {
            int was = stands.length;
            stands = Arrays.copyOf(stands, index + 1);
            for (int i = was; i <= index; i++) {
                stands[i] = new Stand(table);
            }
        }
        count = index + 1;
        return stands[index];
    }

    Stand stand(int index) {
        return stands[index];
    }

    /** From now on it holds stands of this wish, none so far. */
    void begin(Wish of, boolean isSoft) {
        wish.take(of);
        soft = isSoft;
        finds = table.finds();
        count = 0;
    }

    /** Takes over what another found out of its own wish after so many stands, which are alike in both. */
    void goOnAs(Trail other, int alike) {
        for (int i = alike; i < other.count; i++) {
            Stand mine = at(turn(i));
            stands[i] = other.stands[i];
            other.stands[i] = mine;
        }
        count = Math.max(alike, other.count);
        wish.take(other.wish);
        finds = other.finds;
        soft = other.soft;
    }

    /** How many stands serve another wish as well. */
    int serving(Wish other, boolean isSoft) {
        if (finds != table.finds() || soft != isSoft || !isAlikeApart(other)) {
            return 0;
        }
        int alike = alikeTurns(other);
        int fuellings = alikeFuellings(other);
        int serving = count;
        while (serving > 0
                && (stands[serving - 1].seen > alike
                        || turn(serving - 1) > alike
                        || stands[serving - 1].run.refuelsTried >= fuellings)) {
            serving--;
        }
        return serving;
    }

    private boolean isAlikeApart(Wish other) {
        return wish.tokens.length == other.tokens.length
                && wish.restWaitS == other.restWaitS
                && wish.fuelsWhileWaiting == other.fuelsWhileWaiting
                && wish.patienceS == other.patienceS;
    }

    private int alikeTurns(Wish other) {
        for (int i = 0; i < other.tokens.length; i++) {
            int token = other.tokens[i];
            if (token != wish.tokens[i] || (token < table.trips.length && differs(token, other))) {
                return i;
            }
        }
        return other.tokens.length;
    }

    private boolean differs(int trip, Wish other) {
        return wish.line[trip] != other.line[trip]
                || differsAt(table.teamPlace[trip], other)
                || differsAt(table.hookPlace[trip], other);
    }

    private boolean differsAt(int place, Wish other) {
        return place >= 0
                && (wish.teamOf[place] != other.teamOf[place]
                        || wish.walksTo[place] != other.walksTo[place]);
    }

    /** So many refuellings, the morning's counted, are wished alike; all of them where none differs. */
    private int alikeFuellings(Wish other) {
        for (int i = 0; i < Wish.LEVELS; i++) {
            if (wish.refuelToKg[i] != other.refuelToKg[i]) {
                return i;
            }
            // Whether one is made a break is asked when it is done.
            if (wish.restsAt[i] != other.restsAt[i]) {
                return i + 1;
            }
        }
        return Integer.MAX_VALUE;
    }
}
