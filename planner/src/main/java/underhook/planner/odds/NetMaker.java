package underhook.planner.odds;

import java.util.ArrayList;
import java.util.List;
import underhook.core.job.Spreads;

/**
 * Puts a network together so that with everything as planned each moment comes when the plan says.
 *
 * <p>Where a plan is quicker than what we know of would allow, the plan counts; it was re-checked. Where it
 * waits longer, it keeps a short wait as a lag and a long one by the clock: whatever the reason was, it may
 * still hold.
 */
final class NetMaker {
    /** The clock's zero. */
    static final int ZERO = 0;

    /** No piece: nothing varies. */
    static final int STEADY = 0;

    /** A longer wait that nothing we know of explains is kept by the clock. */
    private static final double SHORT_S = 120;

    private static final double DUST_S = 1e-6;

    private final List<Double> plannedS = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Edge> edges = new ArrayList<>();

    NetMaker() {
        plannedS.add(0.0);
        pieces.add(Piece.of(Spreads.Ratios.NONE, Piece.Luck.CYCLE));
    }

    /** A moment with its planned time. */
    int moment(double atS) {
        plannedS.add(atS);
        return plannedS.size() - 1;
    }

    int piece(Piece piece) {
        pieces.add(piece);
        return pieces.size() - 1;
    }

    /** Once more the same, for another time that is drawn by itself. */
    int piece(Spreads.Ratios ratios, Piece.Luck luck) {
        return piece(Piece.of(ratios, luck));
    }

    void add(Edge edge) {
        edges.add(edge);
    }

    void add(int from, int to, double fixedS) {
        add(new Edge(from, to, fixedS, 0, STEADY, Edge.Kind.ORDER, ""));
    }

    double plannedS(int moment) {
        return plannedS.get(moment);
    }

    List<Piece> pieces() {
        return List.copyOf(pieces);
    }

    Network make() {
        List<Edge> kept = new ArrayList<>();
        int[] binding = new int[plannedS.size()];
        double[] comesS = new double[plannedS.size()];
        for (int i = 0; i < comesS.length; i++) {
            binding[i] = -1;
            comesS[i] = Double.NEGATIVE_INFINITY;
        }
        for (Edge edge : edges) {
            double spareS = plannedS(edge.to()) - comesS(edge);
            Edge clamped = spareS < 0 ? edge.withFixed(edge.fixedS() + spareS) : edge;
            if (comesS(clamped) > comesS[edge.to()]) {
                comesS[edge.to()] = comesS(clamped);
                binding[edge.to()] = kept.size();
            }
            kept.add(clamped);
        }
        for (int i = 1; i < comesS.length; i++) {
            double missingS = plannedS(i) - comesS[i];
            if (missingS > DUST_S && missingS <= SHORT_S) {
                Edge edge = kept.get(binding[i]);
                kept.set(binding[i], edge.withFixed(edge.fixedS() + missingS));
            } else if (missingS > SHORT_S) {
                kept.add(new Edge(ZERO, i, plannedS(i), 0, STEADY, Edge.Kind.CLOCK, ""));
            }
        }
        return Network.of(plannedS.size(), kept);
    }

    private double comesS(Edge edge) {
        return plannedS(edge.from())
                + edge.fixedS()
                + edge.variesS() * pieces.get(edge.piece()).plannedFactor();
    }
}
