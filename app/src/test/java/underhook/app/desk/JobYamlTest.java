package underhook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class JobYamlTest {
    private static final String RULES =
            "# rates\ncosts: {flying-per-min: 35.00, standing-per-min: 12.00} # agreed\nother: 1\n";

    @Test
    void counts_a_rate_at_a_part_of_what_it_was_and_leaves_all_else_as_typed() {
        // 35.00 * 34 / 100 = 11.90, by hand.
        assertThat(JobYaml.scaled(RULES, "flying-per-min", 34))
                .isEqualTo(RULES.replace("35.00", "11.90"));
        assertThat(JobYaml.scaled(RULES, "flying-per-min", 100)).isEqualTo(RULES);
    }

    @Test
    void rounds_a_rate_to_the_cent() {
        // 0.35 * 3 / 100 = 0.0105 and 12.50 * 7 / 100 = 0.875, by hand.
        assertThat(JobYaml.scaled("flying-per-min: 0.35\n", "flying-per-min", 3))
                .isEqualTo("flying-per-min: 0.01\n");
        assertThat(JobYaml.scaled("  flying-per-min:  12.5\n", "flying-per-min", 7))
                .isEqualTo("  flying-per-min:  0.88\n");
    }

    @Test
    void refuses_a_rate_that_is_not_there() {
        assertThatThrownBy(() -> JobYaml.scaled("my-flying-per-min: 3\n", "flying-per-min", 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("flying-per-min");
    }
}
