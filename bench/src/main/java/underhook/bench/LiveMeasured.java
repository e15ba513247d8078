package underhook.bench;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.app.PlanDay;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.DeskServer;

/**
 * A hundred devices on one server that flies the demo day: how long a tap takes until it is on the disk
 * and answered, and how long the state of the day takes, against a server that answers nothing to the
 * same hundred. Devices and server share the machine.
 */
final class LiveMeasured implements Measured {
    private static final int DEVICES = 100;
    private static final int EACH = 12;
    private static final Duration PACE = Duration.ofSeconds(1);
    private static final Instant SEVEN = Instant.parse("2026-09-08T08:05:00Z");
    private static final long BEGUN_NANOS = System.nanoTime();
    private static final Pattern TOKEN = Pattern.compile("content=\"([0-9a-f]{48})\"");

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    @Override
    public String name() {
        return "live";
    }

    @Override
    public String measure() {
        StringJoiner told = new StringJoiner("\n");
        try {
            Path folder = Files.createTempDirectory("live");
            Underhook program = new Underhook(new Settings(folder.resolve("data"), "bench"));
            program.rehearse(SEVEN);
            try (Desk desk = program.desk();
                    PlanRuns runs = program.planRuns()) {
                lay(program, desk, folder.resolve("day"));
                measure(new DeskServer.Desktop(desk, runs, "bench"), told);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed);
        }
        return told.toString();
    }

    private static void lay(Underhook program, Desk desk, Path folder) throws IOException {
        program.writeDemo(folder);
        PlanDay.Result result =
                program.planDay()
                        .plan(
                                new PlanDay.Request(
                                        folder,
                                        folder.resolveSibling("out"),
                                        1,
                                        Duration.ofSeconds(10)),
                                (doing, done) -> {});
        DeskJob job = desk.importFolder(folder, "day");
        if (result instanceof PlanDay.Planned planned) {
            desk.keepPlan(job, folder, planned);
        }
    }

    private void measure(DeskServer.Desktop desktop, StringJoiner told)
            throws IOException, InterruptedException, ExecutionException {
        HttpServer empty =
                HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        ExecutorService threads = Executors.newCachedThreadPool();
        empty.setExecutor(threads);
        empty.createContext(
                "/",
                exchange -> {
                    exchange.getRequestBody().readAllBytes();
                    exchange.sendResponseHeaders(200, -1);
                    exchange.close();
                });
        empty.start();
        URI nothing = URI.create("http://127.0.0.1:" + empty.getAddress().getPort() + "/");
        try (DeskServer server = DeskServer.start(desktop, DeskServer.Where.here(0))) {
            String token = token(server.address());
            URI day = server.address().resolve("/api/jobs/day/day");
            URI taps = server.address().resolve("/api/jobs/day/day/taps");
            for (boolean paced : new boolean[] {true, false}) {
                String how = paced ? "one a second each" : "as fast as they can";
                Times least = run(() -> tap(nothing, token), paced);
                tell(told, "a tap, " + how, run(() -> tap(taps, token), paced), least);
                tell(
                        told,
                        "the state of the day, " + how,
                        run(() -> HttpRequest.newBuilder(day).build(), paced),
                        least);
            }
        } finally {
            empty.stop(0);
            threads.shutdown();
        }
    }

    /** Answer times, ms. */
    private record Times(double medianMs, double worst99Ms) {}

    private Times run(Supplier<HttpRequest> request, boolean paced)
            throws InterruptedException, ExecutionException {
        ExecutorService devices = Executors.newFixedThreadPool(DEVICES);
        List<Future<List<Long>>> all = new ArrayList<>();
        long start = System.nanoTime();
        for (int device = 0; device < DEVICES; device++) {
            long first = paced ? start + PACE.toNanos() * device / DEVICES : start;
            all.add(devices.submit(() -> ask(request, first, paced)));
        }
        List<Long> nanos = new ArrayList<>();
        for (Future<List<Long>> one : all) {
            nanos.addAll(one.get());
        }
        devices.shutdown();
        Collections.sort(nanos);
        return new Times(
                nanos.get(nanos.size() / 2) / 1e6, nanos.get(nanos.size() * 99 / 100) / 1e6);
    }

    private List<Long> ask(Supplier<HttpRequest> request, long firstNanos, boolean paced)
            throws IOException, InterruptedException {
        List<Long> nanos = new ArrayList<>();
        for (int i = -2; i < EACH; i++) {
            long due = firstNanos + (paced ? PACE.toNanos() * (i + 2) : 0);
            while (System.nanoTime() < due) {
                LockSupport.parkNanos(due - System.nanoTime());
            }
            long start = System.nanoTime();
            int status = client.send(request.get(), BodyHandlers.ofString()).statusCode();
            if (status != 200) {
                throw new IllegalStateException("the answer was " + status);
            }
            if (i >= 0) {
                nanos.add(System.nanoTime() - start);
            }
        }
        return nanos;
    }

    private String token(URI address) throws IOException, InterruptedException {
        String page =
                client.send(
                                HttpRequest.newBuilder(address).build(),
                                BodyHandlers.ofString(StandardCharsets.UTF_8))
                        .body();
        Matcher token = TOKEN.matcher(page);
        if (!token.find()) {
            throw new IllegalStateException("the page has no token.");
        }
        return token.group(1);
    }

    private static HttpRequest tap(URI address, String token) {
        String text =
                String.format(
                        Locale.ROOT,
                        """
                        {"taps":[{"id":"%1$s","at":"%2$s","sentAt":"%2$s",\
                        "by":"P 1","role":"crew",\
                        "device":"bench","kind":"counted","people":4}]}
                        """,
                        UUID.randomUUID(),
                        SEVEN.plusNanos(System.nanoTime() - BEGUN_NANOS));
        return HttpRequest.newBuilder(address)
                .header("X-Underhook-Token", token)
                .POST(BodyPublishers.ofString(text))
                .build();
    }

    private static void tell(StringJoiner told, String what, Times times, Times least) {
        told.add(
                String.format(
                        Locale.ROOT,
                        "live: %s, %d devices: %.1f times the time of an empty answer (median %.1f"
                                + " ms, 99th %.1f ms; empty %.1f and %.1f ms)",
                        what,
                        DEVICES,
                        times.medianMs() / least.medianMs(),
                        times.medianMs(),
                        times.worst99Ms(),
                        least.medianMs(),
                        least.worst99Ms()));
    }
}
