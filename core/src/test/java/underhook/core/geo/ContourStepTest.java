package underhook.core.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Round heights beside the lines of a map; common practice, no source. A foot is 0.3048 m (ISO 80000-3). */
class ContourStepTest {
    @Test
    void is_a_round_number_of_metres() {
        ContourStep step = ContourStep.between(412, 688, ContourStep.Unit.M);

        assertThat(step.number()).isEqualTo(20);
        assertThat(step.main()).isEqualTo(100);
        List<ContourStep.Level> levels = step.levels(412, 688);
        assertThat(levels).hasSize(14);
        assertThat(levels.get(0)).isEqualTo(new ContourStep.Level(420, 420, false));
        assertThat(levels)
                .filteredOn(ContourStep.Level::main)
                .extracting(ContourStep.Level::number)
                .containsExactly(500, 600);
    }

    @Test
    void is_a_round_number_of_feet() {
        ContourStep step = ContourStep.between(412, 688, ContourStep.Unit.FT);

        assertThat(step.number()).isEqualTo(50);
        List<ContourStep.Level> levels = step.levels(412, 688);
        assertThat(levels.get(0).number()).isEqualTo(1400);
        assertThat(levels.get(0).heightAmslM()).isCloseTo(1400 * 0.3048, within(1e-9));
        assertThat(levels.get(levels.size() - 1).number()).isEqualTo(2250);
    }

    @Test
    void goes_below_the_sea() {
        assertThat(ContourStep.between(-14, 12, ContourStep.Unit.M).levels(-4, 4))
                .extracting(ContourStep.Level::number)
                .containsExactly(-4, -2, 0, 2, 4);
    }

    @Test
    void is_the_largest_where_there_are_too_many_lines_all_the_same() {
        assertThat(ContourStep.between(0, 90_000, ContourStep.Unit.M).number()).isEqualTo(2000);
        assertThat(ContourStep.between(100, 100, ContourStep.Unit.M).levels(100, 100)).hasSize(1);
    }
}
