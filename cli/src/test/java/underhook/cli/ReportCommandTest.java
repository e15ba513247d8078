package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {
    @TempDir private Path data;

    @Test
    void packs_what_happened_without_any_name() throws IOException {
        Path logs = Files.createDirectories(data.resolve("logs"));
        Files.writeString(
                logs.resolve("underhook-0.log"),
                """
                2026-09-08T05:00:00.123Z SEVERE planning tarrowick-north
                java.io.IOException: /srv/secret/tarrowick/loads.csv is gone
                \tat underhook.app.desk.DeskJob.read(DeskJob.java:120)
                \tat java.base/java.lang.Thread.run(Thread.java:840)
                Caused by: java.nio.file.NoSuchFileException: loads of Mister Nobody
                some free text of Mister Nobody
                """);
        Files.createDirectories(data.resolve("jobs"));
        Files.writeString(data.resolve("jobs/tarrowick.underhook"), "12345");
        Path out = data.resolve("report.zip");

        assertThat(Said.of(data, "report", "--out", out.toString()).exit()).isZero();

        assertThat(entry(out, "log-1.txt"))
                .isEqualTo(
                        """
                        2026-09-08T05:00:00.123Z SEVERE
                        java.io.IOException
                        \tat underhook.app.desk.DeskJob.read(DeskJob.java:120)
                        \tat java.base/java.lang.Thread.run(Thread.java:840)
                        Caused by: java.nio.file.NoSuchFileException""");
        assertThat(entry(out, "about.txt"))
                .contains("underhook test", "java.version", "job 1 5 bytes")
                .doesNotContain("tarrowick");
    }

    private static String entry(Path zip, String name) throws IOException {
        try (ZipFile file = new ZipFile(zip.toFile())) {
            ZipEntry entry = file.getEntry(name);
            return new String(file.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
