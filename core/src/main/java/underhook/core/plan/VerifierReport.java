package underhook.core.plan;

import java.util.List;
import underhook.core.finding.Finding;

/** What the re-check found: how many checks were made, and every violation. */
public record VerifierReport(long checks, List<Finding> violations) {
    public VerifierReport {
        violations = List.copyOf(violations);
    }

    public boolean holds() {
        return violations.isEmpty();
    }
}
