package underhook.adapter.planfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.adapter.fixture.SmallDay;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter.Output;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Anew;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.ToldPlace;
import underhook.core.plan.VerifierReport;

class PlanJsonTest {
    @TempDir Path folder;

    @Test
    void carries_the_names_and_units_that_are_promised() throws IOException {
        JsonNode root = JsonMapper.shared().readTree(text(SmallDay.output()));

        JsonNode step = root.get("steps").get(0);
        assertThat(root.get("version").intValue()).isEqualTo(1);
        assertThat(root.get("caution").stringValue()).isEqualTo(Caution.TEXT);
        assertThat(step.get("kind").stringValue()).isEqualTo("rotation");
        // The job's zone is +02:00, the step begins at 05:00 UTC.
        assertThat(step.get("startAt").stringValue()).isEqualTo("2026-06-01T07:00:00+02:00");
        assertThat(step.at("/drops/0/releasedAt").stringValue())
                .isEqualTo("2026-06-01T07:05:00.250+02:00");
        // 3 m/s = 3 x 3600 / 1852 kt
        assertThat(step.at("/drops/0/headKt").doubleValue()).isCloseTo(5.831533, within(1e-6));
        assertThat(step.at("/drops/0/approachFromTrueDeg").doubleValue())
                .isCloseTo(45, within(1e-6));
        assertThat(step.at("/legs/0/path/0").toString()).isEqualTo("[11.1,46.2,325]");
        assertThat(step.at("/legs/1/leastClearanceM").isNull()).isTrue();
        assertThat(root.at("/verifier/checks").intValue()).isEqualTo(1234);
        assertThat(text(SmallDay.output())).contains("\"value\" : 12.30,");
        assertThat(root.at("/attribution/0").stringValue())
                .isEqualTo("Mapping Agency of Nowhere (CC-BY 4.0)");
        assertThat(root.get("licence").isNull()).isTrue();
    }

    @Test
    void rounds_to_the_safe_side_what_is_flown_by() throws IOException {
        JsonNode step = JsonMapper.shared().readTree(text(SmallDay.output())).at("/steps/0");

        // 412.0001, 1899.99999, 180.7654321, 12.3456 and 400.1234 in the plan
        assertThat(step.get("massOnHookKg").decimalValue()).hasToString("412.001");
        assertThat(step.get("hogeMassKg").decimalValue()).hasToString("1899.999");
        assertThat(step.get("fuelMaxKg").decimalValue()).hasToString("180.765432");
        assertThat(step.at("/legs/0/leastClearanceM").decimalValue()).hasToString("12.345");
        assertThat(step.at("/legs/0/path/1/2").decimalValue()).hasToString("400.124");
    }

    @Test
    void states_the_gaps_against_the_bounds_and_null_without() throws IOException {
        JsonNode with = JsonMapper.shared().readTree(text(SmallDay.output())).get("summary");
        Output unbound =
                new Output(
                        SmallDay.readJob(""),
                        SmallDay.plan(false),
                        new VerifierReport(1, List.of()));
        JsonNode without = JsonMapper.shared().readTree(text(unbound)).get("summary");

        // (600 - 480) / 480 and (1200 - 1000) / (1000 - 0), by hand
        assertThat(with.get("flightGapPercent").decimalValue()).hasToString("25");
        assertThat(with.get("finishGapPercent").decimalValue()).hasToString("20");
        for (String name :
                List.of(
                        "lowerBoundFlightMinutes",
                        "flightGapPercent",
                        "finishBoundAt",
                        "finishGapPercent",
                        "provenFor")) {
            assertThat(without.get(name).isNull()).as(name).isTrue();
        }
    }

    @Test
    void says_that_it_is_under_the_database_licence() throws IOException {
        assertThat(text(SmallDay.outputUnder("ODbL 1.0"))).contains("itself under ODbL 1.0");
    }

    @Test
    void reads_back_what_was_written() throws IOException {
        Random random = new Random(20260601);
        for (int round = 0; round < 200; round++) {
            Plan plan = SmallDay.random(random);
            String text = text(output(plan));

            Outcome<Plan> read = read(text);

            assertThat(read.findings()).isEmpty();
            assertSame(plan, read.getValue());
            assertThat(text(output(read.getValue()))).isEqualTo(text);
        }
    }

    /** Tolerances: half or, where rounded to one side, one unit of the last decimal written. */
    private static void assertSame(Plan plan, Plan read) {
        assertThat(read)
                .usingRecursiveComparison()
                .withComparatorForType(
                        (a, b) -> Math.abs(a - b) <= 0.001_000_1 ? 0 : Double.compare(a, b),
                        Double.class)
                .withComparatorForType(
                        (a, b) ->
                                Math.abs(java.time.Duration.between(a, b).toNanos()) < 1000
                                        ? 0
                                        : a.compareTo(b),
                        java.time.Instant.class)
                .ignoringFields("summary.bounds.flightS")
                .isEqualTo(plan);
        assertThat(read.summary().lowerBoundFlightS().orElse(-1))
                .isCloseTo(plan.summary().lowerBoundFlightS().orElse(-1), within(6.1e-5));
        for (int i = 0; i < plan.steps().size(); i++) {
            Step was = plan.steps().get(i);
            Step is = read.steps().get(i);
            if (was.rotation().isPresent()) {
                assertSafe(was.rotation().get(), is.rotation().orElseThrow());
            }
        }
    }

    private static void assertSafe(Rotation was, Rotation is) {
        assertThat(is.fuelMaxKg()).isLessThanOrEqualTo(was.fuelMaxKg());
        assertThat(is.hogeMassKg()).isLessThanOrEqualTo(was.hogeMassKg());
        assertThat(is.massOnHookKg()).isGreaterThanOrEqualTo(was.massOnHookKg());
        for (int i = 0; i < was.legs().size(); i++) {
            Leg a = was.legs().get(i);
            Leg b = is.legs().get(i);
            assertThat(b.leastClearanceM()).isLessThanOrEqualTo(a.leastClearanceM());
            // 7 decimals of a degree
            assertThat(b.path().get(0).position().latDeg())
                    .isCloseTo(a.path().get(0).position().latDeg(), within(5.1e-8));
            assertThat(b.durationS()).isCloseTo(a.durationS(), within(3.1e-5));
        }
    }

    @Test
    void lists_every_fault_at_once_with_its_line() throws IOException {
        String text =
                text(SmallDay.output())
                        .replace("\"kind\" : \"refuel\"", "\"kind\" : \"refuelling\"")
                        .replace("\"fuelAtHookKg\"", "\"fuelAtHooksKg\"")
                        .replace("\"seed\" : 42", "\"seed\" : 4.2")
                        .replace("[ 11.1, 46.2, 325 ]", "[ 46.2, 111.1, 325 ]")
                        .replace("\"severity\" : \"NOTE\"", "\"severity\" : \"note\"");

        List<Finding> faults = read(text).findings();

        assertThat(faults).allMatch(fault -> fault.code() == FindingCode.PLAN_UNREADABLE);
        assertThat(faults)
                .extracting(Finding::subject)
                .contains(
                        "seed",
                        "steps[0].fuelAtHookKg",
                        "steps[0].fuelAtHooksKg",
                        "steps[0].legs[0].path[0]",
                        "steps[1].kind",
                        "findings[2].severity");
        assertThat(faults)
                .filteredOn(fault -> fault.subject().equals("steps[0].fuelAtHooksKg"))
                .allMatch(fault -> fault.limit().endsWith("Perhaps fuelAtHookKg"));
        // version, caution, planId, job, plannedAt, seed: line 7 with the brace
        assertThat(faults)
                .filteredOn(fault -> fault.subject().equals("seed"))
                .allMatch(fault -> fault.message().startsWith("plan.json:7: seed: "));
    }

    @Test
    void refuses_another_version_and_what_is_no_plan() throws IOException {
        String text = text(SmallDay.output());

        assertThat(codeOf(text.replace("\"version\" : 1", "\"version\" : 2")))
                .isEqualTo(FindingCode.VERSION_UNKNOWN);
        assertThat(codeOf(text.substring(0, text.length() / 2)))
                .isEqualTo(FindingCode.PLAN_UNREADABLE);
        // Common practice, no source: said in our words, not in those of a library.
        assertThat(read(text.substring(0, text.length() / 2)).findings())
                .extracting(Finding::message)
                .singleElement()
                .asString()
                .matches("plan\\.json:[0-9]+ ends in the middle\\. Perhaps it was cut off .*");
        Path other = folder.resolve("plan.json");
        Files.write(other, text.getBytes(StandardCharsets.UTF_16));
        assertThat(new PlanJsonReader().read(other).findings())
                .extracting(Finding::message)
                .containsExactly(
                        "plan.json is no UTF-8 text; it was changed since it was written.");
        assertThat(read(text.replaceFirst(":", ";")).findings())
                .extracting(Finding::message)
                .containsExactly("plan.json:2 is no JSON from here on, or has a field twice.");
        assertThat(codeOf("")).isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf("[]")).isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf("{}")).isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf(text + "{}")).isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf(text.replace("\"seed\" : 42", "\"seed\" : 42, \"seed\" : 43")))
                .isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf(text.replace("140.25", "1e999"))).isEqualTo(FindingCode.PLAN_UNREADABLE);
        // So far from the other times that their difference has no 64 bits.
        for (String far : List.of("+10000-01-01T00:00:00Z", "1600-06-01T07:00:00+02:00")) {
            assertThat(codeOf(text.replace("2026-06-01T07:00:00+02:00", far)))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
        }
        assertThat(codeOf("[".repeat(100_000))).isEqualTo(FindingCode.PLAN_UNREADABLE);
    }

    @Test
    void reads_the_example_of_the_format_s_page() throws IOException {
        String page = Files.readString(Path.of("../docs/formats.md"), StandardCharsets.UTF_8);
        String section = page.substring(page.indexOf("## plan.json"));
        String example = section.substring(section.indexOf("```json") + 7);

        Outcome<Plan> read = read(example.substring(0, example.indexOf("```")));

        assertThat(read.findings()).isEmpty();
        assertThat(read.getValue().leftOut()).hasSize(1);
    }

    @Test
    void notes_a_gap_that_does_not_follow() throws IOException {
        String text =
                text(SmallDay.output())
                        .replace("\"flightGapPercent\" : 25", "\"flightGapPercent\" : 2");

        Outcome<Plan> read = read(text);

        assertThat(read.isDone()).isTrue();
        assertThat(read.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.SUMMARY_WRONG);
    }

    @Test
    void notes_a_total_that_is_not_the_sum_of_its_parts() throws IOException {
        String text =
                text(SmallDay.output())
                        .replace(
                                "\"cutShort\" : false",
                                "\"cutShort\" : false, \"price\" : {\"flyingCents\" : 1, \"standingCents\" : 2,"
                                        + " \"peopleCents\" : 3, \"totalCents\" : 7, \"currency\" : \"EUR\"}");

        assertThat(read(text).findings())
                .extracting(Finding::subject)
                .containsExactly("summary.price.totalCents");
    }

    @Test
    void keeps_what_a_new_order_costs_more_or_less() throws IOException {
        String anew =
                "\"cutShort\" : false, \"anew\" : {\"instead\" : \"before\","
                        + " \"fromAt\" : \"2026-06-01T07:10:00+02:00\", \"moreFlightMinutes\" : -2.5,"
                        + " \"laterMinutes\" : 3, \"moreCents\" : -120, \"readings\" : ["
                        + "{\"at\" : \"2026-06-01T07:09:00+02:00\", \"fuelKg\" : 81.5}],"
                        + " \"told\" : [{\"crew\" : \"Q\", \"place\" : \"S1\","
                        + " \"at\" : \"2026-06-01T07:08:30+02:00\"}], \"rest\" : {\"flyingCents\" : 1,"
                        + " \"standingCents\" : 2, \"peopleCents\" : 3, \"totalCents\" : 6,"
                        + " \"currency\" : \"EUR\"}}";
        String text = text(SmallDay.output()).replace("\"cutShort\" : false", anew);

        Anew read = read(text).getValue().summary().anew().orElseThrow();

        assertThat(read)
                .isEqualTo(
                        new Anew(
                                "before",
                                Instant.parse("2026-06-01T05:10:00Z"),
                                new DayPrice(1, 2, 3, "EUR"),
                                -150,
                                180,
                                OptionalLong.of(-120),
                                List.of(
                                        new Anew.Reading(
                                                Instant.parse("2026-06-01T05:09:00Z"), 81.5)),
                                List.of(
                                        new ToldPlace(
                                                new CrewId("Q"),
                                                new PlaceId("S1"),
                                                Instant.parse("2026-06-01T05:08:30Z")))));
        assertThat(read(text(output(read(text).getValue()))).getValue().summary().anew())
                .contains(read);
        String unpriced = text.replace(" \"moreCents\" : -120,", "");
        assertThat(read(unpriced).getValue().summary().anew().orElseThrow().moreCents()).isEmpty();
    }

    @Test
    void keeps_refused_comforts_with_their_prices() throws IOException {
        String comforts =
                " \"comforts\" : [{\"comfort\" : \"tailwind\", \"subject\" : \"B1\", \"place\" : \"S1\","
                        + " \"at\" : \"2026-09-08T07:16:40-01:00\", \"count\" : 3, \"unit\" : \"kt\","
                        + " \"cents\" : 15}]}";
        String text =
                text(SmallDay.output())
                        .replace(
                                "\"cutShort\" : false",
                                "\"cutShort\" : false, \"price\" : {\"flyingCents\" : 1, \"standingCents\" : 2,"
                                        + " \"peopleCents\" : 3, \"comfortsCents\" : 15, \"totalCents\" : 21,"
                                        + " \"currency\" : \"EUR\","
                                        + comforts);

        assertThat(read(text).findings()).isEmpty();
        DayPrice price = read(text).getValue().summary().price().orElseThrow();
        assertThat(price.comforts())
                .containsExactly(
                        new RefusedComfort(
                                RefusedComfort.Comfort.TAILWIND,
                                "B1",
                                new PlaceId("S1"),
                                Instant.parse("2026-09-08T08:16:40Z"),
                                3,
                                15));
        assertThat(read(text(output(read(text).getValue()))).getValue().summary().price())
                .contains(price);
        assertThat(
                        read(text.replace("\"comfortsCents\" : 15", "\"comfortsCents\" : 14"))
                                .findings())
                .extracting(Finding::subject)
                .containsExactly("summary.price.comfortsCents");
        assertThat(codeOf(text.replace("\"unit\" : \"kt\"", "\"unit\" : \"min\"")))
                .isEqualTo(FindingCode.PLAN_UNREADABLE);
        assertThat(codeOf(text.replace("\"tailwind\"", "\"breeze\"")))
                .isEqualTo(FindingCode.PLAN_UNREADABLE);
        for (String odd : List.of("-15", "1000000000001", "9223372036854775807")) {
            assertThat(codeOf(text.replace("\"cents\" : 15", "\"cents\" : " + odd)))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
            assertThat(codeOf(text.replace("\"count\" : 3", "\"count\" : " + odd)))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
            assertThat(codeOf(text.replace("\"flyingCents\" : 1", "\"flyingCents\" : " + odd)))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
        }
    }

    @Test
    void refuses_an_effort_that_no_search_has() throws IOException {
        String text = text(SmallDay.output());
        assertThat(text).contains("\"effort\" : ");
        for (String odd : List.of("0", "-5", "86401")) {
            assertThat(codeOf(text.replaceFirst("\"effort\" : \\d+", "\"effort\" : " + odd)))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
        }
    }

    @Test
    void refuses_bearings_beyond_a_turn_and_lengths_below_none() throws IOException {
        String text = text(SmallDay.output());
        for (String field :
                List.of("approachFromTrueDeg", "departureTrackTrueDeg", "headingTrueDeg")) {
            assertThat(codeOf(stating(text, field, "360.1")))
                    .isEqualTo(FindingCode.PLAN_UNREADABLE);
            assertThat(codeOf(stating(text, field, "-0.1"))).isEqualTo(FindingCode.PLAN_UNREADABLE);
            read(stating(text, field, "360"));
        }
        for (String field :
                List.of(
                        "neededM",
                        "unknownM",
                        "standsM",
                        "settleSeconds",
                        "downwashKt",
                        "reachM")) {
            assertThat(codeOf(stating(text, field, "-1"))).isEqualTo(FindingCode.PLAN_UNREADABLE);
        }
    }

    /** The field stated so wherever it stands; it must stand somewhere. */
    private static String stating(String text, String field, String value) {
        String changed =
                text.replaceAll("\"" + field + "\" : [-0-9.]+", "\"" + field + "\" : " + value);
        assertThat(changed).as(field).isNotEqualTo(text);
        return changed;
    }

    @Test
    void keeps_the_word_of_a_limit_apart_from_the_place_where_it_holds() throws IOException {
        String text = text(SmallDay.output());
        String atPlace =
                text.replaceFirst(
                        "(\"code\" : )\"HOVER_MASS\",\\s+\"place\" : null",
                        "$1\"WIND_GUST\", \"place\" : \"S1\"");

        Limit limit =
                read(atPlace).getValue().steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.limits().stream())
                        .filter(one -> one.code().startsWith("WIND"))
                        .findFirst()
                        .orElseThrow();

        assertThat(limit.code()).isEqualTo("WIND_GUST at S1");
        assertThat(text(output(read(atPlace).getValue())))
                .containsPattern("\"code\" : \"WIND_GUST\",\\s+\"place\" : \"S1\"");
        assertThat(read(text.replaceAll("\"place\" : null,", "")).isDone()).isTrue();
    }

    /** ODbL 1.0, 4.2 and 4.3, from memory: whoever passes data on says whose they are, and under which licence. */
    @Test
    void a_file_without_the_sources_of_its_job_is_doubted() throws IOException {
        Output output = SmallDay.outputUnder("ODbL 1.0");
        String text = text(output);

        assertThat(doubted(text, output)).isEmpty();
        assertThat(doubted(text.replace("Mapping Agency", "Somebody"), output))
                .containsExactly("attribution");
        assertThat(
                        doubted(
                                text.replaceAll(
                                        "(?s)\"attribution\" : \\[[^]]*]", "\"attribution\" : []"),
                                output))
                .containsExactly("attribution");
        assertThat(
                        doubted(
                                text.replaceAll("\"licence\" : \"[^\"]*\"", "\"licence\" : null"),
                                output))
                .containsExactly("licence");
        assertThat(
                        doubted(
                                text.replaceAll("\"caution\" : \"[^\"]*\"", "\"caution\" : \"\""),
                                output))
                .containsExactly("caution");
        assertThat(
                        doubted(
                                text.replaceAll(
                                        "\"caution\" : \"[^\"]*\"",
                                        "\"caution\" : \"Cleared for flight.\""),
                                output))
                .containsExactly("caution");
        assertThat(doubted(text.replaceAll("\"caution\" : \"[^\"]*\",", ""), output))
                .containsExactly("caution");
    }

    private List<String> doubted(String text, Output output) throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, text, StandardCharsets.UTF_8);
        Outcome<Plan> read = new PlanJsonReader().read(file, output.readJob().job());
        assertThat(read.isDone()).isTrue();
        return read.findings().stream().map(Finding::subject).toList();
    }

    private FindingCode codeOf(String text) throws IOException {
        Outcome<Plan> read = read(text);
        assertThat(read.isDone()).isFalse();
        return read.findings().get(0).code();
    }

    private static Output output(Plan plan) {
        return new Output(SmallDay.readJob(""), plan, new VerifierReport(9, List.of()));
    }

    private String text(Output output) throws IOException {
        Path file = folder.resolve("plan.json");
        new PlanJsonWriter().write(output, file);
        return Files.readString(file, StandardCharsets.UTF_8);
    }

    private Outcome<Plan> read(String text) throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, text, StandardCharsets.UTF_8);
        return new PlanJsonReader().read(file);
    }
}
