package underhook.planner.odds;

import underhook.core.job.Spreads;

/**
 * A time that varies, as a triangle: flown over planned, or seconds more than planned.
 *
 * @param plannedFactor what it is when all goes as planned: 1 of a ratio, 0 of seconds
 * @param luck what it shares the day's luck with
 */
record Piece(
        double leastFactor,
        double usualFactor,
        double mostFactor,
        double plannedFactor,
        Luck luck) {
    /** Times that are fast or slow together. */
    enum Luck {
        CYCLE,
        GUYING,
        GROUND,
        PEOPLE,
        CREW_LATE,
        WIND
    }

    static Piece of(Spreads.Ratios ratios, Luck luck) {
        return new Piece(ratios.leastRatio(), ratios.usualRatio(), ratios.mostRatio(), 1, luck);
    }

    static Piece of(Spreads.Times times, Luck luck) {
        return new Piece(times.leastS(), times.usualS(), times.mostS(), 0, luck);
    }

    /**
     * Where the triangle has so much of its area behind it.
     *
     * @param areaFraction in [0, 1)
     * @source DERIVED the inverse of a triangle's distribution function
     */
    double atFactor(double areaFraction) {
        double width = mostFactor - leastFactor;
        if (!(width > 0)) {
            return usualFactor;
        }
        double rise = usualFactor - leastFactor;
        return areaFraction * width < rise
                ? leastFactor + Math.sqrt(areaFraction * width * rise)
                : mostFactor - Math.sqrt((1 - areaFraction) * width * (mostFactor - usualFactor));
    }
}
