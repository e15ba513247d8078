package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Job;
import underhook.core.job.Waiver;

/** Findings that somebody answers for. */
final class Waivers {
    private Waivers() {}

    private static Optional<Waiver> find(Job job, Finding finding) {
        return job.waivers().stream()
                .filter(waiver -> waiver.isAbout(finding.code(), finding.subject()))
                .findFirst();
    }

    /** Whether a load is flown in spite of a STOP. */
    static boolean isLifted(Job job, Finding finding) {
        return find(job, finding).filter(Waiver::isLifting).isPresent();
    }

    /** The findings with the reasons in them, and a word on every waiver that does nothing. */
    static List<Finding> applied(Job job, List<Finding> findings) {
        List<Finding> all = new ArrayList<>();
        for (Finding finding : findings) {
            all.add(find(job, finding).map(waiver -> answered(finding, waiver)).orElse(finding));
        }
        for (Waiver waiver : job.waivers()) {
            boolean isUsed =
                    findings.stream()
                            .anyMatch(
                                    one ->
                                            waiver.isAbout(one.code(), one.subject())
                                                    && mayAnswer(one, waiver));
            if (!isUsed) {
                all.add(
                        Finding.of(
                                FindingCode.OVERRIDE_IDLE,
                                Severity.CAUTION,
                                waiver.subject(),
                                "overrides",
                                "The override of "
                                        + waiver.code()
                                        + " changes nothing. Perhaps its finding is gone, or it is one"
                                        + " that no reason lifts."));
            }
        }
        return all;
    }

    private static boolean mayAnswer(Finding finding, Waiver waiver) {
        return finding.severity() != Severity.STOP || waiver.isLifting();
    }

    private static Finding answered(Finding finding, Waiver waiver) {
        if (!mayAnswer(finding, waiver)) {
            return finding;
        }
        Severity severity =
                finding.severity() == Severity.STOP ? Severity.CAUTION : finding.severity();
        return new Finding(
                finding.code(),
                severity,
                finding.subject(),
                finding.value(),
                finding.limit(),
                finding.unit(),
                finding.source(),
                finding.message()
                        + " OVERRIDDEN by "
                        + waiver.by()
                        + " on "
                        + waiver.on()
                        + ": "
                        + waiver.reason());
    }
}
