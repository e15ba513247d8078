package underhook.core.billing;

import java.util.List;

/**
 * What a job like a planned day will take and cost, as a range.
 *
 * <p>Each lift takes its planned time times a ratio that earlier days taught. The sum of many lifts is held
 * to be normal; the range runs from the 10 % to the 90 % point. Days lost to weather until all are flown
 * follow the negative binomial distribution. Low goes with low and high with high, so that the range of the
 * price is rather too wide than too narrow.
 *
 * @param flyingS time from take-off to landing on one day, s
 * @param engineS time with the engine on, on one day, s
 * @param waitingDays days lost to weather before the last day is flown
 * @param cents price of all days, whole cents
 * @param likelyDay one day of the likely case, item by item
 * @source DERIVED sums of independent times; NIST-HANDBOOK points of the normal distribution
 */
public record Quote(
        Times flyingS, Times engineS, Counts waitingDays, Counts cents, Invoice likelyDay) {
    /** The 90 % point of the standard normal distribution. @source NIST-HANDBOOK table 1.3.6.7.1 */
    private static final double TENTH_FACTOR = 1.2816;

    /** Beyond this many lost days nobody waits. */
    private static final int MOST_DAYS = 10_000;

    /** A time with its range, s. */
    public record Times(double lowS, double likelyS, double highS) {
        private Times plus(double moreS) {
            return new Times(lowS + moreS, likelyS + moreS, highS + moreS);
        }
    }

    /** A number with its range. */
    public record Counts(long low, long likely, long high) {}

    /**
     * One lift.
     *
     * @param plannedS from hook-up until the last load was free, s
     * @param believedRatio flown over planned
     * @param spreadRatio standard deviation of that ratio for one lift
     * @param sureFactor as how many flights the mean ratio counts, above 0
     */
    public record Lift(
            double plannedS, double believedRatio, double spreadRatio, double sureFactor) {
        public Lift {
            if (!(plannedS >= 0 && believedRatio > 0 && spreadRatio >= 0 && sureFactor > 0)) {
                throw new IllegalArgumentException("a lift of a quote is out of range.");
            }
        }
    }

    /**
     * One planned day.
     *
     * @param otherS flying that belongs to no lift, s
     * @param groundS engine on without flying, s
     * @param standbyS ready with the engine off, s
     * @param burnKgPerS fuel of the day over its time with the engine on, starts and hovers included, kg/s
     */
    public record Day(
            List<Lift> lifts,
            int poles,
            double otherS,
            double groundS,
            double standbyS,
            double burnKgPerS) {
        public Day {
            lifts = List.copyOf(lifts);
            if (!(otherS >= 0 && groundS >= 0 && standbyS >= 0 && burnKgPerS >= 0) || poles < 0) {
                throw new IllegalArgumentException("the day of a quote is out of range.");
            }
        }
    }

    /**
     * What is assumed.
     *
     * @param days such days until the job is done, at least 1
     * @param flyableFraction how many days of that season can be flown, above 0 and at most 1
     * @param waitingDayCents price of a day lost to weather
     */
    public record Terms(int days, double flyableFraction, long waitingDayCents) {
        public Terms {
            if (days < 1 || !(flyableFraction > 0 && flyableFraction <= 1) || waitingDayCents < 0) {
                throw new IllegalArgumentException("the terms of a quote are out of range.");
            }
        }
    }

    /** Works the quote out. */
    public static Quote of(Day day, Tariff tariff, Terms terms) {
        Times flying = flyingS(day);
        Counts waiting =
                new Counts(lostDays(terms, 0.1), lostDays(terms, 0.5), lostDays(terms, 0.9));
        Invoice low = Invoice.of(tariff, quantities(day, flying.lowS()));
        Invoice likely = Invoice.of(tariff, quantities(day, flying.likelyS()));
        Invoice high = Invoice.of(tariff, quantities(day, flying.highS()));
        Counts cents =
                new Counts(
                        cents(terms, low, waiting.low()),
                        cents(terms, likely, waiting.likely()),
                        cents(terms, high, waiting.high()));
        return new Quote(flying, flying.plus(day.groundS()), waiting, cents, likely);
    }

    private static Times flyingS(Day day) {
        double meanS = 0;
        double variance = 0;
        double commonS = 0;
        double plannedS = 0;
        for (Lift lift : day.lifts()) {
            meanS += lift.plannedS() * lift.believedRatio();
            plannedS += lift.plannedS();
            double own = lift.plannedS() * lift.spreadRatio();
            variance += own * own;
            // That the mean itself is not known moves all lifts together.
            commonS += own / Math.sqrt(lift.sureFactor());
        }
        double ratio = plannedS > 0 ? meanS / plannedS : 1;
        double other = day.otherS() * ratio;
        double all = plannedS > 0 ? commonS * (1 + day.otherS() / plannedS) : 0;
        double half = TENTH_FACTOR * Math.sqrt(variance + all * all);
        double likely = meanS + other;
        return new Times(Math.max(0, likely - half), likely, likely + half);
    }

    private static Invoice.Quantities quantities(Day day, double flyingS) {
        double engineS = flyingS + day.groundS();
        return new Invoice.Quantities(
                Math.round(flyingS * 1000),
                Math.round(engineS * 1000),
                Math.round(day.standbyS() * 1000),
                day.lifts().size(),
                day.poles(),
                Math.round(Math.ceil(engineS * day.burnKgPerS())));
    }

    private static long cents(Terms terms, Invoice oneDay, long waitingDays) {
        return Math.addExact(
                Math.multiplyExact((long) terms.days(), oneDay.total().cents()),
                Math.multiplyExact(waitingDays, terms.waitingDayCents()));
    }

    /**
     * Fewest days lost to weather that suffice with a chance, when each day can be flown with the same
     * chance and regardless of the one before.
     *
     * @param shareFraction the chance, in (0, 1)
     * @source DERIVED negative binomial distribution, summed term by term
     */
    static int lostDays(Terms terms, double shareFraction) {
        double flyable = terms.flyableFraction();
        double term = Math.pow(flyable, terms.days());
        double sum = term;
        int lost = 0;
        while (sum < shareFraction && lost < MOST_DAYS) {
            lost++;
            term *= (1 - flyable) * (lost + terms.days() - 1) / lost;
            sum += term;
        }
        return lost;
    }
}
