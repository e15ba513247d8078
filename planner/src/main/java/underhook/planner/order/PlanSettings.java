package underhook.planner.order;

import java.time.Instant;
import java.util.Objects;
import java.util.function.BooleanSupplier;

/**
 * What a plan is made with.
 *
 * @param planId the same in every file of one run
 * @param seed of the search; the same job and seed give the same plan
 * @param program name and version
 * @param stop says true when the search must end now with what it has
 */
public record PlanSettings(
        String planId, Instant plannedAt, long seed, String program, BooleanSupplier stop) {
    public PlanSettings {
        Objects.requireNonNull(planId, "planId");
        Objects.requireNonNull(plannedAt, "plannedAt");
        Objects.requireNonNull(program, "program");
        Objects.requireNonNull(stop, "stop");
    }
}
