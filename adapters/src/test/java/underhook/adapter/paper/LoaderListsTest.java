package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LoaderListsTest {
    @Test
    void a_size_typed_in_feet_is_told_to_the_centimetre() {
        // One foot is 0.3048 m by definition.
        assertThat(LoaderLists.shortM(3 * 0.3048)).isEqualTo("0.91");
        assertThat(LoaderLists.shortM(12)).isEqualTo("12");
        assertThat(LoaderLists.shortM(0.3)).isEqualTo("0.3");
    }

    @Test
    void a_line_typed_in_feet_is_told_to_the_tenth_on_every_sheet() {
        // 49.2 ft are 14.99616 m, which a double of feet times 0.3048 misses in its last digit.
        assertThat(PilotCards.lineLength(49.2 * 0.3048)).isEqualTo("15");
        assertThat(PilotCards.lineLength(82 * 0.3048)).isEqualTo("25");
        assertThat(PilotCards.lineLength(25)).isEqualTo("25");
        assertThat(PilotCards.lineLength(0)).isEqualTo("OFF");
    }
}
