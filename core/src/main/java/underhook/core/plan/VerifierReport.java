package underhook.core.plan;

import java.util.List;
import java.util.stream.Stream;
import underhook.core.finding.Finding;

/**
 * What the re-check found.
 *
 * @param checks how many were made
 * @param violations every one that refuses the plan
 * @param over what does not hold of what was done or begun when the day was ordered anew: it is so, and is said
 */
public record VerifierReport(long checks, List<Finding> violations, List<Finding> over) {
    public VerifierReport {
        violations = List.copyOf(violations);
        over = List.copyOf(over);
    }

    /** Of a plan of which nothing is done. */
    public VerifierReport(long checks, List<Finding> violations) {
        this(checks, violations, List.of());
    }

    /** All that does not hold. */
    public List<Finding> all() {
        return Stream.concat(violations.stream(), over.stream()).toList();
    }

    public boolean holds() {
        return violations.isEmpty();
    }
}
