package underhook.planner.odds;

import java.util.List;
import java.util.SplittableRandom;

/** Draws one day after the other. Not safe for threads. */
final class Draws {
    private final List<Piece> pieces;
    private final double sharedFraction;
    private final SplittableRandom random;
    private final int[] luck;
    private final double[] luckFactor = new double[Piece.Luck.values().length];
    private final double[] drawnFactor;

    Draws(List<Piece> pieces, double sharedFraction, SplittableRandom random) {
        this.pieces = pieces;
        this.sharedFraction = sharedFraction;
        this.random = random;
        List<Piece.Luck> known = List.of(Piece.Luck.values());
        this.luck = pieces.stream().mapToInt(piece -> known.indexOf(piece.luck())).toArray();
        this.drawnFactor = new double[pieces.size()];
    }

    /**
     * A factor for each piece; the next call overwrites it.
     *
     * <p>Each piece takes the day's luck of its kind at the shared chance and its own else, so that every
     * one by itself is spread as stated, and a slow day is slow throughout.
     */
    double[] nextFactor() {
        for (int i = 0; i < luckFactor.length; i++) {
            luckFactor[i] = random.nextDouble();
        }
        for (int i = 0; i < drawnFactor.length; i++) {
            double own = random.nextDouble();
            boolean shared = random.nextDouble() < sharedFraction;
            drawnFactor[i] = pieces.get(i).atFactor(shared ? luckFactor[luck[i]] : own);
        }
        return drawnFactor;
    }
}
