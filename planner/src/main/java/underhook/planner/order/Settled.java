package underhook.planner.order;

import java.util.List;
import java.util.Set;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;

/**
 * Loads of which nothing is decided any more.
 *
 * @param flown what hung on the hook in each lift that is done or begun
 * @param off loads that are taken off the day
 * @param alone loads that hang with no other, as they wait for what that does not
 */
record Settled(List<List<LoadId>> flown, Set<LoadId> off, Set<LoadId> alone) {
    static final Settled NOTHING = new Settled(List.of(), Set.of(), Set.of());

    Settled {
        flown = flown.stream().map(List::copyOf).toList();
        off = Set.copyOf(off);
        alone = Set.copyOf(alone);
    }

    /**
     * Whether trips made of all loads would be the same: what is flown hung so, nothing off is in them, and nothing of
     * what is flown left a place as the last thing there to which more was to come.
     */
    boolean leaves(Job job, List<Trip> trips) {
        return flown.stream().allMatch(hung -> isTrip(hung, trips))
                && trips.stream().noneMatch(trip -> off.stream().anyMatch(trip::carries))
                && job.loads().stream()
                        .filter(load -> flown.stream().noneMatch(hung -> hung.contains(load.id())))
                        .noneMatch(load -> isLeft(job, load));
    }

    /** Whether the last thing has left the place that a load goes to. */
    private boolean isLeft(Job job, Load load) {
        return flown.stream()
                .flatMap(List::stream)
                .map(job::getLoad)
                .anyMatch(
                        gone ->
                                gone.from().equals(load.to())
                                        && job.getKind(gone.kind()).lastAtPlace());
    }

    private static boolean isTrip(List<LoadId> hung, List<Trip> trips) {
        return trips.stream()
                .anyMatch(
                        trip ->
                                trip.loads().size() == hung.size()
                                        && hung.stream().allMatch(trip::carries));
    }
}
