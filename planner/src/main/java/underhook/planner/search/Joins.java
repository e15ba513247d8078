package underhook.planner.search;

import java.util.Arrays;

/**
 * What may follow a set-down at once, without a landing in between, and what may be the last of the day.
 *
 * <p>Some trips come before others on every day on which both are flown: what is waited for, what goes to a place
 * before what leaves it last, what readies a pole's place before the pole. So nothing follows at once that comes before,
 * or before which something else must come; and nothing is last that something else must follow. The machine does not
 * wait in the air: flown straight from a set-down to a hook-up whose people still have to come, or which must be let go
 * later, it flies that long.
 */
final class Joins {
    private final DayTable table;
    private final LiftHours lifts;
    private final boolean[] certain;

    /** Whether the one is let go before the other, where both are flown. */
    private final boolean[][] before;

    private final long[] longestTripS;

    /** The same of a day of which nothing is held. */
    Joins(DayTable table, boolean[] placed, boolean[] certain) {
        this(table, placed, certain, HeldDay.free(table));
    }

    /**
     * @param placed trips that may be flown
     * @param certain trips that are flown, however loads are combined
     * @param held what comes in an earlier hour of it comes before
     */
    Joins(DayTable table, boolean[] placed, boolean[] certain, HeldDay held) {
        this.table = table;
        this.lifts = new LiftHours(table);
        this.certain = certain;
        int count = placed.length;
        this.longestTripS = new long[count];
        Arrays.fill(longestTripS, -1);
        this.before = new boolean[count][count];
        for (int first = 0; first < count; first++) {
            for (int then = 0; then < count; then++) {
                before[first][then] =
                        first != then
                                && placed[first]
                                && placed[then]
                                && (held.isBefore(first, then) || mustBeBefore(first, then));
            }
        }
        for (int between = 0; between < count; between++) {
            for (int first = 0; first < count && certain[between]; first++) {
                for (int then = 0; then < count && before[first][between]; then++) {
                    before[first][then] |= before[between][then];
                }
            }
        }
    }

    /** Whether one trip is let go before the other on every day on which both are flown. */
    boolean isBefore(int first, int then) {
        return before[first][then];
    }

    private boolean mustBeBefore(int first, int then) {
        TripRow one = table.trips[first];
        TripRow other = table.trips[then];
        boolean readies = one.readies(other);
        boolean brought = other.lastAtPlace() && one.to() == other.from();
        return readies || brought || waitS(first, then) >= 0;
    }

    /** Whether a day may end with a trip. */
    boolean mayBeLast(int trip) {
        for (int then = 0; then < certain.length; then++) {
            if (certain[then] && before[trip][then]) {
                return false;
            }
        }
        return true;
    }

    /**
     * The least that a way takes from a set-down straight to a hook-up, however near that is, s; {@link
     * DayTable#NEVER_S} where it is never flown.
     */
    long leastWayS(int from, int to) {
        if (from == to || before[to][from] || isAnyBetween(from, to)) {
            return DayTable.NEVER_S;
        }
        TripRow next = table.trips[to];
        long leastS = peopleS(from, to) - next.hookUpS();
        if (waitS(from, to) > 0) {
            boolean hookedThere = table.trips[from].to() == next.from();
            leastS = Math.max(leastS, waitS(from, to) - (hookedThere ? 0 : longestTripS(to)));
        }
        return Math.max(0, leastS);
    }

    private boolean isAnyBetween(int first, int last) {
        for (int k = 0; k < certain.length; k++) {
            if (certain[k] && before[first][k] && before[k][last]) {
                return true;
            }
        }
        return false;
    }

    /** From a release until those who were there have hooked, from its beginning on, where only they may, s. */
    private long peopleS(int from, int to) {
        TripRow done = table.trips[from];
        TripRow next = table.trips[to];
        if (!table.needsTeamAtDrop(from) || !table.needsTeamAtHook(to)) {
            return 0;
        }
        boolean same = done.to() == next.from() || isOneTeam(from, to);
        return same
                ? Math.min(
                        done.busyAfterS()
                                + table.walkS[done.to()][next.from()]
                                + Math.max(1, next.hookUpS()),
                        DayTable.NEVER_S)
                : 0;
    }

    /** Whether only one team may receive the one and hook the other. */
    private boolean isOneTeam(int one, int other) {
        int teams = 0;
        for (int team = 0; team < table.teams.length; team++) {
            teams += table.mayWork(team, one) || table.mayHook(team, other) ? 1 : 0;
        }
        return teams == 1;
    }

    /** What one trip waits for after another, s; negative when it does not. */
    private long waitS(int first, int then) {
        long waitS = -1;
        for (TripRow.After after : table.trips[then].after()) {
            waitS = after.trip() == first ? Math.max(waitS, after.waitS()) : waitS;
        }
        return waitS;
    }

    /** The longest from the beginning of the hook-up to the first release at any hour with any line, s. */
    private long longestTripS(int k) {
        if (longestTripS[k] < 0) {
            longestTripS[k] = longestLoadedS(k);
        }
        return longestTripS[k];
    }

    private long longestLoadedS(int k) {
        long longestS = 0;
        int cuts = table.cuts();
        for (int line : table.lines) {
            for (int hour = 0; hour < table.slots(); hour++) {
                for (int later = hour; later <= lifts.last(k, hour); later++) {
                    longestS = Math.max(longestS, lifts.loadedS(k, line, hour, later));
                }
            }
        }
        TripRow trip = table.trips[k];
        return table.cuts() > cuts
                ? DayTable.NEVER_S
                : longestS + trip.hookUpS() + trip.firstSetDownS();
    }
}
