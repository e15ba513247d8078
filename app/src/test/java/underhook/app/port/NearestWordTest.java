package underhook.app.port;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Distances counted by hand: a letter changed, added or left out, or two neighbours swapped, is one. */
class NearestWordTest {
    private static final List<String> KNOWN =
            List.of("loads", "places", "hazards", "release-areas");

    @Test
    void finds_a_word_with_swapped_neighbours_in_any_case() {
        assertThat(NearestWord.find("hazrads", KNOWN)).hasValue("hazards");
        assertThat(NearestWord.find("PLACES", KNOWN)).hasValue("places");
    }

    @Test
    void finds_nothing_when_more_than_a_third_of_the_letters_differ() {
        assertThat(NearestWord.find("terrain", KNOWN)).isEmpty();
        assertThat(NearestWord.find("place", List.of("a", "b"))).isEmpty();
        assertThat(NearestWord.find("x".repeat(61), KNOWN)).isEmpty();
    }

    @Test
    void hints_at_the_nearest_or_lists_what_is_known() {
        assertThat(NearestWord.hint("laods", KNOWN)).isEqualTo("perhaps \"loads\" is meant");
        assertThat(NearestWord.hint("terrain", KNOWN))
                .isEqualTo("known are hazards, loads, places, release-areas");
        assertThat(NearestWord.hint("terrain", List.of())).isEqualTo("none is known");
    }

    /** 68 °F renamed to oat_c would be read as 68 °C. By thought, no source. */
    @Test
    void a_name_in_another_unit_is_no_new_name_alone() {
        assertThat(NearestWord.hint("oat_f", List.of("oat_c", "qnh_hpa")))
                .isEqualTo("perhaps \"oat_c\" is meant, with figures in that unit");
        assertThat(NearestWord.hint("oat_cc", List.of("oat_c", "qnh_hpa")))
                .isEqualTo("perhaps \"oat_c\" is meant");
    }

    @Test
    void names_some_word_however_far_off() {
        assertThat(NearestWord.of("zzz", List.of("b", "a"))).isEqualTo("a");
        assertThat(NearestWord.of("zzz", List.of())).isEmpty();
    }
}
