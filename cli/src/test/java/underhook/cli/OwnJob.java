package underhook.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes the job that docs/own-job.md tells a newcomer to type. */
final class OwnJob {
    private static final Pattern FILE =
            Pattern.compile("(?ms)^`([a-z]+\\.(?:yaml|csv))`[^\\n]*\\n\\n```(?:yaml)?\\n(.*?)^```");
    private static final int CELLS = 100;

    private OwnJob() {}

    /** The job's folder, in another one. */
    static Path write(Path folder) throws IOException {
        Path job = folder.resolve("mine");
        Files.createDirectories(job);
        Matcher file = FILE.matcher(Files.readString(Path.of("../docs/own-job.md")));
        while (file.find()) {
            Files.writeString(job.resolve(file.group(1)), file.group(2), StandardCharsets.UTF_8);
        }
        Files.writeString(job.resolve("terrain.asc"), flat(), StandardCharsets.UTF_8);
        return job;
    }

    /** Puts other words into a file of a job. */
    static void replace(Path file, String old, String other) throws IOException {
        String text = Files.readString(file);
        if (!text.contains(old)) {
            throw new IllegalArgumentException(file + " has no \"" + old + "\".");
        }
        Files.writeString(file, text.replace(old, other));
    }

    /** What the line of awk in the document prints. */
    private static String flat() {
        String row = " 100".repeat(CELLS) + "\n";
        return "ncols 100\nnrows 100\nxllcorner 496000\nyllcorner 5096000\ncellsize 100\nnodata_value -9999\n"
                + row.repeat(CELLS);
    }
}
