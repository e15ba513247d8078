package underhook.planner.search;

/** The least way from each place to where the machine may stand, with what turning in from a site takes. */
final class HomeWays {
    private final long[] leastS;

    HomeWays(DayTable table) {
        leastS = new long[table.spots.length];
        for (int place = 0; place < leastS.length; place++) {
            leastS[place] = leastS(table, place);
        }
    }

    long leastS(int place) {
        return leastS[place];
    }

    private static long leastS(DayTable table, int place) {
        if (table.spots[place].ground()) {
            return 0;
        }
        double leastS = Double.POSITIVE_INFINITY;
        for (int to = 0; to < table.spots.length; to++) {
            for (int hour = 0; hour < table.slots() && table.spots[to].ground(); hour++) {
                leastS = Math.min(leastS, table.leastEmptyS(place, to, hour));
            }
        }
        long turnS = table.spots[place].site() ? table.rules.returnExtraS() : 0;
        return turnS + (leastS < HourLeast.NONE_S ? (long) Math.floor(leastS) : 0);
    }
}
