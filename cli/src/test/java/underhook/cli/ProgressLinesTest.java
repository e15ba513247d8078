package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ProgressLinesTest {
    private final StringWriter shown = new StringWriter();

    private ProgressLines lines(boolean bar) {
        return new ProgressLines(new PrintWriter(shown, true), bar);
    }

    @Test
    void shows_nothing_once_it_is_closed() {
        ProgressLines lines = lines(false);
        lines.at("reading", 0);
        lines.close();
        lines.at("writing", 1);

        assertThat(shown.toString()).isEqualTo("reading" + System.lineSeparator());
    }

    @Test
    void a_bar_that_ends_halfway_leaves_the_next_words_a_line_of_their_own() {
        ProgressLines lines = lines(true);
        lines.at("re-checking", 0.5);
        lines.close();
        lines.at("writing", 1);

        assertThat(shown.toString())
                .startsWith("\r[###############...............] re-checking")
                .endsWith(" " + System.lineSeparator())
                .doesNotContain("writing");
    }

    @Test
    void what_is_said_meanwhile_stands_on_a_line_of_its_own() {
        ProgressLines lines = lines(true);
        lines.at("searching", 0.5);
        lines.say("Stopping.");
        lines.close();

        assertThat(shown.toString())
                .contains(System.lineSeparator() + "Stopping." + System.lineSeparator())
                .endsWith("Stopping." + System.lineSeparator());
    }
}
