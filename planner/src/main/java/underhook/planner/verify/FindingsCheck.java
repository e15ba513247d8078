package underhook.planner.verify;

import java.util.List;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.MassStatus;
import underhook.core.plan.KitItem;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What the job and the plan's own figures demand to be told, and the plan may not keep to itself. */
final class FindingsCheck {
    private final Day day;

    FindingsCheck(Day day) {
        this.day = day;
    }

    void run() {
        for (Finding one : day.plan().findings()) {
            wrong(!one.message().isBlank(), one.subject(), one.code() + " says nothing.");
        }
        List<Finding> read = day.job().readingFindings();
        for (Finding one : read) {
            // Of one file several things may be said under one code.
            long count = read.stream().filter(also -> isAlike(one, also)).count();
            demand(one.code(), one.subject(), new Least(one.severity(), count));
        }
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::check);
        }
        for (KitItem item : day.plan().kit()) {
            if (item.count() < item.forDay()) {
                demand(FindingCode.KIT_SHORT, item.name());
            }
            if (item.dueOn().isEmpty()) {
                demand(FindingCode.RIGGING_UNDATED, item.name());
            }
        }
    }

    private void check(Rotation rotation) {
        rotation.loads().stream()
                .map(id -> day.job().getLoad(id))
                .filter(load -> load.massStatus() == MassStatus.ESTIMATED)
                .forEach(load -> demand(FindingCode.MASS_ESTIMATED, load.id().value()));
        rotation.loads().stream()
                .filter(id -> !day.job().getLoad(id).dangerousGoods().isBlank())
                .forEach(id -> demand(FindingCode.DANGEROUS_GOODS, id.value()));
        if (rotation.limits().stream()
                .anyMatch(limit -> limit.code().startsWith("WIND_") && limit.isNear())) {
            demand(FindingCode.WIND_AT_LIMIT, rotation.loads().get(0).value());
        }
        if (rotation.ballastKg() > 0) {
            demand(FindingCode.BALLAST_ADDED, rotation.loads().get(0).value());
        }
    }

    /** How grave and how often something is told at least. */
    private record Least(Severity severity, long count) {}

    private static boolean isAlike(Finding one, Finding other) {
        return one.code() == other.code() && one.subject().equals(other.subject());
    }

    private void demand(FindingCode code, String subject) {
        demand(code, subject, new Least(Severity.CAUTION, 1));
    }

    /** Whoever answers for a stop makes a caution of it, and of nothing less than before. */
    private void demand(FindingCode code, String subject, Least least) {
        Severity told = least.severity() == Severity.STOP ? Severity.CAUTION : least.severity();
        long count =
                day.plan().findings().stream()
                        .filter(one -> one.code() == code && one.subject().equals(subject))
                        .filter(one -> one.severity().compareTo(told) >= 0)
                        .count();
        wrong(
                count >= least.count(),
                subject,
                "The plan keeps " + code + " to itself, or says less of it.");
    }

    private void wrong(boolean holds, String subject, String what) {
        day.ledger().demand(holds, FindingCode.STATED_WRONG, subject, () -> Told.of("plan", what));
    }
}
