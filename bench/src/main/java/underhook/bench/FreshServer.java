package underhook.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program's own server in a process of its own, as somebody starts it. */
final class FreshServer implements AutoCloseable {
    private static final Pattern SHOWN = Pattern.compile("Showing at (http://\\S+) .*");

    private final Process program;
    private final URI address;

    /**
     * Starts it; up when its address is told.
     *
     * @param home its data folder
     */
    FreshServer(Path home) throws IOException {
        ProcessBuilder java =
                new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx2g",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "underhook.cli.Main",
                        "serve",
                        "--port",
                        "0");
        java.environment().put("UNDERHOOK_HOME", home.toString());
        program = java.redirectError(ProcessBuilder.Redirect.DISCARD).start();
        address = told();
    }

    private URI told() throws IOException {
        BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8));
        while (true) {
            String line = Objects.requireNonNull(lines.readLine(), "the server did not start");
            Matcher shown = SHOWN.matcher(line);
            if (shown.matches()) {
                return URI.create(shown.group(1));
            }
        }
    }

    URI address() {
        return address;
    }

    @Override
    public void close() {
        program.destroy();
    }
}
