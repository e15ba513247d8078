package underhook.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.DoubleSupplier;

/**
 * Two ways to the same answer.
 *
 * @param name word on the command line
 * @param baseline what the subject is compared with, in words
 * @param baselineWork one round of it; the sum of its answers, so that none can be left out
 * @param subjectWork the same for what is measured
 */
record Comparison(
        String name, String baseline, DoubleSupplier baselineWork, DoubleSupplier subjectWork)
        implements Measured {
    private static final int WARM_UP = 5;
    private static final int ROUNDS = 15;

    /** Runs both in turns and tells the ratio of their medians. */
    @Override
    public String measure() {
        double[] baselineS = new double[ROUNDS];
        double[] subjectS = new double[ROUNDS];
        double sum = 0;
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            long start = System.nanoTime();
            sum += baselineWork.getAsDouble();
            long middle = System.nanoTime();
            sum += subjectWork.getAsDouble();
            long end = System.nanoTime();
            if (round >= 0) {
                baselineS[round] = (middle - start) / 1e9;
                subjectS[round] = (end - middle) / 1e9;
            }
        }
        if (Double.isNaN(sum)) {
            throw new IllegalStateException(name + " gave no number.");
        }
        Arrays.sort(baselineS);
        Arrays.sort(subjectS);
        double medianBaselineS = baselineS[ROUNDS / 2];
        double medianSubjectS = subjectS[ROUNDS / 2];
        return String.format(
                Locale.ROOT,
                "%s: %.2f times the time of %s (median of %d rounds, %.4f s and %.4f s)",
                name,
                medianSubjectS / medianBaselineS,
                baseline,
                ROUNDS,
                medianSubjectS,
                medianBaselineS);
    }
}
