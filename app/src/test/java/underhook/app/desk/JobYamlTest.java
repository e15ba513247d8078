package underhook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class JobYamlTest {
    private static final String RULES =
            "# rates\ncosts: {flying-per-min: 35.00, standing-per-min: 12.00} # agreed\nother: 1\n";

    @Test
    void puts_a_number_beside_another_and_leaves_all_else_as_typed() {
        String counted = JobYaml.withBeside(RULES, "flying-per-min", "flying-counts-percent", 34);

        assertThat(counted).isEqualTo(RULES.replace("35.00,", "35.00, flying-counts-percent: 34,"));
    }

    @Test
    void changes_a_number_that_is_there() {
        String counted = JobYaml.withBeside(RULES, "flying-per-min", "flying-counts-percent", 34);

        assertThat(JobYaml.withBeside(counted, "flying-per-min", "flying-counts-percent", 2000))
                .isEqualTo(counted.replace("percent: 34", "percent: 2000"));
    }

    @Test
    void puts_a_number_on_a_line_of_its_own_where_the_other_has_one() {
        String block = "costs:\n  # agreed\n  flying-per-min: 35\n  currency: EUR\n";

        assertThat(JobYaml.withBeside(block, "flying-per-min", "flying-counts-percent", 34))
                .isEqualTo(block.replace("35\n", "35\n  flying-counts-percent: 34\n"));
    }

    @Test
    void refuses_a_number_beside_what_is_not_there() {
        assertThatThrownBy(
                        () ->
                                JobYaml.withBeside(
                                        "my-flying-per-min: 3\n", "flying-per-min", "x", 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("flying-per-min");
    }
}
