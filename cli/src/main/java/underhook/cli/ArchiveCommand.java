package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.port.Archive;

/** Shows every version of a kept job, and whether anything was altered later. */
@Command(
        name = "archive",
        mixinStandardHelpOptions = true,
        description =
                "Every change and plan of a kept job, with who made it, and whether anything was altered"
                        + " later. FILE is a job handed over, or one in the data folder's jobs.")
final class ArchiveCommand implements Callable<Integer> {
    private final Archive.Reader reader;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "a job's .underhook file")
    private Path file;

    ArchiveCommand(Archive.Reader reader) {
        this.reader = reader;
    }

    @Override
    public Integer call() {
        PrintWriter printer = spec.commandLine().getOut();
        Archive archive;
        try {
            archive = reader.read(file);
        } catch (IOException unreadable) {
            printer.println(unreadable.getMessage());
            return Exit.INPUT_REFUSED;
        }
        printer.println(archive.job());
        for (Archive.Entry entry : archive.entries()) {
            printer.printf(
                    "  %d. %s %s, %s, by %s: %s [%s]%n",
                    entry.number(),
                    entry.kind().name().toLowerCase(Locale.ROOT),
                    entry.subject(),
                    entry.at().equals(Instant.EPOCH) ? "before there were seals" : entry.at(),
                    entry.who().isEmpty() ? "nobody known" : entry.who(),
                    entry.what(),
                    entry.hash().substring(0, 12));
        }
        printer.println(
                archive.broken()
                        .map(broken -> "ALTERED: " + broken)
                        .orElse(
                                "Whole: "
                                        + archive.entries().size()
                                        + " entries, nothing was altered later."));
        return archive.broken().isPresent() ? Exit.CHECK_REFUSED : Exit.DONE;
    }
}
