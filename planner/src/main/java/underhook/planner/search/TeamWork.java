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

    private final DayTable table;
    private final boolean[] placed;

    TeamWork(DayTable table, boolean[] placed) {
        this.table = table;
        this.placed = placed;
    }

    /** The bound, s; the start of the day where no pole is placed. */
    long lastReleaseS() {
        int all = (1 << Math.min(table.teams.length, Integer.SIZE - 2)) - 1;
        long lastS = table.rules.startS();
        for (int chosen = table.teams.length > FEW_TEAMS ? all : 1; chosen <= all; chosen++) {
            lastS = Math.max(lastS, lastReleaseS(chosen));
        }
        return lastS;
    }

    private long lastReleaseS(int chosen) {
        List<Integer> places = new ArrayList<>();
        long workS = 0;
        long longestBusyS = 0;
        for (int k = 0; k < placed.length; k++) {
            if (placed[k] && table.trips[k].standsUp() && (able(k) & ~chosen) == 0) {
                if (!places.contains(table.trips[k].to())) {
                    places.add(table.trips[k].to());
                    workS += readyS(table.trips[k].to());
                }
                workS += table.trips[k].busyAfterS();
                longestBusyS = Math.max(longestBusyS, table.trips[k].busyAfterS());
            }
        }
        if (places.isEmpty()) {
            return table.rules.startS();
        }
        int teams = Math.min(Integer.bitCount(chosen), places.size());
        long sumS = workS + (places.size() - teams) * leastMoveS(places);
        return fromS(chosen) + Math.floorDiv(sumS, teams) - longestBusyS;
    }

    private int able(int k) {
        int able = 0;
        for (int team = 0; team < table.teams.length; team++) {
            able |= table.mayWork(team, k) ? 1 << Math.min(team, Integer.SIZE - 3) : 0;
        }
        return able;
    }

    private long fromS(int chosen) {
        long fromS = DayTable.NEVER_S;
        for (int team = 0; team < table.teams.length; team++) {
            fromS = (chosen >> team & 1) == 1 ? Math.min(fromS, table.teams[team].fromS()) : fromS;
        }
        return Math.max(table.rules.startS(), fromS);
    }

    /** How long a team is at a place before its first pole may be let go, s. */
    private long readyS(int place) {
        long mostS = 0;
        for (int k = 0; k < placed.length; k++) {
            if (placed[k] && table.trips[k].to() == place) {
                mostS = Math.max(mostS, table.trips[k].readyAfterS());
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
