package underhook.planner.odds;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Moments and what each waits for: a moment comes as soon as the last of that allows.
 *
 * <p>Moment 0 is the clock's zero. Edges lie in an order in which every moment is known before it is
 * asked for.
 */
final class Network {
    private final int moments;
    private final List<Edge> edges;
    private final int[] from;
    private final int[] to;
    private final int[] piece;
    private final double[] fixedS;
    private final double[] variesS;

    private Network(int moments, List<Edge> edges) {
        this.moments = moments;
        this.edges = List.copyOf(edges);
        this.from = edges.stream().mapToInt(Edge::from).toArray();
        this.to = edges.stream().mapToInt(Edge::to).toArray();
        this.piece = edges.stream().mapToInt(Edge::piece).toArray();
        this.fixedS = edges.stream().mapToDouble(Edge::fixedS).toArray();
        this.variesS = edges.stream().mapToDouble(Edge::variesS).toArray();
    }

    /**
     * @throws IllegalArgumentException when moments wait for each other in a circle
     */
    static Network of(int moments, List<Edge> edges) {
        int[] rank = ranks(moments, edges);
        List<Edge> sorted = new ArrayList<>(edges);
        sorted.sort(Comparator.comparingInt(edge -> rank[edge.to()]));
        return new Network(moments, sorted);
    }

    /** @source DERIVED Kahn's rule: what waits for nothing more comes next */
    private static int[] ranks(int moments, List<Edge> edges) {
        int[] waits = new int[moments];
        List<List<Integer>> behind = new ArrayList<>();
        for (int i = 0; i < moments; i++) {
            behind.add(new ArrayList<>());
        }
        for (Edge edge : edges) {
            waits[edge.to()]++;
            behind.get(edge.from()).add(edge.to());
        }
        Deque<Integer> free = new ArrayDeque<>();
        for (int i = 0; i < moments; i++) {
            if (waits[i] == 0) {
                free.add(i);
            }
        }
        int[] rank = new int[moments];
        int next = 0;
        while (!free.isEmpty()) {
            int moment = free.remove();
            rank[moment] = next++;
            for (int after : behind.get(moment)) {
                if (--waits[after] == 0) {
                    free.add(after);
                }
            }
        }
        if (next < moments) {
            throw new IllegalArgumentException("moments wait for each other in a circle.");
        }
        return rank;
    }

    int moments() {
        return moments;
    }

    /** The same with other edges in the place of each; empty where one is no more. */
    Network with(Function<Edge, Optional<Edge>> change) {
        return new Network(
                moments, edges.stream().flatMap(edge -> change.apply(edge).stream()).toList());
    }

    List<Edge> edges() {
        return edges;
    }

    /**
     * Works every moment out, s after the clock's zero.
     *
     * @param drawnFactor one factor for each piece
     * @param timesS is filled, one for each moment
     */
    void run(double[] drawnFactor, double[] timesS) {
        run(drawnFactor, new double[from.length], timesS);
    }

    /**
     * The same with longer waits.
     *
     * @param laterS one for each edge in the order of {@link #edges()}: by how much longer it waits, minus infinity
     *     where it does not
     */
    void run(double[] drawnFactor, double[] laterS, double[] timesS) {
        Arrays.fill(timesS, Double.NEGATIVE_INFINITY);
        timesS[0] = 0;
        for (int i = 0; i < from.length; i++) {
            double atS =
                    timesS[from[i]] + fixedS[i] + laterS[i] + variesS[i] * drawnFactor[piece[i]];
            if (atS > timesS[to[i]]) {
                timesS[to[i]] = atS;
            }
        }
    }
}
