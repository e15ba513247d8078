package underhook.planner.search;

import java.util.Arrays;

/**
 * What it costs at least to go on after a trip, by the hour in which the trip was hooked up.
 *
 * <p>The machine does not wait at a site: it leaves when the trip is let go, or hooks up there at once. So the way on
 * begins in an hour in which the trip may be let go, not in whichever would be calmest.
 */
final class WaysOn {
    private final Posts posts;
    private final int hours;
    private final double[][] costS;
    private final int[][] goesTo;
    private final int[][] leaves;

    WaysOn(Posts posts, int hours) {
        this.posts = posts;
        this.hours = hours;
        this.costS = new double[posts.count()][hours];
        this.goesTo = new int[posts.count()][hours];
        this.leaves = new int[posts.count()][hours];
    }

    /** Works them out for other prices of being at each post. */
    void price(double[] hourFactor, double[] worthS) {
        for (int post = 0; post < costS.length; post++) {
            Arrays.fill(costS[post], HourLeast.NONE_S);
            Arrays.fill(goesTo[post], DayTable.NONE);
            if (posts.isLeft(post)) {
                price(post, hourFactor, worthS);
            }
        }
    }

    private void price(int post, double[] hourFactor, double[] worthS) {
        for (int to : posts.next(post)) {
            double[] onS = posts.waysS(post, to);
            for (int hour = 0; hour < hours; hour++) {
                double nowS = onS[hour] * hourFactor[hour] + worthS[to];
                if (onS[hour] < HourLeast.NONE_S && nowS < costS[post][hour]) {
                    costS[post][hour] = nowS;
                    goesTo[post][hour] = to;
                    leaves[post][hour] = hour;
                }
            }
        }
        for (int hour = 0; hour < hours; hour++) {
            int last = posts.lastHour(post, hour);
            for (int later = hour + 1; later <= last; later++) {
                if (costS[post][later] < costS[post][hour]) {
                    costS[post][hour] = costS[post][later];
                    goesTo[post][hour] = goesTo[post][later];
                    leaves[post][hour] = leaves[post][later];
                }
            }
        }
    }

    /** From a post to where it is worth most to be, at the price of being there, s. */
    double costS(int post, int hour) {
        return costS[post][hour];
    }

    /** Puts that way into the hour in which it begins. */
    void load(int post, int hour, double[] loadS) {
        int to = goesTo[post][hour];
        if (to >= 0) {
            loadS[leaves[post][hour]] += posts.waysS(post, to)[leaves[post][hour]];
        }
    }

    /** Wants that way's figure exact; whether it was not. */
    boolean wantExact(int post, int hour) {
        int to = goesTo[post][hour];
        return to >= 0 && posts.wantExact(post, to, leaves[post][hour]);
    }
}
