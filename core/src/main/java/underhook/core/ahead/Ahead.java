package underhook.core.ahead;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.plan.Plan;

/** Everything that can be said of a job beside its plan. */
public final class Ahead {
    /** A place that was moved by less since is still this one. @source PRACTICE */
    private static final double HERE_M = 100;

    private Ahead() {}

    /**
     * One answer for each topic, in their order.
     *
     * @param plan whose legs count; without one the straight ways of the loads do
     */
    public static List<Answer> of(Job job, Ground ground, Beside beside, Optional<Plan> plan) {
        List<Answer> answers = new ArrayList<>();
        answers.add(
                beside.notices()
                        .map(notices -> NearNotices.of(job, plan).answer(notices))
                        .orElseGet(() -> none(Topic.NOTICES, "notices")));
        answers.add(
                beside.climate()
                        .map(climate -> FirstFeasibility.of(job, ground, climate))
                        .orElseGet(() -> none(Topic.FEASIBILITY, "climate")));
        answers.add(
                beside.archive()
                        .map(archive -> UsableDays.of(job, archive))
                        .orElseGet(() -> none(Topic.STANDBY, "archive")));
        answers.add(LaydownLayout.of(job, ground, plan));
        answers.add(
                beside.permits()
                        .map(rules -> PermitMatrix.of(job, ground, rules, plan))
                        .orElseGet(() -> none(Topic.PERMITS, "permits")));
        return List.copyOf(answers);
    }

    /** Why a plan is none of this job, whose legs therefore say nothing about it; empty where it may be. */
    public static List<Finding> refusals(Job job, Plan plan) {
        Set<PlaceId> strange = new LinkedHashSet<>();
        plan.steps().stream()
                .flatMap(NearNotices::legs)
                .filter(leg -> !leg.path().isEmpty())
                .forEach(
                        leg -> {
                            GeoPoint last = leg.path().get(leg.path().size() - 1).position();
                            if (!isAt(job, leg.from(), leg.path().get(0).position())) {
                                strange.add(leg.from());
                            }
                            if (!isAt(job, leg.to(), last)) {
                                strange.add(leg.to());
                            }
                        });
        return strange.stream()
                .map(
                        id ->
                                Finding.of(
                                        FindingCode.PLAN_UNREADABLE,
                                        Severity.STOP,
                                        id.value(),
                                        "plan",
                                        job.findPlace(id).isPresent()
                                                ? "The plan's ways do not begin or end where "
                                                        + id
                                                        + " lies in this job."
                                                : "The job has no place "
                                                        + id
                                                        + ": the plan is of another one."))
                .toList();
    }

    private static boolean isAt(Job job, PlaceId id, GeoPoint end) {
        return job.findPlace(id)
                .filter(place -> NearNotices.greatCircleM(place.position(), end) <= HERE_M)
                .isPresent();
    }

    private static Answer none(Topic topic, String role) {
        return new Answer(
                topic,
                false,
                List.of(
                        new Point(
                                Mark.NOTED,
                                role,
                                List.of("job.yaml names no file for it, so nothing is said."))));
    }
}
