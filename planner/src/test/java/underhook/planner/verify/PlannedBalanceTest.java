package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.Balance;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.StepKind;

/** What is planned keeps its balance, or is not planned: limits worked by hand. Machine and pilot have 1200 kg. */
class PlannedBalanceTest {
    private static final double GAUGE_KG = 5;

    /** What is said of flights that are planned. */
    private static List<Finding> balanceOf(Plan plan) {
        return plan.findings().stream()
                .filter(one -> one.code() == FindingCode.CENTRE_OF_GRAVITY)
                .filter(one -> one.message().contains("planned"))
                .toList();
    }

    private static SmallDay day(Balance balance) {
        return SmallDay.good().machine("balance", Optional.of(balance));
    }

    private static List<Balance.Limit> envelope(double forwardArmM, double aftArmM) {
        return List.of(
                new Balance.Limit(1000, forwardArmM, aftArmM),
                new Balance.Limit(2500, forwardArmM, aftArmM));
    }

    /** All at 3 m but fuel at 5 m, aft limit 3.2 m: 3 + 2 f / (bare + f) is at most 3.2 for f up to bare / 9. */
    @Test
    void fuel_far_aft_is_filled_no_higher_than_the_empty_machine_may_fly() {
        SmallDay day = day(new Balance(3, 3, 5, 3, 3, envelope(2.5, 3.2)));
        Plan plan = Planned.of(day);

        assertThat(plan.summary().rotations()).isGreaterThan(1);
        assertThat(balanceOf(plan)).isEmpty();
        assertThat(plan.steps())
                .allSatisfy(
                        step ->
                                assertThat(Math.max(step.fuelStartKg(), step.fuelEndKg()))
                                        .isLessThanOrEqualTo(1200 / 9.0 - GAUGE_KG));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /** Machine and pilot 0.3 m before the aft limit, fuel and hook 1 m behind it: fuel is at most 360 kg less what hangs. */
    @Test
    void a_lift_has_no_more_fuel_than_keeps_its_balance() {
        SmallDay day = day(new Balance(2.7, 2.7, 4, 3, 4, envelope(2, 3)));
        Plan plan = Planned.of(day);
        List<Rotation> lifts =
                plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();

        assertThat(lifts).isNotEmpty();
        for (Rotation lift : lifts) {
            double mostKg = 360 - lift.massOnHookKg();
            assertThat(lift.fuelMaxKg()).isLessThanOrEqualTo(Math.floor(mostKg));
            assertThat(lift.fuelAtHookKg() + GAUGE_KG).isLessThanOrEqualTo(mostKg);
            assertThat(lift.limits())
                    .filteredOn(one -> one.code().equals("BALANCE_FUEL"))
                    .extracting(Limit::limit)
                    .isNotEmpty()
                    .allSatisfy(limitKg -> assertThat(limitKg).isEqualTo(Math.floor(mostKg)));
        }
        assertThat(balanceOf(plan)).isEmpty();
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /** Four people of 100 kg at 1 m, all else at 3 m: 3 − 800 / (1600 + f) is below 2.6 for any fuel up to 400. */
    @Test
    void people_who_sit_too_far_ahead_are_not_flown() {
        SmallDay day = day(new Balance(3, 3, 3, 1, 3, envelope(2.6, 3.2)));
        Plan plan = Planned.of(day);

        assertThat(plan.steps()).noneMatch(step -> step.kind() == StepKind.CREW_MOVE);
        assertThat(balanceOf(plan)).isEmpty();
        assertThat(plan.leftOut())
                .filteredOn(one -> one.code() == FindingCode.NO_CREW)
                .extracting(LeftOut::message)
                .isNotEmpty()
                .allSatisfy(
                        reason ->
                                assertThat(reason)
                                        .contains(
                                                "With P aboard the centre of gravity leaves its limits",
                                                "fewer people at once"));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }
}
