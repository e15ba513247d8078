package underhook.planner.order;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Confirmation;
import underhook.core.job.Job;

/** Who looked at which hazard, and when, out of the job's register. Mutable: it says each thing once. */
final class Confirmations {
    private final LocalDate today;
    private final Map<String, Confirmation> latest = new TreeMap<>();
    private final Set<String> said = new HashSet<>();

    Confirmations(LocalDate today, List<Confirmation> all) {
        this.today = today;
        Comparator<Confirmation> byDay = Comparator.comparing(Confirmation::on);
        for (Confirmation one : all) {
            // Of two on one day the later line counts, as it was written later.
            latest.merge(
                    one.subject(), one, (old, next) -> byDay.compare(old, next) > 0 ? old : next);
        }
    }

    static Confirmations of(Job job) {
        return new Confirmations(job.date(), job.confirmations());
    }

    /** The last look at it, on whatever day. */
    Optional<Confirmation> findLatest(String subject) {
        return Optional.ofNullable(latest.get(subject));
    }

    /** The last look at it, if that was on the job's day. */
    Optional<Confirmation> findToday(String subject) {
        return findLatest(subject).filter(one -> one.on().equals(today));
    }

    /**
     * A finding when nobody looked at it on the job's day; empty when somebody did, or when it was said
     * before.
     *
     * @param subject id of a wire or a map feature
     * @param source file that the subject is from
     * @param near what of the plan comes near, in words: "the place S03 is 90 m away"
     */
    Optional<Finding> findUnconfirmed(String subject, String source, String near) {
        if (findToday(subject).isPresent() || !said.add(subject)) {
            return Optional.empty();
        }
        String unseen =
                findLatest(subject)
                        .map(
                                one ->
                                        "Nobody has confirmed "
                                                + subject
                                                + " today, last on "
                                                + one.on()
                                                + " by "
                                                + one.by())
                        .orElse("Nobody has looked at " + subject + " yet");
        return Optional.of(
                new Finding(
                        FindingCode.HAZARD_UNCONFIRMED,
                        Severity.CAUTION,
                        subject,
                        findLatest(subject).map(one -> one.on().toString()).orElse("never"),
                        today.toString(),
                        "",
                        findLatest(subject).map(Confirmation::source).orElse(source),
                        unseen + "; " + near + "."));
    }

    /** Notes on what the register holds that nobody looked at today, as far as it was not said before. */
    List<Finding> listRest() {
        return latest.values().stream()
                .flatMap(
                        one ->
                                findUnconfirmed(
                                        one.subject(), one.source(), "nothing planned comes near")
                                        .stream())
                .map(finding -> finding.withSeverity(Severity.NOTE))
                .toList();
    }
}
