package underhook.adapter.table;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.fixture.SmallDay;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.plan.Plan;
import underhook.core.plan.VerifierReport;

class TableTest {
    @TempDir Path folder;

    @Test
    void loads_have_one_row_each_with_their_rotation_or_the_reason() throws IOException {
        List<NamedCsvRecord> rows = rows(new LoadsCsvWriter(), SmallDay.output());

        assertThat(rows).hasSize(2);
        NamedCsvRecord planned = rows.get(0);
        // Typed as a formula, so guarded; 350 kg x 1.15 = 402.5 kg, lifted as 403
        assertThat(planned.getField("mass_typed")).isEqualTo("'=350 kg");
        assertThat(planned.getField("mass_used_kg")).isEqualTo("403");
        assertThat(planned.getField("step")).isEqualTo("1");
        assertThat(planned.getField("hooked_at")).isEqualTo("2026-06-01T07:01:00+02:00");
        assertThat(planned.getField("released_at")).isEqualTo("2026-06-01T07:05:00.250+02:00");
        assertThat(planned.getField("fuel_max_kg")).isEqualTo("180.7");
        assertThat(planned.getField("margin_percent")).isEqualTo("5.2");
        assertThat(planned.getField("governing_limit")).isEqualTo("HOVER_MASS");
        assertThat(planned.getField("left_out")).isEmpty();
        assertThat(rows.get(1).getField("left_out")).isEqualTo("MASS_MISSING: L2 has no mass.");
        assertThat(rows.get(1).getField("mass_used_kg")).isEmpty();
    }

    @Test
    void findings_keep_quotes_and_line_ends_and_are_guarded() throws IOException {
        List<NamedCsvRecord> rows = rows(new FindingsCsvWriter(), SmallDay.output());

        assertThat(rows).hasSize(3);
        assertThat(rows.get(0).getField("message")).isEqualTo("Near, \"quite\"\nnear.");
        assertThat(rows.get(0).getField("value")).isEqualTo("12.30");
        assertThat(rows.get(1).getField("message")).isEqualTo("'=1+1 no mass.");
        assertThat(rows)
                .allMatch(row -> row.getField("caution").equals(Caution.TEXT))
                .allMatch(row -> row.getField("plan_id").equals("plan-0001"))
                .allMatch(row -> row.getField("attribution").contains("Mapping Agency"));
        assertThat(Files.readString(folder.resolve("findings.csv"), StandardCharsets.UTF_8))
                .doesNotContain("\r");
    }

    @Test
    void violations_follow_the_findings() throws IOException {
        Finding violation =
                Finding.of(FindingCode.FUEL_ARITHMETIC, Severity.STOP, "L1", "", "wrong");
        Output output =
                new Output(
                        SmallDay.readJob("ODbL 1.0"),
                        SmallDay.plan(),
                        new VerifierReport(5, List.of(violation)));

        List<NamedCsvRecord> rows = rows(new FindingsCsvWriter(), output);

        assertThat(rows.get(3).getField("code")).isEqualTo("FUEL_ARITHMETIC");
        assertThat(rows.get(3).getField("attribution")).contains("itself under ODbL 1.0");
    }

    @Test
    void a_refusal_without_a_plan_has_its_findings_and_the_caution() throws IOException {
        Path file = folder.resolve("findings.csv");
        new FindingsCsvWriter()
                .writeRefusal(
                        List.of(
                                Finding.of(
                                        FindingCode.NO_ROOM_IN_DAY, Severity.STOP, "L1", "", "no")),
                        file);

        assertThat(Files.readAllLines(file, StandardCharsets.UTF_8).get(1))
                .isEqualTo("NO_ROOM_IN_DAY,STOP,L1,,,,,no,,\"" + Caution.TEXT + "\",");
    }

    @Test
    void an_empty_list_says_so_and_carries_the_caution() throws IOException {
        Plan plan = SmallDay.plan();
        Plan clean =
                new Plan(
                        plan.id(),
                        plan.job(),
                        plan.made(),
                        plan.summary(),
                        plan.steps(),
                        plan.crews(),
                        plan.leftOut(),
                        List.of(),
                        plan.rooms(),
                        List.of(),
                        List.of(),
                        Optional.empty());

        List<NamedCsvRecord> rows =
                rows(
                        new FindingsCsvWriter(),
                        new Output(SmallDay.readJob(""), clean, new VerifierReport(5, List.of())));

        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).getField("message")).isEqualTo("No findings.");
        assertThat(rows.get(0).getField("caution")).isEqualTo(Caution.TEXT);
    }

    @Test
    void numbers_stay_numbers_and_formulas_become_text() {
        assertThat(List.of("-3.2", "7", "L-1", "a=b"))
                .allMatch(text -> Table.guarded(text).equals(text));
        assertThat(List.of("=1", "+1+1", "-1+1", "@SUM(A1)", "  =1", "\t1", "＝1", "-cmd|x"))
                .allMatch(text -> Table.guarded(text).equals("'" + text));
    }

    private List<NamedCsvRecord> rows(OutputWriter writer, Output output) throws IOException {
        Path file = folder.resolve(writer.fileName());
        writer.write(output, file);
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(file, StandardCharsets.UTF_8)) {
            return reader.stream().toList();
        }
    }
}
