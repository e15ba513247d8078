package underhook.adapter.planfile;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import underhook.app.port.Written;
import underhook.core.plan.Plan;
import underhook.core.plan.Summary;

/** How far the plan is from its proven bounds, percent, rounded up: never closer than it is. */
final class Gaps {
    private Gaps() {}

    /** (flying time less bound) over bound; empty where no bound is proven. */
    static Optional<BigDecimal> flightPercent(Summary summary) {
        if (summary.lowerBoundFlightS().isEmpty()) {
            return Optional.empty();
        }
        double boundS = summary.lowerBoundFlightS().getAsDouble();
        return percent(summary.flightS() - boundS, boundS);
    }

    /** (finish less bound) over (bound less start of the first step); empty where none is proven. */
    static Optional<BigDecimal> finishPercent(Plan plan) {
        Optional<Instant> bound = plan.summary().finishBoundAt();
        if (bound.isEmpty() || plan.steps().isEmpty()) {
            return Optional.empty();
        }
        Instant start = plan.steps().get(0).startAt();
        return percent(
                seconds(bound.get(), plan.summary().finishAt()), seconds(start, bound.get()));
    }

    private static Optional<BigDecimal> percent(double overS, double boundS) {
        return boundS > 0
                ? Optional.of(Written.up(100 * overS / boundS, PlanWords.COARSE))
                : Optional.empty();
    }

    private static double seconds(Instant from, Instant to) {
        Duration between = Duration.between(from, to);
        return between.toSeconds() + between.toNanosPart() / 1e9;
    }
}
