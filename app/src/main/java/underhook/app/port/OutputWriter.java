package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;
import underhook.core.plan.Plan;
import underhook.core.plan.VerifierReport;

/** Writes one output file of a plan. */
public interface OutputWriter {
    /** Name of the file in the output folder. */
    String fileName();

    /** Writes the whole file. */
    void write(Output output, Path file) throws IOException;

    /** What is written. */
    record Output(ReadJob readJob, Plan plan, VerifierReport report) {}
}
