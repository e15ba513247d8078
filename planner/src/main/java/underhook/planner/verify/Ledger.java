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
    private final List<Finding> violations = new ArrayList<>();
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

    /**
     * With what is over apart.
     *
     * <p>A fault that was entered for so many steps of what is over is taken off as often and not oftener: the same
     * fault of a step to come stays.
     *
     * @param done what was found of what is done or begun alone, as far as no order changes that
     */
    VerifierReport toReport(List<Finding> done) {
        List<Finding> left = new ArrayList<>(violations);
        Set<Finding> over = new LinkedHashSet<>();
        List<Finding> others = new ArrayList<>();
        for (Finding one : done) {
            if (left.remove(one)) {
                over.add(one);
            } else {
                others.add(one);
            }
        }
        for (Finding one : others) {
            left.stream()
                    .filter(also -> isAlike(one, also))
                    .findFirst()
                    .ifPresent(
                            also -> {
                                left.remove(also);
                                over.add(also);
                            });
        }
        Set<Finding> distinct = new LinkedHashSet<>(left);
        over.removeAll(distinct);
        return new VerifierReport(checks, List.copyOf(distinct), List.copyOf(over));
    }

    /** Of the same thing with other figures, as what is to come is not seen from what is over. */
    private static boolean isAlike(Finding one, Finding other) {
        return one.code() == other.code() && one.subject().equals(other.subject());
    }

    List<Finding> violations() {
        return List.copyOf(violations);
    }
}
