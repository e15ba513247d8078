package underhook.core.job;

/**
 * What it costs to refuse a comfort: something that people wish for and a day may refuse, never a limit. Whole cents
 * of the job's own money; what costs nothing is not counted.
 *
 * @param sunAheadCents a way in with the sun in the eyes
 * @param sunBesideCents a way in with the sun in the sight down the line
 * @param tailwindKnotCents each full knot of tailwind on a way in
 * @param crosswindKnotCents each full knot of crosswind on a way in above what bothers nobody
 * @param crosswindFromMPerS crosswind that bothers nobody, m/s
 * @param walkMinuteCents each full minute that a crew walks
 */
public record ComfortRates(
        long sunAheadCents,
        long sunBesideCents,
        long tailwindKnotCents,
        long crosswindKnotCents,
        double crosswindFromMPerS,
        long walkMinuteCents) {
    /** Every comfort may be refused for nothing. */
    public static final ComfortRates NONE = new ComfortRates(0, 0, 0, 0, 0, 0);

    public ComfortRates {
        if (sunAheadCents < 0
                || sunBesideCents < 0
                || tailwindKnotCents < 0
                || crosswindKnotCents < 0
                || walkMinuteCents < 0) {
            throw new IllegalArgumentException("rates of comforts must not be negative.");
        }
        if (!(crosswindFromMPerS >= 0 && crosswindFromMPerS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "crosswindFromMPerS ("
                            + crosswindFromMPerS
                            + ") must be finite and not negative.");
        }
    }

    /** Whether anything that a way in refuses costs something. */
    public boolean countsWaysIn() {
        return sunAheadCents + sunBesideCents + tailwindKnotCents + crosswindKnotCents > 0;
    }
}
