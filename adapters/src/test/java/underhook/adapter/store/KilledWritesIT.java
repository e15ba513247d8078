package underhook.adapter.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.KeptJob;

/** A process killed in the middle of its work loses nothing that it said it had kept. */
@Tag("slow")
class KilledWritesIT {
    private static final int KILLS = 20;

    @TempDir private Path folder;

    @Test
    void loses_no_change_that_was_told() throws Exception {
        Random random = new Random(11);
        long told = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            told = killAfter(told + 1 + random.nextInt(12));
            checkAll(told);
        }
        assertThat(told).isGreaterThan(KILLS);
    }

    /** Kills as soon as a number was told, while the next change is being written; what was told last. */
    private long killAfter(long number) throws IOException, InterruptedException {
        Process process =
                new ProcessBuilder(
                                System.getProperty("java.home") + "/bin/java",
                                "-XX:TieredStopAtLevel=1",
                                "-XX:+UseSerialGC",
                                "-cp",
                                System.getProperty("java.class.path"),
                                EndlessWrites.class.getName(),
                                folder.toString())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
        long told = 0;
        try (BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                told = Long.parseLong(line);
                if (told >= number) {
                    // Unlike the process itself, its handle leaves the stream open.
                    process.toHandle().destroyForcibly();
                }
            }
        } finally {
            process.destroyForcibly().waitFor();
        }
        return told;
    }

    private void checkAll(long told) throws IOException {
        try (KeptJob job = new SqliteJobStore(folder, "somebody").open("day")) {
            long head = job.findHead().orElseThrow().id();
            assertThat(head).isGreaterThanOrEqualTo(told);
            assertThat(job.listRevisions()).hasSize(Math.toIntExact(head));
            for (long revision = Math.max(1, head - 20); revision <= head; revision++) {
                String hash = job.listFiles(revision).getOrDefault("loads.csv", "");
                assertThat(job.getContent(hash).toText()).startsWith("state " + revision + "\n");
            }
        }
    }
}
