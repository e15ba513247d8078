package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;
import underhook.planner.order.DayAir.Slot;
import underhook.planner.order.DayLegs.LegAt;
import underhook.planner.route.Memo;
import underhook.planner.route.RankedWays;

/**
 * Legs by what they hang on, kept over jobs that are the same but for the hours of the forecast: the air at both
 * ends and every way in and out that may be taken there, as judged. When in the day that is does not matter.
 */
final class LegMemory {
    private final List<Slot> airs = new ArrayList<>();
    private final Memo<Asked, List<Known>> empty = Memo.of();
    private final Memo<Trip, Memo<Asked, List<Known>>> loaded = Memo.byIdentity();

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

    /** From where to where on which line, the air at both ends, and what is closed meanwhile. */
    record Asked(int from, int to, int line, int airFrom, int airTo, ZoneHours.Then closed) {}

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
     */
    @Nullable Known find(@Nullable Trip trip, Asked asked, Ends ends) {
        for (Known known : list(trip, asked)) {
            if (known.ends().isLike(ends)) {
                return known;
            }
        }
        return null;
    }

    void keep(@Nullable Trip trip, Asked asked, Ends ends, Optional<LegAt> leg) {
        list(trip, asked).add(new Known(ends, leg));
    }

    private List<Known> list(@Nullable Trip trip, Asked asked) {
        return (trip == null ? empty : loaded.get(trip, unused -> Memo.of()))
                .get(asked, unused -> new CopyOnWriteArrayList<>());
    }
}
