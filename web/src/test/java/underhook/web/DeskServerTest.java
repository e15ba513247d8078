package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.Browser.Answer;

/** The desk over HTTP, with the demo day. */
class DeskServerTest {
    @TempDir static Path data;
    private static Underhook underhook;
    private static Desk desk;
    private static PlanRuns runs;
    private static DeskServer server;
    private static Browser browser;

    private String id = "";

    @BeforeAll
    static void open() throws Exception {
        underhook = new Underhook(new Settings(data.resolve("home"), "underhook test"));
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
        Answer made = browser.send("POST", "/api/jobs", "{\"name\":\"Day\",\"from\":\"demo\"}");
        assertThat(made.status()).isEqualTo(201);
        id = made.text("id");
    }

    private Answer job() throws Exception {
        return browser.get("/api/jobs/" + id);
    }

    private Answer changeMass(long revision, String text) throws Exception {
        return browser.send(
                "PATCH",
                "/api/jobs/" + id + "/tables/loads.csv",
                "{\"revision\":"
                        + revision
                        + ",\"what\":\"mass of L01\",\"cells\":[{\"row\":0,\"column\":4,\"value\":\""
                        + text
                        + "\"}]}");
    }

    private String massInTable() throws Exception {
        return browser.get("/api/jobs/" + id + "/tables/loads.csv")
                .json()
                .path("rows")
                .path(0)
                .path(4)
                .asString("");
    }

    @Test
    void lists_jobs_and_their_files_with_roles() throws Exception {
        assertThat(browser.get("/api/session").json().path("jobs").toString())
                .contains("\"id\":\"" + id + "\"");
        JsonNode files = job().json().path("files");

        assertThat(files.toString()).contains("\"path\":\"loads.csv\",\"role\":\"loads\"");
        assertThat(files).hasSize(21);
        assertThat(job().json().path("faults")).isEmpty();
    }

    /** The clocks of Vienna went back on 25 October 2026 (IANA time zones, from memory). */
    @Test
    void the_day_of_a_clock_change_has_two_offsets() throws Exception {
        assertThat(job().json().path("offsets").toString()).isEqualTo("[\"-01:00\"]");
        String text =
                file("job.yaml")
                        .replaceFirst("(?m)^date: .*$", "date: 2026-10-25")
                        .replaceFirst("(?m)^zone: .*$", "zone: Europe/Vienna")
                        // The past years of the demo day are those of September.
                        .replaceFirst("(?s)archive:\n.*", "");
        String change = Json.object().put("revision", 1).put("text", text).toString();

        Answer changed = browser.send("PUT", "/api/jobs/" + id + "/text/job.yaml", change);

        assertThat(changed.json().path("offsets").toString()).isEqualTo("[\"+02:00\",\"+01:00\"]");
    }

    @Test
    void keeps_a_change_before_it_answers() throws Exception {
        assertThat(changeMass(1, "199").status()).isEqualTo(200);

        try (Desk other = underhook.desk()) {
            var kept = other.find(id).orElseThrow().kept();
            assertThat(kept.findHead().orElseThrow().what()).isEqualTo("mass of L01");
            String hash = kept.listFiles(2).getOrDefault("loads.csv", "");
            assertThat(kept.getContent(hash).toText()).contains("L01;bag;A;S01;199;weighed");
        }
    }

    @Test
    void leaves_what_was_not_changed_as_it_was_typed() throws Exception {
        String before = file("loads.csv");

        changeMass(1, "199");

        assertThat(file("loads.csv")).isEqualTo(before.replace("S01;188;", "S01;199;"));
        assertThat(before).startsWith("\uFEFFid;kind").contains("\r\n");
    }

    private String file(String path) throws IOException {
        return desk.find(id).orElseThrow().findFile(path).orElseThrow().toText();
    }

    @Test
    void keeps_what_cannot_be_read_and_shows_the_fault_at_its_cell() throws Exception {
        Answer changed = changeMass(1, "two hundred");

        JsonNode fault = changed.json().path("table").path("faults").path(0);
        assertThat(fault.path("row").asInt(-9)).isZero();
        assertThat(fault.path("column").asInt(-9)).isEqualTo(4);
        assertThat(fault.path("value").asString("")).isEqualTo("two hundred");
        assertThat(massInTable()).isEqualTo("two hundred");
        // The map goes on showing the last state that could be read.
        assertThat(browser.get("/api/jobs/" + id + "/map").json().path("stale").asBoolean(false))
                .isTrue();
    }

    @Test
    void undoes_and_does_again_without_forgetting() throws Exception {
        changeMass(1, "199");
        changeMass(2, "201");

        browser.send("POST", "/api/jobs/" + id + "/undo", "{\"revision\":3}");
        assertThat(massInTable()).isEqualTo("199");
        browser.send("POST", "/api/jobs/" + id + "/undo", "{\"revision\":2}");
        assertThat(massInTable()).isEqualTo("188");
        assertThat(job().json().path("canUndo").asBoolean(true)).isFalse();
        browser.send("POST", "/api/jobs/" + id + "/redo", "{\"revision\":1}");
        Answer again = browser.send("POST", "/api/jobs/" + id + "/redo", "{\"revision\":2}");

        assertThat(again.json().path("head").asInt(0)).isEqualTo(3);
        assertThat(massInTable()).isEqualTo("201");
    }

    @Test
    void refuses_a_change_made_on_what_is_no_longer_the_head() throws Exception {
        changeMass(1, "199");

        assertThat(changeMass(1, "300").status()).isEqualTo(409);
        assertThat(massInTable()).isEqualTo("199");
    }

    @Test
    void puts_rows_in_and_takes_rows_out() throws Exception {
        String change =
                "{\"revision\":1,\"deleteRows\":[1],\"insertRows\":[{\"at\":45,\"values\":[\"L99\",\"bag\"]}]}";
        Answer changed = browser.send("PATCH", "/api/jobs/" + id + "/tables/loads.csv", change);

        JsonNode rows = changed.json().path("table").path("rows");
        assertThat(rows).hasSize(45);
        assertThat(rows.path(1).path(0).asString("")).isEqualTo("L03");
        assertThat(rows.path(44).path(0).asString("")).isEqualTo("L99");
    }

    @Test
    void tells_what_a_dropped_file_may_be_and_takes_the_word_for_it() throws Exception {
        Answer dropped =
                browser.send(
                        "POST",
                        "/api/jobs/" + id + "/files/winds.csv?revision=1",
                        "time,qnh_hpa,oat_c,wind_from_deg,wind_kt,gust_kt\n06:00,1020,10,220,5,8\n");
        assertThat(dropped.json().path("roles").toString()).contains("weather", "loads");

        Answer said =
                browser.send(
                        "PUT",
                        "/api/jobs/" + id + "/files/winds.csv/role",
                        "{\"revision\":2,\"role\":\"weather\",\"details\":{\"reference-elevation-m\":\"177\","
                                + "\"lapse-c-per-100m\":\"0.65\",\"between\":\"hold\",\"until\":\"17:00\","
                                + "\"source\":\"winds\"}}");

        assertThat(said.status()).isEqualTo(200);
        assertThat(said.json().path("faults")).isEmpty();
        assertThat(file("job.yaml"))
                .contains("weather: {file: winds.csv,")
                .contains("# The demo day.")
                .doesNotContain("weather.csv");
    }

    private Answer onMap(String change) throws Exception {
        return browser.send("PATCH", "/api/jobs/" + id + "/features", "{\"revision\":" + change);
    }

    @Test
    void moves_a_place_on_the_map_in_the_jobs_own_grid() throws Exception {
        JsonNode before = placeOf("S01");

        Answer moved =
                onMap(
                        "1,\"op\":\"move\",\"layer\":\"places\",\"id\":\"S01\",\"geometry\":"
                                + placeOf("A")
                                + "}");

        assertThat(moved.status()).isEqualTo(200);
        assertThat(moved.json().path("faults")).isEmpty();
        // A's cells are 260 and -130; the answer's seven decimals of a degree are a centimetre.
        assertThat(file("places.csv")).contains("S01,site,Alder Foot,260,-130,178.0");
        assertThat(placeOf("S01")).isNotEqualTo(before).isEqualTo(placeOf("A"));
    }

    private JsonNode placeOf(String place) throws Exception {
        for (JsonNode feature :
                browser.get("/api/jobs/" + id + "/map")
                        .json()
                        .path("layers")
                        .path("places")
                        .path("features")) {
            if (feature.path("properties").path("id").asString("").equals(place)) {
                return feature.path("geometry");
            }
        }
        throw new AssertionError("no place " + place);
    }

    @Test
    void draws_moves_and_takes_away_a_zone_on_the_map() throws Exception {
        String ring =
                "{\"type\":\"Polygon\",\"coordinates\":[[[-11.99,46.801],[-11.98,46.801],[-11.98,46.805],[-11.99,46.801]]]}";
        Answer added =
                onMap(
                        "1,\"op\":\"add\",\"layer\":\"zones\",\"id\":\"Z9\",\"properties\":"
                                + "{\"name\":\"New\",\"rule\":\"no-overflight\"},\"geometry\":"
                                + ring
                                + "}");
        assertThat(added.json().path("faults")).isEmpty();
        assertThat(file("zones.geojson")).contains("\"id\":\"Z9\"").contains("\"id\":\"Z1\"");

        Answer taken = onMap("2,\"op\":\"delete\",\"layer\":\"zones\",\"id\":\"Z9\"}");

        assertThat(taken.json().path("faults")).isEmpty();
        assertThat(file("zones.geojson")).doesNotContain("Z9");
        assertThat(onMap("3,\"op\":\"delete\",\"layer\":\"zones\",\"id\":\"Z9\"}").status())
                .isEqualTo(400);
    }

    @Test
    void shows_relief_and_map_of_the_jobs_own_terrain() throws Exception {
        HttpResponse<byte[]> relief = browser.bytes("/api/jobs/" + id + "/relief.png?w=64&h=48");
        assertThat(relief.headers().firstValue("Content-Type")).contains("image/png");
        var image = javax.imageio.ImageIO.read(new java.io.ByteArrayInputStream(relief.body()));
        assertThat(image.getWidth()).isEqualTo(64);
        // Beside the terrain nothing is known, and nothing is painted.
        var far =
                javax.imageio.ImageIO.read(
                        new java.io.ByteArrayInputStream(
                                browser.bytes(
                                                "/api/jobs/"
                                                        + id
                                                        + "/relief.png?w=2&h=2&bounds=-12.1,46.7,-12.05,46.75")
                                        .body()));
        assertThat(far.getRGB(0, 0) >>> 24).isZero();
        assertThat(image.getRGB(32, 24) >>> 24).isEqualTo(255);
        for (String wrong :
                List.of(
                        "-12,46,-13,47",
                        "-13,46,-12",
                        "-13,46,-12,x",
                        "-13,46,-12,NaN",
                        "-13,46,348,47",
                        "7,46,8,47")) {
            assertThat(browser.get("/api/jobs/" + id + "/relief.png?bounds=" + wrong).status())
                    .as(wrong)
                    .isEqualTo(400);
        }

        JsonNode layers = browser.get("/api/jobs/" + id + "/map").json().path("layers");
        assertThat(layers.path("places").path("features")).hasSize(20);
        assertThat(layers.path("wires").path("features")).hasSize(2);
        assertThat(layers.path("contours").path("features")).isNotEmpty();
        JsonNode inFeet = browser.get("/api/jobs/" + id + "/map?heights=ft").json();
        assertThat(inFeet.path("layers").path("contours").path("features"))
                .isNotEmpty()
                .allSatisfy(
                        line -> {
                            double heightM = line.path("properties").path("heightAmslM").asDouble();
                            assertThat(heightM / 0.3048 / 50)
                                    .isCloseTo(Math.rint(heightM / 0.3048 / 50), within(1e-9));
                        });
        assertThat(browser.get("/api/jobs/" + id + "/map?heights=yd").status()).isEqualTo(400);
        // The lowest place of the demo's list lies at 177.2 m.
        JsonNode heights = browser.get("/api/jobs/" + id + "/heights?w=40&h=20").json();
        assertThat(heights.path("heightsM")).hasSize(800);
    }

    @Test
    void hands_a_job_over_as_one_file_and_takes_it_again() throws Exception {
        changeMass(1, "199");
        byte[] file = browser.bytes("/api/jobs/" + id + "/handover").body();

        Answer taken = browser.ask("POST", "/api/jobs/handover", file, browser.token());

        assertThat(taken.status()).isEqualTo(201);
        String other = taken.text("id");
        assertThat(browser.get("/api/jobs/" + other).json().path("head").asInt(0)).isEqualTo(2);
        assertThat(desk.find(other).orElseThrow().kept().listFiles(2))
                .isEqualTo(desk.find(id).orElseThrow().kept().listFiles(2));
    }

    @Test
    void takes_no_file_for_a_job_that_is_none() throws Exception {
        byte[] file = browser.bytes("/api/jobs/" + id + "/handover").body();
        java.util.Arrays.fill(file, 8192, file.length / 2, (byte) 0x41);

        assertThat(browser.ask("POST", "/api/jobs/handover", file, browser.token()).status())
                .isEqualTo(400);
        assertThat(browser.send("POST", "/api/jobs/handover", "no database at all").status())
                .isEqualTo(400);
    }

    @Test
    void needs_the_token_for_every_change() throws Exception {
        for (String said : new String[] {"", "0".repeat(48)}) {
            assertThat(browser.ask("POST", "/api/jobs/" + id + "/undo", "{\"revision\":1}", said))
                    .extracting(Answer::status)
                    .isEqualTo(403);
        }
    }

    @Test
    void does_nothing_for_another_site() throws Exception {
        String[] start = {
            "POST /api/jobs/" + id + "/undo HTTP/1.1",
            "Host: " + browser.host(),
            "X-Underhook-Token: " + browser.token(),
            "Content-Length: 0"
        };
        for (String header :
                new String[] {
                    "Origin: http://elsewhere.example", "Origin: null", "Sec-Fetch-Site: cross-site"
                }) {
            String[] lines = java.util.Arrays.copyOf(start, start.length + 1);
            lines[start.length] = header;
            assertThat(browser.raw(lines)).as(header).startsWith("HTTP/1.1 403");
        }
        assertThat(browser.raw("GET / HTTP/1.1", "Host: elsewhere.example"))
                .startsWith("HTTP/1.1 403");
    }

    @Test
    void asks_no_other_host_for_anything() throws Exception {
        HttpResponse<byte[]> page = browser.bytes("/");
        String policy = page.headers().firstValue("Content-Security-Policy").orElseThrow();

        assertThat(policy)
                .startsWith("default-src 'none'")
                .doesNotContain("http")
                .doesNotContain("*");
        assertThat(new String(page.body(), StandardCharsets.UTF_8))
                .doesNotContain("http://")
                .doesNotContain("https://");
        assertThat(page.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "..%2f..%2fout.csv",
                "%2fetc%2fout.csv",
                "a%2f..%2f..%2fout.csv",
                "..",
                "%2e%2e%2fout.csv",
                "C%3aout.csv",
                "a%5cout.csv",
                "con.csv",
                "out%00.csv",
                "out%0a.csv",
                "%3cscript%3e.csv",
                "out%e2%80%aevsc.exe",
                ".hidden"
            })
    void takes_no_file_of_a_name_that_leads_out_or_deceives(String name) throws Exception {
        Answer answer =
                browser.send("POST", "/api/jobs/" + id + "/files/" + name + "?revision=1", "x");

        assertThat(answer.status()).isIn(400, 404);
        assertThat(job().json().path("head").asInt(0)).isEqualTo(1);
        try (Stream<Path> files = Files.walk(data)) {
            assertThat(files.filter(file -> file.toString().contains("out"))).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/assets/..%2findex.html",
                "/assets/../index.html",
                "/assets/%2e%2e/DeskServer.class",
                "/lib/ol/..%2f..%2f..%2fMANIFEST.MF",
                "/lib/nothing/x.js",
                "/api/jobs/..%2fhome",
                "/api/jobs/" + "x"
            })
    void gives_nothing_out_that_is_not_meant_to_be(String path) throws Exception {
        assertThat(browser.raw("GET " + path + " HTTP/1.1", "Host: " + browser.host()))
                .startsWith("HTTP/1.1 404");
    }

    @Test
    void begins_a_job_with_what_is_known_of_it_and_asks_for_the_rest() throws Exception {
        Answer made =
                browser.send(
                        "POST",
                        "/api/jobs",
                        "{\"name\":\"New\",\"from\":\"empty\",\"date\":\"2026-09-08\",\"zone\":\"-01:00\","
                                + "\"crs\":\"EPSG:32628\",\"magneticVariationDeg\":\"-3.5\",\"machineStart\":\"A1\"}");
        String begun = "/api/jobs/" + made.text("id");

        assertThat(browser.get(begun + "/text/job.yaml").text("text").lines())
                .contains(
                        "date: \"2026-09-08\"",
                        "zone: \"-01:00\"",
                        "crs: \"EPSG:32628\"",
                        "magnetic-variation-deg: \"-3.5\"",
                        "machine-start: A1");
        assertThat(browser.get(begun).json().path("faults").toString())
                .contains("loads: is missing", "terrain: is missing")
                .doesNotContain("machine-start", "crs", "variation");
    }

    /** RFC 9110, 13.1.2 and 15.4.5: what has not changed is not sent again. */
    @Test
    void sends_a_file_of_the_page_again_only_when_it_is_another() throws Exception {
        String path = "/lib/ol/dist/ol.js";
        HttpResponse<byte[]> first = browser.bytes(path);
        String mark = first.headers().firstValue("ETag").orElseThrow();

        String again = asked(path, mark);
        String other = asked(path, "W/\"another\"");

        assertThat(first.body().length).isGreaterThan(100_000);
        assertThat(first.headers().firstValue("Cache-Control")).contains("private, no-cache");
        assertThat(again).startsWith("HTTP/1.1 304").doesNotContain("function");
        assertThat(other).startsWith("HTTP/1.1 200").contains("function");
        assertThat(browser.bytes("/").headers().firstValue("Cache-Control")).contains("no-store");
    }

    private String asked(String path, String mark) throws Exception {
        return browser.raw(
                "GET " + path + " HTTP/1.1",
                "Host: " + browser.host(),
                "If-None-Match: " + mark,
                "Connection: close");
    }

    @Test
    void refuses_more_than_it_can_take_before_it_has_come() throws Exception {
        String answer =
                browser.raw(
                        "POST /api/jobs/" + id + "/files/big.tif HTTP/1.1",
                        "Host: " + browser.host(),
                        "X-Underhook-Token: " + browser.token(),
                        "Content-Length: 268435457");
        assertThat(answer).startsWith("HTTP/1.1 413");

        String large = "{\"revision\":1,\"text\":\"" + "x".repeat(5 << 20) + "\"}";
        assertThat(browser.send("PUT", "/api/jobs/" + id + "/text/rules.yaml", large).status())
                .isEqualTo(413);
    }

    /** A workbook of 60 MB of blanks, packed to almost nothing. */
    private static byte[] bomb() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
            byte[] blanks = new byte[1 << 20];
            for (int i = 0; i < 60; i++) {
                zip.write(blanks);
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void comes_to_no_harm_by_hostile_files() throws Exception {
        String entities =
                "<?xml version=\"1.0\"?><!DOCTYPE k [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">"
                        + "<!ENTITY c SYSTEM \"file:///etc/hostname\">]><kml><name>&b;&c;</name></kml>";
        String anchors =
                "a: &a [x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a]\nc: [*b,*b,*b,*b,*b,*b,*b]\n";
        drop("loads.xlsx", bomb(), "loads");
        drop("shapes.kml", entities.getBytes(StandardCharsets.UTF_8), "places");
        drop("crews2.yaml", anchors.getBytes(StandardCharsets.UTF_8), "crews");
        drop(
                "hazards2.csv",
                "=cmd|'/c calc'!A0,\"unclosed\n".getBytes(StandardCharsets.UTF_8),
                "hazards");

        Answer job = job();

        assertThat(job.status()).isEqualTo(200);
        assertThat(job.json().path("faults").toString())
                .contains("loads.xlsx", "shapes.kml", "crews2.yaml", "hazards2.csv")
                .doesNotContain("aaaaaaaaaaaaaaaaaaaa");
        assertThat(browser.get("/api/jobs/" + id + "/tables/loads.xlsx").status()).isEqualTo(404);
    }

    private void drop(String name, byte[] bytes, String role) throws Exception {
        String at = "/api/jobs/" + id + "/files/" + name;
        assertThat(browser.ask("POST", at, bytes, browser.token()).status()).isEqualTo(200);
        int head = job().json().path("head").asInt(0);
        String said = "{\"revision\":" + head + ",\"role\":\"" + role + "\"}";
        assertThat(browser.send("PUT", at + "/role", said).status()).isEqualTo(200);
    }

    @Test
    void answers_what_it_does_not_know_with_a_sentence() throws Exception {
        assertThat(browser.get("/api/jobs/nothing").status()).isEqualTo(404);
        assertThat(browser.get("/api/jobs/" + id + "/plan").text("error")).contains("planned");
        assertThat(browser.send("POST", "/api/session", "{}").status()).isEqualTo(405);
        assertThat(browser.send("POST", "/api/jobs", "[1]").status()).isEqualTo(400);
        assertThat(browser.send("POST", "/api/jobs", "{{").status()).isEqualTo(400);
    }

    @Test
    void opens_to_the_network_only_for_whoever_gives_the_secret() throws Exception {
        DeskServer.Where where = new DeskServer.Where(0, Optional.of("fourteen signs"));
        try (DeskServer open =
                DeskServer.start(new DeskServer.Desktop(desk, runs, "underhook test"), where)) {
            Browser guest = new Browser(open.address(), "");
            String host = "Host: " + guest.host();

            assertThat(guest.raw("GET /api/session HTTP/1.1", host)).startsWith("HTTP/1.1 401");
            assertThat(guest.raw("GET / HTTP/1.1", host)).contains("Location: /enter");
            assertThat(enter(guest, "secret=wrong")).startsWith("HTTP/1.1 401");
            String entered = enter(guest, "secret=fourteen+signs");
            String cookie =
                    entered.lines().filter(l -> l.startsWith("Set-cookie")).findFirst().orElse("");

            assertThat(cookie).contains("HttpOnly").contains("SameSite=Strict");
            String pass = cookie.substring(cookie.indexOf(':') + 2, cookie.indexOf(';'));
            String page = guest.raw("GET / HTTP/1.1", host, "Cookie: " + pass);
            assertThat(page).startsWith("HTTP/1.1 200");
            assertThat(Browser.tokenOf(page)).hasSize(48);
            assertThat(guest.raw("GET / HTTP/1.1", "Host: name.example", "Cookie: " + pass))
                    .startsWith("HTTP/1.1 403");
        }
    }

    private static String enter(Browser guest, String form) throws IOException {
        return guest.raw(
                "POST /enter HTTP/1.1",
                "Host: " + guest.host(),
                "Content-Length: " + form.length(),
                "Content-Type: application/x-www-form-urlencoded",
                "",
                form);
    }
}
