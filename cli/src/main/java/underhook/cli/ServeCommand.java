package underhook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.PlanDay;
import underhook.web.Day;

/** Plans jobs into the data folder and shows them. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "Plans each job into the data folder and shows the plans on 127.0.0.1.")
final class ServeCommand implements Callable<Integer> {
    private final PlanDay planDay;
    private final Path plansFolder;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "JOB", arity = "0..*", description = "job folders")
    private List<Path> jobs = new ArrayList<>();

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = Showing.DEFAULT_PORT,
            description = "port (default ${DEFAULT-VALUE}); 0 takes any free one")
    private int port;

    ServeCommand(PlanDay planDay, Path plansFolder) {
        this.planDay = planDay;
        this.plansFolder = plansFolder;
    }

    @Override
    public Integer call() throws IOException {
        CommandLine line = spec.commandLine();
        List<Day> days = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            Path out = plansFolder.resolve(String.format(Locale.ROOT, "served-%d", i + 1));
            PlanDay.Request request =
                    new PlanDay.Request(jobs.get(i), out, 1, Duration.ofSeconds(10));
            PlanDay.Result result = planDay.plan(request, ProgressLines.on(line.getErr()));
            int exit = PlanCommand.tell(result, line.getOut());
            if (!(result instanceof PlanDay.Planned planned)) {
                return exit;
            }
            days.add(Showing.day(planned, out));
        }
        Showing.untilStopped(days, port, line.getOut());
        return Exit.DONE;
    }
}
