package underhook.planner.order;

import java.util.List;
import underhook.core.finding.Finding;
import underhook.core.job.LoadId;

/**
 * What comes of flying one lift at another turn, all others in the order that is known. Built as a day that
 * keeps every rule of the order, but not re-checked.
 *
 * @param comesThere whether it is flown at that turn; else what it waits for is flown before it
 * @param because what the lift is flown as soon as
 * @param flightS time in the air more than in the known order, s
 * @param finishS how much later the day ends, s
 * @param fuelKg fuel burnt more, kg
 * @param leftOut loads that are flown in the known order and not then
 * @param findings all that is to be said of such a day
 */
public record TriedMove(
        boolean comesThere,
        String because,
        double flightS,
        double finishS,
        double fuelKg,
        List<LoadId> leftOut,
        List<Finding> findings) {
    public TriedMove {
        leftOut = List.copyOf(leftOut);
        findings = List.copyOf(findings);
    }
}
