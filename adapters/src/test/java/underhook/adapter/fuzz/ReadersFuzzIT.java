package underhook.adapter.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each reader of bytes against made-up input, grown by what reaches new code: no exception that is not
 * declared, no hang, no more memory than a quarter of a gigabyte. Runs and seed are fixed; more runs by
 * the property {@code underhook.fuzz.runs}, see docs/operating.md.
 */
@Tag("slow")
class ReadersFuzzIT {
    private static final int RUNS = Integer.getInteger("underhook.fuzz.runs", 500);
    private static final int SEED = Integer.getInteger("underhook.fuzz.seed", 20260908);
    private static final Pattern COVERED = Pattern.compile("(INITED|DONE)\\s+cov: ([0-9]+)");

    @TempDir Path folder;

    static Iterable<String> names() {
        return Targets.names();
    }

    @ParameterizedTest
    @MethodSource("names")
    @Execution(ExecutionMode.CONCURRENT)
    void survives_whatever_bytes_hold(String name) throws Exception {
        Path corpus = Files.createDirectory(folder.resolve("corpus"));
        Target target = Targets.of(name);
        int accepted = 0;
        for (byte[] seed : target.seeds()) {
            accepted += target.read(seed) ? 1 : 0;
            Files.write(corpus.resolve("seed-" + corpus.toFile().list().length), seed);
        }
        // Only input that is right leads into the reader.
        assertThat(accepted).isEqualTo(target.seeds().size());

        String said = fuzz(name, corpus);

        assertThat(said).as(said).contains("Done " + RUNS + " runs");
        // More code is reached than by the seeds, or there is nothing that looks at the readers.
        List<Integer> covered = new ArrayList<>();
        Matcher matcher = COVERED.matcher(said);
        while (matcher.find()) {
            covered.add(Integer.valueOf(matcher.group(2)));
        }
        assertThat(covered).as(said).hasSize(2);
        assertThat(covered.get(1)).isGreaterThan(covered.get(0));
    }

    private String fuzz(String name, Path corpus) throws IOException, InterruptedException {
        Path log = folder.resolve("log.txt");
        Path java = Path.of(System.getProperty("java.home", ""), "bin", "java");
        List<String> command =
                List.of(
                        java.toString(),
                        "-Xmx256m",
                        // A thousand runs are over before the better compiler has paid for itself.
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-Dtarget=" + name,
                        "-Djava.io.tmpdir=" + Files.createDirectory(folder.resolve("tmp")),
                        "-cp",
                        System.getProperty("java.class.path", ""),
                        "com.code_intelligence.jazzer.Jazzer",
                        "--target_class=" + Fuzzed.class.getName(),
                        "--instrumentation_includes=underhook.**",
                        // The hooks look for other dangers and cost most of the time.
                        "--custom_hook_includes=none.**",
                        "-runs=" + RUNS,
                        "-seed=" + SEED,
                        "-timeout=20",
                        "-artifact_prefix=" + folder + "/",
                        corpus.toString());
        Process process =
                new ProcessBuilder(command)
                        .directory(folder.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(log.toFile())
                        .start();
        process.getOutputStream().close();
        int exit = process.waitFor();
        String said = Files.readString(log, StandardCharsets.UTF_8);
        keep(name, said);
        assertThat(exit).as(said).isZero();
        return said;
    }

    /** The log stays with the reports of the tests, and so does the input of a crash. */
    private void keep(String name, String said) throws IOException {
        Path reports = Files.createDirectories(Path.of("target", "fuzz"));
        Files.writeString(reports.resolve(name + ".log"), said, StandardCharsets.UTF_8);
        try (var files = Files.list(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String found = Objects.toString(file.getFileName());
                if (found.matches("(crash|timeout|oom)-.*")) {
                    Files.write(reports.resolve(name + "-" + found), Files.readAllBytes(file));
                }
            }
        }
    }
}
