package underhook.planner.order;

import java.util.List;
import java.util.Set;
import underhook.core.job.LoadId;

/**
 * Loads of which nothing is decided any more.
 *
 * @param flown what hung on the hook in each lift that is done or begun
 * @param off loads that are taken off the day
 */
record Settled(List<List<LoadId>> flown, Set<LoadId> off) {
    static final Settled NOTHING = new Settled(List.of(), Set.of());

    Settled {
        flown = flown.stream().map(List::copyOf).toList();
        off = Set.copyOf(off);
    }

    /** Whether trips made of all loads would be the same: what is flown hung so, and nothing off is in them. */
    boolean leaves(List<Trip> trips) {
        return flown.stream().allMatch(hung -> isTrip(hung, trips))
                && trips.stream().noneMatch(trip -> off.stream().anyMatch(trip::carries));
    }

    private static boolean isTrip(List<LoadId> hung, List<Trip> trips) {
        return trips.stream()
                .anyMatch(
                        trip ->
                                trip.loads().size() == hung.size()
                                        && hung.stream().allMatch(trip::carries));
    }
}
