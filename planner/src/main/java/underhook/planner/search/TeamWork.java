package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/**
 * When the last pole is let go at the earliest, as teams work one place after the other.
 *
 * <p>Of the places with poles that only some teams may stand up: a team is at each while it is made ready and while
 * each pole there is guyed, and goes from one to the next. The teams share that at best evenly, and of each only the
 * last guying may come after the last release.
 */
final class TeamWork {
    /** Every choice of so few teams is looked at; of more, all together. */
    private static final int FEW_TEAMS = 6;

    /** All teams, however many. */
    private static final int ALL = -1;

    private final DayTable table;
    private final boolean[] placed;

    TeamWork(DayTable table, boolean[] placed) {
        this.table = table;
        this.placed = placed;
    }

    /** The bound, s; the start of the day where no pole is placed. */
    long lastReleaseS() {
        if (table.teams.length > FEW_TEAMS) {
            return lastReleaseS(ALL);
        }
        long lastS = table.rules.startS();
        for (int chosen = 1; chosen < 1 << table.teams.length; chosen++) {
            lastS = Math.max(lastS, lastReleaseS(chosen));
        }
        return lastS;
    }

    private long lastReleaseS(int chosen) {
        List<Integer> places = new ArrayList<>();
        long workS = 0;
        long longestBusyS = 0;
        for (int k = 0; k < placed.length; k++) {
            if (isTheirs(k, chosen)) {
                if (!places.contains(table.trips[k].to())) {
                    places.add(table.trips[k].to());
                    workS += readyS(table, placed, table.trips[k].to());
                }
                workS += table.trips[k].busyAfterS();
                longestBusyS = Math.max(longestBusyS, table.trips[k].busyAfterS());
            }
        }
        if (places.isEmpty()) {
            return table.rules.startS();
        }
        int count = chosen == ALL ? table.teams.length : Integer.bitCount(chosen);
        int teams = Math.min(count, places.size());
        long sumS = workS + (places.size() - teams) * leastMoveS(places);
        return fromS(chosen) + Math.floorDiv(sumS, teams) - longestBusyS;
    }

    /** Whether a pole is placed that needs a team, and only chosen ones may stand it up. */
    private boolean isTheirs(int k, int chosen) {
        boolean theirs = placed[k] && table.isGuyed(k);
        for (int team = 0; theirs && team < table.teams.length; team++) {
            theirs = isChosen(team, chosen) || !table.mayWork(team, k);
        }
        return theirs;
    }

    private static boolean isChosen(int team, int chosen) {
        return chosen == ALL || (chosen >> team & 1) == 1;
    }

    private long fromS(int chosen) {
        long fromS = DayTable.NEVER_S;
        for (int team = 0; team < table.teams.length; team++) {
            fromS = isChosen(team, chosen) ? Math.min(fromS, table.teams[team].fromS()) : fromS;
        }
        return Math.max(table.rules.startS(), fromS);
    }

    /**
     * How long a team is at a place before its first pole may be let go, s. What a pole that stands there readies may
     * be done while it is guyed.
     */
    static long readyS(DayTable table, boolean[] placed, int place) {
        long mostS = 0;
        for (int k = 0; k < placed.length; k++) {
            TripRow trip = table.trips[k];
            if (placed[k] && !trip.standsUp() && trip.to() == place) {
                mostS = Math.max(mostS, trip.readyAfterS());
            }
        }
        return mostS;
    }

    /** Between two of the places, on foot or by air, s. */
    private long leastMoveS(List<Integer> places) {
        long leastS = 2 * table.rules.boardingS();
        boolean flies = table.teams.length == 0;
        for (TeamRow team : table.teams) {
            flies |= team.landing().stream().anyMatch(place -> place >= 0);
        }
        leastS = flies ? leastS : DayTable.NO_WALK_S / places.size() / 2;
        for (int from : places) {
            for (int to : places) {
                leastS = from == to ? leastS : Math.min(leastS, table.walkS[from][to]);
            }
        }
        return leastS;
    }
}
