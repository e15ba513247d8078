package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Yaml;
import underhook.core.job.ComfortRates;

class ComfortFieldsTest {
    private final Faults faults = new Faults();

    private ComfortRates read(String text) {
        return ComfortFields.read(Yaml.read(text, new Source("rules.yaml", faults)).orElseThrow());
    }

    @Test
    void reads_rates_as_whole_cents_and_takes_nothing_for_the_rest() {
        ComfortRates rates =
                read(
                        """
                        refused-comforts:
                          sun-ahead-per-set-down: 25.00
                          tailwind-per-kt: 4.5
                          crosswind-per-kt: 2
                          crosswind-free-m-per-s: 4
                          walk-per-min: 0.07
                        """);

        assertThat(faults.list()).isEmpty();
        assertThat(rates).isEqualTo(new ComfortRates(2500, 0, 450, 200, 4, 7));
    }

    @Test
    void without_a_word_nothing_costs_anything() {
        assertThat(read("version: 1\n")).isEqualTo(ComfortRates.NONE);
    }

    @Test
    void every_fault_is_told_at_once_with_the_nearest_known_name() {
        read(
                """
                refused-comforts:
                  sun-ahead-per-set-down: -1
                  sun-beside-per-set-down: 1000.01
                  tailwind-per-kt: 0.005
                  crosswind-free-kt: 200
                  walks-per-min: 1
                """);

        assertThat(faults.list()).hasSize(5);
        assertThat(faults.list().toString())
                .contains(
                        "sun-ahead-per-set-down",
                        "between 0 and 1000",
                        "sun-beside-per-set-down",
                        "no whole number of cents",
                        "crosswind-free-kt",
                        "between 0 and 75 m/s")
                .contains("perhaps \"walk-per-min\" is meant");
    }
}
