package underhook.core.flown;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.LoadId;

/**
 * One lift as it was flown: from hook-up until the last load was free.
 *
 * @param loads in the order in which they were hooked
 * @param offAt when each load that was set down stood and its hook was open, in the order of set-down
 * @param massReadKg what the load cell read, kg, when it was tapped
 * @param lineM length of the line, m; empty when nobody tapped it
 * @param aborted whether the lift was given up
 */
public record FlownLift(
        List<LoadId> loads,
        Instant hookedAt,
        List<Off> offAt,
        OptionalDouble massReadKg,
        OptionalDouble lineM,
        boolean aborted) {
    /**
     * A load set down.
     *
     * @param at when it stood and its hook was open
     * @param freeAt when two people had called it free
     */
    public record Off(LoadId load, Instant at, Optional<Instant> freeAt) {}

    public FlownLift {
        loads = List.copyOf(loads);
        offAt = List.copyOf(offAt);
    }

    /** Whether every load of it stands where it was set down. */
    public boolean isDone() {
        return !aborted
                && offAt.size() == loads.size()
                && offAt.stream().allMatch(off -> off.freeAt().isPresent());
    }
}
