package underhook.planner.search;

/**
 * How much a search does: a fixed amount of work, whatever the machine's speed.
 *
 * @param seed the same table, seed and seconds give the same day
 * @param seconds what the work is meant for; on a slow or busy machine it takes longer
 */
public record Effort(long seed, long seconds) {
    /** Seconds where nobody asks for more or less. */
    public static final long USUAL_S = 10;

    /** Trips put into days for each second: it takes about half a second on two cores of 2026. */
    private static final long TRIPS_PER_S = 1_800_000;

    /** A day of few trips is found sooner: for the usual seconds so many days for each trip. */
    private static final long MOST_DAYS_PER_TRIP = 14_000;

    private static final long LEAST_TRIPS = 8;

    public Effort {
        if (seconds < 1) {
            throw new IllegalArgumentException("seconds (" + seconds + ") must be at least 1.");
        }
    }

    /** As much as is usual. */
    public static Effort usual(long seed) {
        return new Effort(seed, USUAL_S);
    }

    /** How many days of so many trips are built in all. */
    int days(int trips) {
        long counted = Math.max(LEAST_TRIPS, trips);
        long most = MOST_DAYS_PER_TRIP * counted / USUAL_S;
        return (int) Math.min(Integer.MAX_VALUE, seconds * Math.min(TRIPS_PER_S / counted, most));
    }
}
