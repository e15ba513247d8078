package underhook.planner.search;

import java.util.Arrays;

/**
 * What it costs at least to be at one place rather than another: prices of places such that no empty way
 * costs less than the fall in price along it.
 *
 * <p>Found as the shadow prices of the cheapest empty ways that join the end of each trip to the beginning
 * of another, by successive shortest paths. Any such prices give a bound; these give the best one.
 */
final class PlacePrices {
    private static final double TINY = 1e-9;

    private final int count;
    private final double[][] cost;
    private final double[][] flow;
    private final double[] need;
    private final boolean[] ends;

    /**
     * @param cost of each empty way
     * @param surplus trips that end at each place less those that begin there
     * @param ends whether the day may end there
     */
    PlacePrices(double[][] cost, double[] surplus, boolean[] ends) {
        this.count = surplus.length;
        this.cost = cost;
        this.need = surplus.clone();
        this.ends = ends;
        this.flow = new double[count][count];
    }

    /** Prices, one for each place. */
    double[] prices() {
        for (int place = 0; place < count; place++) {
            boolean shipped = true;
            while (shipped && need[place] > TINY) {
                shipped = ship(place);
            }
        }
        return fallToEnd();
    }

    /** How often each empty way is flown in the cheapest joining. */
    double[][] flow() {
        return flow;
    }

    /** Ships what it can from one place by the cheapest path to where something is wanted. */
    private boolean ship(int from) {
        double[] far = new double[count];
        int[] before = new int[count];
        Arrays.fill(far, HourLeast.NONE_S);
        Arrays.fill(before, -1);
        far[from] = 0;
        relax(far, before);
        int best = -1;
        for (int to = 0; to < count; to++) {
            if (need[to] < -TINY && far[to] < HourLeast.NONE_S / 2) {
                best = best < 0 || far[to] < far[best] ? to : best;
            }
        }
        if (best < 0) {
            return false;
        }
        double amount = Math.min(need[from], -need[best]);
        for (int at = best; at != from; at = before[at]) {
            double back = flow[at][before[at]];
            amount = back > TINY ? Math.min(amount, back) : amount;
        }
        for (int at = best; at != from; at = before[at]) {
            if (flow[at][before[at]] > TINY) {
                flow[at][before[at]] -= amount;
            } else {
                flow[before[at]][at] += amount;
            }
        }
        need[from] -= amount;
        need[best] += amount;
        return true;
    }

    /** Cheapest paths from where it is 0; a way used so far may be taken back. */
    private void relax(double[] far, int[] before) {
        boolean again = true;
        for (int round = 0; round < count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                if (far[a] >= HourLeast.NONE_S / 2) {
                    continue;
                }
                for (int b = 0; b < count; b++) {
                    double step = flow[b][a] > TINY ? -cost[b][a] : cost[a][b];
                    if (a != b && far[a] + step < far[b] - TINY) {
                        far[b] = far[a] + step;
                        before[b] = a;
                        again = true;
                    }
                }
            }
        }
    }

    /** For each place the cheapest way on to where the day may end, uses taken back counted. */
    private double[] fallToEnd() {
        double[] price = new double[count];
        for (int place = 0; place < count; place++) {
            price[place] = ends[place] ? 0 : HourLeast.NONE_S;
        }
        boolean again = true;
        for (int round = 0; round < 2 * count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                for (int b = 0; b < count; b++) {
                    double step = flow[b][a] > TINY ? -cost[b][a] : cost[a][b];
                    if (a != b && price[b] + step < price[a] - TINY) {
                        price[a] = price[b] + step;
                        again = true;
                    }
                }
            }
        }
        return closed(price);
    }

    /** Lowered until no way costs less than the fall along it: then they prove what they say. */
    private double[] closed(double[] price) {
        boolean again = true;
        for (int round = 0; round < 2 * count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                for (int b = 0; b < count; b++) {
                    if (a != b && price[b] + cost[a][b] < price[a]) {
                        price[a] = price[b] + cost[a][b];
                        again = true;
                    }
                }
            }
        }
        return price;
    }
}
