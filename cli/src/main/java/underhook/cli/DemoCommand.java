package underhook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import underhook.app.PlanDay;
import underhook.app.desk.DeskJob;

/** The invented demo day, written, planned and shown. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Writes the invented demo day as a job folder, plans it and shows it.")
final class DemoCommand implements Callable<Integer> {
    /** Writes the demo day's job folder. */
    interface DemoWriter {
        void write(Path folder) throws IOException;
    }

    private final DemoWriter demo;
    private final PlanDay planDay;
    private final Showing showing;

    @Spec private CommandSpec spec;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "output folder; the job folder is DIR/job (default: demo in the data folder)")
    private Path out;

    @Option(names = "--no-serve", description = "do not show the plan afterwards")
    private boolean noServe;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = Showing.DEFAULT_PORT,
            description = "port (default ${DEFAULT-VALUE}); 0 takes any free one")
    private int port;

    DemoCommand(DemoWriter demo, PlanDay planDay, Showing showing, Path defaultOut) {
        this.demo = demo;
        this.planDay = planDay;
        this.showing = showing;
        this.out = defaultOut;
    }

    @Override
    public Integer call() throws IOException {
        CommandLine line = spec.commandLine();
        Given.requireOutFolder(line, out);
        Given.requirePort(line, port);
        Path job = out.resolve("job");
        demo.write(job);
        // Far beyond what it takes, so that the demo is the same day on a slow machine.
        PlanDay.Result result;
        LongWork.Stop stop;
        try (LongWork work = LongWork.begin(line.getErr())) {
            result =
                    planDay.plan(
                            new PlanDay.Request(job, out, 1, Duration.ofMinutes(2), work::mustEnd),
                            work);
            stop = work.stop();
        }
        int exit = PlanCommand.tell(result, stop, line.getOut());
        if (!noServe && stop == LongWork.Stop.NONE && result instanceof PlanDay.Planned planned) {
            showing.untilStopped(
                    new Showing.Where(port, Optional.empty(), Optional.empty()),
                    (desk, runs) -> {
                        DeskJob kept = desk.importFolder(job, "demo");
                        desk.keepPlan(kept, job, planned);
                    },
                    line.getOut());
        }
        return exit;
    }
}
