package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** Somebody stands in the job's own folder and names it with a dot. */
@Tag("slow")
class JobHereIT {
    @TempDir Path folder;

    @Test
    void reads_the_folder_it_was_started_in() throws IOException, InterruptedException {
        Path job = folder.resolve("job");
        new Underhook(new Settings(folder.resolve("home"), "test")).writeDemo(job);

        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                "underhook.cli.Main",
                                "check",
                                ".")
                        .directory(job.toFile())
                        .redirectErrorStream(true)
                        .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).as(said).isZero();
    }
}
