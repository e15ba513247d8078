package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.pid;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.ComfortRates;
import underhook.core.job.Rules;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.Trade;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/** What a day costs that leaves something out; arithmetic by the job's own rates. */
class PlannedPriceTest {
    private static final int STEP_S = 300;
    private static final int LONGEST_S = 4 * 3600;

    private static SmallDay day(int dutyS) {
        return SmallDay.good()
                .load("B1", "to", pid("S1"))
                .load("P1", "to", pid("S1"))
                .crew("P", "start", pid("S1"))
                .rule("costs", new Rules.Costs(3500, 1200, 800, "EUR"))
                .rule("duty.longestS", (double) dutyS);
    }

    private static Optional<Plan> plan(SmallDay day) {
        return DayPlanner.plan(
                        day.job(),
                        day.ground(),
                        new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                        (what, share) -> {})
                .fold((made, findings) -> Optional.of(made), refused -> Optional.empty());
    }

    /** By hand: the rates alone, 35.00 flying, 12.00 standing, 8.00 people a minute; each part rounded down. */
    @Test
    void counting_a_flying_minute_more_changes_no_price() {
        SmallDay day =
                day(LONGEST_S)
                        .rule(
                                "costs",
                                new Rules.Costs(3500, 1200, 800, "EUR", 2000, ComfortRates.NONE));

        Plan plan = plan(day).orElseThrow();

        double flownS = plan.summary().flightS();
        assertThat((double) plan.summary().price().orElseThrow().flyingCents())
                .isCloseTo(3500 * flownS / 60, within(1.0));
        assertThat(plan.summary().front())
                .filteredOn(Trade::chosen)
                .allMatch(trade -> trade.totalCents() < 2 * 5500 * LONGEST_S / 60);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /** Parts and counts are checked by the re-check's own sun and wind; that it refuses others, ComfortCheckTest. */
    @Test
    void what_is_refused_is_priced_and_stands_beside_its_lift() {
        Rules.Costs costs = new Rules.Costs(3500, 1200, 800, "EUR").with(ComfortCheckTest.RATES);
        SmallDay day = day(LONGEST_S).rule("costs", costs);

        Plan plan = plan(day).orElseThrow();

        DayPrice price = plan.summary().price().orElseThrow();
        assertThat(price.comfortsCents()).isPositive();
        assertThat(price.totalCents())
                .isEqualTo(
                        price.flyingCents()
                                + price.standingCents()
                                + price.peopleCents()
                                + price.comfortsCents());
        long told =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .map(turn -> turn.drops().get(0))
                        .flatMap(drop -> drop.reasons().stream())
                        .filter(reason -> reason.startsWith("refused comfort: "))
                        .count();
        assertThat(price.comforts())
                .filteredOn(one -> one.comfort() != RefusedComfort.Comfort.WALK)
                .hasSize(Math.toIntExact(told));
        assertThat(plan.summary().front())
                .filteredOn(Trade::chosen)
                .singleElement()
                .satisfies(
                        trade ->
                                assertThat(trade.comfortsCents()).isEqualTo(price.comfortsCents()));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void what_is_left_out_costs_nothing() {
        int dutyS = STEP_S;
        Optional<Plan> found = plan(day(dutyS));
        // The shortest duty in which anything can be flown leaves something out.
        while (found.isEmpty() && dutyS < LONGEST_S) {
            dutyS += STEP_S;
            found = plan(day(dutyS));
        }
        Plan plan = found.orElseThrow();

        assertThat(plan.leftOut()).anyMatch(out -> out.code() == FindingCode.NO_ROOM_IN_DAY);
        assertThat(plan.summary().rotations()).isPositive();
        long totalCents = plan.summary().price().orElseThrow().totalCents();
        assertThat(plan.summary().front())
                .filteredOn(Trade::chosen)
                .singleElement()
                .satisfies(
                        trade ->
                                assertThat((double) trade.totalCents())
                                        .isCloseTo((double) totalCents, within(500.0)));
        SmallDay day = day(dutyS);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }
}
