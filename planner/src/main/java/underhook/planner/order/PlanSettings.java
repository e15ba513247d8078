package underhook.planner.order;

import java.time.Instant;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import underhook.planner.search.Effort;
import underhook.planner.search.TimeGone;

/**
 * What a plan is made with.
 *
 * @param planId the same in every file of one run
 * @param effort of the search: its seed and for how many seconds its work is meant; the same job and effort give the
 *     same plan
 * @param program name and version
 * @param stop says true when no more ways may be looked for; asked once there is a day that can be flown
 * @param enough says true when no further load may be looked at, so that time is left to put those that
 *     were in order
 * @param orderGone of the time, from the first day on, in which a better order may be looked for; what is left after
 *     it is for others to choose from and for the bounds
 * @param ended says true when somebody wants it to end: nothing better is looked for from then on. What finishing the
 *     best day asks for is found until {@code stop} says true as well
 */
public record PlanSettings(
        String planId,
        Instant plannedAt,
        Effort effort,
        String program,
        BooleanSupplier stop,
        BooleanSupplier enough,
        TimeGone orderGone,
        BooleanSupplier ended) {
    /** Loads are looked at until the search must end. */
    public PlanSettings(
            String planId, Instant plannedAt, long seed, String program, BooleanSupplier stop) {
        this(planId, plannedAt, seed, program, stop, stop);
    }

    /** A better order is looked for until the search must end. */
    public PlanSettings(
            String planId,
            Instant plannedAt,
            long seed,
            String program,
            BooleanSupplier stop,
            BooleanSupplier enough) {
        this(
                planId,
                plannedAt,
                Effort.usual(seed),
                program,
                stop,
                enough,
                TimeGone.once(stop),
                () -> false);
    }

    /** Of the search; it stands in the plan. */
    public long seed() {
        return effort.seed();
    }

    public PlanSettings {
        Objects.requireNonNull(planId, "planId");
        Objects.requireNonNull(plannedAt, "plannedAt");
        Objects.requireNonNull(effort, "effort");
        Objects.requireNonNull(program, "program");
        Objects.requireNonNull(stop, "stop");
        Objects.requireNonNull(enough, "enough");
        Objects.requireNonNull(orderGone, "orderGone");
        Objects.requireNonNull(ended, "ended");
    }
}
