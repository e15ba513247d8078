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
}
