package underhook.core.track;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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

    /** For each wanted stay the visit it is laid beside, or -1. */
    private static int[] align(List<Wanted> wanted, List<Visit> visits) {
        int n = wanted.size();
        int m = visits.size();
        double[][] cost = new double[n + 1][m + 1];
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j <= m; j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = (i + j) * MISSING_S;
                } else {
                    double skip = Math.min(cost[i - 1][j], cost[i][j - 1]) + MISSING_S;
                    double both = cost[i - 1][j - 1] + offS(wanted.get(i - 1), visits.get(j - 1));
                    cost[i][j] =
                            Math.min(skip, Math.min(both, sharedS(wanted, visits, cost, i, j)));
                }
            }
        }
        int[] visitOf = new int[n];
        Arrays.fill(visitOf, -1);
        int i = n;
        int j = m;
        while (i > 0 && j > 0) {
            double both = cost[i - 1][j - 1] + offS(wanted.get(i - 1), visits.get(j - 1));
            if (cost[i][j] >= both) {
                visitOf[i - 1] = j - 1;
                i--;
                j--;
            } else if (cost[i][j] >= sharedS(wanted, visits, cost, i, j)) {
                visitOf[i - 1] = j - 1;
                visitOf[i - 2] = j - 1;
                i -= 2;
                j--;
            } else if (cost[i][j] >= cost[i - 1][j] + MISSING_S) {
                i--;
            } else {
                j--;
            }
        }
        return visitOf;
    }

    /** Set down and hooked again at one place in one stay. */
    private static double sharedS(
            List<Wanted> wanted, List<Visit> visits, double[][] cost, int i, int j) {
        if (i < 2 || wanted.get(i - 1).lift() == wanted.get(i - 2).lift()) {
            return Double.POSITIVE_INFINITY;
        }
        Visit visit = visits.get(j - 1);
        return cost[i - 2][j - 1] + offS(wanted.get(i - 1), visit) + offS(wanted.get(i - 2), visit);
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
            boolean whole = true;
            for (int k = i; k <= end; k++) {
                whole &= visitOf[k] >= 0;
            }
            // A whole lift with other stays between hook-up and set-down would be two flights.
            whole = whole && visitOf[end] - visitOf[i] == end - i;
            for (int k = i; k <= end && !whole; k++) {
                visitOf[k] = -1;
            }
            i = end;
        }
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
            for (int v = 0; v + (end - i) < visits.size(); v++) {
                double offS = 0;
                for (int k = i; k <= end; k++) {
                    int visit = v + k - i;
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
                visitOf[k] = best + k - i;
                used[best + k - i] = true;
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
