package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Yaml;
import underhook.core.finding.FindingCode;
import underhook.core.job.Handling;
import underhook.core.job.Rigging;

class RiggingFileTest {
    private static final String GEAR =
            """
            version: 1
            gear:
              - {name: hook, count: 1, material: steel, limit-kg: 750, mass-kg: 9}
              - {name: sling, count: 6, material: web, breaking-kn: 70, mass-kg: 0.6, first-used: 2025-04-07, due: 2027-04-07, retire: 2031-04-07}
            belly: [hook]
            sets:
              - {name: bags, kinds: [bag], hitch: vertical, legs: 1, leg: sling}
            """;

    private final Faults faults = new Faults();

    private Optional<Rigging> read(String text) {
        Source source = new Source("rigging.yaml", faults);
        Mentions mentions = new Mentions();
        Optional<Rigging> read =
                Yaml.read(text, source)
                        .flatMap(fields -> RiggingFile.read(declared(fields, mentions), mentions));
        mentions.check();
        return faults.isEmpty() ? read : Optional.empty();
    }

    /** The kinds of the example stand in the rules. */
    private static Fields declared(Fields fields, Mentions mentions) {
        for (String kind : List.of("bag", "pole", "crate", "beam")) {
            mentions.declare(Mentions.Family.KIND, kind, "rules.yaml");
        }
        return fields;
    }

    private List<FindingCode> codes() {
        return faults.list().stream().map(fault -> fault.code()).toList();
    }

    @Test
    void reads_what_each_piece_carries() {
        Rigging rigging = read(GEAR).orElseThrow();

        Rigging.Gear sling = rigging.getGear("sling");
        assertThat(sling.breakingN().orElseThrow()).isCloseTo(70_000, within(1e-6));
        assertThat(sling.limitKg()).isEmpty();
        assertThat(sling.dates().orElseThrow().dueOn()).isEqualTo(LocalDate.of(2027, 4, 7));
        assertThat(rigging.getGear("hook").dates()).isEmpty();
        assertThat(rigging.breakingFactor()).isEqualTo(5);
        assertThat(rigging.findSet("bag").orElseThrow().angleRad())
                .isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(rigging.findSet("pole")).isEmpty();
    }

    @Test
    void refuses_every_fault_at_once() {
        read(
                GEAR.replace("limit-kg: 750, ", "")
                        .replace("due: 2027-04-07, ", "")
                        .replace("[hook]", "[hock]")
                        .replace("hitch: vertical", "hitch: knotted")
                        .replace("legs: 1", "legs: 9"));

        assertThat(codes())
                .contains(
                        FindingCode.FIELD_MISSING,
                        FindingCode.ID_UNKNOWN,
                        FindingCode.FIELD_UNREADABLE,
                        FindingCode.FIELD_OUT_OF_RANGE);
        assertThat(faults.count()).isEqualTo(5);
    }

    @Test
    void refuses_a_life_that_ends_before_it_begins_and_a_bridle_without_legs() {
        read(
                GEAR.replace("retire: 2031", "retire: 2021")
                        .replace("hitch: vertical", "hitch: bridle"));

        assertThat(codes())
                .containsExactly(FindingCode.FIELD_OUT_OF_RANGE, FindingCode.FIELD_OUT_OF_RANGE);
    }

    @Test
    void refuses_a_field_that_nobody_knows() {
        read(GEAR.replace("count: 6", "count: 6, colour: red"));

        assertThat(codes()).containsExactly(FindingCode.FIELD_UNKNOWN);
    }

    @Test
    void reads_the_example_of_the_formats_page() throws Exception {
        String page = Files.readString(Path.of("../docs/formats.md"), StandardCharsets.UTF_8);
        String section = page.substring(page.indexOf("## rigging (YAML)"));
        String example = section.substring(section.indexOf("```yaml") + 7);

        Rigging rigging = read(example.substring(0, example.indexOf("```"))).orElseThrow();

        assertThat(rigging.stock()).hasSize(6);
        assertThat(rigging.findSet("beam").orElseThrow().bridle()).isPresent();
    }

    @Test
    void the_defaults_of_the_formats_page_are_those_that_hold() throws Exception {
        String page = Files.readString(Path.of("../docs/formats.md"), StandardCharsets.UTF_8);
        String section = page.substring(page.indexOf("flying:                          #"));

        Handling handling =
                HandlingFields.read(
                        Yaml.read(
                                        section.substring(0, section.indexOf("```")),
                                        new Source("rules.yaml", faults))
                                .orElseThrow());

        assertThat(faults.list()).isEmpty();
        assertThat(handling).isEqualTo(Handling.USUAL);
    }
}
