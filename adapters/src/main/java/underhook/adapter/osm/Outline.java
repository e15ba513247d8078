package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.osm.OsmFile.Spot;

/**
 * A way or joined ways with the positions that the file knows.
 *
 * @param nodes ids
 * @param spots a position for each node; empty where the file does not have it
 */
@SuppressWarnings("ArrayRecordComponent") // never compared, and there are very many
record Outline(long[] nodes, List<Optional<Spot>> spots) {
    /** An area with fewer points than this is not cut to the box. */
    private static final int LONG_RING = 500;

    /** Nodes next to each other, each with its position. */
    record Piece(List<Long> nodes, List<Spot> spots) {}

    static Outline of(long[] nodes, Positions positions) {
        List<Optional<Spot>> spots = new ArrayList<>(nodes.length);
        for (long node : nodes) {
            spots.add(positions.find(node));
        }
        return new Outline(nodes, spots);
    }

    /** Whether the file knows every node. */
    boolean isWhole() {
        return spots.stream().allMatch(Optional::isPresent);
    }

    /**
     * The pieces whose every part touches the box, with the node before and behind; nodes on the same spot
     * count once.
     */
    List<Piece> pieces(Reach reach) {
        List<Piece> pieces = new ArrayList<>();
        Piece piece = new Piece(new ArrayList<>(), new ArrayList<>());
        for (int i = 0; i + 1 < nodes.length; i++) {
            Optional<Spot> a = spots.get(i);
            Optional<Spot> b = spots.get(i + 1);
            if (a.isEmpty() || b.isEmpty() || !reach.touches(a.get(), b.get())) {
                piece = finish(piece, pieces);
            } else if (!a.get().equals(b.get())) {
                if (piece.spots.isEmpty()) {
                    piece.nodes.add(nodes[i]);
                    piece.spots.add(a.get());
                }
                piece.nodes.add(nodes[i + 1]);
                piece.spots.add(b.get());
            }
        }
        finish(piece, pieces);
        return pieces;
    }

    private static Piece finish(Piece piece, List<Piece> pieces) {
        if (piece.spots.isEmpty()) {
            return piece;
        }
        pieces.add(piece);
        return new Piece(new ArrayList<>(), new ArrayList<>());
    }

    /** The area within, without its repeated last point; empty when it does not touch the box. */
    List<Spot> ring(Reach reach) {
        List<Spot> ring = new ArrayList<>();
        boolean touches = false;
        for (int i = 0; i + 1 < nodes.length; i++) {
            Spot a = spots.get(i).orElseThrow();
            Spot b = spots.get(i + 1).orElseThrow();
            touches |= reach.touches(a, b);
            if (!a.equals(b)) {
                ring.add(a);
            }
        }
        if (ring.size() < 3 || !(touches || reach.isInside(ring))) {
            return List.of();
        }
        return ring.size() < LONG_RING ? ring : reach.clipped(ring);
    }
}
