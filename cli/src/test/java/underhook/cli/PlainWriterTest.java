package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import underhook.assembly.Settings;

/** Codes of ECMA-48 (CSI, OSC, C1) and of Unicode's bidirectional algorithm, from memory. */
class PlainWriterTest {
    @TempDir Path folder;

    private static String written(String text, boolean returns) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintWriter out = Main.terminal(bytes, returns);
        out.print(text);
        out.flush();
        return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void what_steers_a_terminal_is_shown_by_its_number() {
        assertThat(written("a\u001b[31mb\u0007\u009b2J\u007f\b", false))
                .isEqualTo("a\\u001b[31mb\\u0007\\u009b2J\\u007f\\u0008");
        assertThat(written("abc\u202egnp.exe\u2066", false)).isEqualTo("abc\\u202egnp.exe\\u2066");
    }

    @Test
    void what_people_write_stays() {
        String text = "Vögel 😀 שלום\tx\r\ny\nz";

        assertThat(written(text, false)).isEqualTo(text);
    }

    @Test
    void a_line_is_begun_anew_by_progress_alone() {
        assertThat(written("safe\rgone", false)).isEqualTo("safe\\u000dgone");
        assertThat(written("\r[##..] a", true)).isEqualTo("\r[##..] a");
    }

    @Test
    void a_jobs_name_steers_nothing() throws IOException {
        Path job = OwnJob.write(folder);
        OwnJob.replace(
                job.resolve("job.yaml"), "name: My first day", "name: \"My \\e]0;x\\a day\"");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        CommandLine line = Main.commandLine(new Settings(folder.resolve("home"), "underhook test"));
        line.setOut(Main.terminal(bytes, false)).setErr(Main.terminal(bytes, true));
        line.execute("plan", job.toString(), "--effort=1", "--out=" + folder.resolve("out"));

        assertThat(bytes.toString(StandardCharsets.UTF_8))
                .contains("My \\u001b]0;x\\u0007 day")
                .doesNotContain("\u001b");
    }
}
