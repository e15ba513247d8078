package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;
import underhook.app.PlanDay;
import underhook.app.compare.Alternative;
import underhook.app.compare.Alternative.Kind;
import underhook.app.compare.CompareDays;
import underhook.app.port.Caution;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.ReadJob;

/** Sets whole days of one job side by side. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = {
            "Plans a job as it stands, with all loads of one laydown at another, with one line alone and"
                    + " with each other machine that job.yaml names, and sets the days side by side.",
            "Laydowns are ranked by minutes and by what loads are carried over. Each day is re-checked;"
                    + " nothing is kept or written."
        })
final class CompareCommand implements Callable<Integer> {
    private final JobReader reader;
    private final CompareDays days;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Option(names = "--laydowns", description = "only other laydowns")
    private boolean laydowns;

    @Option(names = "--lines", description = "only one line alone")
    private boolean lines;

    @Option(names = "--machines", description = "only other machines")
    private boolean machines;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            defaultValue = "60",
            description = "longest time for each day's search (default ${DEFAULT-VALUE})")
    private long seconds;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "seed of the search (default ${DEFAULT-VALUE})")
    private long seed;

    @Option(names = "--json", description = "as one JSON object")
    private boolean json;

    CompareCommand(JobReader reader, CompareDays days) {
        this.reader = reader;
        this.days = days;
    }

    @Override
    public Integer call() {
        if (seconds < 1 || seconds > 86_400) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--seconds (" + seconds + ") must lie between 1 and 86400.");
        }
        PrintWriter out = spec.commandLine().getOut();
        JobReading reading = reader.read(folder);
        reading.faults().forEach(out::println);
        return reading.job().map(job -> compare(job, out)).orElse(Exit.INPUT_REFUSED);
    }

    private int compare(ReadJob job, PrintWriter out) {
        Set<Kind> asked = asked();
        List<Alternative> ways =
                Alternative.of(job).stream().filter(way -> asked.contains(way.kind())).toList();
        List<CompareDays.Row> rows;
        boolean isStopped;
        try (LongWork work = LongWork.begin(spec.commandLine().getErr())) {
            PlanDay.Request request =
                    new PlanDay.Request(
                            folder, folder, seed, Duration.ofSeconds(seconds), work::mustEnd);
            rows = days.plan(ways, request, work);
            isStopped = work.stop() != LongWork.Stop.NONE;
        }
        if (json) {
            out.println(
                    JsonMapper.shared()
                            .writeValueAsString(
                                    CompareWords.json(
                                            rows,
                                            isStopped,
                                            ways.subList(rows.size(), ways.size()),
                                            job.job().zone())));
        } else {
            if (isStopped) {
                out.println(CompareWords.stopped(rows, ways.size()));
            }
            CompareWords.of(rows, job.job().zone()).forEach(out::println);
            out.println(Caution.TEXT);
        }
        return rows.stream().anyMatch(row -> row.figures().isPresent()) ? Exit.DONE : Exit.NO_PLAN;
    }

    private Set<Kind> asked() {
        Set<Kind> asked = EnumSet.of(Kind.AS_STATED);
        boolean isAll = !laydowns && !lines && !machines;
        if (isAll || laydowns) {
            asked.add(Kind.LAYDOWN);
        }
        if (isAll || lines) {
            asked.add(Kind.LINE);
        }
        if (isAll || machines) {
            asked.add(Kind.MACHINE);
        }
        return asked;
    }
}
