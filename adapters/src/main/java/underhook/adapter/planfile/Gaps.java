package underhook.adapter.planfile;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import underhook.app.port.Written;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Summary;
import underhook.core.unit.Units;

/** How far the plan is from its proven bounds, percent, rounded up: never closer than it is. */
final class Gaps {
    /** What was read back from a file is written the same again. */
    private static final double ROUNDING_MINUTES = 1e-9;

    private Gaps() {}

    /** (flying time less bound) over bound; empty where no bound is proven. */
    static Optional<BigDecimal> flightPercent(Summary summary) {
        if (summary.lowerBoundFlightS().isEmpty()) {
            return Optional.empty();
        }
        double boundMinutes = minutes(summary.lowerBoundFlightS().getAsDouble());
        return percent(minutes(summary.flightS()) - boundMinutes, boundMinutes);
    }

    /** A leg's bound as written: rounded down, never more than is proven. */
    static BigDecimal boundMinutes(Leg leg) {
        return Written.down(Units.sToMinutes(leg.boundS()) + ROUNDING_MINUTES, PlanWords.FINE);
    }

    /** (time less bound) over bound of a leg; empty where the bound is none. */
    static Optional<BigDecimal> legPercent(Leg leg) {
        double boundMinutes = boundMinutes(leg).doubleValue();
        return percent(minutes(leg.durationS()) - boundMinutes, boundMinutes);
    }

    /** As written, so that whoever reads the file finds the same gap. */
    private static double minutes(double durationS) {
        return Written.nearest(Units.sToMinutes(durationS), PlanWords.FINE).doubleValue();
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

    private static Optional<BigDecimal> percent(double over, double bound) {
        return bound > 0
                ? Optional.of(Written.up(100 * over / bound, PlanWords.COARSE))
                : Optional.empty();
    }

    private static double seconds(Instant from, Instant to) {
        Duration between =
                Duration.between(
                        from.truncatedTo(ChronoUnit.MICROS), to.truncatedTo(ChronoUnit.MICROS));
        return between.toSeconds() + between.toNanosPart() / 1e9;
    }
}
