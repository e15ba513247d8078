package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.job.Machine;

/** The small day's gauge is good to 5 kg and its tank holds 300. By hand. */
class GaugeReadingTest {
    private final Machine machine = SmallDay.good().job().machine();

    @Test
    void with_the_most_that_is_read_no_more_is_aboard_than_may_be() {
        assertThat(machine.mostReadKg(111)).isCloseTo(106, within(1e-9));
        assertThat(machine.mostReadKg(3)).isZero();
    }

    @Test
    void a_full_tank_holds_no_more_however_the_gauge_errs() {
        assertThat(machine.mostReadKg(300)).isCloseTo(300, within(1e-9));
        assertThat(machine.mostReadKg(505)).isCloseTo(300, within(1e-9));
        assertThat(machine.mostReadKg(299)).isCloseTo(294, within(1e-9));
    }

    /** Files tell fuel rounded down to a milligram; a tank in pounds is no whole number of kilograms. */
    @Test
    void a_tank_that_lacks_less_than_a_gram_is_full() {
        assertThat(machine.mostReadKg(299.999999)).isCloseTo(300, within(1e-9));
        assertThat(machine.mostReadKg(299.99)).isCloseTo(294.99, within(1e-9));
    }
}
