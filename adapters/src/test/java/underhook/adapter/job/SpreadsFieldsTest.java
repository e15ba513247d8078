package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Yaml;
import underhook.core.finding.FindingCode;
import underhook.core.job.Spreads;

class SpreadsFieldsTest {
    private final Faults faults = new Faults();

    private Spreads read(String text) {
        return SpreadsFields.read(Yaml.read(text, new Source("rules.yaml", faults)).orElseThrow());
    }

    @Test
    void reads_three_points_and_takes_what_is_usual_for_the_rest() {
        Spreads spreads =
                read(
                        """
                        spreads:
                          guying: {least-percent: 80, usual-percent: 110, most-percent: 200}
                          wind-later: {least-min: -90, usual-min: 0, most-hours: 1}
                          shared-percent: 70
                        """);

        assertThat(faults.list()).isEmpty();
        assertThat(spreads.guying()).isEqualTo(new Spreads.Ratios(0.8, 1.1, 2));
        assertThat(spreads.windLater()).isEqualTo(new Spreads.Times(-5400, 0, 3600));
        assertThat(spreads.sharedFraction()).isEqualTo(0.7);
        assertThat(spreads.cycle()).isEqualTo(Spreads.USUAL.cycle());
    }

    @Test
    void without_a_word_all_is_usual() {
        assertThat(read("version: 1\n")).isEqualTo(Spreads.USUAL);
    }

    @Test
    void what_does_not_rise_is_missing_or_unknown_is_a_fault() {
        read(
                """
                spreads:
                  cycle: {least-percent: 120, usual-percent: 100, most-percent: 130}
                  ground: {least-percent: 90, most-percent: 130}
                  crew-late: {least-min: -5, usual-min: 0, most-min: 15}
                  wind: 60
                """);

        assertThat(faults.list().stream().map(fault -> fault.code()).toList())
                .containsAll(
                        List.of(
                                FindingCode.FIELD_OUT_OF_RANGE,
                                FindingCode.FIELD_MISSING,
                                FindingCode.FIELD_UNKNOWN));
    }
}
