package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.core.finding.FindingCode;

class MainTest {
    private static final Fault FAULT =
            new Fault(
                    FindingCode.FIELD_UNKNOWN,
                    "loads.csv",
                    1,
                    "mas_kg",
                    "unknown field",
                    "",
                    "perhaps mass_kg");

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void shows_every_fault_on_the_standard_output_and_exits_2() {
        assertThat(run("check", "job")).isEqualTo(2);
        assertThat(out.toString().strip())
                .isEqualTo("loads.csv:1: mas_kg: unknown field, perhaps mass_kg");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void refuses_an_unknown_word_with_the_nearest_known_one() {
        assertThat(run("chekc", "job")).isEqualTo(2);
        assertThat(err.toString()).contains("chekc").contains("underhook check");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void refuses_an_unknown_option() {
        assertThat(run("check", "job", "--sedd=1")).isEqualTo(2);
        assertThat(err.toString()).contains("--sedd");
    }

    /** Contract, section 1: unknown words are refused with the nearest known one. */
    @Test
    void names_the_nearest_known_option_or_all_where_none_is_near() {
        assertThat(run("count", "--tmies=3")).isEqualTo(2);
        assertThat(err.toString())
                .contains("Unknown option: '--tmies=3'")
                .contains("Perhaps --times is");

        assertThat(run("check", "job", "--jsn")).isEqualTo(2);
        assertThat(err.toString()).contains("--jsn is none of --help --version.");
    }

    @Test
    void helps_everywhere() {
        assertThat(run("--help")).isZero();
        assertThat(run("check", "--help")).isZero();
        assertThat(out.toString()).contains("Usage: underhook").contains("underhook check");
    }

    @Test
    void says_its_name_and_version() {
        assertThat(run("--version")).isZero();
        assertThat(out.toString().strip()).matches("underhook [0-9]+\\.[0-9]+\\.[0-9]+.*");
    }

    @Test
    void wants_a_word() {
        assertThat(run()).isEqualTo(2);
        assertThat(err.toString()).contains("Say what to do");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e12", "often", "1.5", "99999999999999999999"})
    void says_that_a_count_is_no_whole_number(String count) {
        assertThat(run("count", "--times", count)).isEqualTo(2);
        assertThat(err.toString())
                .contains("--times")
                .contains("'" + count + "' is no whole number");
    }

    /** No type of the language is named to whoever typed it. */
    @Test
    void says_of_a_small_count_what_is_wrong() {
        assertThat(run("count", "--door=abc")).isEqualTo(2);
        assertThat(err.toString()).contains("--door").contains("'abc' is no whole number");
        assertThat(run("count", "--door=4294967297")).isEqualTo(2);
        assertThat(err.toString()).contains("'4294967297' is too large");
        assertThat(run("count", "--share=80.5")).isEqualTo(2);
        assertThat(err.toString()).contains("--share").contains("'80.5' is no whole number");
        assertThat(run("count", "--fuel=much")).isEqualTo(2);
        assertThat(err.toString()).contains("--fuel").contains("'much' is no number");
    }

    /** A person reads the file and the reason, not the name of a class. */
    @Test
    void says_of_a_file_which_and_why() {
        assertThat(run("count", "--file=full")).isEqualTo(1);
        assertThat(err.toString()).contains("underhook: failed: No space left on device");
        assertThat(run("count", "--file=there")).isEqualTo(1);
        assertThat(err.toString()).contains("underhook: failed: there: Read-only file system");
        assertThat(err.toString()).doesNotContain("underhook: failed: java");
    }

    @Command(name = "count")
    static final class Count implements Callable<Integer> {
        @Option(names = "--times")
        private long times;

        @Option(names = "--door")
        private int door;

        @Option(names = "--share")
        private @Nullable Integer share;

        @Option(names = "--fuel")
        private @Nullable Double fuel;

        @Option(names = "--file")
        private String file = "";

        @Override
        public Integer call() throws IOException {
            if (file.equals("full")) {
                throw new IOException("No space left on device");
            }
            if (!file.isEmpty()) {
                throw new FileSystemException(file, null, "Read-only file system");
            }
            return (int) times + door + (share == null ? 0 : share) + (fuel == null ? 0 : 1);
        }
    }

    private int run(String... arguments) {
        CommandLine line = new CommandLine(new Root());
        line.addSubcommand(new Count());
        line.addSubcommand(
                new CheckCommand(
                        folder ->
                                new JobReading(
                                        java.util.Optional.empty(), java.util.List.of(FAULT))));
        Main.settle(line, Path.of(System.getProperty("java.io.tmpdir")));
        line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        return line.execute(arguments);
    }
}
