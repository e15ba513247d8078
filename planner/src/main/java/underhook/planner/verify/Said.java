package underhook.planner.verify;

import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;

/** What a plan's findings say, against what they must. */
final class Said {
    private final Day day;

    /** How grave and how often something is told at least. */
    record Least(Severity severity, long count) {}

    Said(Day day) {
        this.day = day;
    }

    /** At least once, at least so gravely. */
    void demand(FindingCode code, String subject, Severity severity) {
        demand(code, subject, new Least(severity, 1));
    }

    /** Whoever answers for a stop makes a caution of it, and of nothing less than before. */
    void demand(FindingCode code, String subject, Least least) {
        Severity told = least.severity() == Severity.STOP ? Severity.CAUTION : least.severity();
        long count =
                day.plan().findings().stream()
                        .filter(one -> one.code() == code && one.subject().equals(subject))
                        .filter(one -> one.severity().compareTo(told) >= 0)
                        .count();
        told(count >= least.count(), subject, code);
    }

    boolean isTold(FindingCode code, String subject, Severity severity) {
        return day.plan().findings().stream()
                .filter(one -> one.code() == code && one.subject().equals(subject))
                .anyMatch(one -> one.severity().compareTo(severity) >= 0);
    }

    void told(boolean holds, String subject, FindingCode code) {
        wrong(holds, subject, "The plan keeps " + code + " to itself, or says less of it.");
    }

    void wrong(boolean holds, String subject, String what) {
        day.ledger().demand(holds, FindingCode.STATED_WRONG, subject, () -> Told.of("plan", what));
    }
}
