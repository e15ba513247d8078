package underhook.core.track;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.job.PlaceId;

/**
 * Which planned lifts a track shows.
 *
 * @param lifts one for each planned lift, in that order
 * @param unmatched stays that belong to no planned lift
 */
public record TrackMatch(List<Found> lifts, List<Visit> unmatched) {
    /** Not placed at all costs as much as this much time off plan. @source PRACTICE two hours */
    private static final double MISSING_S = 7200;

    /** A stay of its own is likelier, as if by so much time. @source PRACTICE half an hour */
    private static final double SHARED_S = 1800;

    /** Stays planned one after the other at one place that one stay may have served. */
    private static final int MOST_SERVED = 6;

    /**
     * A planned lift and the stays that it was recognised by.
     *
     * @param hook stay at the hook-up, empty when none was found
     * @param drops stay at each set-down in order; empty where none was found
     */
    public record Found(PlannedLift planned, Optional<Visit> hook, List<Optional<Visit>> drops) {
        public Found {
            drops = List.copyOf(drops);
        }

        /** Whether hook-up and every set-down were found. */
        public boolean isWhole() {
            return hook.isPresent() && drops.stream().allMatch(Optional::isPresent);
        }
    }

    public TrackMatch {
        lifts = List.copyOf(lifts);
        unmatched = List.copyOf(unmatched);
    }

    /** One stay that the plan asks for. */
    private record Wanted(int lift, int drop, PlaceId place, Instant at) {}

    /**
     * Matches stays to planned lifts.
     *
     * <p>Lifts between the same places cannot be told apart: among them the order decides.
     *
     * <p>First both are laid side by side in order, leaving out on either side what does not fit; then what
     * was flown out of order is looked for among the rest, whole lifts only. Work grows with planned stays
     * times stays found.
     *
     * @param planned in their planned order
     * @param visits in time order
     * @source NEEDLEMAN-WUNSCH
     */
    public static TrackMatch of(List<PlannedLift> planned, List<Visit> visits) {
        List<Wanted> wanted = wanted(planned);
        int[] visitOf = align(wanted, visits);
        // A day that began late is late all along: what is near in time is judged once more.
        visitOf = align(later(wanted, lateMillis(wanted, visits, visitOf)), visits);
        dropBroken(wanted, visitOf);
        boolean[] used = new boolean[visits.size()];
        for (int visit : visitOf) {
            if (visit >= 0) {
                used[visit] = true;
            }
        }
        findOutOfOrder(wanted, visits, visitOf, used);
        return result(planned, visits, visitOf, used);
    }

    private static List<Wanted> wanted(List<PlannedLift> planned) {
        List<Wanted> wanted = new ArrayList<>();
        for (int k = 0; k < planned.size(); k++) {
            PlannedLift lift = planned.get(k);
            wanted.add(new Wanted(k, -1, lift.hookedWhere(), lift.hookedAt()));
            for (int d = 0; d < lift.drops().size(); d++) {
                PlannedLift.Drop drop = lift.drops().get(d);
                wanted.add(new Wanted(k, d, drop.place(), drop.at()));
            }
        }
        return wanted;
    }

    private static List<Wanted> later(List<Wanted> wanted, long byMillis) {
        return wanted.stream()
                .map(w -> new Wanted(w.lift(), w.drop(), w.place(), w.at().plusMillis(byMillis)))
                .toList();
    }

    /** How late the day is: the median over all stays that were found. */
    private static long lateMillis(List<Wanted> wanted, List<Visit> visits, int[] visitOf) {
        long[] late =
                IntStream.range(0, visitOf.length)
                        .filter(k -> visitOf[k] >= 0)
                        .mapToLong(
                                k ->
                                        Duration.between(
                                                        wanted.get(k).at(),
                                                        visits.get(visitOf[k]).until())
                                                .toMillis())
                        .sorted()
                        .toArray();
        return late.length == 0 ? 0 : late[late.length / 2];
    }

    /** For each wanted stay the visit it is laid beside, or -1. */
    private static int[] align(List<Wanted> wanted, List<Visit> visits) {
        int n = wanted.size();
        int m = visits.size();
        double[][] cost = new double[n + 1][m + 1];
        // How many wanted stays the last visit serves; 0 leaves out a visit, -1 a wanted stay.
        int[][] served = new int[n + 1][m + 1];
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j <= m; j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = (i + j) * MISSING_S;
                    served[i][j] = i > 0 ? -1 : 0;
                    continue;
                }
                boolean leaveWanted = cost[i - 1][j] < cost[i][j - 1];
                cost[i][j] = Math.min(cost[i - 1][j], cost[i][j - 1]) + MISSING_S;
                served[i][j] = leaveWanted ? -1 : 0;
                double offS = 0;
                for (int k = 1; k <= Math.min(i, MOST_SERVED); k++) {
                    offS += offS(wanted.get(i - k), visits.get(j - 1)) + (k > 1 ? SHARED_S : 0);
                    if (cost[i - k][j - 1] + offS < cost[i][j]) {
                        cost[i][j] = cost[i - k][j - 1] + offS;
                        served[i][j] = k;
                    }
                }
            }
        }
        return walkBack(served);
    }

    private static int[] walkBack(int[][] served) {
        int i = served.length - 1;
        int j = served[0].length - 1;
        int[] visitOf = new int[i];
        Arrays.fill(visitOf, -1);
        while (i > 0 && j > 0) {
            int k = served[i][j];
            if (k < 0) {
                i--;
            } else {
                Arrays.fill(visitOf, i - k, i, j - 1);
                i -= k;
                j--;
            }
        }
        return visitOf;
    }

    private static double offS(Wanted wanted, Visit visit) {
        if (!wanted.place().equals(visit.place())) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.abs(Duration.between(wanted.at(), visit.until()).toMillis() / 1000.0);
    }

    /** A hook-up without its set-down is no lift: it is left to be found again. */
    private static void dropBroken(List<Wanted> wanted, int[] visitOf) {
        for (int i = 0; i < wanted.size(); i++) {
            int end = lastOf(wanted, i);
            boolean whole = visitOf[i] >= 0;
            for (int k = i + 1; k <= end; k++) {
                // Other stays between hook-up and set-down would make it two flights.
                boolean next = visitOf[k] - visitOf[k - 1] == (isSamePlace(wanted, k) ? 0 : 1);
                whole &= visitOf[k] >= 0 && next;
            }
            for (int k = i; k <= end && !whole; k++) {
                visitOf[k] = -1;
            }
            i = end;
        }
    }

    /** Two loads set down at one place are set down in one stay. */
    private static boolean isSamePlace(List<Wanted> wanted, int k) {
        return wanted.get(k).place().equals(wanted.get(k - 1).place());
    }

    private static int lastOf(List<Wanted> wanted, int first) {
        int end = first;
        while (end + 1 < wanted.size() && wanted.get(end + 1).lift() == wanted.get(first).lift()) {
            end++;
        }
        return end;
    }

    private static void findOutOfOrder(
            List<Wanted> wanted, List<Visit> visits, int[] visitOf, boolean[] used) {
        for (int i = 0; i < wanted.size(); i = lastOf(wanted, i) + 1) {
            int end = lastOf(wanted, i);
            if (visitOf[i] >= 0) {
                continue;
            }
            int best = -1;
            double bestS = Double.POSITIVE_INFINITY;
            int[] nth = new int[end - i + 1];
            for (int k = i + 1; k <= end; k++) {
                nth[k - i] = nth[k - i - 1] + (isSamePlace(wanted, k) ? 0 : 1);
            }
            for (int v = 0; v + nth[end - i] < visits.size(); v++) {
                double offS = 0;
                for (int k = i; k <= end; k++) {
                    int visit = v + nth[k - i];
                    offS +=
                            used[visit]
                                    ? Double.POSITIVE_INFINITY
                                    : offS(wanted.get(k), visits.get(visit));
                }
                if (offS < bestS) {
                    best = v;
                    bestS = offS;
                }
            }
            for (int k = i; best >= 0 && k <= end; k++) {
                visitOf[k] = best + nth[k - i];
                used[visitOf[k]] = true;
            }
        }
    }

    private static TrackMatch result(
            List<PlannedLift> planned, List<Visit> visits, int[] visitOf, boolean[] used) {
        List<Found> lifts = new ArrayList<>();
        int i = 0;
        for (PlannedLift lift : planned) {
            Optional<Visit> hook = visit(visits, visitOf[i]);
            i++;
            List<Optional<Visit>> drops = new ArrayList<>();
            for (int d = 0; d < lift.drops().size(); d++) {
                drops.add(visit(visits, visitOf[i]));
                i++;
            }
            lifts.add(new Found(lift, hook, drops));
        }
        List<Visit> rest = new ArrayList<>();
        for (int v = 0; v < visits.size(); v++) {
            if (!used[v]) {
                rest.add(visits.get(v));
            }
        }
        return new TrackMatch(lifts, rest);
    }

    private static Optional<Visit> visit(List<Visit> visits, int number) {
        return number < 0 ? Optional.empty() : Optional.of(visits.get(number));
    }
}
