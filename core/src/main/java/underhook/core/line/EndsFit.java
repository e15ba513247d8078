package underhook.core.line;

import java.util.function.Function;

/**
 * Fits first and last step of a slow-down until offset and rate over the place are gone.
 *
 * <p>Two things to bring to nothing, four to turn: how high and how long each end is. Each step of Newton's
 * method takes the shortest change that would do, and half of it while that does not help: heights alone
 * would not do where both ends push in the same phase.
 *
 * @source DERIVED Gauss-Newton with the least change
 */
final class EndsFit {
    private static final int STEPS = 12;
    private static final int HALVINGS = 4;
    private static final double NUDGE_FRACTION = 1e-4;

    /** Below this nothing is left to gain, rad. */
    private static final double GOOD_RAD = 1e-5;

    private final double halfPeriodS;
    private final double rateToOffsetS;
    private final Function<SlowDown.Ends, SlowDown> build;
    private final Function<SlowDown, SwingState> miss;

    /**
     * For one speed and load.
     *
     * @param miss state over the place less the state at rest
     */
    EndsFit(
            double periodS,
            Function<SlowDown.Ends, SlowDown> build,
            Function<SlowDown, SwingState> miss) {
        halfPeriodS = periodS / 2;
        rateToOffsetS = periodS / (2 * Math.PI);
        this.build = build;
        this.miss = miss;
    }

    /** The best found, which may be where it began. */
    SlowDown best() {
        double[] turns = {1, 0.5, 1, 0.5};
        double[] left = missRad(turns);
        for (int i = 0; i < STEPS && Math.hypot(left[0], left[1]) > GOOD_RAD; i++) {
            double[] change = changeFraction(turns, left);
            double part = 1;
            boolean better = false;
            for (int half = 0; half < HALVINGS && !better; half++, part /= 2) {
                double[] candidate = movedFraction(turns, change, part);
                double[] now = missRad(candidate);
                better = Math.hypot(now[0], now[1]) < Math.hypot(left[0], left[1]);
                if (better) {
                    turns = candidate;
                    left = now;
                }
            }
            if (!better) {
                break;
            }
        }
        return build.apply(ends(turns));
    }

    private SlowDown.Ends ends(double[] turnsRatio) {
        return new SlowDown.Ends(
                turnsRatio[0] * halfPeriodS,
                turnsRatio[1],
                turnsRatio[2] * halfPeriodS,
                turnsRatio[3]);
    }

    /** Offset, and rate as the offset it would swing to; far off where the way does not end in a hover. */
    private double[] missRad(double[] turnsRatio) {
        SlowDown way = build.apply(ends(turnsRatio));
        if (!(Math.abs(way.path().endMPerS()) < 1e-6)) {
            return new double[] {Math.PI, Math.PI};
        }
        SwingState off = miss.apply(way);
        return new double[] {off.foreRad(), off.foreRadPerS() * rateToOffsetS};
    }

    /** Shortest change that brings both to nothing if all were straight: −Jᵀ (J Jᵀ)⁻¹ r. */
    private double[] changeFraction(double[] turnsRatio, double[] leftRad) {
        double[][] slope = new double[2][turnsRatio.length];
        for (int i = 0; i < turnsRatio.length; i++) {
            double[] nudged = turnsRatio.clone();
            nudged[i] -= NUDGE_FRACTION;
            double[] now = missRad(nudged);
            slope[0][i] = (leftRad[0] - now[0]) / NUDGE_FRACTION;
            slope[1][i] = (leftRad[1] - now[1]) / NUDGE_FRACTION;
        }
        double a = 0;
        double b = 0;
        double d = 0;
        for (int i = 0; i < turnsRatio.length; i++) {
            a += slope[0][i] * slope[0][i];
            b += slope[0][i] * slope[1][i];
            d += slope[1][i] * slope[1][i];
        }
        double determinant = a * d - b * b;
        double first = (d * leftRad[0] - b * leftRad[1]) / determinant;
        double second = (a * leftRad[1] - b * leftRad[0]) / determinant;
        double[] change = new double[turnsRatio.length];
        for (int i = 0; i < change.length; i++) {
            change[i] = -(slope[0][i] * first + slope[1][i] * second);
        }
        return change;
    }

    /** Neither speeding up nor slowing harder than allowed, and no end much off half a period. */
    private static double[] movedFraction(
            double[] turnsRatio, double[] changeFraction, double partFraction) {
        double[] moved = new double[turnsRatio.length];
        for (int i = 0; i < moved.length; i++) {
            double wanted = turnsRatio[i] + partFraction * changeFraction[i];
            boolean height = i % 2 == 1;
            double least = height ? 0 : 0.5;
            double most = height ? 1 : 1.5;
            moved[i] =
                    Double.isFinite(wanted)
                            ? Math.max(least, Math.min(most, wanted))
                            : turnsRatio[i];
        }
        return moved;
    }
}
