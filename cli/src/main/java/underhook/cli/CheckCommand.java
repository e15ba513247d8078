package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.core.job.Job;

/** Reads a job and lists every fault. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Reads a job folder and lists every fault, all at once.")
final class CheckCommand implements Callable<Integer> {
    private final JobReader reader;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "job folder")
    private Path folder;

    CheckCommand(JobReader reader) {
        this.reader = reader;
    }

    @Override
    public Integer call() {
        JobReading reading = reader.read(folder);
        PrintWriter out = spec.commandLine().getOut();
        reading.faults().forEach(out::println);
        if (reading.job().isEmpty()) {
            return Exit.INPUT_REFUSED;
        }
        Job job = reading.job().get().job();
        job.readingFindings().stream().map(Words::of).forEach(out::println);
        out.println(
                job.name()
                        + ": no faults; "
                        + Words.counted(job.loads().size(), "load")
                        + ", "
                        + Words.counted(job.places().size(), "place")
                        + ".");
        return Exit.DONE;
    }
}
