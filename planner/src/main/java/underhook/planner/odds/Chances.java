package underhook.planner.odds;

import underhook.core.plan.Odds;

/** What a count of draws says of a chance. */
final class Chances {
    /** Normal deviate that one draw in twenty lies beyond, on one side. @source WILSON-1927 */
    static final double ONE_IN_TWENTY_FACTOR = 1.6448536;

    private Chances() {}

    /** A chance and what it is not below, at one error in twenty. */
    static Odds.Chance of(int hits, int draws) {
        double counted = (double) hits / draws;
        return new Odds.Chance(
                counted, Math.min(counted, leastFraction(hits, draws, ONE_IN_TWENTY_FACTOR)));
    }

    /**
     * Lower end of the score interval of a proportion.
     *
     * @param hits of the draws, from 0 to all
     * @param deviateFactor normal deviate of the wanted confidence
     * @source WILSON-1927 score interval, without a correction for continuity
     */
    static double leastFraction(int hits, int draws, double deviateFactor) {
        double z = deviateFactor;
        double n = draws;
        double p = hits / n;
        double middle = p + z * z / (2 * n);
        double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        return Math.max(0, (middle - half) / (1 + z * z / n));
    }

    /**
     * Number, from 0, of the sorted draw that more than so many draws in all lie below, at most one time in
     * twenty.
     *
     * @source DERIVED a count of draws below a quantile spreads as a binomial one
     */
    static int rank(double belowFraction, int draws) {
        double mean = belowFraction * draws;
        double spread = Math.sqrt(draws * belowFraction * (1 - belowFraction));
        return Math.max(0, (int) Math.floor(mean - ONE_IN_TWENTY_FACTOR * spread));
    }
}
