package underhook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.adapter.planfile.PlanJsonReader;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.job.Handling;
import underhook.core.job.Job;
import underhook.core.job.Spreads;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;
import underhook.planner.odds.DayOdds;

/**
 * The invented demo day from the command line to the written files. The faults it must find were planted in
 * the invented day by hand; what is expected of them is DERIVED from the day's own tables.
 */
@Tag("slow")
class DemoDayIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** What D-1's tank holds. */
    private static final double TANK_KG = 340;

    private static final double FORGED_KG = 20;

    @TempDir private static Path temp;

    private static Said demo = new Said(-1, "", "");
    private static Path out = Path.of("");
    private static JsonNode plan = JSON.createObjectNode();

    @BeforeAll
    static void plan_the_demo_day() throws IOException {
        out = temp.resolve("out");
        demo = Said.of(temp.resolve("data"), "demo", "--no-serve", "--out", out.toString());
        assertThat(demo.exit()).as(demo.out() + demo.err()).isEqualTo(Exit.DONE);
        plan = JSON.readTree(Files.readString(out.resolve("plan.json"), UTF_8));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plan.json",
                "plan.geojson",
                "plan.gpx",
                "plan.kml",
                "cards.pdf",
                "loads.csv",
                "findings.csv"
            })
    void writes_the_file_and_names_it(String name) {
        assertThat(out.resolve(name)).isNotEmptyFile();
        assertThat(demo.out()).contains("wrote " + out.resolve(name));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plan.json",
                "plan.geojson",
                "plan.gpx",
                "plan.kml",
                "loads.csv",
                "findings.csv"
            })
    void carries_the_plan_id_in_every_readable_file(String name) throws IOException {
        assertThat(Files.readString(out.resolve(name), UTF_8))
                .contains(plan.get("planId").asString());
    }

    @Test
    void names_the_same_plan_on_the_screen() {
        assertThat(demo.out()).contains(plan.get("planId").asString());
    }

    /** Expected: the plan itself; DERIVED. */
    @Test
    void replayed_with_every_time_as_planned_the_day_is_the_plan() {
        Settings settings = new Settings(temp.resolve("replayed"), "test");
        Job job =
                new Underhook(settings)
                        .jobReader()
                        .read(out.resolve("job"))
                        .job()
                        .orElseThrow()
                        .job();
        Plan written = new PlanJsonReader().read(out.resolve("plan.json")).getValue();
        Handling steady = job.rules().handling().withSpreads(Spreads.NONE);

        Odds odds =
                DayOdds.of(
                        job.withRules(job.rules().withHandling(steady)),
                        written,
                        new SplittableRandom(1));

        assertThat(odds.allInTime().countedFraction()).isEqualTo(1);
        assertThat(Duration.between(written.summary().finishAt(), odds.finishLateAt()))
                .isBetween(Duration.ZERO, Duration.ofSeconds(59));
    }

    /** A lift hangs that a team is to receive, and the team is said to be late; DERIVED from the plan. */
    @Test
    void the_rest_of_the_day_is_ordered_anew_around_a_late_crew() throws IOException {
        Path anew = temp.resolve("anew");
        JsonNode begun = receivedBy("P");
        String place = begun.get("drops").get(0).get("place").asString();
        OffsetDateTime now = OffsetDateTime.parse(begun.get("hookedAt").asString());
        OffsetDateTime late = now.plusMinutes(45);

        Said said =
                Said.of(
                        temp.resolve("data"),
                        "replan",
                        out.resolve("job").toString(),
                        out.resolve("plan.json").toString(),
                        "--at",
                        now.toString(),
                        "--crew-late",
                        "P=" + late,
                        "--out",
                        anew.toString());

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        assertThat(said.out()).contains("A lift that is begun needs P at " + place);
        JsonNode bent = JSON.readTree(Files.readString(anew.resolve("plan.json"), UTF_8));
        for (int i = 0; i < plan.get("steps").size(); i++) {
            JsonNode step = plan.get("steps").get(i);
            if (OffsetDateTime.parse(step.get("endAt").asString()).isBefore(now)) {
                assertThat(bent.get("steps").get(i)).isEqualTo(step);
            }
        }
        assertThat(bent.get("crews"))
                .noneMatch(
                        stay ->
                                stay.get("crew").asString().equals("P")
                                        && isWithin(stay.get("fromAt"), now, late));
        assertThat(bent.at("/verifier/violations").size()).isZero();
        JsonNode costs = bent.at("/summary/anew");
        assertThat(costs.get("instead")).isEqualTo(plan.get("planId"));
        assertThat(costs.get("moreCents").asLong())
                .isEqualTo(
                        bent.at("/summary/price/totalCents").asLong()
                                - plan.at("/summary/price/totalCents").asLong());
        assertThat(said.out())
                .containsPattern("against plan-\\S+: \\d+\\.\\d min (more|less) of flying, ends")
                .contains("on, costs " + costs.at("/rest/totalCents").asLong() / 100 + " EUR");
    }

    /** Q is where the plan has it at no time; from then on it is there and nowhere else; DERIVED from the plan. */
    @Test
    void the_rest_of_the_day_is_ordered_anew_from_where_a_crew_is() throws IOException {
        Path anew = temp.resolve("here");
        OffsetDateTime now = OffsetDateTime.parse(receivedBy("P").get("hookedAt").asString());
        String place =
                Stream.of("S08", "S02", "S01")
                        .filter(one -> staysOf(plan, "Q").noneMatch(stay -> isAt(stay, one)))
                        .findFirst()
                        .orElseThrow();

        Said said =
                Said.of(
                        temp.resolve("data"),
                        "replan",
                        out.resolve("job").toString(),
                        out.resolve("plan.json").toString(),
                        "--at",
                        now.toString(),
                        "--crew-here",
                        "Q=" + place,
                        "--out",
                        anew.toString());

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        JsonNode bent = JSON.readTree(Files.readString(anew.resolve("plan.json"), UTF_8));
        assertThat(bent.at("/verifier/violations").size()).isZero();
        assertThat(staysOf(bent, "Q"))
                .noneMatch(stay -> !isAt(stay, place) && isWithin(now, stay))
                .filteredOn(stay -> !time(stay, "fromAt").isBefore(now))
                .first()
                .satisfies(
                        stay -> {
                            assertThat(isAt(stay, place)).isTrue();
                            assertThat(time(stay, "fromAt")).isEqualTo(now);
                        });
    }

    private static Stream<JsonNode> staysOf(JsonNode plan, String crew) {
        return plan.get("crews")
                .valueStream()
                .filter(stay -> stay.get("crew").asString().equals(crew));
    }

    private static boolean isAt(JsonNode stay, String place) {
        return stay.get("place").asString().equals(place);
    }

    private static boolean isWithin(OffsetDateTime at, JsonNode stay) {
        return time(stay, "fromAt").isBefore(at) && time(stay, "toAt").isAfter(at);
    }

    private static OffsetDateTime time(JsonNode stay, String name) {
        return OffsetDateTime.parse(stay.get(name).asString());
    }

    private static boolean isWithin(JsonNode at, OffsetDateTime from, OffsetDateTime until) {
        OffsetDateTime time = OffsetDateTime.parse(at.asString());
        return time.isAfter(from) && time.isBefore(until);
    }

    private static boolean isWithin(JsonNode at, JsonNode stay) {
        return isWithin(
                at,
                OffsetDateTime.parse(stay.get("fromAt").asString()),
                OffsetDateTime.parse(stay.get("toAt").asString()));
    }

    /** The third lift that is hooked up and let go while a crew works where it goes. */
    private JsonNode receivedBy(String crew) {
        List<JsonNode> all = new ArrayList<>();
        for (JsonNode step : plan.get("steps")) {
            for (JsonNode stay : plan.get("crews")) {
                if (step.get("kind").asString().equals("rotation")
                        && stay.get("crew").asString().equals(crew)
                        && stay.get("doing").asString().startsWith("works")
                        && stay.get("place").equals(step.at("/drops/0/place"))
                        && isWithin(step.get("hookedAt"), stay)
                        && isWithin(step.at("/drops/0/releasedAt"), stay)) {
                    all.add(step);
                }
            }
        }
        return all.get(2);
    }

    @Test
    void says_how_safe_the_finish_is() {
        JsonNode odds = plan.get("odds");

        assertThat(odds.get("replays").intValue()).isEqualTo(4000);
        assertThat(odds.at("/beforeWind/leastPercent").doubleValue())
                .isLessThanOrEqualTo(odds.at("/beforeWind/countedPercent").doubleValue());
        // The wind closes every pole of the day's tables before dark.
        assertThat(odds.get("lastStarts").size()).isEqualTo(plan.get("poles").size());
        assertThat(odds.get("gains").size()).isPositive();
        assertThat(demo.out()).contains("in time on at least ");
    }

    @Test
    void writes_cards_that_begin_as_a_pdf() throws IOException {
        // ISO 32000-1, 7.5.2: a PDF begins with the header "%PDF-".
        byte[] cards = Files.readAllBytes(out.resolve("cards.pdf"));
        assertThat(new String(cards, 0, 5, ISO_8859_1)).isEqualTo("%PDF-");
    }

    @Test
    void carries_the_plan_id_in_the_geopackage() throws IOException {
        Path file = out.resolve("plan.gpkg");
        Assumptions.assumeTrue(Files.exists(file), "the program writes no GeoPackage yet");
        // SQLite file format, 1.3: the file begins with this text; texts lie in it as UTF-8.
        assertThat(new String(Files.readAllBytes(file), ISO_8859_1))
                .startsWith("SQLite format 3")
                .contains(plan.get("planId").asString());
    }

    @ParameterizedTest
    @CsvSource({
        "L22, GUY_GAP",
        "L33, MASS_MISSING",
        "L43, FLIES_BADLY",
        "L44, FUEL_TOO_LOW_FOR_LOAD",
        "L45, HOOK_LIMIT"
    })
    void leaves_out_each_load_planted_to_be_refused(String load, String code) {
        assertThat(leftOut()).containsEntry(load, code);
    }

    /** The demo's own table of lines: S03 needs 25.8 m for bags, S04 has 0.8 m to spare with 25 m. */
    @ParameterizedTest
    @CsvSource({"S03, 40 m", "S04, 40 m", "S06, 25 m", "S10, 15 m", "B, 25 m"})
    void advises_the_shortest_line_with_room(String place, String line) {
        for (JsonNode room : plan.get("places")) {
            if (room.get("place").asString().equals(place)) {
                assertThat(room.get("advisedLine").asString()).isEqualTo(line);
                return;
            }
        }
        throw new AssertionError("no room is told for " + place);
    }

    @Test
    void room_tells_the_same_before_anything_is_planned() {
        Said said = Said.of(temp, "room", out.resolve("job").toString(), "S03", "--json");

        assertThat(said.exit()).isEqualTo(Exit.DONE);
        JsonNode lines = JSON.readTree(said.out()).get("places").get(0).get("lines");
        // 15 m, 15 m with a pole, 25 m: refused all round for a bag.
        assertThat(lines.get(2).get("line").asString()).isEqualTo("25 m");
        assertThat(lines.get(2).get("standsM").asDouble()).isZero();
        assertThat(lines.get(2).get("refusedTrueDeg").toString()).isEqualTo("[[0.0,360.0]]");
        assertThat(lines.get(4).get("freeTrueDeg").toString()).isEqualTo("[[0.0,360.0]]");
        assertThat(Said.of(temp, "room", out.resolve("job").toString(), "S99").exit())
                .isEqualTo(Exit.INPUT_REFUSED);
    }

    @Test
    void places_every_load_once_or_leaves_it_out_with_a_reason() {
        List<String> placed = placed();
        Set<String> all =
                IntStream.rangeClosed(1, 45)
                        .mapToObj(n -> n < 10 ? "L0" + n : "L" + n)
                        .collect(Collectors.toCollection(TreeSet::new));
        assertThat(placed).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(38);
        Set<String> told = new TreeSet<>(placed);
        told.addAll(leftOut().keySet());
        assertThat(told).isEqualTo(all);
        assertThat(placed).doesNotContainAnyElementsOf(leftOut().keySet());
        assertThat(plan.get("leftOut"))
                .allSatisfy(left -> assertThat(left.get("message").asString()).isNotBlank());
    }

    @ParameterizedTest
    @CsvSource({
        "LINE_SHORT, L03",
        "LINE_NEAR, L04",
        "ROOM_REFUSED, S03",
        "ROOM_NEAR, S06",
        "DETOUR, B-S12",
        "DETOUR, B-S13",
        "DETOUR, B-S14",
        "DETOUR, L32",
        "WIRE_UNREGISTERED, LV1",
        "LANDING_TOO_STEEP, S05",
        "LANDING_TOO_STEEP, S09",
        "ROAD_CROSSING, A-S02",
        "ROAD_CROSSING, A-S03",
        "ROAD_CROSSING, A-S04",
        "ROAD_CROSSING, A-S05",
        "APPROACH_REFUSED, S14",
        "APPROACH_REFUSED, S02",
        "GLARE, S03",
        "GLARE, S09",
        "MASS_ESTIMATED, L11",
        "MASS_ESTIMATED, L25",
        "MASS_ESTIMATED, L36",
        "PLACE_NEAR_ZONE, S14",
        "HANDLER_UNTRAINED, helper",
        "FEW_HEIGHT_CUES, S06",
        "FEW_HEIGHT_CUES, S11"
    })
    void finds_the_planted_trap(String code, String subject) {
        assertThat(subjects(code)).contains(subject);
    }

    @Test
    void says_of_every_lift_when_the_wind_leaves_less_than_a_tenth() {
        Set<String> near = new TreeSet<>();
        for (JsonNode step : plan.get("steps")) {
            for (JsonNode limit : step.path("limits")) {
                boolean isWind = limit.get("code").asString().startsWith("WIND_");
                if (isWind && limit.get("marginPercent").asDouble() < 10) {
                    near.add(step.get("loads").get(0).asString());
                }
            }
        }

        assertThat(subjects("WIND_AT_LIMIT")).containsExactlyInAnyOrderElementsOf(near);
    }

    @ParameterizedTest
    @CsvSource({"B-S12, C1", "B-S13, C1", "B-S14, C1", "L32, Z1"})
    void says_what_each_detour_goes_round(String subject, String round) {
        assertThat(findings("DETOUR"))
                .filteredOn(finding -> finding.get("subject").asString().equals(subject))
                .isNotEmpty()
                .allSatisfy(
                        finding -> assertThat(finding.get("message").asString()).contains(round));
    }

    /** The day's own table: LL-1 just north of S02, Z3 beside S14, C1 below S11. */
    @ParameterizedTest
    @CsvSource({"L16, LL1", "L28, Z3", "L25, C1"})
    void says_what_refuses_a_way_in(String load, String id) {
        assertThat(reasons(load)).anySatisfy(reason -> assertThat(reason).contains("passes " + id));
    }

    @Test
    void says_why_this_way_in_first_then_the_second_best() {
        for (String load : placed()) {
            assertThat(reasons(load).get(0)).as(load).contains("wind");
            assertThat(reasons(load).get(1)).as(load).startsWith("second best: track ");
        }
    }

    /** 10 kt and more on the ridge at noon: tracks with the wind behind are over the limit of 5 kt. */
    @Test
    void refuses_ways_in_with_too_much_tailwind() {
        assertThat(placed())
                .anySatisfy(
                        load ->
                                assertThat(reasons(load))
                                        .anySatisfy(
                                                reason ->
                                                        assertThat(reason)
                                                                .contains("tailwind over 5 kt")));
    }

    /**
     * The day's own table: late glare from about 15:30 on 240° to 250°. The sun comes within 30° of the
     * track after 15:00 and by 15:10.
     */
    /**
     * The least angle between sun and nose of all that time. By the Astronomical Almanac's low-precision
     * formulas (0.01°): at 15:59 the sun stands 22.0° up on 253.7°, 23.6° off a level track of 245°, at
     * 16:59 11.9° up on 265.3°, 19.3° off one of 250°.
     */
    @Test
    void tells_of_glare_how_near_the_sun_comes_to_the_nose() {
        assertThat(findings("GLARE"))
                .filteredOn(finding -> finding.get("subject").asString().matches("S03|B"))
                .extracting(
                        finding -> finding.get("subject").asString(),
                        finding -> finding.get("value").asDouble())
                .containsExactlyInAnyOrder(tuple("B", 23.0), tuple("S03", 19.0));
    }

    @Test
    void tells_late_glare_and_what_is_flown_instead() {
        assertThat(findings("GLARE"))
                .filteredOn(finding -> finding.get("subject").asString().equals("S03"))
                .singleElement()
                .satisfies(
                        finding ->
                                assertThat(finding.get("message").asString())
                                        .containsPattern("15:0\\d to 16:00 on track 245° TRUE")
                                        .contains("16:00 to 17:00 on track 250° TRUE")
                                        .contains("is taken instead"));
    }

    @Test
    void says_how_fast_to_come_down_without_airspeed() {
        assertThat(findings("VORTEX_RING"))
                .singleElement()
                .satisfies(
                        finding ->
                                assertThat(finding.get("message").asString())
                                        .contains("Below 24 kt")
                                        .contains("300 ft/min"));
    }

    /** The day as invented: everything else can be flown. */
    @Test
    void leaves_out_only_what_is_wrong_on_purpose() {
        assertThat(leftOut()).containsOnlyKeys("L22", "L33", "L43", "L44", "L45");
    }

    /** The day as invented: no release area lies near these ways until J5's owner agrees. */
    @ParameterizedTest
    @ValueSource(strings = {"A-S02", "A-S03", "A-S04"})
    void names_the_candidate_where_no_release_area_serves(String leg) {
        assertThat(plan.get("findings").values())
                .filteredOn(one -> one.get("code").asString().equals("RELEASE_UNNAMED"))
                .filteredOn(one -> one.get("subject").asString().equals(leg))
                .singleElement()
                .satisfies(one -> assertThat(one.get("message").asString()).contains("J5 would"));
    }

    @Test
    void says_of_every_leg_with_a_load_what_letting_go_means() {
        for (JsonNode step : plan.get("steps")) {
            for (JsonNode leg : step.path("legs")) {
                assertThat(leg.get("release").isNull()).isEqualTo(leg.get("carrying").isEmpty());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"WIRE_CROSSING", "REFUELLING_CONFLICT"})
    void finds_the_kind_of_trap(String code) {
        assertThat(subjects(code)).isNotEmpty();
    }

    @Test
    void is_not_refused_by_the_verifier() {
        assertThat(plan.get("verifier").get("violations")).isEmpty();
        assertThat(plan.get("verifier").get("checks").asInt()).isPositive();
    }

    @Test
    void holds_when_the_written_plan_is_verified_again() {
        Said said = verify(out.resolve("plan.json"));
        assertThat(said.exit()).as(said.out()).isEqualTo(Exit.DONE);
        assertThat(said.out()).contains("The plan holds: ").contains(" 0 violations");
    }

    @Test
    void is_refused_when_one_fuel_maximum_is_raised() throws IOException {
        JsonNode forged = plan.deepCopy();
        ObjectNode rotation = rotation(forged);
        rotation.put("fuelMaxKg", rotation.get("fuelMaxKg").asDouble() + FORGED_KG);
        assertRefused(forged, "fuel.json");
    }

    @Test
    void is_refused_when_one_release_is_moved() throws IOException {
        JsonNode forged = plan.deepCopy();
        ObjectNode drop = (ObjectNode) rotation(forged).get("drops").get(0);
        OffsetDateTime moved = OffsetDateTime.parse(drop.get("releasedAt").asString());
        drop.put("releasedAt", moved.minusMinutes(5).toString());
        assertRefused(forged, "release.json");
    }

    @Test
    void is_refused_when_a_gap_or_a_total_does_not_follow() throws IOException {
        JsonNode forged = plan.deepCopy();
        ObjectNode summary = (ObjectNode) forged.get("summary");
        summary.put("flightGapPercent", 1);
        ((ObjectNode) summary.get("price")).put("totalCents", 100);
        assertThat(assertRefused(forged, "total.json"))
                .contains("SUMMARY_WRONG summary.flightGapPercent")
                .contains("SUMMARY_WRONG summary.price.totalCents");
    }

    /** Expected: the demo's own rates, 2.00 a knot over 3 and 0.20 a minute on foot. */
    @Test
    void prices_what_it_refuses_beside_the_lift_and_in_the_sum() {
        JsonNode price = plan.get("summary").get("price");
        long sum = 0;
        for (JsonNode one : price.get("comforts")) {
            long rate = one.get("comfort").asString().equals("walk") ? 20 : 200;
            assertThat(one.get("comfort").asString()).isIn("walk", "crosswind");
            assertThat(one.get("cents").asLong()).isEqualTo(rate * one.get("count").asLong());
            sum += one.get("cents").asLong();
        }
        assertThat(price.get("comfortsCents").asLong()).isEqualTo(sum).isPositive();
        assertThat(price.get("totalCents").asLong())
                .isEqualTo(
                        sum
                                + price.get("flyingCents").asLong()
                                + price.get("standingCents").asLong()
                                + price.get("peopleCents").asLong());
        assertThat(demo.out())
                .contains(
                        "refused comforts "
                                + sum / 100
                                + String.format(Locale.ROOT, ".%02d", sum % 100)
                                + " (crosswind ");
        assertThat(plan.get("steps").toString()).contains("refused comfort: less crosswind, ");
    }

    @Test
    void is_refused_when_a_refused_comfort_is_kept_quiet() throws IOException {
        JsonNode forged = plan.deepCopy();
        ObjectNode price = (ObjectNode) forged.get("summary").get("price");
        long cents = price.get("comforts").get(0).get("cents").asLong();
        ((ArrayNode) price.get("comforts")).remove(0);
        price.put("comfortsCents", price.get("comfortsCents").asLong() - cents);
        price.put("totalCents", price.get("totalCents").asLong() - cents);
        assertThat(assertRefused(forged, "comfort.json")).contains("SUMMARY_WRONG comforts");
    }

    /** What a pilot flies by; each holds on the demo day, which tells it. */
    @Test
    void is_refused_when_what_lies_round_a_place_is_kept_quiet() throws IOException {
        for (String code :
                List.of(
                        "LEE",
                        "WINDWARD",
                        "GLARE",
                        "RELEASE_UNNAMED",
                        "RELEASE_RUNS",
                        "PLACE_NEAR_TRAIL",
                        "PLACE_UNUSED")) {
            ObjectNode forged = (ObjectNode) plan.deepCopy();
            ArrayNode left = forged.putArray("findings");
            items(plan.get("findings")).stream()
                    .filter(one -> !one.get("code").asString().equals(code))
                    .forEach(left::add);
            assertThat(left.size()).as(code).isLessThan(plan.get("findings").size());
            assertThat(assertRefused(forged, "quiet.json"))
                    .contains("keeps " + code + " to itself");
        }
    }

    @Test
    void is_refused_without_its_chances_or_its_sources() throws IOException {
        ObjectNode unsure = (ObjectNode) plan.deepCopy();
        unsure.putNull("odds");
        assertThat(assertRefused(unsure, "unsure.json")).contains("STATED_WRONG odds");
        ObjectNode nobodys = (ObjectNode) plan.deepCopy();
        nobodys.remove("attribution");
        assertThat(assertRefused(nobodys, "nobodys.json")).contains("STATED_WRONG attribution");
    }

    @Test
    void checks_the_demo_job_without_a_fault() {
        Said said = Said.of(temp.resolve("data"), "check", out.resolve("job").toString());
        assertThat(said.exit()).as(said.out()).isEqualTo(Exit.DONE);
        assertThat(said.out()).contains("no faults; 45 loads");
    }

    @Test
    void gives_the_same_steps_again_for_the_same_seed() throws IOException {
        // Ten minutes, so that the search ends by itself also where other work slows the machine.
        JsonNode first = planAgain("first");
        JsonNode second = planAgain("second");
        assertThat(first.get("summary").get("cutShort").asBoolean()).isFalse();
        assertThat(second.get("steps")).isEqualTo(first.get("steps"));
        assertThat(second.get("crews")).isEqualTo(first.get("crews"));
        assertThat(second.get("leftOut")).isEqualTo(first.get("leftOut"));
    }

    private static JsonNode planAgain(String name) throws IOException {
        Path folder = temp.resolve(name);
        Said said =
                Said.of(
                        temp.resolve("data"),
                        "plan",
                        out.resolve("job").toString(),
                        "--out",
                        folder.toString(),
                        "--seed",
                        "7",
                        "--effort",
                        "5",
                        "--seconds",
                        "600");
        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        return JSON.readTree(Files.readString(folder.resolve("plan.json"), UTF_8));
    }

    /** Of five guarded ways over the road one is not told. */
    @Test
    void refuses_a_plan_that_keeps_one_of_its_guarded_crossings_to_itself() throws IOException {
        ObjectNode forged = (ObjectNode) JSON.readTree(JSON.writeValueAsString(plan));
        ArrayNode all = (ArrayNode) forged.get("findings");
        int before = all.size();
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).get("code").asString().equals("ROAD_CROSSING")
                    && all.get(i).get("subject").asString().equals("A-S03")) {
                all.remove(i);
            }
        }
        assertThat(all.size()).isEqualTo(before - 1);

        assertThat(assertRefused(forged, "crossing.json"))
                .contains("STATED_WRONG")
                .contains("A-S03")
                .contains("ROAD_CROSSING");
    }

    /** What the check says of it. */
    private static String assertRefused(JsonNode forged, String name) throws IOException {
        Path file = temp.resolve(name);
        Files.writeString(file, JSON.writeValueAsString(forged), UTF_8);
        Said said = verify(file);
        assertThat(said.exit()).as(said.out()).isEqualTo(Exit.CHECK_REFUSED);
        assertThat(said.out()).contains("Refused: ");
        return said.out();
    }

    private static Said verify(Path file) {
        return Said.of(
                temp.resolve("data"), "verify", out.resolve("job").toString(), file.toString());
    }

    /** The first trip with a load whose fuel is held below the tank by the lift. */
    private static ObjectNode rotation(JsonNode root) {
        return items(root.get("steps")).stream()
                .filter(step -> step.get("kind").asString().equals("rotation"))
                .filter(step -> step.get("fuelMaxKg").asDouble() < TANK_KG - FORGED_KG)
                .map(ObjectNode.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static List<JsonNode> items(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).toList();
    }

    private static List<String> placed() {
        return items(plan.get("steps")).stream()
                .filter(step -> step.get("kind").asString().equals("rotation"))
                .flatMap(step -> items(step.get("drops")).stream())
                .map(drop -> drop.get("load").asString())
                .toList();
    }

    private static List<String> reasons(String load) {
        return items(plan.get("steps")).stream()
                .filter(step -> step.get("kind").asString().equals("rotation"))
                .flatMap(step -> items(step.get("drops")).stream())
                .filter(drop -> drop.get("load").asString().equals(load))
                .flatMap(drop -> items(drop.get("reasons")).stream())
                .map(JsonNode::asString)
                .toList();
    }

    private static Map<String, String> leftOut() {
        Map<String, String> codes = new HashMap<>();
        plan.get("leftOut")
                .forEach(
                        left ->
                                codes.put(
                                        left.get("load").asString(), left.get("code").asString()));
        return codes;
    }

    private static List<JsonNode> findings(String code) {
        return items(plan.get("findings")).stream()
                .filter(finding -> finding.get("code").asString().equals(code))
                .toList();
    }

    private static List<String> subjects(String code) {
        return findings(code).stream().map(finding -> finding.get("subject").asString()).toList();
    }

    @Test
    void closes_the_day_from_its_taps_to_the_minute() throws IOException {
        Path taps = temp.resolve("taps.csv");
        new FlownByPlan(plan, 240).writeTaps(taps);
        Path books = temp.resolve("books.yaml");
        Files.writeString(
                books,
                """
                version: 1
                trained-to-hook: [loader]
                tariff: by the tenth of an hour
                currency: EUR
                tariff-items:
                  - {name: flying, basis: flying-time, rounding: started-tenth-of-hour,
                     cents-per-unit: 21000}
                  - {name: poles, basis: poles, cents-per-unit: 9000}
                parts:
                  - {part: mast, rule: every lift and landing, per-take-off-and-landing: 1,
                     per-lift: 1, source: MAKER-LETTER, used-cycles: 1000, limit-cycles: 9000}
                """,
                UTF_8);

        Path evening = temp.resolve("evening");
        Said said = close(evening, "--taps", taps.toString(), "--books", books.toString());

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        List<String> lifts = Files.readAllLines(evening.resolve("lifts.csv"), UTF_8);
        assertThat(lifts.stream().filter(row -> row.contains(",tapped,"))).hasSize(40);
        assertThat(lifts.stream().filter(row -> row.contains(",not_flown,"))).hasSize(5);
        // Flown as planned, four minutes late.
        assertThat(lifts.stream().filter(row -> row.contains(",tapped,")))
                .allSatisfy(row -> assertThat(row.split(",")[10]).isEqualTo("4"));
        List<String> invoice = Files.readAllLines(evening.resolve("invoice.csv"), UTF_8);
        long flyingS = engineOnSeconds();
        assertThat(invoice.get(1).split(",")[2]).isEqualTo(Long.toString((flyingS + 359) / 360));
        assertThat(invoice.get(2).split(",")[2]).isEqualTo("13");
        assertThat(Files.readString(evening.resolve("machine.csv"), UTF_8))
                .contains("loads lifted on the hook," + rotations() + ",");
        assertThat(standing(evening.resolve("handover.gpkg"))).isEqualTo(40);
        try (PDDocument papers = Loader.loadPDF(evening.resolve("evening.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(papers))
                    .contains("40 loads stand, 40 were planned, 45 listed.")
                    .contains("L28 S14");
        }
    }

    /** A jerk that nobody gave a load or place for, 20 s after the first hook-up. */
    @Test
    void drafts_a_report_with_what_hung_where_it_was_going_and_the_wind() throws IOException {
        Path taps = temp.resolve("snag.csv");
        new FlownByPlan(plan, 0).writeTaps(taps);
        JsonNode first =
                steps().filter(step -> step.get("kind").asString().equals("rotation"))
                        .findFirst()
                        .orElseThrow();
        Instant at =
                OffsetDateTime.parse(first.get("hookedAt").asString()).toInstant().plusSeconds(20);
        Files.writeString(
                taps,
                "snag1," + at + ",pilot,pilot's tablet,snagged,,,,\n",
                UTF_8,
                StandardOpenOption.APPEND);

        Said said = close(temp.resolve("snag"), "--taps", taps.toString());

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        String draft = Files.readString(temp.resolve("snag/occurrence-drafts.txt"), UTF_8);
        String load = first.get("loads").get(0).asString();
        String to = first.get("drops").get(0).get("place").asString();
        String from = first.get("legs").get(0).get("from").asString();
        assertThat(draft)
                .contains("Not sent")
                .contains("Loads: " + load)
                .contains("from " + from + " to " + to + ", ")
                .contains("it was to go from " + from + " (")
                .contains("snagged  by pilot")
                .contains("forecast for open ground from ")
                .contains("none was told before");
    }

    private static int standing(Path geoPackage) {
        try (Connection file = DriverManager.getConnection("jdbc:sqlite:" + geoPackage);
                Statement asking = file.createStatement();
                ResultSet found =
                        asking.executeQuery("SELECT count(*) FROM loads WHERE standing")) {
            return found.getInt(1);
        } catch (SQLException failed) {
            throw new AssertionError(failed);
        }
    }

    @Test
    void finds_the_lifts_of_the_day_in_a_track_with_noise_and_holes() throws IOException {
        Path track = temp.resolve("track.csv");
        new FlownByPlan(plan, 600).writeTrack(track);

        Path evening = temp.resolve("by-track");
        Said said = close(evening, "--track", track.toString());

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        List<String> lifts = Files.readAllLines(evening.resolve("lifts.csv"), UTF_8);
        List<String> found = lifts.stream().filter(row -> row.contains(",track,")).toList();
        // All 40 loads are found; two that were set down in one stay cannot be told apart.
        assertThat(found).hasSize(40);
        List<Double> offMin =
                found.stream().map(row -> Double.parseDouble(row.split(",")[10]) - 10).toList();
        assertThat(offMin).allSatisfy(off -> assertThat(off).isBetween(-1.0, 1.0));
        assertThat(offMin.stream().filter(off -> Math.abs(off) <= 0.5).count())
                .isGreaterThanOrEqualTo(32);
        // A stay in which something else was hooked up after the set-down teaches nothing of
        // set-downs.
        List<String[]> hovers =
                Files.readAllLines(evening.resolve("samples.csv"), UTF_8).stream()
                        .filter(row -> row.startsWith("hover-time,"))
                        .map(row -> row.split(","))
                        .toList();
        assertThat(hovers).isNotEmpty();
        assertThat(hovers)
                .allSatisfy(
                        row ->
                                assertThat(Double.parseDouble(row[3]) - Double.parseDouble(row[2]))
                                        .as(String.join(",", row))
                                        .isLessThan(60));
    }

    @Test
    void says_when_the_folder_is_not_the_one_that_the_plan_was_made_of() throws IOException {
        Path other = temp.resolve("other-job");
        Files.createDirectories(other);
        try (Stream<Path> files = Files.list(out.resolve("job"))) {
            for (Path file : files.toList()) {
                Files.copy(file, other.resolve(file.getFileName()));
            }
        }
        assertThat(close(other, temp.resolve("same")).out()).doesNotContain("JOB_CHANGED");

        Path loads = other.resolve("loads.csv");
        Files.writeString(loads, Files.readString(loads, UTF_8).replace("262", "263"), UTF_8);
        Path job = other.resolve("job.yaml");
        Files.writeString(
                job, Files.readString(job, UTF_8).replace("hazards: hazards.csv", ""), UTF_8);
        Said said = close(other, temp.resolve("changed"));

        assertThat(said.exit()).as(said.out() + said.err()).isEqualTo(Exit.DONE);
        assertThat(said.out())
                .contains("JOB_CHANGED", "changed job.yaml, loads.csv; gone hazards.csv.");
        try (PDDocument paper =
                Loader.loadPDF(temp.resolve("changed").resolve("evening.pdf").toFile())) {
            assertThat(new PDFTextStripper().getText(paper))
                    .contains("To be said of the day", "changed job.yaml");
        }
    }

    private static Said close(Path evening, String... more) {
        return close(out.resolve("job"), evening, more);
    }

    private static Said close(Path job, Path evening, String... more) {
        List<String> words =
                new ArrayList<>(
                        List.of(
                                "close",
                                job.toString(),
                                out.resolve("plan.json").toString(),
                                "--out",
                                evening.toString()));
        words.addAll(List.of(more));
        return Said.of(temp.resolve("data"), words.toArray(String[]::new));
    }

    private static Stream<JsonNode> steps() {
        return StreamSupport.stream(plan.get("steps").spliterator(), false);
    }

    private static long rotations() {
        return steps().filter(step -> step.get("kind").asString().equals("rotation")).count();
    }

    private static long engineOnSeconds() {
        return steps().filter(step -> step.get("engineRunning").asBoolean())
                .mapToLong(step -> epochSecond(step, "endAt") - epochSecond(step, "startAt"))
                .sum();
    }

    private static long epochSecond(JsonNode step, String name) {
        return OffsetDateTime.parse(step.get(name).asString()).toEpochSecond();
    }
}
