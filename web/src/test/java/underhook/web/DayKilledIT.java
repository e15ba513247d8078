package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.Desk;
import underhook.app.port.KeptTap;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/**
 * Three devices tap while the server is killed (SIGKILL) at random moments: what it said it had is there,
 * once, in order, and the chain is whole. {@code -Dunderhook.kills=200} kills more often.
 */
@Tag("slow")
class DayKilledIT {
    private static final System.Logger LOG = System.getLogger("underhook");
    private static final int KILLS = Integer.getInteger("underhook.kills", 20);
    private static final int DEVICES = 3;

    /** Between the answer that is waited for and the kill lies up to so much, in the middle of others. */
    private static final int MOST_NANOS = 4_000_000;

    @TempDir private Path home;
    private final AtomicInteger answered = new AtomicInteger();
    private final AtomicBoolean ending = new AtomicBoolean();
    private final Object changed = new Object();
    private volatile Running current = Running.NONE;

    /** A server that answers. */
    private record Running(URI address, String token) {
        static final Running NONE = new Running(URI.create("http://127.0.0.1:1/"), "");
    }

    /** What one device made and what it was told. */
    private record Told(List<String> made, List<String> kept) {}

    private Process standby() throws IOException {
        return new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xshare:auto",
                        "-cp",
                        System.getProperty("java.class.path"),
                        StandbyServer.class.getName(),
                        home.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    private void open(Process process) throws IOException {
        process.getOutputStream().write('\n');
        process.getOutputStream().flush();
        BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String[] said = lines.readLine().split(" ", 2);
        current = new Running(URI.create(said[0]), said[1]);
    }

    @Test
    void loses_no_tap_that_it_answered_for_and_doubles_none() throws Exception {
        try (Desk desk = program().desk()) {
            desk.createEmpty("Day", new Desk.Beginning("2026-09-08", "UTC"));
        }
        Random random = new Random(20260908);
        ExecutorService devices = Executors.newFixedThreadPool(DEVICES);
        Process process = standby();
        Process next = standby();
        open(process);
        List<Future<Told>> all = new ArrayList<>();
        for (int device = 1; device <= DEVICES; device++) {
            String name = "device " + device;
            all.add(devices.submit(() -> tapUntilTheEnd(name)));
        }
        for (int kill = 0; kill < KILLS; kill++) {
            awaitAnswers(answered.get() + 1 + random.nextInt(24));
            spin(random.nextInt(MOST_NANOS));
            process.destroyForcibly().waitFor();
            process = next;
            open(process);
            next = standby();
        }
        awaitAnswers(answered.get() + DEVICES);
        ending.set(true);
        List<Told> told = new ArrayList<>();
        for (Future<Told> one : all) {
            told.add(one.get());
        }
        devices.shutdown();
        process.destroyForcibly().waitFor();
        next.destroyForcibly().waitFor();
        check(told);
    }

    private Underhook program() {
        return new Underhook(new Settings(home, "underhook test"));
    }

    private void awaitAnswers(int count) throws InterruptedException {
        synchronized (changed) {
            while (answered.get() < count) {
                changed.wait(1000);
            }
        }
    }

    private static void spin(int nanos) {
        long end = System.nanoTime() + nanos;
        while (System.nanoTime() < end) {
            Thread.onSpinWait();
        }
    }

    /** As a page does: the same tap under the same id until the server says that it has it. */
    private Told tapUntilTheEnd(String device) throws InterruptedException {
        HttpClient client = HttpClient.newHttpClient();
        Told told = new Told(new ArrayList<>(), new ArrayList<>());
        while (!ending.get()) {
            String id = UUID.randomUUID().toString();
            told.made().add(id);
            boolean isKept = false;
            while (!isKept) {
                isKept = send(client, device, id, told.made().size());
            }
            told.kept().add(id);
            synchronized (changed) {
                answered.incrementAndGet();
                changed.notifyAll();
            }
        }
        return told;
    }

    private boolean send(HttpClient client, String device, String id, int number)
            throws InterruptedException {
        ObjectNode tap = Json.object();
        tap.put("id", id).put("by", device).put("device", device).put("role", "loader");
        tap.put("at", Instant.EPOCH.plusSeconds(number).toString());
        tap.put("sentAt", Instant.EPOCH.plusSeconds(number).toString());
        tap.put("kind", "counted").put("people", number % 50).put("anyway", number % 2 == 0);
        ObjectNode body = Json.object();
        body.putArray("taps").add(tap);
        Running server = current;
        HttpRequest request =
                HttpRequest.newBuilder(server.address().resolve("/api/jobs/day/day/taps"))
                        .timeout(Duration.ofSeconds(5))
                        .header("X-Underhook-Token", server.token())
                        .POST(BodyPublishers.ofString(body.toString()))
                        .build();
        try {
            HttpResponse<String> answer = client.send(request, BodyHandlers.ofString());
            return answer.statusCode() == 200 && answer.body().contains("\"state\":\"kept\"");
        } catch (IOException cut) {
            LOG.log(System.Logger.Level.DEBUG, "cut off", cut);
            return false;
        }
    }

    private void check(List<Told> told) throws IOException, ExecutionException {
        List<KeptTap> rows;
        try (Desk desk = program().desk()) {
            rows = desk.find("day").orElseThrow().kept().listTaps();
        }
        assertThat(KeptTap.findBroken(rows)).isEmpty();
        Map<String, Long> often =
                rows.stream()
                        .collect(
                                Collectors.groupingBy(
                                        row -> row.tap().id(), Collectors.counting()));
        assertThat(often.values()).allMatch(count -> count == 1);
        Set<String> kept = new TreeSet<>();
        told.forEach(one -> kept.addAll(one.kept()));
        // Every device went on until its last tap was answered for: nothing else may be there.
        assertThat(often.keySet()).containsExactlyInAnyOrderElementsOf(kept);
        Map<String, Instant> last = new HashMap<>();
        for (KeptTap row : rows) {
            Instant before = last.put(row.tap().device(), row.tap().at());
            assertThat(before == null || before.isBefore(row.tap().at())).isTrue();
        }
        LOG.log(
                System.Logger.Level.INFO,
                KILLS + " kills, " + rows.size() + " taps, none lost, none doubled");
    }
}
