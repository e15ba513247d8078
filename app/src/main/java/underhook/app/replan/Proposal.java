package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.app.PlanId;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LoadId;
import underhook.core.plan.Anew;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.VerifierReport;

/**
 * A new order for what is left.
 *
 * @param plan the whole day: what is frozen, then the new order
 * @param job the job with its changes
 * @param report the re-check of the whole plan
 * @param differences the three that matter, most first
 * @param frozenSteps how many steps of the plan are done or begun
 * @param moved loads that left their place among the lifts to come
 * @param leftOut loads that were in the plan of record and are not in this one
 * @param costs what the rest costs, and the change against the plan of record
 * @param boundFinishAt no order of these lifts ends earlier; where it was asked for
 * @param took how long it took, the re-check included
 */
public record Proposal(
        Plan plan,
        ReadJob job,
        VerifierReport report,
        List<String> differences,
        int frozenSteps,
        List<LoadId> moved,
        List<LeftOut> leftOut,
        Anew costs,
        Optional<Instant> boundFinishAt,
        Duration took) {
    private static final String ANEW = "-anew";

    private static final Set<FindingCode> DOUBTS =
            EnumSet.of(FindingCode.CREW_ABSENT, FindingCode.STEP_TIME);

    public Proposal {
        differences = List.copyOf(differences);
        moved = List.copyOf(moved);
        leftOut = List.copyOf(leftOut);
    }

    /** Whether it may be accepted. */
    public boolean isVerified() {
        return report.holds();
    }

    /** What the re-check complains of that is not over already. */
    public List<Finding> broken() {
        return report.violations();
    }

    /** What the rules, as they are now, do not allow of what is done or begun: no order changes that any more. */
    public List<Finding> over() {
        return report.over();
    }

    /** What is taken to have been so though nobody told, or though taps speak against it. */
    public List<Finding> doubts() {
        return plan.findings().stream()
                .filter(one -> one.severity() == Severity.CAUTION && DOUBTS.contains(one.code()))
                .toList();
    }

    /** Of these, what is said of a load that does not hang yet: its lift is begun, and can still be left alone. */
    public List<Finding> unhooked() {
        Set<String> loads =
                plan.steps().stream()
                        .limit(frozenSteps)
                        .flatMap(step -> step.rotation().stream())
                        .filter(turn -> turn.hookedAt().isAfter(plan.plannedAt()))
                        .flatMap(turn -> turn.loads().stream())
                        .map(LoadId::value)
                        .collect(Collectors.toSet());
        return over().stream().filter(one -> loads.contains(one.subject())).toList();
    }

    /** How much longer the whole day is in the air than in the plan of record, s. */
    public double flightS() {
        return costs.moreFlightS();
    }

    /** How much later the day ends, s. */
    public double finishS() {
        return costs.laterS();
    }

    /**
     * The id of an order made at that time.
     *
     * @param of what it is made of: of two papers of one time with two orders each has an id of its own
     */
    static String id(Instant at, String of) {
        return PlanId.of(at) + String.format(Locale.ROOT, "-%04x", of.hashCode() & 0xffff) + ANEW;
    }

    /** Whether the plan of this id is an order that was made while the day was flown. */
    public static boolean isOrder(String id) {
        return id.endsWith(ANEW);
    }
}
