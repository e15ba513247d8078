package underhook.app.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.job.LoadId;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** The lifts of a plan, numbered as on paper, each with one word for how it stands. */
public final class Lifts {
    /** How something stands to its limits, from good to bad. */
    public enum Status {
        INSIDE,
        NEAR,
        OUTSIDE
    }

    /**
     * A lift.
     *
     * @param number from 1 in the order of the day
     * @param step index of its step in the plan
     * @param words what stops it first, and what else must be known
     */
    public record Lift(int number, int step, Rotation rotation, Status status, String words) {}

    private Lifts() {}

    /** All lifts of a plan in their order. */
    public static List<Lift> of(Plan plan) {
        List<Lift> lifts = new ArrayList<>();
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            if (step.rotation().isPresent()) {
                lifts.add(lift(lifts.size() + 1, i, step.rotation().get(), plan.findings()));
            }
        }
        return lifts;
    }

    /** A lift by its number. */
    public static Optional<Lift> find(Plan plan, int number) {
        List<Lift> all = of(plan);
        return number >= 1 && number <= all.size()
                ? Optional.of(all.get(number - 1))
                : Optional.empty();
    }

    private static Lift lift(int number, int step, Rotation rotation, List<Finding> findings) {
        Status status = Status.INSIDE;
        for (Limit limit : rotation.limits()) {
            status = worse(status, status(limit));
        }
        List<Finding> about = about(rotation, findings);
        for (Finding finding : about) {
            status = worse(status, status(finding.severity()));
        }
        return new Lift(number, step, rotation, status, words(rotation, about));
    }

    private static Status worse(Status one, Status other) {
        return one.compareTo(other) >= 0 ? one : other;
    }

    /** How a value stands to its limit. */
    public static Status status(Limit limit) {
        if (limit.isOutside()) {
            return Status.OUTSIDE;
        }
        return limit.isNear() ? Status.NEAR : Status.INSIDE;
    }

    private static Status status(Severity severity) {
        return switch (severity) {
            case NOTE -> Status.INSIDE;
            case CAUTION -> Status.NEAR;
            case STOP -> Status.OUTSIDE;
        };
    }

    /** What is said of its loads, worst first. */
    private static List<Finding> about(Rotation rotation, List<Finding> findings) {
        Set<String> subjects = new HashSet<>();
        rotation.loads().stream().map(LoadId::value).forEach(subjects::add);
        return findings.stream()
                .filter(finding -> subjects.contains(finding.subject()))
                .filter(finding -> finding.severity() != Severity.NOTE)
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .toList();
    }

    private static String words(Rotation rotation, List<Finding> about) {
        if (!about.isEmpty()) {
            return about.get(0).message();
        }
        return rotation.limits().stream()
                .filter(Limit::governing)
                .map(
                        limit ->
                                limit.code()
                                        + ", "
                                        + (long) Math.floor(limit.marginPercent())
                                        + " % left")
                .findFirst()
                .orElse("");
    }
}
