package underhook.core.plan;

import java.time.Instant;
import java.util.Objects;

/**
 * One of the days between which a person may choose: fewer flying minutes against an earlier finish, or fewer
 * refused comforts. Every load of the plan is flown in each.
 *
 * @param flightS time in the air, s
 * @param totalCents price by the job's own rates
 * @param comfortsCents of it, of refused comforts
 * @param flyingRatePercent with a flying minute at so much of its own rate this day is the one to plan
 * @param chosen whether it is the day of this plan
 */
public record Trade(
        double flightS,
        Instant finishAt,
        long totalCents,
        long comfortsCents,
        int flyingRatePercent,
        boolean chosen) {
    public Trade {
        Objects.requireNonNull(finishAt, "finishAt");
    }
}
