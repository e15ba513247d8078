package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileSumsTest {
    @TempDir Path folder;

    /** The one-block example that NIST gives for SHA-256. */
    @Test
    void is_what_any_other_program_says_of_the_file() throws IOException {
        Path file = Files.writeString(folder.resolve("abc"), "abc", StandardCharsets.US_ASCII);

        assertThat(FileSums.of(Map.of("abc", file, "gone", folder.resolve("gone"))))
                .containsExactly(
                        Map.entry(
                                "abc",
                                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
    }

    @Test
    void a_large_file_that_grew_is_another() throws IOException {
        Path file = folder.resolve("large");
        grow(file, (64L << 20) + 1);
        Map<String, String> before = FileSums.of(Map.of("large", file));
        grow(file, (64L << 20) + 2);

        assertThat(FileSums.of(Map.of("large", file))).isNotEqualTo(before);
    }

    private static void grow(Path file, long bytes) throws IOException {
        try (RandomAccessFile open = new RandomAccessFile(file.toFile(), "rw")) {
            open.setLength(bytes);
        }
    }
}
