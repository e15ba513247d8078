package underhook.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import underhook.planner.order.DayAir.Slot;
import underhook.planner.order.DayLegs.LegAt;
import underhook.planner.route.RankedWays;

/**
 * Legs by what they hang on, kept over jobs that are the same but for the hours of the forecast: the air at both
 * ends and every way in and out that may be taken there, as judged. When in the day that is does not matter. Not safe
 * for threads.
 */
final class LegMemory {
    private final List<Slot> airs = new ArrayList<>();
    private final IdentityHashMap<@Nullable Trip, Map<String, List<Known>>> legs =
            new IdentityHashMap<>();

    /** The ways that are allowed at both ends of a leg, best first. */
    record Ends(Optional<RankedWays> out, Optional<RankedWays> in) {
        private boolean isLike(Ends other) {
            return isLike(out, other.out) && isLike(in, other.in);
        }

        private static boolean isLike(Optional<RankedWays> one, Optional<RankedWays> other) {
            return one.isPresent() == other.isPresent()
                    && (one.isEmpty() || one.get().isLike(other.get()));
        }
    }

    /** What was found between such ends; empty where there is no way. */
    record Known(Ends ends, Optional<LegAt> leg) {}

    /** The same number for hours in which the air is the same. */
    int air(Slot slot) {
        for (int i = 0; i < airs.size(); i++) {
            if (slot.hasAirOf(airs.get(i))) {
                return i;
            }
        }
        airs.add(slot);
        return airs.size() - 1;
    }

    /**
     * What was found of a leg; null where it was not asked for yet.
     *
     * @param trip what is carried; null for an empty way
     * @param key from where to where on which line, and the air at both ends
     */
    @Nullable Known find(@Nullable Trip trip, String key, Ends ends) {
        for (Known known : list(trip, key)) {
            if (known.ends().isLike(ends)) {
                return known;
            }
        }
        return null;
    }

    void keep(@Nullable Trip trip, String key, Ends ends, Optional<LegAt> leg) {
        list(trip, key).add(new Known(ends, leg));
    }

    private List<Known> list(@Nullable Trip trip, String key) {
        return legs.computeIfAbsent(trip, unused -> new HashMap<>())
                .computeIfAbsent(key, unused -> new ArrayList<>());
    }
}
