package underhook.planner.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChancesReferenceTest {
    /** Lower ends of 95 % score intervals as printed to four places in NEWCOMBE-1998, table I, from memory. */
    @ParameterizedTest
    @CsvSource({"81, 263, 0.2553", "15, 148, 0.0624", "0, 20, 0.0000", "1, 29, 0.0061"})
    void the_lower_end_is_the_printed_one(int hits, int draws, double expected) {
        assertThat(Chances.leastFraction(hits, draws, 1.959964))
                .isEqualTo(expected, within(0.00005));
    }

    /** By hand: 1 / (1 + z²/n) of all hits. */
    @Test
    void all_hits_are_not_certainty() {
        double z = Chances.ONE_IN_TWENTY_FACTOR;

        assertThat(Chances.of(100, 100).countedFraction()).isEqualTo(1);
        assertThat(Chances.of(100, 100).leastFraction())
                .isEqualTo(1 / (1 + z * z / 100), within(1e-12));
        assertThat(Chances.of(0, 100).leastFraction()).isZero();
    }

    /** By hand: 400 of 4000 less 1.645 times the root of 360. */
    @Test
    void the_rank_of_a_low_quantile_lies_on_the_safe_side() {
        assertThat(Chances.rank(0.1, 4000)).isEqualTo(368);
        assertThat(Chances.rank(0.1, 5)).isZero();
    }
}
