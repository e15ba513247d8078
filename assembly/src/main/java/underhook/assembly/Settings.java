package underhook.assembly;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Map;
import java.util.Objects;

/**
 * What the program takes from its surroundings.
 *
 * @param dataFolder where the program keeps what belongs to no job: {@code UNDERHOOK_HOME}, else
 *     {@code .underhook} in the user's folder
 * @param program name and version, as it stands in every plan
 * @param clock what time it is
 */
public record Settings(Path dataFolder, String program, InstantSource clock) {
    /** With the clock of this machine. */
    public Settings(Path dataFolder, String program) {
        this(dataFolder, program, InstantSource.system());
    }

    /** From the environment's variables and the user's folder. */
    public static Settings from(Map<String, String> environment, Path userFolder) {
        String home = environment.getOrDefault("UNDERHOOK_HOME", "");
        Path dataFolder = home.isBlank() ? userFolder.resolve(".underhook") : Path.of(home);
        return new Settings(dataFolder.toAbsolutePath(), "underhook " + version());
    }

    private static String version() {
        try (InputStream in =
                Objects.requireNonNull(Settings.class.getResourceAsStream("version.txt"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
