package underhook.app.port;

import java.util.List;
import underhook.core.finding.Finding;
import underhook.core.job.Job;

/**
 * Why a day has no plan.
 *
 * @param job that was to be planned
 * @param planId id of the plan that the verifier refused; empty when none was made
 * @param findings the reasons
 */
public record Refusal(Job job, String planId, List<Finding> findings) {
    public Refusal {
        findings = List.copyOf(findings);
    }
}
