package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;

class CalcCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final Map<String, String> heard = new LinkedHashMap<>();

    @Test
    void hands_on_every_way_of_writing_a_flag() {
        int exit = run("swing", "--length-m=15", "--amplitude-deg", "-5", "--rigid");

        assertThat(exit).isZero();
        assertThat(heard)
                .containsExactlyInAnyOrderEntriesOf(
                        Map.of("length-m", "15", "amplitude-deg", "-5", "rigid", "true"));
    }

    @Test
    void writes_json_to_the_standard_output_and_nothing_else() {
        run("swing", "--length-m=15", "--json");

        assertThat(out.toString().strip()).isEqualTo("{\"periodS\":7.5,\"text\":\"é\"}");
        assertThat(err.toString()).isEmpty();
        assertThat(heard).doesNotContainKey("json");
    }

    @Test
    void writes_lists_as_words_where_a_person_reads() {
        run("swing", "--how");

        assertThat(out.toString())
                .contains("how = T = 1 | BOOK", "azimuthsDeg = 0 | 120")
                .doesNotContain("{", "[");
    }

    @Test
    void refuses_with_the_finding() {
        int exit = run("no-such");

        assertThat(exit).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString()).contains("STOP NOT_YET_AVAILABLE no-such");
    }

    @Test
    void writes_the_finding_into_the_json_too() {
        int exit = run("no-such", "--json");

        assertThat(exit).isEqualTo(2);
        assertThat(out.toString().strip())
                .isEqualTo(
                        "{\"findings\":[{\"code\":\"NOT_YET_AVAILABLE\",\"severity\":\"STOP\","
                                + "\"subject\":\"no-such\",\"value\":\"\",\"limit\":\"\",\"unit\":\"\","
                                + "\"source\":\"\",\"message\":\"Unknown.\"}]}");
        assertThat(err.toString()).contains("STOP NOT_YET_AVAILABLE no-such");
    }

    /** Contract, section 1: 2 with the finding; a program reads it where the answer would stand. */
    @Test
    void a_doubled_flag_is_a_finding_in_the_object_too() {
        int exit = run("swing", "--length-m=1", "--length-m=2", "--json");

        assertThat(exit).isEqualTo(2);
        assertThat(out.toString())
                .contains("\"code\":\"FIELD_UNREADABLE\"", "\"subject\":\"length-m\"");
    }

    @Test
    void refuses_a_flag_given_twice_or_a_bare_word() {
        assertThat(run("swing", "--length-m=1", "--length-m=2")).isEqualTo(2);
        assertThat(run("swing", "--length-m=1", "--", "x")).isEqualTo(2);
        assertThat(err.toString()).contains("--length-m is given twice.");
    }

    private int run(String... arguments) {
        CommandLine line = new CommandLine(new CalcCommand(this::calc));
        line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        return line.execute(arguments);
    }

    private Outcome<Map<String, Object>> calc(String topic, Map<String, String> flags) {
        heard.putAll(flags);
        if (!topic.equals("swing")) {
            return Outcome.refused(
                    Finding.of(
                            FindingCode.NOT_YET_AVAILABLE, Severity.STOP, topic, "", "Unknown."));
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("periodS", 7.5);
        answer.put("text", "é");
        if (flags.containsKey("how")) {
            answer.put("how", List.of(Map.of("formula", "T = 1"), Map.of("source", "BOOK")));
            answer.put("azimuthsDeg", List.of(0.0, 120.00000000000001));
        }
        return Outcome.done(answer);
    }
}
