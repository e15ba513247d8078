package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;
import underhook.app.desk.PlanRuns;
import underhook.app.desk.Relief;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.job.Job;
import underhook.core.plan.Plan;
import underhook.web.Browser.Answer;

/** The demo day planned at the desk, with the guys of S08 answered for, and looked at. */
@Tag("slow")
class DeskPlanIT {
    @TempDir static Path data;
    private static Desk desk;
    private static PlanRuns runs;
    private static DeskServer server;
    private static Browser browser;
    private static String at = "";
    private static String told = "";

    @BeforeAll
    static void plan() throws Exception {
        Underhook underhook = new Underhook(new Settings(data.resolve("home"), "underhook test"));
        desk = underhook.desk();
        runs = underhook.planRuns();
        server =
                DeskServer.start(
                        new DeskServer.Desktop(desk, runs, "underhook test"),
                        DeskServer.Where.here(0));
        browser = new Browser(server.address(), server.token());
        Answer made = browser.send("POST", "/api/jobs", "{\"name\":\"Day\",\"from\":\"demo\"}");
        at = "/api/jobs/" + made.text("id");
        gaugeMayBeOff();
        override("GUY_GAP", "L22", 2);
        told = planned();
    }

    /** By 8 kg; the demo day states none. */
    private static void gaugeMayBeOff() throws Exception {
        String machine = browser.get(at + "/text/machine.yaml").text("text");
        String off = machine.replaceFirst("fuel-gauge-spread-kg: 0", "fuel-gauge-spread-kg: 8");
        String change = Json.object().put("revision", 1).put("text", off).toString();
        assertThat(browser.send("PUT", at + "/text/machine.yaml", change).status()).isEqualTo(200);
    }

    /** What the pilot's card tells too: the gauge may read less than may be aboard. A full tank is full. */
    @Test
    void most_fuel_is_what_the_gauge_may_read() throws Exception {
        JsonNode plan = get("/plan");
        double tankKg = plan.path("view").path("tankKg").asDouble(0);
        int held = 0;
        for (JsonNode lift : plan.path("view").path("lifts")) {
            double aboardKg =
                    plan.path("steps")
                            .path(lift.path("step").asInt(-1))
                            .path("fuelMaxKg")
                            .asDouble(0);
            boolean isFull = aboardKg > tankKg - 0.5;
            held += isFull ? 0 : 1;
            assertThat(lift.path("mostReadKg").asDouble(0))
                    .isCloseTo(isFull ? tankKg : aboardKg - 8, within(0.6));
        }
        assertThat(held).isPositive();
    }

    /**
     * By hand: 20 min of reserve at 2.3 kg/min, what the plan burns from the hook-up until it lands at A or B, where
     * fuel is kept, and the 8 kg that the gauge may read too much.
     */
    @Test
    void least_fuel_is_what_the_gauge_must_read() throws Exception {
        JsonNode next = get("/day").path("nextLook");
        JsonNode plan = get("/plan");
        JsonNode lift = plan.path("view").path("lifts").path(next.path("lift").asInt(0) - 1);
        JsonNode step = plan.path("steps").path(lift.path("step").asInt(-1));
        assertThat(step.path("to").asString("")).isIn("A", "B");
        double burnKg = step.path("fuelAtHookKg").asDouble(0) - step.path("fuelEndKg").asDouble(0);

        assertThat(next.path("leastFuelKg").asDouble(0))
                .isCloseTo(Math.ceil(20 * 2.3 + burnKg + 8 - 1e-6), within(1e-9));
    }

    private static Answer override(String code, String subject, long revision) throws Exception {
        return browser.send(
                "POST",
                at + "/overrides",
                "{\"revision\":"
                        + revision
                        + ",\"code\":\""
                        + code
                        + "\",\"subject\":\""
                        + subject
                        + "\",\"reason\":\"a fourth guy will be set: \\\"010\\\"\",\"by\":\"site foreman\"}");
    }

    /** Plans and hears of it; all events up to the last. */
    private static String planned() throws Exception {
        StringBuilder heard = new StringBuilder();
        URI events = server.address().resolve(at + "/events");
        try (BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(
                                events.toURL().openStream(), StandardCharsets.UTF_8))) {
            String line = lines.readLine();
            assertThat(browser.send("POST", at + "/plan", "{\"seconds\":120}").status())
                    .isEqualTo(202);
            while (line != null && !line.matches("event: (planned|failed)")) {
                heard.append(line).append('\n');
                line = lines.readLine();
            }
            return heard.append(line).append('\n').append(lines.readLine()).toString();
        }
    }

    @AfterAll
    static void close() throws Exception {
        server.close();
        runs.close();
        desk.close();
    }

    private static JsonNode get(String path) throws Exception {
        Answer answer = browser.get(at + path);
        assertThat(answer.status()).isEqualTo(200);
        return answer.json();
    }

    @Test
    void tells_what_it_does_and_when_it_is_done() {
        assertThat(told)
                .startsWith("event: hello")
                .contains("event: progress", "finding the ways", "re-checking the plan")
                .contains("event: planned");
    }

    @Test
    void shows_each_lift_with_its_place_in_the_plan() throws Exception {
        JsonNode plan = get("/plan");
        JsonNode lifts = plan.path("view").path("lifts");

        assertThat(lifts).hasSizeGreaterThan(20);
        for (JsonNode lift : lifts) {
            JsonNode step = plan.path("steps").path(lift.path("step").asInt(-1));
            assertThat(step.path("kind").asString("")).isEqualTo("rotation");
            assertThat(step.path("loads")).isEqualTo(lift.path("loads"));
            assertThat(lift.path("status").asString("")).isIn("inside", "near", "outside");
        }
        assertThat(plan.path("view").path("stale").asBoolean(true)).isFalse();
    }

    @Test
    void flies_what_somebody_answers_for_and_prints_why() throws Exception {
        JsonNode plan = get("/plan");

        assertThat(plan.path("leftOut").toString()).doesNotContain("L22");
        assertThat(plan.path("findings").toString())
                .contains("OVERRIDDEN by site foreman")
                .contains("a fourth guy will be set: \\\"010\\\"");
        for (JsonNode finding : plan.path("findings")) {
            if (finding.path("message").asString("").contains("OVERRIDDEN")) {
                assertThat(finding.path("severity").asString("")).isEqualTo("CAUTION");
            }
        }
    }

    @Test
    void lets_nobody_answer_for_a_limit_of_the_machine() throws Exception {
        long head = browser.get(at).json().path("head").asLong(0);

        assertThat(override("HOOK_LIMIT", "L45", head).status()).isEqualTo(400);
        assertThat(override("HOVER_MASS", "L01", head).status()).isEqualTo(400);
        assertThat(override("NO_SUCH_WORD", "L01", head).status()).isEqualTo(400);
    }

    @Test
    void draws_the_section_of_every_leg_with_the_load_above_the_ground() throws Exception {
        JsonNode lift =
                get("/plan")
                        .path("steps")
                        .path(
                                get("/plan")
                                        .path("view")
                                        .path("lifts")
                                        .path(0)
                                        .path("step")
                                        .asInt(0));
        for (int leg = 0; leg < lift.path("legs").size(); leg++) {
            JsonNode section = get("/plan/lifts/1/section/" + leg);
            JsonNode points = section.path("points");
            JsonNode stated = lift.path("legs").path(leg);

            assertThat(points.path(points.size() - 1).path("s").asDouble(0))
                    .isCloseTo(
                            stated.path("distanceM").asDouble(-1),
                            org.assertj.core.data.Offset.offset(
                                    1.0)); // both rounded to decimetres, path to 7 digits
            for (JsonNode point : points) {
                assertThat(point.path("load").asDouble(0))
                        .isGreaterThan(point.path("ground").asDouble(1e9) - 1);
            }
            JsonNode least = section.path("least");
            assertThat(least.path("gapM").asDouble(-1))
                    .isEqualTo(stated.path("leastClearanceM").asDouble(-2));
        }
        assertThat(browser.get(at + "/plan/lifts/1/section/99").status()).isEqualTo(404);
        assertThat(browser.get(at + "/plan/lifts/0/rose").status()).isEqualTo(404);
    }

    @Test
    void draws_a_rose_that_agrees_with_the_plans_sectors() throws Exception {
        JsonNode rose = get("/plan/lifts/1/rose");
        int lines = rose.path("lines").size();

        assertThat(lines).isEqualTo(3);
        int chosen = 0;
        for (JsonNode line : rose.path("lines")) {
            assertThat(line.path("headings")).hasSize(72);
            chosen += line.path("chosen").asBoolean(false) ? 1 : 0;
            for (JsonNode heading : line.path("headings")) {
                double spareM = heading.path("marginM").asDouble(-1e9);
                String state = heading.path("state").asString("");
                assertThat(state.equals("refused")).isEqualTo(spareM < 0);
            }
        }
        assertThat(chosen).isEqualTo(1);
        assertThat(rose.path("windKt").asInt(0)).isPositive();
    }

    @Test
    void says_how_every_limit_came_about() throws Exception {
        int lifts = get("/plan").path("view").path("lifts").size();
        for (int lift = 1; lift <= lifts; lift++) {
            JsonNode limits = get("/plan/lifts/" + lift + "/limits");
            assertThat(limits).isNotEmpty();
            for (JsonNode limit : limits) {
                assertThat(limit.path("how").path("formula").asString("")).isNotEmpty();
            }
            JsonNode hover = limits.path(0);
            assertThat(hover.path("code").asString("")).isEqualTo("HOVER_MASS");
            assertThat(hover.path("how").path("tablePoint").asString("")).contains("°C");
            double sum = 0;
            for (JsonNode part : hover.path("how").path("eats")) {
                sum += part.path("value").asDouble(0);
            }
            // What eats the margin adds up to the value, within the rounding of its parts.
            assertThat(sum)
                    .isCloseTo(
                            hover.path("value").asDouble(0),
                            org.assertj.core.data.Offset.offset(0.2));
        }
    }

    @Test
    void hands_out_every_file_of_the_plan() throws Exception {
        for (String name :
                new String[] {
                    "plan.json",
                    "plan.geojson",
                    "plan.gpx",
                    "plan.kml",
                    "plan.gpkg",
                    "cards.pdf",
                    "loads.csv",
                    "findings.csv"
                }) {
            var answer = browser.bytes(at + "/plan/files/" + name);
            assertThat(answer.statusCode()).as(name).isEqualTo(200);
            assertThat(answer.body()).isNotEmpty();
        }
        assertThat(browser.bytes(at + "/plan/files/..%2Fjob").statusCode()).isEqualTo(404);
    }

    /** The ways lead round wires and houses, beyond the places: what is shown under them must reach as far. */
    @Test
    void relief_reaches_as_far_as_the_ways() throws Exception {
        DeskJob planned = desk.find(at.substring("/api/jobs/".length())).orElseThrow();
        Job job = planned.read().job().orElseThrow().job();
        Plan plan = planned.findPlan().orElseThrow().plan();
        Job fewPlaces = job.withPlaces(job.places().subList(0, 1));
        Relief.Box box = MapJson.box(fewPlaces, Optional.of(plan));
        // A lift has its ways in its rotation.
        assertThat(plan.steps()).anyMatch(step -> step.rotation().isPresent());
        plan.steps().stream()
                .flatMap(
                        step ->
                                Stream.concat(
                                        step.legs().stream(),
                                        step.rotation().stream()
                                                .flatMap(turn -> turn.legs().stream())))
                .flatMap(leg -> leg.path().stream())
                .forEach(
                        at -> {
                            assertThat(at.position().lonDeg())
                                    .isBetween(box.westDeg(), box.eastDeg());
                            assertThat(at.position().latDeg())
                                    .isBetween(box.southDeg(), box.northDeg());
                        });

        JsonNode bounds = get("/map").path("bounds");
        assertThat(bounds.path(0).asDouble(0))
                .isLessThanOrEqualTo(MapJson.box(job, Optional.of(plan)).westDeg());
    }

    @Test
    void puts_what_was_tapped_beside_the_plan() throws Exception {
        JsonNode plan = get("/plan");
        JsonNode step =
                plan.path("steps")
                        .path(plan.path("view").path("lifts").path(0).path("step").asInt(0));
        String load = step.path("loads").path(0).asString("");
        Instant hooked = OffsetDateTime.parse(step.path("hookedAt").asString("")).toInstant();
        StringBuilder taps = new StringBuilder();
        tap(taps, hooked.minusSeconds(600), "loader1", "\"engine-on\"");
        tap(taps, hooked.minusSeconds(540), "loader1", "\"take-off\"");
        String weighed = "\"hooked\",\"loads\":[\"" + load + "\"],\"massKg\":222.5";
        tap(taps, hooked.plusSeconds(60), "loader1", weighed);
        tap(taps, hooked.plusSeconds(90), "loader1", "\"aborted\"");
        tap(taps, hooked.plusSeconds(180), "loader1", "\"hooked\",\"loads\":[\"" + load + "\"]");
        tap(taps, hooked.plusSeconds(300), "P 1", "\"off\",\"loads\":[\"" + load + "\"]");
        tap(taps, hooked.plusSeconds(310), "P 1", "\"free-seen\"");
        tap(taps, hooked.plusSeconds(320), "P 2", "\"free-confirmed\"");

        assertThat(browser.send("POST", at + "/day/taps", "{\"taps\":[" + taps + "]}").status())
                .isEqualTo(200);
        JsonNode flown = get("/day/flown");

        assertThat(flown.path("taps").asInt(0)).isEqualTo(8);
        // ISO 32000-1, 7.5.2: a file begins with %PDF. What stands in it is EveningBooksTest's.
        var paper = browser.bytes(at + "/day/evening.pdf");
        assertThat(paper.statusCode()).isEqualTo(200);
        assertThat(new String(paper.body(), StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
        assertThat(flown.path("planned").path("lifts"))
                .isEqualTo(plan.path("summary").path("rotations"));
        assertThat(flown.path("flown").path("lifts").asInt(0)).isEqualTo(2);
        // Take-off 9 min before the planned hook-up, last tap 5 min 20 s after it: 14.33 min, by
        // hand.
        assertThat(flown.path("flown").path("flightMinutes").asDouble(0))
                .isCloseTo(14.333, org.assertj.core.data.Offset.offset(0.001));
        for (JsonNode line : flown.path("loads")) {
            boolean isThis = line.path("load").asString("").equals(load);
            assertThat(line.path("isDone").asBoolean(false)).isEqualTo(isThis);
            if (isThis) {
                assertThat(line.path("plannedHookedAt")).isEqualTo(step.path("hookedAt"));
                // What the try that was given up told of its mass is not lost, and is not the
                // other's.
                assertThat(line.path("givenUp")).hasSize(1);
                assertThat(line.path("givenUp").path(0).path("readKg").asDouble(0))
                        .isEqualTo(222.5);
                assertThat(line.path("readKg").isNumber()).isFalse();
                assertThat(OffsetDateTime.parse(line.path("doneAt").asString("")).toInstant())
                        .isEqualTo(hooked.plusSeconds(320).truncatedTo(ChronoUnit.SECONDS));
            }
        }
    }

    private static void tap(StringBuilder taps, Instant when, String by, String kindAndMore) {
        taps.append(taps.isEmpty() ? "" : ",")
                .append("{\"id\":\"beside-")
                .append(taps.length())
                .append("\",\"at\":\"")
                .append(when)
                .append("\",\"sentAt\":\"")
                // A clock that is right: one that sent on another day would be put right.
                .append(Instant.now())
                .append("\",\"by\":\"")
                .append(by)
                .append("\",\"role\":\"loader\",\"device\":\"one\",\"anyway\":true,\"kind\":")
                .append(kindAndMore)
                .append('}');
    }

    /** What a sentence of the server is said as is looked up in the page itself. */
    @Test
    void says_every_sentence_of_the_demo_day_in_german() {
        String english =
                """
                return (async (at) => {
                  const read = async (path) => (await fetch(at + path)).json(), words = await import('/assets/words.js');
                  await words.speak('de');
                  const plan = await read('/plan'), of = (what) => Promise.all(plan.view.lifts.map((lift) => read(`/plan/lifts/${lift.number}/${what}`)));
                  const roses = await of('rose'), hows = (await of('limits')).flat().map((limit) => limit.how);
                  const said = [...plan.findings, ...plan.leftOut].map((one) => one.message)
                    .concat(plan.steps.flatMap((step) => [step.because, ...(step.drops ?? []).flatMap((drop) => drop.reasons ?? [])]))
                    .concat((plan.odds?.gains ?? []).map((gain) => gain.what), plan.caution)
                    .concat(roses.flatMap((rose) => rose.lines.flatMap((line) => line.headings.map((heading) => heading.reason))))
                    .concat(hows.flatMap((how) => [how.formula, how.tablePoint, ...[...how.inputs, ...how.eats].map((part) => part.name)]));
                  const codes = [...plan.findings, ...(await of('limits')).flat()].map((one) => one.code.split(' ')[0]);
                  return [...new Set(said)].filter((text) => text && typeof words.said(text) !== 'string')
                    .concat([...new Set(codes)].filter((code) => words.codeWords(code) === code));
                })(arguments[0]);
                """;

        try (Chromium page = new Chromium(data.resolve("profile"))) {
            page.open(server.address());

            assertThat((List<?>) Objects.requireNonNull(page.run(english, at))).isEmpty();
        }
    }

    /** "Everything" is the ways too: one that leads far round a wire is what somebody must see first. */
    @Test
    void showing_everything_shows_every_way() {
        String outside =
                """
                return (async (at) => {
                  const element = document.getElementById('map'), { View, extent, proj } = window.ol, shown = [], fit = View.prototype.fit;
                  View.prototype.fit = function (all, ...more) { shown.push(all); return fit.call(this, all, ...more); };
                  element.dispatchEvent(new KeyboardEvent('keydown', { key: '0', bubbles: true }));
                  View.prototype.fit = fit;
                  const plan = await (await fetch(`${at}/plan`)).json();
                  const points = plan.steps.filter((step) => step.kind === 'rotation').flatMap((step) => step.legs.flatMap((leg) => leg.path)).map(([lon, lat]) => proj.fromLonLat([lon, lat]));
                  return `${points.length > 100} ${points.filter((point) => !extent.containsCoordinate(extent.buffer(shown[0], 0.01), point)).length}`;
                })(arguments[0]);
                """;

        try (Chromium page = new Chromium(data.resolve("everything"))) {
            page.open(
                    server.address()
                            .resolve(
                                    "/#job=" + at.substring("/api/jobs/".length()) + "&panel=day"));
            page.waitUntil(
                    "the map is drawn",
                    it ->
                            Boolean.TRUE.equals(
                                    it.run(
                                            "return document.getElementById('map')?.dataset.marks > 0 && document.querySelectorAll('.spine li, .lift, [data-lift]').length > 0")));

            assertThat(page.run(outside, at)).isEqualTo("true 0");
            // On a large screen the map under the lanes has what they leave.
            page.look(1920, 1080, false);
            page.run("location.hash = location.hash.replace('panel=day', 'panel=lanes')");
            page.waitUntil("the lanes", it -> !it.find(".panel-lanes .lanes").isEmpty());
            assertThat(
                            page.run(
                                    "return Math.round(document.querySelector('main').getBoundingClientRect().bottom - document.querySelector('.attribution').getBoundingClientRect().bottom)"))
                    .isEqualTo(0L);
        }
    }

    /** A degree of a web map is 111319.49 m, 6378137 pi / 180, and a day is shown in one piece wherever it lies. */
    @Test
    void a_day_across_the_180th_meridian_is_drawn_in_one_piece() throws Exception {
        String drawn =
                """
                return (async () => {
                  while (!window.ol) await new Promise((then) => setTimeout(then, 50));
                  const { along, extentOf, read, rounded, toView } = await import('/assets/mapthings.js?across');
                  const feature = (type, coordinates, properties = {}) => ({ type: 'Feature', properties, geometry: { type, coordinates } });
                  const [line, round] = read({ type: 'FeatureCollection', features: [
                    feature('LineString', [[179.99, 0], [-179.99, 0]]), feature('Point', [-179.999, 0], { radiusM: 500 })] }).map(rounded);
                  const wide = ([west, , east]) => Math.round(east - west);
                  return [wide(line.getGeometry().getExtent()), wide([0, 0, toView([-179.98, 0])[0] - toView([179.99, 0])[0]]),
                    Math.round(round.getGeometry().getExtent()[0] - toView([180, 0])[0]) < 0, wide(round.getGeometry().getExtent()) < 1010,
                    wide(extentOf([179.99, -0.1, 180.01, 0.1])), Math.round(extentOf([-180.01, -0.1, -179.99, 0.1])[0] - toView([179.99, 0])[0]),
                    along([[179.99, 0], [-179.97, 0]], 0.75).map((deg) => deg.toFixed(6))];
                })();
                """;

        try (Chromium page = new Chromium(data.resolve("across"))) {
            page.open(server.address());

            assertThat((List<?>) Objects.requireNonNull(page.run(drawn)))
                    .hasToString("[2226, 3340, true, true, 2226, 0, [-179.980000, 0.000000]]");
        }
    }

    /** In a view of 1 m to the pixel no name lies over the mark of another, nor over the edge while a side is free. */
    @Test
    void no_name_on_the_map_lies_over_the_mark_of_another_place_or_over_the_edge() {
        String sides =
                """
                return (async () => {
                  while (!window.ol) await new Promise((then) => setTimeout(then, 50));
                  const { nameOf } = await import('/assets/mapstyle.js'), { Feature, geom, source } = window.ol;
                  const place = (id, x, y) => { const one = new Feature({ id, geometry: new geom.Point([x, y]) }); one.setId(id); return one; };
                  const within = (seen, ...others) => {
                    const own = place('S01', 0, 0), marks = new source.Vector({ features: [own.clone(), ...others] });
                    marks.getFeatures()[0].setId('S01');
                    const text = nameOf(own, { chosen: false, resolution: 1, marks, seen }).getText();
                    return `${text.getTextAlign()} ${Math.sign(text.getOffsetY())}`;
                  };
                  const side = (...others) => within([-500, -500, 500, 500], ...others);
                  const east = place('E', 25, 5), west = place('W', -25, 5), north = place('N', 0, 22), south = place('S', 0, -22), far = place('F', 90, 0);
                  return [side(far), side(east), side(east, west), side(east, west, north), side(east, west, north, south),
                    within([-500, -500, 20, 500], far), within([-20, -500, 20, 500], far), within([-500, -500, 30, 500], west)].map((one) => one.replace('-0', '0'));
                })();
                """;

        try (Chromium page = new Chromium(data.resolve("sides"))) {
            page.open(server.address());

            // Down is more of y; where nothing is clear the name stays to the right.
            assertThat((List<?>) Objects.requireNonNull(page.run(sides)))
                    .hasToString(
                            "[left 0, right 0, center -1, center 1, left 0, right 0, left 0, center -1]");
        }
    }

    @Test
    void tells_versions_apart_in_words() throws Exception {
        JsonNode versions = get("/versions");

        assertThat(versions.path(0).path("what").asString("")).contains("GUY_GAP of L22");
        assertThat(get("/versions/2..3").toString()).contains("overrides.yaml is new.");
    }
}
