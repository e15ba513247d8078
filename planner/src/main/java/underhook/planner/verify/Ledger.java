package underhook.planner.verify;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.plan.VerifierReport;

/** Counts the checks and keeps the violations. Not safe for threads. */
final class Ledger {
    private final Set<Finding> violations = new LinkedHashSet<>();
    private long checks;

    /** Counts one check and enters a violation unless it holds; the text is made only when needed. */
    boolean demand(boolean holds, FindingCode code, String subject, Supplier<Told> told) {
        checks++;
        if (!holds) {
            Told text = told.get();
            violations.add(
                    new Finding(
                            code,
                            Severity.STOP,
                            subject,
                            text.value(),
                            text.limit(),
                            text.unit(),
                            text.source(),
                            text.message()));
        }
        return holds;
    }

    /** Counts a check that holds because what it is about lies far off. */
    void pass() {
        checks++;
    }

    /** Enters all of another. */
    void add(Ledger other) {
        checks += other.checks;
        violations.addAll(other.violations);
    }

    boolean isClean() {
        return violations.isEmpty();
    }

    VerifierReport toReport() {
        List<Finding> sorted = new ArrayList<>(violations);
        return new VerifierReport(checks, sorted);
    }
}
