package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How long the team of a place with poles is busy there, however loads are combined.
 *
 * <p>A load that readies the place comes before its poles. A team stands ready before each set-down and stays until all
 * that hangs on the hook is let go, so these times follow each other; and after the last of them, or after the team
 * has come back, it makes ready until the first pole. Each pole is guyed before the next may come.
 */
final class PlaceWork {
    private final DayTable table;
    private final boolean[] certain;

    /** What may ready each place, however loads are combined. */
    private final List<List<Integer>> readiers = new ArrayList<>();

    /** Of what readies each place: in sum, from standing ready to the last release, s. */
    private final long[] receivingS;

    /** For so long at least a place is made ready after the last of it, s. */
    private final long[] leastReadyS;

    /** For so long at least before a pole something lies there with the team, s. */
    private final long[] readyS;

    PlaceWork(DayTable table, HookChoices hooks) {
        this.table = table;
        this.certain = hooks.certain(table.trips.length);
        int places = table.spots.length;
        this.receivingS = new long[places];
        this.leastReadyS = new long[places];
        this.readyS = new long[places];
        for (int place = 0; place < places; place++) {
            readiers.add(new ArrayList<>());
        }
        Arrays.fill(leastReadyS, DayTable.NEVER_S);
        for (List<List<Integer>> group : hooks.groups()) {
            for (int place = 0; place < places; place++) {
                add(group, place);
            }
        }
    }

    /** What every way of a group does at a place at least. */
    private void add(List<List<Integer>> group, int place) {
        long leastS = DayTable.NEVER_S;
        long leastLongestS = DayTable.NEVER_S;
        for (List<Integer> way : group) {
            long sumS = 0;
            long longestS = 0;
            for (int k : way) {
                TripRow trip = table.trips[k];
                if (trip.to() == place && !trip.standsUp() && trip.readyAfterS() > 0) {
                    sumS += table.needsTeamAtDrop(k) ? receivingS(trip) : 0;
                    longestS = Math.max(longestS, trip.readyAfterS());
                    readiers.get(place).add(k);
                    leastReadyS[place] = Math.min(leastReadyS[place], trip.readyAfterS());
                }
            }
            leastS = Math.min(leastS, sumS);
            leastLongestS = Math.min(leastLongestS, longestS);
        }
        receivingS[place] += leastS;
        readyS[place] = Math.max(readyS[place], leastLongestS);
    }

    private static long receivingS(TripRow trip) {
        return DayTable.READY_BEFORE_S + (trip.releases() - 1) * trip.nextReleaseS();
    }

    /** Whether a pole that a team guys goes there, however loads are combined. */
    boolean hasPole(int place) {
        for (int k = 0; k < certain.length; k++) {
            if (isPole(k, place)) {
                return true;
            }
        }
        return false;
    }

    boolean isPole(int k, int place) {
        return certain[k] && table.trips[k].to() == place && table.isGuyed(k);
    }

    /** What may ready a place; one in several ways of combining loads is named as often. */
    List<Integer> readiers(int place) {
        return readiers.get(place);
    }

    /** Whether a team must receive something that readies a place, however loads are combined. */
    boolean isReadied(int place) {
        return receivingS[place] > 0;
    }

    /** How long it receives at least the last of that, s. */
    long leastReceivingS(int place) {
        return readiers.get(place).stream()
                .mapToLong(k -> table.needsTeamAtDrop(k) ? receivingS(table.trips[k]) : 0)
                .min()
                .orElse(0);
    }

    /** From coming until the last pole is guyed, s. */
    long wholeS(int place) {
        long sumS = beforePoleS(place);
        boolean first = true;
        for (int k = 0; k < certain.length; k++) {
            if (isPole(k, place)) {
                TripRow trip = table.trips[k];
                sumS +=
                        receivingS(trip)
                                - (first ? DayTable.READY_BEFORE_S : 0)
                                + trip.busyAfterS();
                first = false;
            }
        }
        return sumS;
    }

    private long beforePoleS(int place) {
        long lastReadyS = receivingS[place] > 0 ? leastReadyS[place] : 0;
        return Math.max(
                readyS[place], receivingS[place] + Math.max(DayTable.READY_BEFORE_S, lastReadyS));
    }

    /**
     * From the last thing that readies a place, or from coming where nothing is received, to the release of the last
     * pole, when all else may be done before, s. What was laid down earlier may have been made ready meanwhile.
     */
    long lastStayS(int place) {
        return Math.max(
                DayTable.READY_BEFORE_S, isReadied(place) ? leastReadyS[place] : readyS[place]);
    }

    /** How long a team is at a place, at least, before anything is let go there, s. */
    long beforeFirstS(int place) {
        return receivingS[place] > 0 ? DayTable.READY_BEFORE_S : lastStayS(place);
    }

    long longestGuyingS(int place) {
        long longestS = 0;
        for (int k = 0; k < certain.length; k++) {
            longestS =
                    isPole(k, place) ? Math.max(longestS, table.trips[k].busyAfterS()) : longestS;
        }
        return longestS;
    }

    long shortestGuyingS(int place) {
        long shortestS = DayTable.NEVER_S;
        for (int k = 0; k < certain.length; k++) {
            shortestS =
                    isPole(k, place) ? Math.min(shortestS, table.trips[k].busyAfterS()) : shortestS;
        }
        return shortestS;
    }
}
