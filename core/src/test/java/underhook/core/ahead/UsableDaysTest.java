package underhook.core.ahead;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class UsableDaysTest {
    /** Printed on many statistics pages for 95 %, from memory: 0 of 10 and 5 of 10. */
    @Test
    void the_interval_of_a_share_is_the_printed_one() {
        assertThat(UsableDays.wilsonRatio(0, 10, -1)).isCloseTo(0, within(1e-12));
        assertThat(UsableDays.wilsonRatio(0, 10, 1)).isCloseTo(0.2775, within(5e-5));
        assertThat(UsableDays.wilsonRatio(0.5, 10, -1)).isCloseTo(0.2366, within(5e-5));
        assertThat(UsableDays.wilsonRatio(0.5, 10, 1)).isCloseTo(0.7634, within(5e-5));
    }
}
