package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

class FontsTest {
    @Test
    void a_word_too_long_for_its_column_is_broken_at_its_joints_and_no_number_inside()
            throws IOException {
        try (PDDocument document = new PDDocument();
                Fonts fonts = new Fonts(document)) {
            double room = fonts.width(Face.TEXT, "0.91×0.91×1.0");

            assertThat(fonts.wrap(Face.TEXT, "0.91×0.91×1.07", room))
                    .containsExactly("0.91×0.91×", "1.07");
            assertThat(fonts.wrap(Face.TEXT, "bag-of-insulators-007", room))
                    .containsExactly("bag-of-", "insulators-007");
            // Without a joint it is broken where it must be.
            assertThat(fonts.wrap(Face.TEXT, "a".repeat(60), room)).hasSizeGreaterThan(1);
        }
    }

    /** @source Unicode character names of U+1F681, U+26A0 and U+4E2D */
    @Test
    void a_sign_that_the_font_lacks_stands_as_its_name_and_is_told() throws IOException {
        try (PDDocument document = new PDDocument();
                Fonts fonts = new Fonts(document)) {
            assertThat(fonts.toPrintable(Face.TEXT, "Hut 7 \uD83D\uDE81 \u26a0\ufe0f"))
                    .isEqualTo("Hut 7 [helicopter] [warning sign]");
            assertThat(fonts.toPrintable(Face.TEXT, "Hut \u4e2d?")).isEqualTo("Hut ??");
            assertThat(fonts.toPrintable(Face.TEXT, "Hütte Ž \u2265 5 m\ufe0f"))
                    .isEqualTo("Hütte Ž \u2265 5 m");
            assertThat(fonts.width(Face.TEXT, "\uD83D\uDE81"))
                    .isEqualTo(fonts.width(Face.TEXT, "[helicopter]"));

            assertThat(fonts.told())
                    .containsExactly(
                            Map.entry(
                                    "Hut 7 [helicopter] [warning sign]",
                                    "U+1F681 HELICOPTER, U+26A0 WARNING SIGN"),
                            Map.entry("Hut ??", "U+4E2D CJK UNIFIED IDEOGRAPHS 4E2D"));
        }
    }

    @Test
    void that_the_engine_is_off_stays_on_one_line() throws IOException {
        try (PDDocument document = new PDDocument();
                Fonts fonts = new Fonts(document)) {
            String bar = "11:00–11:30 BREAK at A" + PilotCards.ENGINE_OFF;
            double room = fonts.width(Face.TEXT, bar) - 1;

            assertThat(fonts.wrap(Face.TEXT, bar, room))
                    .containsExactly("11:00–11:30 BREAK at A,", "engine\u00a0OFF");
        }
    }

    @Test
    void no_line_ends_between_a_number_and_its_unit() throws IOException {
        try (PDDocument document = new PDDocument();
                Fonts fonts = new Fonts(document)) {
            double room = fonts.width(Face.TEXT, "line at A: fit 15");

            assertThat(fonts.wrap(Face.TEXT, "line at A: fit 15 m, off", room))
                    .containsExactly("line at A: fit", "15 m, off");
            assertThat(fonts.wrap(Face.TEXT, "line at A: fit 15 metres", room))
                    .containsExactly("line at A: fit 15", "metres");
            // Where both have no room on one line the number stays whole.
            assertThat(fonts.wrap(Face.TEXT, "1000 kg", fonts.width(Face.TEXT, "1000 k")))
                    .containsExactly("1000", "kg");
        }
    }
}
