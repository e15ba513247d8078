package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** The real program, sent the signals of Ctrl-C and of a request to terminate, in a search of hours. */
@Tag("slow")
class StoppedIT {
    @TempDir static Path temp;

    @TempDir Path out;

    private static Path job = Path.of("");

    private final List<Process> begun = new ArrayList<>();

    @BeforeAll
    static void write() throws IOException {
        job = temp.resolve("job");
        new Underhook(new Settings(temp.resolve("home"), "test")).writeDemo(job);
    }

    @BeforeEach
    void leaveAnOldPlan() throws IOException {
        Files.writeString(out.resolve("plan.json"), "old", UTF_8);
    }

    @AfterEach
    void endAll() {
        begun.forEach(Process::destroyForcibly);
    }

    /** A running program, what it says and what it complains of. */
    private record Running(Process process, CompletableFuture<String> said, BufferedReader err) {
        /** Reads up to a line of progress. */
        void awaits(String progress) throws IOException {
            String line = err.readLine();
            while (line != null && !line.startsWith(progress)) {
                line = err.readLine();
            }
            assertThat(line).as("before it ended").isNotNull();
        }

        void send(String signal) throws Exception {
            String pid = Long.toString(process.pid());
            assertThat(new ProcessBuilder("kill", "-" + signal, pid).start().waitFor()).isZero();
        }

        /** How it ended, the rest of its complaints read. */
        int exit() throws Exception {
            CompletableFuture<Void> rest =
                    CompletableFuture.runAsync(() -> err.lines().forEach(line -> {}));
            assertThat(process.waitFor(5, TimeUnit.MINUTES)).as("it ends").isTrue();
            rest.join();
            return process.exitValue();
        }
    }

    private Running run(String... words) throws IOException {
        // A shell's background jobs hear no Ctrl-C, nor does what they start.
        List<String> line =
                new ArrayList<>(
                        List.of(
                                "env",
                                "--default-signal=INT",
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:+UseSerialGC",
                                "-cp",
                                System.getProperty("java.class.path"),
                                Main.class.getName()));
        line.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(line);
        builder.environment().put("UNDERHOOK_HOME", temp.resolve("home").toString());
        Process process = builder.start();
        begun.add(process);
        CompletableFuture<String> said =
                CompletableFuture.supplyAsync(
                        () -> {
                            try {
                                return new String(process.getInputStream().readAllBytes(), UTF_8);
                            } catch (IOException failed) {
                                throw new AssertionError(failed);
                            }
                        });
        return new Running(
                process,
                said,
                new BufferedReader(new InputStreamReader(process.getErrorStream(), UTF_8)));
    }

    private Running plan() throws IOException {
        return run(
                "plan",
                job.toString(),
                "--out",
                out.toString(),
                "--effort",
                "20000",
                "--seconds",
                "86400");
    }

    private List<String> written() throws IOException {
        try (Stream<Path> files = Files.list(out)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> !name.startsWith("."))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void ctrl_c_ends_the_search_and_the_best_day_is_finished_checked_and_written()
            throws Exception {
        Running running = plan();
        running.awaits("searching the order of the day");
        running.send("INT");
        running.awaits("Stopping: ");

        assertThat(running.exit()).as(running.said().join()).isEqualTo(Exit.DONE);
        assertThat(running.said().join())
                .contains("stopped: ")
                .contains("wrote " + out.toRealPath().resolve("plan.json"));
        assertThat(written())
                .containsExactly(
                        "cards.pdf",
                        "findings.csv",
                        "loads.csv",
                        "plan.geojson",
                        "plan.gpkg",
                        "plan.gpx",
                        "plan.json",
                        "plan.kml");
        JsonNode plan =
                JsonMapper.shared().readTree(Files.readString(out.resolve("plan.json"), UTF_8));
        assertThat(plan.path("summary").path("cutShort").asBoolean(false)).isTrue();
        assertThat(plan.path("summary").path("rotations").asInt(0)).isGreaterThan(20);
        Said verified =
                Said.of(
                        temp.resolve("other"),
                        "verify",
                        job.toString(),
                        out.resolve("plan.json").toString());
        assertThat(verified.exit()).as(verified.out()).isEqualTo(Exit.DONE);
    }

    /** Bounds and odds are there then, but not the loads to leave: the day is less than was asked for. */
    @Test
    void stopped_while_it_looks_for_loads_to_leave_it_says_that_more_is_missing() throws Exception {
        Running running =
                run(
                        "plan",
                        job.toString(),
                        "--out",
                        out.toString(),
                        "--effort",
                        "1",
                        "--seconds",
                        "600",
                        "--in-time",
                        "99");
        running.awaits("looking for loads to leave for another day");
        running.send("TERM");
        running.awaits("Stopping: ");

        assertThat(running.exit()).as(running.said().join()).isEqualTo(Exit.DONE);
        assertThat(running.said().join())
                .contains("stopped: not everything was looked for")
                .doesNotContain("nothing of the plan is missing")
                .contains("asked for 99 of 100 replayed days in time");
        JsonNode plan =
                JsonMapper.shared().readTree(Files.readString(out.resolve("plan.json"), UTF_8));
        assertThat(plan.path("summary").path("cutShort").asBoolean(false)).isTrue();
    }

    @Test
    void before_there_is_a_day_nothing_is_touched() throws Exception {
        Running running = plan();
        running.awaits("finding the ways");
        running.send("INT");
        running.awaits("Stopped before there was a day; nothing was written.");

        assertThat(running.exit()).isEqualTo(Exit.STOPPED);
        assertThat(running.said().join()).isEmpty();
        assertThat(written()).containsExactly("plan.json");
        assertThat(out.resolve("plan.json")).hasContent("old");
    }

    @Test
    void a_second_time_ends_it_at_once_with_nothing_half_written() throws Exception {
        Running running = plan();
        running.awaits("searching the order of the day");
        running.send("TERM");
        running.awaits("Stopping: ");
        running.send("TERM");

        // By the number of the signal, 15, as shells have it.
        assertThat(running.exit()).isEqualTo(128 + 15);
        assertThat(written()).containsExactly("plan.json");
        assertThat(out.resolve("plan.json")).hasContent("old");
    }

    @Test
    void days_set_side_by_side_are_told_as_far_as_they_were_looked_at() throws Exception {
        Running running = run("compare", job.toString(), "--seconds", "3600");
        running.awaits("as the files state it: searching");
        running.send("INT");

        assertThat(running.exit()).isEqualTo(Exit.DONE);
        assertThat(running.said().join())
                .contains("stopped: 1 of ")
                .contains("as the files state it (cut short)");
    }

    @Test
    void what_was_not_looked_at_is_told_to_a_program_as_well() throws Exception {
        Running running = run("compare", job.toString(), "--seconds", "3600", "--json");
        running.awaits("as the files state it: searching");
        running.send("INT");

        assertThat(running.exit()).isEqualTo(Exit.DONE);
        JsonNode told = JsonMapper.shared().readTree(running.said().join());
        assertThat(told.get("stopped").asBoolean()).isTrue();
        assertThat(told.get("days")).hasSize(1);
        assertThat(told.get("days").get(0).get("cutShort").asBoolean()).isTrue();
        assertThat(told.get("notLookedAt").toString()).contains("all that lies at A lies at A2");
    }
}
