package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LookJsonTest {
    /**
     * A limit typed in whole pounds or feet is read in whole pounds or feet: the page divides and rounds down, with a hair of
     * two millionths against noise.
     *
     * @source SP811 appendix B: exact definitions of pound and foot
     */
    @Test
    void a_limit_typed_in_pounds_or_feet_is_told_as_it_was_typed() {
        for (int typed = 1; typed <= 6000; typed++) {
            double kg = LookJson.allowed(typed * 0.45359237, "kg").doubleValue();
            double m = LookJson.allowed(typed * 0.3048, "m").doubleValue();

            assertThat(Math.floor(kg / 0.45359237 + 2e-6)).isEqualTo(typed);
            assertThat(Math.floor(m / 0.3048 + 2e-6)).isEqualTo(typed);
        }
        assertThat(LookJson.allowed(32.09, "kt")).isEqualByComparingTo("32");
    }
}
