package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.Browser.Answer;

/** Taps over HTTP, on a real server with real files. What the day allows: common practice, no source. */
class DayServerTest {
    private static final Instant SEVEN = Instant.parse("2026-09-08T08:00:00Z");

    @TempDir static Path data;
    private static Underhook underhook;
    private static Desk desk;
    private static PlanRuns runs;
    private static DeskServer server;
    private static Browser browser;

    private String id = "";
    private int minute;

    @BeforeAll
    static void open() throws Exception {
        underhook = new Underhook(new Settings(data.resolve("home"), "underhook test"));
        underhook.rehearse(SEVEN);
        desk = underhook.desk();
        runs = underhook.planRuns();
        server =
                DeskServer.start(
                        new DeskServer.Desktop(desk, runs, "underhook test"),
                        DeskServer.Where.here(0));
        browser = new Browser(server.address(), server.token());
    }

    @AfterAll
    static void close() throws Exception {
        server.close();
        runs.close();
        desk.close();
    }

    @BeforeEach
    void makeJob() throws Exception {
        id = browser.send("POST", "/api/jobs", "{\"name\":\"Flown\",\"from\":\"demo\"}").text("id");
    }

    private ObjectNode tap(String by, String kind, String... loads) {
        ObjectNode tap = Json.object();
        tap.put("id", UUID.randomUUID().toString());
        tap.put("at", SEVEN.plus(Duration.ofMinutes(minute++)).toString());
        tap.put("sentAt", SEVEN.plus(Duration.ofMinutes(minute)).toString());
        tap.put("by", by);
        tap.put("role", "loader");
        tap.put("device", by + " phone");
        tap.put("kind", kind);
        for (String load : loads) {
            tap.withArray("loads").add(load);
        }
        return tap;
    }

    private JsonNode send(ObjectNode... taps) throws Exception {
        // The server has them when they are sent, however many minutes that makes of a test's
        // moment.
        underhook.rehearse(SEVEN.plus(Duration.ofMinutes(minute)));
        ObjectNode body = Json.object();
        for (ObjectNode tap : taps) {
            body.withArray("taps").add(tap);
        }
        Answer answer = browser.send("POST", "/api/jobs/" + id + "/day/taps", body.toString());
        assertThat(answer.status()).as(answer.json().toString()).isEqualTo(200);
        return answer.json().path("answers");
    }

    private JsonNode day() throws Exception {
        return browser.get("/api/jobs/" + id + "/day").json();
    }

    private JsonNode log() throws Exception {
        return browser.get("/api/jobs/" + id + "/day/log").json();
    }

    private void lineOn() throws Exception {
        send(tap("loader2", "line-on").put("lineM", 25), tap("loader2", "line-checked"));
    }

    @Test
    void a_new_order_says_that_the_files_were_changed_since_its_plan() throws Exception {
        String job = "/api/jobs/" + id;
        String[] rows =
                browser.get(job + "/text/loads.csv").text("text").lines().toArray(String[]::new);
        put(job, "loads.csv", rows[0] + "\n" + rows[1] + "\n");
        try (BufferedReader events =
                new BufferedReader(
                        new InputStreamReader(
                                server.address().resolve(job + "/events").toURL().openStream(),
                                StandardCharsets.UTF_8))) {
            String line = events.readLine();
            browser.send("POST", job + "/plan", "{\"seconds\":120}");
            while (!line.matches("event: (planned|failed)")) {
                line = events.readLine();
            }
        }
        assertThat(because(job)).isEmpty();

        String rules = browser.get(job + "/text/rules.yaml").text("text");
        String stricter = rules.replace("crosswind-limit-kt: 20", "crosswind-limit-kt: 1");
        assertThat(stricter).isNotEqualTo(rules);
        put(job, "rules.yaml", stricter);
        assertThat(because(job)).contains("keeps to them as they were");

        put(job, "rules.yaml", rules);
        assertThat(because(job)).isEmpty();

        // A new order counts with the wind that somebody sees, and says what the forecast says of
        // it.
        ObjectNode seen = tap("pilot", "reported").put("note", "wind 220 30 40");
        send(seen.put("place", "A"));
        assertThat(because(job))
                .startsWith("wind at A from 220° true, 30 kt gusting 40 kt, seen at ");
        send(tap("pilot", "undone").put("undoes", seen.path("id").asString("")));
        assertThat(because(job)).isEmpty();
    }

    private static void put(String job, String file, String text) throws Exception {
        ObjectNode body = Json.object();
        body.put("revision", browser.get(job).json().path("head").asLong(0)).put("text", text);
        assertThat(browser.send("PUT", job + "/text/" + file, body.toString()).status())
                .isEqualTo(200);
    }

    private static String because(String job) throws Exception {
        Answer answer = browser.send("POST", job + "/day/order", "{\"first\":true}");
        assertThat(answer.status()).as(answer.json().toString()).isEqualTo(200);
        return answer.json().path("because").path(0).asString("");
    }

    @Test
    void the_desk_is_told_the_time_of_the_day_that_is_rehearsed() throws Exception {
        Instant told = Instant.parse(browser.get("/api/session").json().path("now").asString(""));

        assertThat(told).isBetween(SEVEN, SEVEN.plus(Duration.ofHours(1)));
    }

    @Test
    void keeps_a_tap_once_however_often_it_comes() throws Exception {
        ObjectNode tap = tap("loader2", "engine-on").put("massKg", 180);

        JsonNode first = send(tap);
        JsonNode again = send(tap, tap);

        assertThat(first.path(0).path("state").asString("")).isEqualTo("kept");
        assertThat(again.path(0).path("number").asInt(0)).isEqualTo(1);
        assertThat(again.path(1).path("number").asInt(0)).isEqualTo(1);
        assertThat(log().path("rows").asInt(0)).isEqualTo(1);
        try (Desk other = new Underhook(new Settings(data.resolve("home"), "other")).desk()) {
            assertThat(other.find(id).orElseThrow().kept().listTaps()).hasSize(1);
        }
    }

    @Test
    void says_so_when_another_tap_comes_under_the_same_id() throws Exception {
        ObjectNode tap = tap("loader2", "engine-on");
        send(tap);

        JsonNode answer = send(tap.deepCopy().put("kind", "engine-off"));

        assertThat(answer.path(0).path("differs").asBoolean(false)).isTrue();
        assertThat(day().path("standing").path("engineOn").asBoolean(false)).isTrue();
    }

    @Test
    void follows_a_lift_from_line_to_two_words() throws Exception {
        lineOn();
        send(tap("loader2", "hooked", "L01").put("massKg", 197.4));
        assertThat(day().path("standing").path("onHook").path(0).asString("")).isEqualTo("L01");
        send(tap("Q 1", "off", "L01"), tap("Q 1", "free-seen"));
        assertThat(day().path("standing").path("notYetFree")).hasSize(1);
        send(tap("Q 2", "free-confirmed"));

        JsonNode day = day();

        assertThat(day.path("standing").path("notYetFree")).isEmpty();
        assertThat(day.path("conflicts")).isEmpty();
        // 197.4 kg weighed over 188 kg listed, by hand.
        assertThat(day.path("bias").path("meanRatio").asDouble(0)).isEqualTo(1.05);
        assertThat(day.path("bias").path("count").asInt(0)).isEqualTo(1);
        // Weighed loads are planned with what the list says and their ballast; the line is not in
        // it.
        for (JsonNode lift : day.path("lifts")) {
            double listedKg = lift.path("ballastKg").asDouble(0);
            boolean weighed = true;
            for (JsonNode load : lift.path("loads")) {
                listedKg += load.path("listedKg").asDouble(0);
                weighed &= !load.path("estimated").asBoolean(true);
            }
            assertThat(lift.path("plannedKg").asDouble(0)).isGreaterThanOrEqualTo(listedKg - 0.1);
            if (weighed) {
                assertThat(lift.path("plannedKg").asDouble(0)).isCloseTo(listedKg, within(0.1));
            }
        }
    }

    @Test
    void lets_nobody_in_with_the_line_on_but_loses_no_fact() throws Exception {
        lineOn();
        ObjectNode aboard = tap("P 1", "people-aboard").put("people", 4);

        JsonNode refused = send(aboard).path(0);

        assertThat(refused.path("state").asString("")).isEqualTo("refused");
        assertThat(refused.path("why").path("code").asString("")).isEqualTo("LINE_ON_WITH_PEOPLE");
        assertThat(log().path("rows").asInt(0)).isEqualTo(2);

        assertThat(send(aboard.put("anyway", true)).path(0).path("state").asString(""))
                .isEqualTo("kept");
        JsonNode day = day();
        assertThat(day.path("standing").path("peopleAboard").asInt(0)).isEqualTo(4);
        assertThat(day.path("conflicts").path(0).path("why").path("code").asString(""))
                .isEqualTo("LINE_ON_WITH_PEOPLE");
    }

    @Test
    void takes_one_persons_word_for_one_word() throws Exception {
        lineOn();
        send(tap("loader2", "hooked", "L01"), tap("Q 1", "off", "L01"), tap("Q 1", "free-seen"));

        JsonNode refused = send(tap("Q 1", "free-confirmed")).path(0);

        assertThat(refused.path("why").path("code").asString(""))
                .isEqualTo("RELEASE_NOT_CONFIRMED");
    }

    @Test
    void lets_only_trained_hands_at_the_place_hook() throws Exception {
        lineOn();

        JsonNode helper = send(tap("helper", "hooked", "L01")).path(0);
        JsonNode elsewhere = send(tap("loader1", "hooked", "L01").put("place", "B")).path(0);
        JsonNode there = send(tap("loader2", "hooked", "L01").put("place", "A")).path(0);

        assertThat(helper.path("why").path("code").asString("")).isEqualTo("HANDLER_ABSENT");
        assertThat(elsewhere.path("why").path("code").asString("")).isEqualTo("HANDLER_ABSENT");
        assertThat(elsewhere.path("why").path("message").asString("")).contains("waits at A");
        assertThat(there.path("state").asString("")).isEqualTo("kept");
    }

    @Test
    void shows_when_two_devices_say_different_things_of_one_lift() throws Exception {
        lineOn();
        send(tap("loader2", "hooked", "L01"), tap("Q 1", "off", "L01"));
        send(tap("loader1", "aborted", "L01").put("anyway", true));

        JsonNode conflict = day().path("conflicts").path(0);

        assertThat(conflict.path("tap").path("device").asString("")).isEqualTo("loader1 phone");
        assertThat(conflict.path("other").path("device").asString("")).isEqualTo("Q 1 phone");
        assertThat(conflict.path("other").path("kind").asString("")).isEqualTo("off");
    }

    @Test
    void takes_back_and_keeps_both_rows() throws Exception {
        lineOn();
        ObjectNode hooked = tap("loader2", "hooked", "L01");
        send(hooked);

        send(tap("loader2", "undone").put("undoes", hooked.path("id").asString("")));

        assertThat(day().path("standing").path("onHook")).isEmpty();
        assertThat(log().path("rows").asInt(0)).isEqualTo(4);
    }

    @Test
    void finds_a_row_that_was_changed_after_it_was_written() throws Exception {
        lineOn();
        send(tap("loader2", "hooked", "L01"));
        assertThat(log().path("whole").asBoolean(false)).isTrue();

        try (Connection file =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + data.resolve("home/jobs/" + id + ".underhook"));
                Statement change = file.createStatement()) {
            change.executeUpdate("UPDATE tap SET at = '2026-09-08T08:00:59Z' WHERE number = 2");
        }

        JsonNode log = log();
        assertThat(log.path("whole").asBoolean(true)).isFalse();
        assertThat(log.path("brokenAt").asInt(0)).isEqualTo(2);
    }

    @Test
    void answers_for_each_tap_and_keeps_those_it_can_read() throws Exception {
        ObjectNode good = tap("loader2", "engine-on");
        ObjectNode bad = tap("loader2", "engine-started");

        JsonNode answers = send(bad, good);

        assertThat(answers).hasSize(2);
        assertThat(answers.toString())
                .contains("\"state\":\"kept\"", "unreadable", "engine-started");
        assertThat(log().path("rows").asInt(0)).isEqualTo(1);
    }

    @Test
    void takes_no_tap_without_the_token() throws Exception {
        Answer refused =
                browser.ask("POST", "/api/jobs/" + id + "/day/taps", "{\"taps\":[]}", "wrong");

        assertThat(refused.status()).isEqualTo(403);
    }

    @Test
    void tells_every_listener_at_once() throws Exception {
        HttpRequest request =
                HttpRequest.newBuilder(server.address().resolve("/api/jobs/" + id + "/day/events"))
                        .build();
        try (BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(
                                HttpClient.newHttpClient()
                                        .send(request, BodyHandlers.ofInputStream())
                                        .body(),
                                StandardCharsets.UTF_8))) {
            assertThat(lines.readLine()).isEqualTo("event: hello");

            send(tap("loader2", "engine-on"));

            String line = lines.readLine();
            while (!line.startsWith("event: tapped")) {
                line = lines.readLine();
            }
            assertThat(lines.readLine()).contains("\"revision\":1");
        }
    }

    @Test
    void writes_the_emergency_sheet_in_three_notations_and_says_what_is_missing() throws Exception {
        write("job.yaml", file("job.yaml").replace("emergency: emergency.yaml\n", ""));

        JsonNode sheet = sheet("A");

        // Row A of the demo's places: x 260, y -130 in the job's own system.
        assertThat(sheet.path("positions").path("grid").asString("")).isEqualTo("260 E  -130 N");
        String minutes = sheet.path("positions").path("minutes").asString("");
        String[] parts = minutes.split("[°' ]+");
        double lat = Double.parseDouble(parts[0]) + Double.parseDouble(parts[1]) / 60;
        String degrees = sheet.path("positions").path("degrees").asString("");
        // A thousandth of a minute is 0.000017°.
        assertThat(Double.parseDouble(degrees.split("°", 2)[0]))
                .isCloseTo(lat, org.assertj.core.data.Offset.offset(1e-5));
        assertThat(sheet.path("calls")).isEmpty();
        assertThat(sheet.path("overdueS").isNull()).isTrue();
        assertThat(sheet.path("landing").path("stated").asBoolean(true)).isFalse();
    }

    @Test
    void reads_whom_to_call_from_the_jobs_own_file() throws Exception {
        String text =
                """
                version: 1
                call:
                  - {who: rescue, number: "000 11", say: helicopter on a hill}
                isolation:
                  - {line: LL1, who: control room, number: "000 22"}
                rescue-landings:
                  - {place: H, serves: [S14]}
                overdue-min: 30
                curfew: "19:00"
                """;
        write("emergency.yaml", text);

        JsonNode sheet = sheet("S14");

        assertThat(sheet.path("calls").path(0).path("number").asString("")).isEqualTo("000 11");
        assertThat(sheet.path("isolations").path(0).path("line").asString("")).isEqualTo("LL1");
        assertThat(sheet.path("landing").path("place").asString("")).isEqualTo("H");
        assertThat(sheet.path("landing").path("stated").asBoolean(false)).isTrue();
        assertThat(sheet.path("overdueS").asInt(0)).isEqualTo(1800);
    }

    @Test
    void names_a_line_that_the_job_does_not_have() throws Exception {
        write(
                "emergency.yaml",
                "version: 1\nisolation:\n  - {line: LL9, who: nobody, number: \"000\"}\n");

        assertThat(browser.get("/api/jobs/" + id).json().path("faults").toString())
                .contains("emergency.yaml", "LL9");
    }

    @Test
    void a_crew_is_where_it_was_said_to_be() throws Exception {
        assertThat(sheet("S09").path("people").toString()).doesNotContain("\"Q\"");

        send(tap("Q 1", "reported").put("note", "here Q S09"));

        assertThat(sheet("S09").path("people").toString()).contains("\"Q\"");
        assertThat(log().path("rows").asInt(0)).isEqualTo(1);
    }

    @Test
    void a_stop_of_the_engine_that_is_not_over_is_refused_and_one_that_is_counts()
            throws Exception {
        JsonNode answers =
                send(
                        tap("pilot", "reported")
                                .put("note", "stood 2026-09-08T23:00-01:00 2026-09-08T22:50-01:00"),
                        tap("pilot", "reported")
                                .put(
                                        "note",
                                        "stood 2026-09-08T05:00-01:00 2026-09-08T05:10-01:00"));

        assertThat(answers.path(0).path("state").asString("")).isEqualTo("refused");
        assertThat(answers.path(0).path("why").path("message").asString(""))
                .contains("ends before it begins", "not over yet", "from 23:00 to 22:50");
        assertThat(answers.path(1).path("state").asString("")).isEqualTo("kept");
    }

    private JsonNode sheet(String place) throws Exception {
        JsonNode sheets = browser.get("/api/jobs/" + id + "/day/emergency").json().path("sheets");
        for (JsonNode sheet : sheets) {
            if (sheet.path("place").asString("").equals(place)) {
                return sheet;
            }
        }
        throw new AssertionError("no sheet for " + place);
    }

    private String file(String path) throws IOException {
        return desk.find(id).orElseThrow().findFile(path).orElseThrow().toText();
    }

    private void write(String path, String text) throws Exception {
        long head = browser.get("/api/jobs/" + id).json().path("head").asLong(0);
        ObjectNode body = Json.object().put("revision", head).put("text", text);
        Answer answer = browser.send("PUT", "/api/jobs/" + id + "/text/" + path, body.toString());
        if (answer.status() == 404) {
            answer =
                    browser.ask(
                            "POST",
                            "/api/jobs/" + id + "/files/" + path + "?revision=" + head,
                            text,
                            browser.token());
        }
        assertThat(answer.status()).as(answer.json().toString()).isEqualTo(200);
    }

    @Test
    void serves_the_page_with_the_token_and_a_worker_for_it() throws Exception {
        String page = new String(browser.bytes("/day/" + id).body(), StandardCharsets.UTF_8);
        var worker = browser.bytes("/day/worker/worker.js");

        assertThat(Browser.tokenOf(page)).isEqualTo(server.token());
        assertThat(worker.headers().firstValue("Service-Worker-Allowed")).hasValue("/day/");
        // Every file that the worker keeps is there.
        String text = new String(worker.body(), StandardCharsets.UTF_8);
        java.util.regex.Matcher names =
                java.util.regex.Pattern.compile("'([a-z/]+\\.(?:js|css))'").matcher(text);
        int count = 0;
        while (names.find()) {
            assertThat(browser.bytes("/assets/day/" + names.group(1)).statusCode())
                    .as(names.group(1))
                    .isEqualTo(200);
            count++;
        }
        assertThat(count).isGreaterThan(15);
    }

    @Test
    void writes_the_log_as_the_table_that_closes_the_day() throws Exception {
        lineOn();
        send(tap("loader2", "hooked", "L01").put("massKg", 197.5).put("note", "wet; \"heavy\""));

        String table =
                new String(
                        browser.bytes("/api/jobs/" + id + "/day/taps.csv").body(),
                        StandardCharsets.UTF_8);

        assertThat(table.lines().findFirst())
                .hasValue(
                        "id,at,by,device,kind,loads,place,mass_kg,line_m,people,undoes,note,device_at");
        assertThat(table)
                .contains(
                        ",2026-09-08T07:02:00-01:00,loader2,loader2 phone,hooked,L01,,197.5,,,,"
                                + "\"wet; \"\"heavy\"\"\",");
    }

    /** By thought, no source: a phone three hours ahead says that the engine is off after five minutes. */
    @Test
    void a_tap_of_a_clock_hours_ahead_counts_by_the_servers_and_both_times_are_kept()
            throws Exception {
        send(tap("pilot", "engine-on"));
        minute += 4;
        ObjectNode off = tap("loader2", "engine-off");
        String said = SEVEN.plus(Duration.ofMinutes(5 + 180)).toString();
        off.put("at", said).put("sentAt", SEVEN.plus(Duration.ofMinutes(6 + 180)).toString());
        send(off);

        JsonNode newest = day().path("taps").get(0);
        assertThat(newest.path("at").asString("")).isEqualTo("2026-09-08T08:05:00Z");
        assertThat(newest.path("deviceAt").asString("")).isEqualTo(said);
        assertThat(newest.path("kind").asString("")).isEqualTo("engine-off");
        assertThat(log().path("taps").get(1).path("at").asString("")).isEqualTo(said);
        String table =
                new String(
                        browser.bytes("/api/jobs/" + id + "/day/taps.csv").body(),
                        StandardCharsets.UTF_8);
        assertThat(table)
                .contains(",2026-09-08T07:05:00-01:00,loader2,")
                .contains(",2026-09-08T10:05:00-01:00");
    }
}
