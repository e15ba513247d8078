package underhook.planner.search;

import java.util.Arrays;

/**
 * What it costs at least to go on from a site after a trip to it, by the hour in which the trip was hooked up.
 *
 * <p>The machine does not wait at a site: it leaves when the trip is let go, or hooks up there at once. So the way on
 * begins in the hour of the trip or soon after it, not in whichever would be calmest.
 */
final class WaysOn {
    /** A trip is let go in the hour in which it is hooked up or in one of so many after it. */
    private static final int HOURS_AFTER = 2;

    private final DayTable table;
    private final HourLeast least;
    private final boolean[] meets;
    private final double[][] costS;
    private final int[][] goesTo;
    private final int[][] leaves;

    /**
     * @param meets for each site whether a hook-up there may follow a set-down there at once
     */
    WaysOn(DayTable table, HourLeast least, boolean[] meets) {
        this.table = table;
        this.least = least;
        this.meets = meets;
        this.costS = new double[table.spots.length][least.hours];
        this.goesTo = new int[table.spots.length][least.hours];
        this.leaves = new int[table.spots.length][least.hours];
    }

    /** Works them out for other prices. */
    void price(double[] hourFactor, double[] placeS) {
        for (int site = 0; site < costS.length; site++) {
            Arrays.fill(costS[site], HourLeast.NONE_S);
            Arrays.fill(goesTo[site], DayTable.NONE);
            if (table.spots[site].site()) {
                price(site, hourFactor, placeS);
            }
        }
    }

    private void price(int site, double[] hourFactor, double[] placeS) {
        int places = costS.length;
        for (int hour = least.hours - 1; hour >= 0; hour--) {
            for (int to = 0; to < places; to++) {
                double onS = site == to ? 0 : least.emptyS(site, to, hour) * hourFactor[hour];
                double hooksS = site == to && !meets[site] ? HourLeast.NONE_S : placeS[places + to];
                double lessS = site == to ? hooksS : Math.min(hooksS, placeS[to]);
                if (onS + lessS < costS[site][hour]) {
                    costS[site][hour] = onS + lessS;
                    goesTo[site][hour] = to;
                    leaves[site][hour] = hour;
                }
            }
        }
        for (int hour = 0; hour < least.hours; hour++) {
            int last = Math.min(hour + HOURS_AFTER, least.hours - 1);
            for (int later = hour + 1; later <= last; later++) {
                if (costS[site][later] < costS[site][hour]) {
                    costS[site][hour] = costS[site][later];
                    goesTo[site][hour] = goesTo[site][later];
                    leaves[site][hour] = leaves[site][later];
                }
            }
        }
    }

    /** From the site to where it is worth most to be, at the price of being there, s. */
    double costS(int site, int hour) {
        return costS[site][hour];
    }

    /** Puts that way into the hour in which it begins. */
    void load(int site, int hour, double[] loadS) {
        int to = goesTo[site][hour];
        if (to >= 0 && to != site) {
            loadS[leaves[site][hour]] += least.emptyS(site, to, leaves[site][hour]);
        }
    }

    /** Makes that way's figure exact; whether it was not. */
    boolean makeExact(int site, int hour) {
        int to = goesTo[site][hour];
        return to >= 0 && to != site && least.makeEmptyExact(site, to, leaves[site][hour]);
    }
}
