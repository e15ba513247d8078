package underhook.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GlaresTest {
    /** Looked at there too, a sun that comes ahead at the end would be told as a glare from 15:00 to 15:00. */
    @Test
    void the_end_of_an_hour_is_the_beginning_of_the_next() {
        long fifteenS = 15 * 3600;

        assertThat(Glares.moments(fifteenS - 3600, fifteenS))
                .startsWith(fifteenS - 3600)
                .doesNotContain(fifteenS);
        assertThat(Glares.moments(fifteenS, fifteenS + 60)).containsExactly(fifteenS);
        assertThat(Glares.moments(fifteenS, fifteenS)).isEmpty();
    }
}
