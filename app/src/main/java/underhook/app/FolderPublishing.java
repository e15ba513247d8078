package underhook.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import underhook.app.port.FindingsWriter;
import underhook.app.port.OutputWriter;
import underhook.core.finding.Finding;

/** Publishes into a folder on disk, which is locked for as long as it takes. */
public final class FolderPublishing implements PlanDay.Publishing {
    /** Tells an earlier run's folder from any other that holds a file of such a name. */
    private static final String PLAN_FILE = "plan.json";

    private final List<OutputWriter> writers;
    private final FindingsWriter findingsWriter;
    private final InstantSource clock;

    /**
     * @param writers of every file but the findings
     */
    public FolderPublishing(
            List<? extends OutputWriter> writers,
            FindingsWriter findingsWriter,
            InstantSource clock) {
        this.writers = List.copyOf(writers);
        this.findingsWriter = findingsWriter;
        this.clock = clock;
    }

    @Override
    public void tryOpen(Path out) throws IOException {
        OutputFolder.probe(out);
        if (Files.exists(out)) {
            open(out).close();
        }
    }

    @Override
    public List<Path> publish(OutputWriter.Output output, Path out) throws IOException {
        try (OutputFolder folder = open(out)) {
            return folder.write(output);
        }
    }

    @Override
    public void refuse(List<Finding> findings, Path out) throws IOException {
        try (OutputFolder folder = open(out)) {
            folder.writeRefusal(findings);
        }
    }

    @Override
    public void withdraw(Path out) throws IOException {
        if (Files.isRegularFile(out.resolve(PLAN_FILE))) {
            try (OutputFolder folder = open(out)) {
                folder.supersede();
            }
        }
    }

    private OutputFolder open(Path out) throws IOException {
        return OutputFolder.open(out, writers, findingsWriter, clock);
    }
}
