package underhook.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import underhook.app.OutputFolder;

/** What was given on the command line and cannot be, refused before any work is done. */
final class Given {
    private static final int LAST_PORT = 65_535;

    private Given() {}

    static void requirePort(CommandLine line, int port) {
        if (port < 0 || port > LAST_PORT) {
            throw new ParameterException(
                    line, "--port (" + port + ") must lie between 0 and " + LAST_PORT + ".");
        }
    }

    /** A folder or nothing yet, and no job: the outputs have a loads.csv as well. */
    static void requireOutFolder(CommandLine line, Path out) {
        if (out.toString().isEmpty()) {
            throw new ParameterException(line, "--out names no folder. Perhaps --out out.");
        }
        if (Files.exists(out) && !Files.isDirectory(out)) {
            throw new ParameterException(line, "--out (" + out + ") is a file, not a folder.");
        }
        if (Files.exists(out.resolve("job.yaml"))) {
            throw new ParameterException(
                    line,
                    "--out ("
                            + out
                            + ") is a job folder, whose files would be replaced. Perhaps "
                            + out.resolve("out")
                            + ".");
        }
        // Every run leaves its lock, and its findings beside its list: a list without both is
        // somebody's own.
        if (Files.exists(out.resolve("loads.csv"))
                && !Files.exists(out.resolve("findings.csv"))
                && !Files.exists(out.resolve(".underhook.lock"))) {
            throw new ParameterException(
                    line,
                    "--out ("
                            + out
                            + ") holds a loads.csv that no run wrote and that would be replaced. Perhaps "
                            + out.resolve("out")
                            + ".");
        }
        try {
            OutputFolder.probe(out);
        } catch (IOException unwritable) {
            throw new ParameterException(
                    line,
                    "--out (" + out + "): nothing can be written there. Perhaps another folder.");
        }
    }
}
