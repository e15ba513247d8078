package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.PlanDay;

/** Plans a day and writes its files. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Plans the day of a job folder, re-checks the plan and writes its files.")
final class PlanCommand implements Callable<Integer> {
    private static final long USUAL_S = 10;

    private final PlanDay planDay;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "output folder")
    private Path out;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description =
                    "longest time for the search (default 10, or twice an effort above 10); four tenths of it"
                            + " are kept for the order, however late a first day is there")
    private @Nullable Long seconds;

    @Option(
            names = "--effort",
            paramLabel = "N",
            defaultValue = "2",
            description =
                    "work of the search, as much as is meant for N seconds: more finds a better day"
                            + " (default ${DEFAULT-VALUE})")
    private long effort;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "seed of the search (default ${DEFAULT-VALUE})")
    private long seed;

    @Option(
            names = "--in-time",
            paramLabel = "N",
            description =
                    "look for a surer order, then leave loads for another day, until N of 100 replayed days"
                            + " are in time, from 1 to 99")
    private @Nullable Integer inTime;

    PlanCommand(PlanDay planDay) {
        this.planDay = planDay;
    }

    @Override
    public Integer call() throws IOException {
        CommandLine line = spec.commandLine();
        requireSeconds(line, "--effort", effort);
        long most = seconds != null ? seconds : effort > USUAL_S ? 2 * effort : USUAL_S;
        requireSeconds(line, "--seconds", most);
        if (inTime != null && (inTime < 1 || inTime > 99)) {
            throw new ParameterException(
                    line, "--in-time (" + inTime + ") must lie between 1 and 99.");
        }
        Given.requireOutFolder(line, out);
        PlanDay.Result result;
        LongWork.Stop stop;
        try (LongWork work = LongWork.begin(line.getErr())) {
            PlanDay.Request request =
                    new PlanDay.Request(
                            folder,
                            out,
                            seed,
                            Duration.ofSeconds(effort),
                            Duration.ofSeconds(most),
                            work::mustEnd);
            result =
                    planDay.plan(inTime == null ? request : request.inTimeOn(inTime / 100.0), work);
            stop = work.stop();
        }
        int exit = tell(result, stop, line.getOut());
        if (inTime != null && result instanceof PlanDay.Planned planned) {
            line.getOut().println(Words.inTime(planned.output(), inTime));
        }
        return exit;
    }

    private static void requireSeconds(CommandLine line, String name, long seconds) {
        if (seconds < 1 || seconds > 86_400) {
            throw new ParameterException(
                    line, name + " (" + seconds + ") must lie between 1 and 86400.");
        }
    }

    /** Says what came of it and gives the exit code. */
    static int tell(PlanDay.Result result, LongWork.Stop stop, PrintWriter out) {
        return result.fold(
                refused -> {
                    refused.faults().forEach(out::println);
                    return Exit.INPUT_REFUSED;
                },
                none -> {
                    if (none.isStopped()) {
                        out.println("Stopped before there was a day; nothing was written.");
                        return Exit.STOPPED;
                    }
                    none.findings().stream().map(Words::of).forEach(out::println);
                    out.println("No plan is possible.");
                    return Exit.NO_PLAN;
                },
                wrong -> {
                    wrong.report().violations().stream().map(Words::of).forEach(out::println);
                    out.println("The verifier refused the plan; no plan was written.");
                    return Exit.CHECK_REFUSED;
                },
                planned -> {
                    out.println(
                            Words.summary(
                                    planned.output().plan(),
                                    planned.output().readJob().job().zone(),
                                    stop));
                    planned.files().forEach(file -> out.println("wrote " + file));
                    return Exit.DONE;
                });
    }
}
