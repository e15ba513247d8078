package underhook.core.flown;

import java.util.Set;

/**
 * Who was trained to hook loads.
 *
 * @param names as they are called on the day; empty when the job names nobody, and then nobody is refused
 */
public record TrainedHands(Set<String> names) {
    /** Nobody is named. */
    public static final TrainedHands UNNAMED = new TrainedHands(Set.of());

    public TrainedHands {
        names = Set.copyOf(names);
    }

    boolean mayHook(String person) {
        return names.isEmpty() || names.contains(person);
    }
}
