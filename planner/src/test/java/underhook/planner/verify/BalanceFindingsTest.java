package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.job.Balance;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.planner.order.BalanceFindings;

/**
 * What is said of the small day's own flights, the envelope's limit a hair to either side of an arm by hand.
 *
 * <p>Machine and pilot have 1200 kg, the gauge may be 5 kg off, and the least fuel moves the arm most.
 */
class BalanceFindingsTest {
    private static final double HAIR_M = 1e-5;

    private static List<Finding> told(Balance balance) {
        SmallDay day = SmallDay.good().machine("balance", Optional.of(balance));
        return BalanceFindings.list(day.job(), SmallDay.newPlan().steps());
    }

    /** What the re-check misses in the small day's plan when it tells so much and no more. */
    private static List<String> missed(Balance balance, List<Finding> told) {
        SmallDay day = SmallDay.good().machine("balance", Optional.of(balance));
        List<Finding> all = new ArrayList<>(day.plan().findings());
        all.addAll(told);
        SmallDay full = day.inPlan("findings", all);
        return new PlanVerifier()
                .check(full.job(), full.ground(), full.plan()).violations().stream()
                        .filter(one -> one.message().contains("CENTRE_OF_GRAVITY"))
                        .map(Finding::subject)
                        .toList();
    }

    private static List<Balance.Limit> envelope(double forwardArmM, double aftArmM) {
        return List.of(
                new Balance.Limit(1000, forwardArmM, aftArmM),
                new Balance.Limit(2500, forwardArmM, aftArmM));
    }

    private static Stream<Step> running() {
        return SmallDay.newPlan().steps().stream().filter(Step::engineRunning);
    }

    private static double lineKg(Step step) {
        return step.lineLengthM() == 20 ? 30 : step.lineLengthM() == 30 ? 40 : 0;
    }

    /** Four people of 100 kg at 2 m, all else at 3 m, 125.2 kg of fuel at the end: 3 − 400 / 1720.2. */
    @Test
    void people_too_far_ahead() {
        double armM = 3 - 400 / (1600 + 125.2 - 5);

        assertThat(told(new Balance(3, 3, 3, 2, 3, envelope(armM - HAIR_M, 4)))).isEmpty();
        assertThat(told(new Balance(3, 3, 3, 2, 3, envelope(armM + HAIR_M, 4))))
                .singleElement()
                .satisfies(
                        one -> {
                            assertThat(one.subject()).isEqualTo("P");
                            assertThat(one.message()).contains("planned with it aboard.");
                        });
    }

    @Test
    void the_recheck_asks_for_what_is_planned_outside_the_envelope() {
        double armM = 3 - 400 / (1600 + 125.2 - 5);
        Balance inside = new Balance(3, 3, 3, 2, 3, envelope(armM - HAIR_M, 4));
        Balance outside = new Balance(3, 3, 3, 2, 3, envelope(armM + 0.01, 4));

        assertThat(missed(inside, List.of())).isEmpty();
        assertThat(missed(outside, List.of())).containsOnly("P");
        assertThat(missed(outside, told(outside))).isEmpty();
    }

    /** An envelope that ends below the mass with the load: the chart says nothing of such a flight. */
    @Test
    void the_recheck_asks_for_what_no_row_covers() {
        Balance small =
                new Balance(
                        3,
                        3,
                        3,
                        3,
                        3,
                        List.of(new Balance.Limit(1000, 2, 4), new Balance.Limit(1350, 2, 4)));

        assertThat(missed(small, List.of())).isNotEmpty();
        assertThat(missed(small, told(small))).isEmpty();
    }

    /** The empty machine's 1100 kg at 2.9 m, all else at 3 m: 3 − 110 / mass. */
    @Test
    void nothing_on_the_hook() {
        double leastKg =
                running()
                        .mapToDouble(step -> 1200 + lineKg(step) + step.fuelEndKg() - 5)
                        .min()
                        .orElseThrow();
        double armM = 3 - 110 / leastKg;

        assertThat(told(new Balance(2.9, 3, 3, 3, 3, envelope(armM - HAIR_M, 4)))).isEmpty();
        assertThat(told(new Balance(2.9, 3, 3, 3, 3, envelope(armM + HAIR_M, 4))))
                .singleElement()
                .satisfies(
                        one ->
                                assertThat(one.message())
                                        .contains("planned with no load on the hook."));
    }

    /** What hangs on the hook at 3.5 m, all else at 3 m: 3 + 0.5 · hook / mass. */
    @Test
    void too_much_on_a_hook_far_aft() {
        double armM =
                running()
                        .filter(step -> step.rotation().isPresent())
                        .mapToDouble(
                                step -> {
                                    Rotation lift = step.rotation().orElseThrow();
                                    double hookKg = lift.massOnHookKg();
                                    return 3
                                            + 0.5 * hookKg / (1200 + hookKg + step.fuelEndKg() - 5);
                                })
                        .max()
                        .orElseThrow();

        assertThat(told(new Balance(3, 3, 3, 3, 3.5, envelope(2, armM + HAIR_M)))).isEmpty();
        assertThat(told(new Balance(3, 3, 3, 3, 3.5, envelope(2, armM - HAIR_M))))
                .singleElement()
                .satisfies(
                        one -> assertThat(one.message()).contains("planned with it on the hook."));
    }

    /** Read anew in the air after fuel that no step tells of, a step ends with more than it began: the same range. */
    @Test
    void a_step_that_ends_with_more_fuel_than_it_began() {
        SmallDay day = SmallDay.good();
        List<Step> steps = SmallDay.newPlan().steps();
        List<Step> rising = steps.stream().map(BalanceFindingsTest::turned).toList();
        double armM = 3 - 400 / (1600 + 125.2 - 5);
        for (double hairM : new double[] {-HAIR_M, HAIR_M}) {
            Balance balance = new Balance(3, 3, 3, 2, 3, envelope(armM + hairM, 4));
            SmallDay balanced = day.machine("balance", Optional.of(balance));

            assertThat(BalanceFindings.list(balanced.job(), rising))
                    .isEqualTo(BalanceFindings.list(balanced.job(), steps));
        }
    }

    private static Step turned(Step step) {
        double lessKg = step.fuelEndKg();
        double moreKg = step.fuelStartKg();
        return new Step(
                step.kind(),
                step.from(),
                step.to(),
                step.startAt(),
                step.endAt(),
                lessKg,
                moreKg,
                step.lineLengthM(),
                step.engineRunning(),
                step.rotation(),
                step.crew(),
                step.legs(),
                step.because());
    }
}
