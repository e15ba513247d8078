package underhook.adapter.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.fixture.SmallDay;
import underhook.adapter.folder.OutputFolder.Writers;
import underhook.app.port.OutputWriter;
import underhook.app.port.Refusal;
import underhook.app.port.RefusalWriter;

class OutputFolderTest {
    private static final InstantSource CLOCK =
            InstantSource.fixed(Instant.parse("2026-06-01T05:06:07Z"));

    @TempDir Path root;
    private Path out = Path.of("");

    @BeforeEach
    void name_the_folder() {
        out = root.resolve("deep/out");
    }

    @Test
    void every_file_of_a_plan_comes_in_and_nothing_else_stays() throws IOException {
        publish("first");

        assertThat(names(out)).containsExactly("findings.csv", "plan.json");
        assertThat(text("plan.json")).isEqualTo("first");
    }

    @Test
    void a_later_plan_takes_the_place_of_an_earlier_one() throws IOException {
        publish("first");
        Files.writeString(out.resolve("own notes.txt"), "kept", StandardCharsets.UTF_8);

        publish("second");

        assertThat(names(out)).containsExactly("findings.csv", "own notes.txt", "plan.json");
        assertThat(text("plan.json")).isEqualTo("second");
        assertThat(text("findings.csv")).isEqualTo("second");
    }

    @Test
    void a_plan_that_cannot_be_written_whole_leaves_the_earlier_one() throws IOException {
        publish("first");
        OutputWriter full =
                new Text("findings.csv", "second") {
                    @Override
                    public void write(Output output, Path file) throws IOException {
                        throw new IOException("disk full");
                    }
                };
        Writers writers =
                new Writers(
                        List.of(new Text("plan.json", "second"), full),
                        new Text("findings.csv", ""),
                        CLOCK);

        try (OutputFolder folder = OutputFolder.open(out, writers)) {
            assertThatThrownBy(() -> folder.publish(SmallDay.output()))
                    .isInstanceOf(IOException.class)
                    .hasMessage("disk full");
        }

        assertThat(names(out)).containsExactly("findings.csv", "plan.json");
        assertThat(text("plan.json")).isEqualTo("first");
    }

    @Test
    void a_refusal_moves_the_earlier_plan_out_of_the_way() throws IOException {
        publish("first");

        refuse("no");
        refuse("no again");

        assertThat(names(out))
                .containsExactly(
                        "findings.csv",
                        "superseded-20260601T050607Z",
                        "superseded-20260601T050607Z-2");
        assertThat(text("findings.csv")).isEqualTo("no again");
        assertThat(text("superseded-20260601T050607Z/plan.json")).isEqualTo("first");
        assertThat(text("superseded-20260601T050607Z/findings.csv")).isEqualTo("first");
        assertThat(names(out.resolve("superseded-20260601T050607Z-2")))
                .containsExactly("findings.csv");
    }

    @Test
    void one_at_a_time_has_the_folder() throws IOException {
        try (OutputFolder first = OutputFolder.open(out, writers("first"))) {
            assertThatThrownBy(() -> OutputFolder.open(out, writers("second")))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("another run");
            first.publish(SmallDay.output());
        }

        publish("third");

        assertThat(text("plan.json")).isEqualTo("third");
    }

    private void publish(String text) throws IOException {
        try (OutputFolder folder = OutputFolder.open(out, writers(text))) {
            assertThat(folder.publish(SmallDay.output()))
                    .containsExactly(out.resolve("plan.json"), out.resolve("findings.csv"));
        }
    }

    private void refuse(String text) throws IOException {
        try (OutputFolder folder = OutputFolder.open(out, writers(text))) {
            folder.refuse(new Refusal(SmallDay.output().readJob().job(), "", List.of()));
        }
    }

    private static Writers writers(String text) {
        Text findings = new Text("findings.csv", text);
        return new Writers(List.of(new Text("plan.json", text), findings), findings, CLOCK);
    }

    private String text(String name) throws IOException {
        return Files.readString(out.resolve(name), StandardCharsets.UTF_8);
    }

    private static List<String> names(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
        }
    }

    /** Writes one text. */
    private static class Text implements OutputWriter, RefusalWriter {
        private final String name;
        private final String text;

        Text(String name, String text) {
            this.name = name;
            this.text = text;
        }

        @Override
        public String fileName() {
            return name;
        }

        @Override
        public void write(Output output, Path file) throws IOException {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        }

        @Override
        public void write(Refusal refusal, Path file) throws IOException {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        }
    }
}
