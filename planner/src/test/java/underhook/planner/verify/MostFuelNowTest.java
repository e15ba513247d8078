package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.job.Balance;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.planner.order.DayLook;

/** The most fuel of the small day's first lift, worked out by hand. */
class MostFuelNowTest {
    private static double mostKg(SmallDay day, double massFactor) {
        Step step =
                SmallDay.newPlan().steps().stream()
                        .filter(one -> one.rotation().isPresent())
                        .findFirst()
                        .orElseThrow();
        Rotation rotation = step.rotation().orElseThrow();
        return new DayLook(day.job(), day.ground())
                .findMostFuelKg(step, rotation, rotation.hookedAt(), massFactor)
                .orElse(-1);
    }

    /** Hover allows 500 kg less 5 of the gauge, the tank holds 300. */
    @Test
    void without_balance_the_tank_is_the_limit() {
        assertThat(mostKg(SmallDay.good(), 1)).isEqualTo(300);
    }

    /**
     * All at 3 m but fuel at 5 m, aft limit 3.2 m: 3 + 2 f / (1430 + f) is at most 3.2 for f up to 158.9
     * kg, and the gauge may read 5 kg too little.
     */
    @Test
    void fuel_far_aft_is_kept_off_the_aft_limit() {
        Balance balance =
                new Balance(
                        3,
                        3,
                        5,
                        3,
                        3,
                        List.of(
                                new Balance.Limit(1000, 2.5, 3.2),
                                new Balance.Limit(2500, 2.5, 3.2)));

        assertThat(mostKg(SmallDay.good().machine("balance", Optional.of(balance)), 1))
                .isEqualTo(153);
    }

    /**
     * W1 waits at S1, 50 m higher, and the machine comes there empty from A: 1920 kg hover at S1 and 1930 at A;
     * less 1230, 60 of the load and 5 of the gauge. @source the table, by hand
     */
    @Test
    void where_the_load_waits_counts_not_where_the_machine_comes_from() {
        SmallDay day = SmallDay.good().machine("fuelUsableKg", 900.0);
        Step fetched =
                SmallDay.newPlan().steps().stream()
                        .filter(one -> one.rotation().isPresent())
                        .filter(one -> one.from().equals(SmallDay.pid("S1")))
                        .findFirst()
                        .orElseThrow();
        Rotation rotation = fetched.rotation().orElseThrow();
        Step fromA = SmallDay.with(fetched, "from", SmallDay.pid("A"));

        assertThat(
                        new DayLook(day.job(), day.ground())
                                .findMostFuelKg(fromA, rotation, rotation.hookedAt(), 1)
                                .orElse(-1))
                .isEqualTo(625);
    }

    /** Line 20 m carries 650 kg; 200 kg four times as heavy are too much for it. */
    @Test
    void a_load_too_heavy_for_the_line_is_not_lifted() {
        assertThat(mostKg(SmallDay.good(), 4)).isNegative();
    }
}
