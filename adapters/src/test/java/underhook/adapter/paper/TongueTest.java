package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.core.job.Language;

class TongueTest {
    private static final Pattern SLOT = Pattern.compile("\\{([0-9]+)[=,]?}");

    /** What only an English sentence has. */
    private static final Pattern ENGLISH =
            Pattern.compile(
                    "\\b(the|of|and|with|at|to|comes|load|line|machine|hooks|hook-up|place|guy|guys|TRUE|page)\\b");

    @TempDir Path folder;

    private record Line(String english, String said) {}

    private static List<Line> lines() throws IOException {
        try (InputStream in = Tongue.class.getResourceAsStream("de.txt")) {
            String[] lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n");
            List<Line> all = new ArrayList<>();
            for (int i = 1; i < lines.length; i++) {
                if (lines[i].startsWith("= ")) {
                    all.add(new Line(lines[i - 1], lines[i].substring(2)));
                }
            }
            return all;
        }
    }

    @Test
    void a_slot_lost_in_the_language_would_be_a_number_lost() throws IOException {
        assertThat(lines()).hasSizeGreaterThan(100);
        for (Line line : lines()) {
            assertThat(slots(line.said())).as(line.english()).isEqualTo(slots(line.english()));
        }
    }

    private static Set<String> slots(String text) {
        Set<String> found = new TreeSet<>();
        SLOT.matcher(text).results().forEach(slot -> found.add(slot.group(1)));
        return found;
    }

    @Test
    void no_shape_stands_behind_one_that_takes_its_sentences() throws IOException {
        Tongue german = Tongue.of(Language.DE);
        for (Line line : lines()) {
            String english = SLOT.matcher(line.english()).replaceAll("7$1");
            String said = SLOT.matcher(line.said()).replaceAll("7$1");
            assertThat(german.say(english)).isEqualTo(said);
        }
        assertThat(german.listUnsaid()).isEmpty();
    }

    @Test
    void a_text_is_said_sentence_by_sentence_or_not_at_all() {
        Tongue german = Tongue.of(Language.DE);

        assertThat(german.say("P or Q hooks at S14. ADD 15 kg ballast. "))
                .isEqualTo("P oder Q hängt an bei S14. 15 kg Ballast DAZU.");
        assertThat(german.say("P hooks. WITH L36, released no. 2. "))
                .isEqualTo("P hängt an. MIT L36, gelöst als Nr. 2.");
        assertThat(german.say("DANGEROUS GOODS: UN 1202. Diesel. P hooks. "))
                .isEqualTo("GEFAHRGUT: UN 1202. Diesel. P hooks.");
        assertThat(german.say("line 15 m, 25 m; times on each crew's sheet"))
                .isEqualTo("Leine 15 m, 25 m; Zeiten auf dem Blatt jedes Trupps");
        assertThat(german.say("W1 40 m, W2 LIVE 60 m, W3 LIVE 80 m"))
                .isEqualTo("W1 40 m, W2 UNTER SPANNUNG 60 m, W3 UNTER SPANNUNG 80 m");
        assertThat(german.say("W1 LIVE; W2 LIVE, in no obstacle file; W3; others seen: ________"))
                .isEqualTo(
                        "W1 UNTER SPANNUNG; W2 UNTER SPANNUNG, in keiner Hindernisliste; W3;"
                                + " andere gesehen: ________");
        assertThat(german.listUnsaid()).isEmpty();
        assertThat(german.say("P hooks. Nobody wrote this. "))
                .isEqualTo("P hooks. Nobody wrote this. ");
        assertThat(german.listUnsaid()).containsExactly("P hooks. Nobody wrote this. ");
        assertThat(Tongue.ENGLISH.say("P hooks.")).isEqualTo("P hooks.");
    }

    @Test
    void what_is_printed_for_a_crew_speaks_its_language() throws IOException {
        Path file = folder.resolve("cards.pdf");
        new CardsPdf().write(PaperDay.inGerman(), file);

        int german = 0;
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                // A line is called as its machine's file calls it.
                String text = stripper.getText(document).replaceAll("[0-9]+ m line", "");
                if (text.contains("Seite " + page + " von")) {
                    german++;
                    assertThat(ENGLISH.matcher(text).results().map(m -> m.group()))
                            .as(text)
                            .isEmpty();
                }
            }
        }
        // Two loader's lists, four crews, briefing, signals.
        assertThat(german).isGreaterThanOrEqualTo(8);
    }
}
