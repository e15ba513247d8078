package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;

class PlanServerTest {
    private static final Instant START = Instant.parse("2026-09-08T09:00:00Z");

    @TempDir Path root;
    private Path folder;
    private PlanServer server;
    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeEach
    void serve() throws IOException {
        folder = Files.createDirectory(root.resolve("plan"));
        Files.writeString(folder.resolve("plan.json"), "{}", StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("loads.csv"), "load\nL01 é\n", StandardCharsets.UTF_8);
        Files.writeString(folder.resolve(".lock"), "x", StandardCharsets.UTF_8);
        Files.writeString(root.resolve("secret.json"), "secret", StandardCharsets.UTF_8);
        Files.createSymbolicLink(folder.resolve("link.json"), root.resolve("secret.json"));
        Day day = new Day(plan(), ZoneId.of("-01:00"), List.of("Map data © <nobody>"), folder);
        server = PlanServer.start(List.of(day), 0);
    }

    @AfterEach
    void stop() {
        server.close();
    }

    @Test
    void shows_the_day_with_its_numbers_rounded_to_the_safe_side() throws Exception {
        String page = get("/").body();

        // 90.5 s of flying is 2 min when rounded up; 162.9 kg of most fuel is 162; 321.2 kg on the
        // hook
        // is 322; 7.9 m of clearance is 7; 09:00 UTC is 08:00 in the job's zone.
        assertThat(page).contains("<dd>2 min</dd>");
        assertThat(page).contains("<td>162</td>").contains("<td>322</td>").contains("<td>7</td>");
        assertThat(page).contains("<td>08:00:00</td>");
        assertThat(page).contains("HOVER_MASS, 12 % left");
    }

    @Test
    void tells_severity_by_shape_and_word() throws Exception {
        assertThat(get("/day/1/").body()).contains("&#9632; STOP").contains("&#9675; NOTE");
    }

    @Test
    void shows_the_stops_first() throws Exception {
        String page = get("/day/1/").body();

        assertThat(page.indexOf("&#9632; STOP")).isLessThan(page.indexOf("&#9675; NOTE"));
    }

    @Test
    void escapes_whatever_a_job_says() throws Exception {
        String page = get("/").body();

        assertThat(page).doesNotContain("<script").doesNotContain("<nobody>");
        assertThat(page).contains("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; sons");
    }

    @Test
    void asks_no_other_host_for_anything() throws Exception {
        HttpResponse<String> answer = get("/");

        assertThat(answer.body()).doesNotContain("http://").doesNotContain("https://");
        assertThat(answer.headers().firstValue("Content-Security-Policy").orElseThrow())
                .startsWith("default-src 'none'");
    }

    @Test
    void links_and_hands_out_the_files_with_their_types() throws Exception {
        assertThat(get("/").body())
                .contains("href=\"/day/1/files/loads.csv\"")
                .contains("href=\"/day/1/files/plan.json\"");

        HttpResponse<String> table = get("/day/1/files/loads.csv");

        assertThat(table.body()).isEqualTo("load\nL01 é\n");
        assertThat(table.headers().firstValue("Content-Type")).contains("text/csv; charset=utf-8");
        assertThat(get("/day/1/files/plan.json").headers().firstValue("Content-Type"))
                .contains("application/json");
    }

    @Test
    void hands_out_nothing_from_outside_the_folder() throws Exception {
        List<String> bad =
                List.of(
                        "/day/1/files/../../secret.json",
                        "/day/1/files/..%2Fsecret.json",
                        "/day/1/files/%2e%2e/secret.json",
                        "/day/1/files/link.json",
                        "/day/1/files/.lock",
                        "/day/2/",
                        "/day/0/",
                        "/secret.json");

        // By socket: a client library would tidy the path up before it is sent.
        for (String path : bad) {
            String answer = bySocket("GET " + path + " HTTP/1.1", hostLine());
            assertThat(answer).as(path).startsWith("HTTP/1.1 404").doesNotContain("secret\n");
        }
    }

    @Test
    void refuses_to_write() throws Exception {
        HttpRequest request =
                HttpRequest.newBuilder(at("/"))
                        .POST(HttpRequest.BodyPublishers.ofString("x"))
                        .build();

        HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());

        assertThat(answer.statusCode()).isEqualTo(405);
        assertThat(answer.headers().firstValue("Allow")).contains("GET, HEAD");
    }

    @Test
    void answers_head_without_a_body() throws Exception {
        for (String path : List.of("/", "/style.css", "/day/1/files/plan.json")) {
            HttpRequest request =
                    HttpRequest.newBuilder(at(path))
                            .method("HEAD", HttpRequest.BodyPublishers.noBody())
                            .build();

            HttpResponse<String> answer =
                    client.send(request, HttpResponse.BodyHandlers.ofString());

            assertThat(answer.statusCode()).as(path).isEqualTo(200);
            assertThat(answer.body()).as(path).isEmpty();
            assertThat(answer.headers().firstValueAsLong("Content-Length").orElseThrow())
                    .as(path)
                    .isPositive();
        }
    }

    @Test
    void answers_to_its_own_name_only() throws Exception {
        assertThat(bySocket("GET / HTTP/1.1", "Host: elsewhere.example"))
                .startsWith("HTTP/1.1 403");
    }

    @Test
    void listens_on_this_machine_only() {
        assertThat(server.address().getHost()).isEqualTo("127.0.0.1");
    }

    @Test
    void lists_several_days() throws Exception {
        Day day = new Day(plan(), ZoneId.of("-01:00"), List.of(), folder);
        try (PlanServer two = PlanServer.start(List.of(day, day), 0)) {
            HttpRequest request = HttpRequest.newBuilder(two.address()).build();

            String page = client.send(request, HttpResponse.BodyHandlers.ofString()).body();

            assertThat(page).contains("href=\"/day/1/\"").contains("href=\"/day/2/\"");
        }
    }

    private URI at(String path) {
        return server.address().resolve(path);
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(at(path)).build(),
                HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    private String hostLine() {
        return "Host: 127.0.0.1:" + server.address().getPort();
    }

    private String bySocket(String requestLine, String hostLine) throws IOException {
        try (Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), server.address().getPort())) {
            String request = requestLine + "\r\n" + hostLine + "\r\nConnection: close\r\n\r\n";
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            var reader =
                    new BufferedReader(
                            new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            return reader.lines().collect(Collectors.joining("\n"));
        }
    }

    private static Plan plan() {
        LoadId load = new LoadId("L01");
        PlaceId from = new PlaceId("A");
        PlaceId to = new PlaceId("S01");
        GeoPoint point = new GeoPoint(46.8, -12);
        Leg leg =
                new Leg(
                        List.of(load),
                        from,
                        to,
                        List.of(),
                        500,
                        90.5,
                        60.5,
                        7.9,
                        25,
                        List.of(new Leg.Crossing("RV-9", point, "guards stop the traffic")),
                        List.of());
        Limit limit = new Limit("HOVER_MASS", 1700, 1950, "kg", 12.8, "machine", true);
        Rotation rotation =
                new Rotation(
                        List.of(load),
                        START,
                        120.7,
                        321.2,
                        1950,
                        162.9,
                        0,
                        List.of(),
                        List.of(leg),
                        List.of(limit));
        Step step =
                new Step(
                        StepKind.ROTATION,
                        from,
                        from,
                        START,
                        START.plusSeconds(300),
                        120.7,
                        109,
                        25,
                        true,
                        Optional.of(rotation),
                        Optional.empty(),
                        List.of(),
                        "first of the day");
        return new Plan(
                "p1",
                "<script>alert('x')</script> & sons",
                START,
                7,
                "underhook test",
                new Summary(
                        90.5,
                        START.plusSeconds(300),
                        1,
                        0,
                        0,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        false),
                List.of(step),
                List.of(),
                List.of(new LeftOut(new LoadId("L45"), FindingCode.HOOK_LIMIT, "over the hook")),
                List.of(
                        Finding.of(FindingCode.DETOUR, Severity.NOTE, "A-S01", "zones", "a detour"),
                        Finding.of(
                                FindingCode.HOOK_LIMIT, Severity.STOP, "L45", "machine", "over")),
                List.of());
    }
}
