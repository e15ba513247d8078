package underhook.planner.search;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What it costs at least to be at one place rather than another: prices of places such that no empty way
 * costs less than the fall in priceS along it.
 *
 * <p>Found as the shadow prices of the cheapest empty ways that join the end of each trip to the beginning
 * of another, by successive shortest paths. Any such prices give a bound; these give the best one.
 */
final class PlacePrices {
    private static final double TINY_S = 1e-9;

    private final int count;
    private final double[][] costS;
    private final int[][] flow;
    private final int[] need;
    private final boolean[] ends;

    /** Of each place those with a way to it or from it. */
    private final int[][] near;

    /**
     * @param costS of each empty way
     * @param surplus trips that end at each place less those that begin there
     * @param ends whether the day may end there
     */
    PlacePrices(double[][] costS, int[] surplus, boolean[] ends) {
        this.count = surplus.length;
        this.costS = costS;
        this.need = surplus.clone();
        this.ends = ends;
        this.flow = new int[count][count];
        this.near = new int[count][];
        for (int place = 0; place < count; place++) {
            near[place] = near(place);
        }
    }

    private int[] near(int place) {
        return IntStream.range(0, count)
                .filter(
                        other ->
                                other != place
                                        && Math.min(costS[place][other], costS[other][place])
                                                < HourLeast.NONE_S)
                .toArray();
    }

    /** Prices, one for each place. */
    double[] pricesS() {
        for (int place = 0; place < count; place++) {
            boolean shipped = true;
            while (shipped && need[place] > 0) {
                shipped = ship(place);
            }
        }
        return fallToEndS();
    }

    /** How often each empty way is flown in the cheapest joining. */
    int[][] flow() {
        return flow;
    }

    /** Ships what it can from one place by the cheapest path to where something is wanted. */
    private boolean ship(int from) {
        double[] farS = new double[count];
        int[] before = new int[count];
        Arrays.fill(farS, HourLeast.NONE_S);
        Arrays.fill(before, -1);
        farS[from] = 0;
        relax(farS, before);
        int best = -1;
        for (int to = 0; to < count; to++) {
            if (need[to] < 0 && farS[to] < HourLeast.NONE_S / 2) {
                best = best < 0 || farS[to] < farS[best] ? to : best;
            }
        }
        if (best < 0) {
            return false;
        }
        int amount = Math.min(need[from], -need[best]);
        for (int at = best; at != from; at = before[at]) {
            int back = flow[at][before[at]];
            amount = back > 0 ? Math.min(amount, back) : amount;
        }
        for (int at = best; at != from; at = before[at]) {
            if (flow[at][before[at]] > 0) {
                flow[at][before[at]] -= amount;
            } else {
                flow[before[at]][at] += amount;
            }
        }
        need[from] -= amount;
        need[best] += amount;
        return true;
    }

    /** Cheapest paths from where it is 0; a way used so farS may be taken back. */
    private void relax(double[] farS, int[] before) {
        boolean again = true;
        for (int round = 0; round < count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                if (farS[a] >= HourLeast.NONE_S / 2) {
                    continue;
                }
                for (int b : near[a]) {
                    double step = flow[b][a] > 0 ? -costS[b][a] : costS[a][b];
                    if (farS[a] + step < farS[b] - TINY_S) {
                        farS[b] = farS[a] + step;
                        before[b] = a;
                        again = true;
                    }
                }
            }
        }
    }

    /** For each place the cheapest way on to where the day may end, uses taken back counted. */
    private double[] fallToEndS() {
        double[] priceS = new double[count];
        for (int place = 0; place < count; place++) {
            priceS[place] = ends[place] ? 0 : HourLeast.NONE_S;
        }
        fall(priceS);
        for (int place = 0; place < count; place++) {
            if (priceS[place] >= HourLeast.NONE_S) {
                // Joined to no end: worth as little as the ways to it allow.
                priceS[place] = lowestS(priceS, place);
                fall(priceS);
            }
        }
        return closedS(priceS);
    }

    private double lowestS(double[] priceS, int place) {
        return IntStream.of(near[place])
                .filter(a -> priceS[a] < HourLeast.NONE_S && costS[a][place] < HourLeast.NONE_S)
                .mapToDouble(a -> priceS[a] - costS[a][place])
                .max()
                .orElse(0);
    }

    private void fall(double[] priceS) {
        boolean again = true;
        for (int round = 0; round < 2 * count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                for (int b : near[a]) {
                    double step = flow[b][a] > 0 ? -costS[b][a] : costS[a][b];
                    if (priceS[b] + step < priceS[a] - TINY_S) {
                        priceS[a] = priceS[b] + step;
                        again = true;
                    }
                }
            }
        }
    }

    /** Lowered until no way costs less than the fall along it: then they prove what they say. */
    private double[] closedS(double[] priceS) {
        boolean again = true;
        for (int round = 0; round < 2 * count && again; round++) {
            again = false;
            for (int a = 0; a < count; a++) {
                for (int b = 0; b < count; b++) {
                    if (a != b && priceS[b] + costS[a][b] < priceS[a]) {
                        priceS[a] = priceS[b] + costS[a][b];
                        again = true;
                    }
                }
            }
        }
        return priceS;
    }
}
