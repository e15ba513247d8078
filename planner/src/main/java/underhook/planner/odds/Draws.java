package underhook.planner.odds;

import java.util.List;
import java.util.SplittableRandom;

/** Draws one day after the other. Not safe for threads. */
final class Draws {
    private final List<Piece> pieces;
    private final double sharedFraction;
    private final SplittableRandom random;
    private final int[] luck;
    private final double[] days = new double[Piece.Luck.values().length];
    private final double[] drawn;

    Draws(List<Piece> pieces, double sharedFraction, SplittableRandom random) {
        this.pieces = pieces;
        this.sharedFraction = sharedFraction;
        this.random = random;
        List<Piece.Luck> known = List.of(Piece.Luck.values());
        this.luck = pieces.stream().mapToInt(piece -> known.indexOf(piece.luck())).toArray();
        this.drawn = new double[pieces.size()];
    }

    /**
     * A factor for each piece; the next call overwrites it.
     *
     * <p>Each piece takes the day's luck of its kind at the shared chance and its own else, so that every
     * one by itself is spread as stated, and a slow day is slow throughout.
     */
    double[] next() {
        for (int i = 0; i < days.length; i++) {
            days[i] = random.nextDouble();
        }
        for (int i = 0; i < drawn.length; i++) {
            double own = random.nextDouble();
            boolean shared = random.nextDouble() < sharedFraction;
            drawn[i] = pieces.get(i).atFactor(shared ? days[luck[i]] : own);
        }
        return drawn;
    }
}
