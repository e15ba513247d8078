package underhook.core.ahead;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** Everything that can be said of a job beside its plan. */
public final class Ahead {
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
