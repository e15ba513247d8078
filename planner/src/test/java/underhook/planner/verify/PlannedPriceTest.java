package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.Rules;
import underhook.core.plan.Plan;
import underhook.core.plan.Trade;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/** What a day costs that leaves something out; arithmetic by the job's own rates. */
class PlannedPriceTest {
    private static final SmallDay SHORT =
            SmallDay.good()
                    .rule("costs", new Rules.Costs(3500, 1200, 800, "EUR"))
                    // From 75 minutes before seven until half past: not everything fits in.
                    .rule("dutyS", 4500 + 1800.0);

    @Test
    void what_is_left_out_costs_nothing() {
        Plan plan =
                DayPlanner.plan(
                                SHORT.job(),
                                SHORT.ground(),
                                new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                                (what, share) -> {})
                        .fold(
                                (made, findings) -> made,
                                refused -> {
                                    throw new AssertionError(refused);
                                });

        assertThat(plan.leftOut()).anyMatch(out -> out.code() == FindingCode.NO_ROOM_IN_DAY);
        assertThat(plan.summary().rotations()).isPositive();
        long totalCents = plan.summary().price().orElseThrow().totalCents();
        double minutes = plan.summary().flightS() / 60;
        assertThat(totalCents).isGreaterThan((long) (3500 * minutes));
        assertThat(plan.summary().front())
                .filteredOn(Trade::chosen)
                .singleElement()
                .satisfies(
                        trade ->
                                assertThat((double) trade.totalCents())
                                        .isCloseTo((double) totalCents, within(500.0)));
        assertThat(new PlanVerifier().check(SHORT.job(), SHORT.ground(), plan).violations())
                .isEmpty();
    }
}
