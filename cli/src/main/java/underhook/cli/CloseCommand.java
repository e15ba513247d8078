package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.evening.CloseDay;
import underhook.app.port.ClosedDay;

/** Closes a day that was flown. */
@Command(
        name = "close",
        mixinStandardHelpOptions = true,
        description =
                "Puts what was tapped and tracked beside the plan: lifts, hours, cycles, invoice basis,"
                        + " hand-over, and what the day teaches.")
final class CloseCommand implements Callable<Integer> {
    private final CloseDay closeDay;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json of the day")
    private Path plan;

    @Option(names = "--taps", paramLabel = "FILE", description = "table of what was tapped")
    private @Nullable Path taps;

    @Option(names = "--track", paramLabel = "FILE", description = "recorded track, .gpx or .csv")
    private @Nullable Path track;

    @Option(
            names = "--books",
            paramLabel = "FILE",
            description = "YAML: who may hook, tariff, counted lives")
    private @Nullable Path books;

    @Option(
            names = "--earlier",
            paramLabel = "FILE",
            description = "samples.csv of an earlier day; may be repeated")
    private List<Path> earlier = new ArrayList<>();

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "output folder")
    private Path out;

    CloseCommand(CloseDay closeDay) {
        this.closeDay = closeDay;
    }

    @Override
    public Integer call() throws IOException {
        Given.requireOutFolder(spec.commandLine(), out);
        CloseDay.Result result =
                closeDay.close(
                        new CloseDay.Request(
                                folder,
                                plan,
                                Optional.ofNullable(taps),
                                Optional.ofNullable(track),
                                Optional.ofNullable(books),
                                earlier,
                                out));
        PrintWriter printer = spec.commandLine().getOut();
        result.faults().forEach(printer::println);
        result.refusals().stream().map(Words::of).forEach(printer::println);
        result.day().ifPresent(day -> tell(day, printer));
        result.files().forEach(file -> printer.println("  " + file));
        return result.day().isPresent() ? Exit.DONE : Exit.INPUT_REFUSED;
    }

    private static void tell(ClosedDay day, PrintWriter printer) {
        long done = day.lifts().stream().filter(ClosedDay.LiftLine::isDone).count();
        long planned =
                day.lifts().stream().filter(line -> line.plannedHookedAt().isPresent()).count();
        printer.printf(
                "%s done, %d planned; %s, %s, %.0f min flying.%n",
                Words.counted(done, "load"),
                planned,
                Words.counted(day.flown().sums().lifts(), "lift"),
                Words.counted(day.flown().sums().landings(), "landing"),
                Math.ceil(day.flown().sums().flyingS() / 60));
        day.findings().stream().map(Words::of).forEach(printer::println);
        day.invoice()
                .ifPresent(
                        invoice ->
                                printer.printf(
                                        "Invoice basis: %d.%02d %s%n",
                                        invoice.total().cents() / 100,
                                        invoice.total().cents() % 100,
                                        invoice.total().currency()));
    }
}
