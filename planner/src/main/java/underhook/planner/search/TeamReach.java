package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether a team that is flown in once, and walks from there, can stand up the poles that only it may stand up
 * before the wind closes them.
 *
 * <p>For each closing time: coming at the earliest, making each place ready, guying each pole but the last, and
 * the shortest walks between so many places must fit before it. Whatever else the team does takes longer.
 */
final class TeamReach {
    private final DayTable table;
    private final boolean[] placed;

    TeamReach(DayTable table, boolean[] placed) {
        this.table = table;
        this.placed = placed;
    }

    /** Whether landing there by the first flight leaves it possible; false proves that it is not. */
    boolean isInTime(int team, int from, int landing) {
        long landedS =
                table.teams[team].fromS()
                        + table.walkS[table.teams[team].start()][from]
                        + 2 * table.rules.boardingS();
        List<Integer> poles = onlyPoles(team);
        for (int last : poles) {
            long closesS = table.windowEndS[last];
            List<Integer> due =
                    poles.stream().filter(pole -> table.windowEndS[pole] <= closesS).toList();
            if (landedS + leastWorkS(landing, due) > closesS) {
                return false;
            }
        }
        return true;
    }

    private List<Integer> onlyPoles(int team) {
        List<Integer> all = new ArrayList<>();
        for (int k = 0; k < placed.length; k++) {
            boolean only = placed[k] && table.isGuyed(k) && table.mayWork(team, k);
            for (int other = 0; other < table.teams.length && only; other++) {
                only = other == team || !table.mayWork(other, k);
            }
            if (only) {
                all.add(k);
            }
        }
        return all;
    }

    /** Least time from landing to the last release, s. */
    private long leastWorkS(int landing, List<Integer> poles) {
        long sumS = 0;
        long longestBusyS = 0;
        long nearestS = Long.MAX_VALUE / 4;
        long shortestS = poles.size() > 1 ? Long.MAX_VALUE / 8 / poles.size() : 0;
        for (int pole : poles) {
            TripRow trip = table.trips[pole];
            sumS += trip.busyAfterS();
            longestBusyS = Math.max(longestBusyS, trip.busyAfterS());
            nearestS = Math.min(nearestS, table.walkS[landing][trip.to()]);
            for (int other : poles) {
                if (table.trips[other].to() != trip.to()) {
                    shortestS =
                            Math.min(shortestS, table.walkS[trip.to()][table.trips[other].to()]);
                }
            }
        }
        int[] places = poles.stream().mapToInt(pole -> table.trips[pole].to()).distinct().toArray();
        for (int place : places) {
            sumS += TeamWork.readyS(table, placed, place);
        }
        return nearestS
                + sumS
                - longestBusyS
                + (places.length > 1 ? (places.length - 1) * shortestS : 0);
    }
}
