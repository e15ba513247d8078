package underhook.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.StringJoiner;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.DeskServer;

/**
 * The planning desk over HTTP: how long its answers take against one that holds a picture of 1 kB, with
 * the demo day's 45 loads and with 120; and how soon a started program answers, against one that only
 * says its version.
 */
final class DeskMeasured implements Measured {
    private static final int ROUNDS = 15;
    private static final int STARTS = 5;

    private final HttpClient client = HttpClient.newHttpClient();

    @Override
    public String name() {
        return "desk";
    }

    @Override
    public String measure() {
        StringJoiner told = new StringJoiner("\n");
        try {
            Path folder = Files.createTempDirectory("desk");
            Underhook program =
                    new Underhook(
                            Settings.from(Map.of("UNDERHOOK_HOME", folder + "/data"), folder));
            measureAnswers(program, folder, told);
            measureStart(folder, told);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        return told.toString();
    }

    private void measureAnswers(Underhook program, Path folder, StringJoiner told)
            throws IOException, InterruptedException {
        try (Desk desk = program.desk();
                PlanRuns runs = program.planRuns()) {
            DeskDays.lay(program, desk, folder.resolve("day45"), 0, 0);
            DeskDays.lay(program, desk, folder.resolve("day120"), 75, 0);
            long start = System.nanoTime();
            try (DeskServer server =
                    DeskServer.start(
                            new DeskServer.Desktop(desk, runs, "bench"),
                            DeskServer.Where.here(0))) {
                URI address = server.address();
                ask(address, "/api/session");
                told.add(text("desk: first answer after the server is up %.3f s", since(start)));
                double leastS = median(address, "/assets/icon.svg");
                for (String id : List.of("day45", "day120")) {
                    measure(address, id, leastS, told);
                }
            }
        }
    }

    private void measure(URI address, String id, double leastS, StringJoiner told)
            throws IOException, InterruptedException {
        for (String path :
                List.of(
                        "",
                        "/plan",
                        "/map",
                        "/relief.png?w=900&h=600",
                        "/tables/loads.csv",
                        "/plan/lifts/1/section/0",
                        "/plan/lifts/1/rose",
                        "/plan/lifts/1/limits")) {
            long start = System.nanoTime();
            ask(address, "/api/jobs/" + id + path);
            double firstS = since(start);
            double medianS = median(address, "/api/jobs/" + id + path);
            told.add(
                    text(
                            "desk: %s %s: %.1f times the least answer (first %.0f ms, median of %d"
                                    + " %.1f ms)",
                            id,
                            path.isEmpty() ? "job" : path.substring(1),
                            medianS / leastS,
                            firstS * 1000,
                            ROUNDS,
                            medianS * 1000));
        }
    }

    private double median(URI address, String path) throws IOException, InterruptedException {
        double[] timesS = new double[ROUNDS];
        for (int i = -3; i < ROUNDS; i++) {
            long start = System.nanoTime();
            ask(address, path);
            timesS[Math.max(0, i)] = since(start);
        }
        Arrays.sort(timesS);
        return timesS[ROUNDS / 2];
    }

    private void ask(URI address, String path) throws IOException, InterruptedException {
        int status =
                client.send(
                                HttpRequest.newBuilder(address.resolve(path)).build(),
                                BodyHandlers.ofByteArray())
                        .statusCode();
        if (status != 200) {
            throw new IllegalStateException(path + " gave " + status);
        }
    }

    private void measureStart(Path folder, StringJoiner told)
            throws IOException, InterruptedException {
        double[] versionS = new double[STARTS];
        double[] answerS = new double[STARTS];
        for (int i = 0; i < STARTS; i++) {
            long start = System.nanoTime();
            process(folder, "--version").waitFor();
            versionS[i] = since(start);
            start = System.nanoTime();
            Process served = process(folder, "serve", "--port", "0");
            try (BufferedReader lines =
                    new BufferedReader(
                            new InputStreamReader(
                                    served.getInputStream(), StandardCharsets.UTF_8))) {
                String line = Objects.requireNonNull(lines.readLine());
                ask(URI.create(line.split(" ", 4)[2]), "/api/session");
                answerS[i] = since(start);
            } finally {
                served.destroyForcibly().waitFor();
            }
        }
        Arrays.sort(versionS);
        Arrays.sort(answerS);
        told.add(
                text(
                        "desk: program start to first answer %.2f times --version (%.2f s and %.2f s)",
                        answerS[STARTS / 2] / versionS[STARTS / 2],
                        answerS[STARTS / 2],
                        versionS[STARTS / 2]));
    }

    private static Process process(Path folder, String... words) throws IOException {
        List<String> command =
                new ArrayList<>(
                        List.of(
                                System.getProperty("java.home") + "/bin/java",
                                "-cp",
                                System.getProperty("java.class.path"),
                                "underhook.cli.Main"));
        command.addAll(List.of(words));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("UNDERHOOK_HOME", folder + "/data");
        return builder.start();
    }

    private static double since(long startNanos) {
        return (System.nanoTime() - startNanos) / 1e9;
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
