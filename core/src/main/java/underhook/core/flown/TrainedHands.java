package underhook.core.flown;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * Who was trained to hook loads, and where the loads wait for them.
 *
 * @param names as they are called on the day; empty when the job names nobody, and then nobody is refused
 * @param waitsAt where each load is hooked; a hook-up tapped at another place is refused
 */
public record TrainedHands(Set<String> names, Map<LoadId, PlaceId> waitsAt) {
    /** Nobody is named. */
    public static final TrainedHands UNNAMED = new TrainedHands(Set.of());

    public TrainedHands {
        names = Set.copyOf(names);
        waitsAt = Map.copyOf(waitsAt);
    }

    /** Where the loads wait is not known. */
    public TrainedHands(Set<String> names) {
        this(names, Map.of());
    }

    boolean mayHook(String person) {
        return names.isEmpty() || names.contains(person);
    }

    /** Where a load of the tap waits, when the tap states another place. */
    Optional<PlaceId> findElsewhere(Tap tap) {
        return tap.loads().stream()
                .flatMap(load -> Optional.ofNullable(waitsAt.get(load)).stream())
                .filter(place -> tap.place().filter(at -> !at.equals(place)).isPresent())
                .findFirst();
    }
}
