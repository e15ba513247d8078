package underhook.cli;

import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;
import underhook.app.FolderBusyException;
import underhook.app.PlanDay;
import underhook.app.calc.Calc;
import underhook.app.compare.CompareDays;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** Where the program begins. */
public final class Main {
    private static final System.Logger LOG = System.getLogger(Logs.OF_COMMANDS);

    private Main() {}

    public static void main(String[] arguments) {
        Settings settings =
                Settings.from(System.getenv(), Path.of(System.getProperty("user.home", "")));
        CommandLine commandLine = commandLine(settings);
        commandLine
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setOut(terminal(new FileOutputStream(FileDescriptor.out), false))
                .setErr(terminal(new FileOutputStream(FileDescriptor.err), true));
        System.exit(commandLine.execute(arguments));
    }

    /** Every word of the program, put together once. */
    static CommandLine commandLine(Settings settings) {
        Underhook underhook = new Underhook(settings);
        PlanDay planDay = underhook.planDay();
        Path data = settings.dataFolder();
        Showing showing =
                new Showing(
                        new Showing.Kit(
                                underhook::desk, underhook::planRuns, settings.program(), data));
        CommandLine commandLine =
                new CommandLine(new Root())
                        .addSubcommand(new CheckCommand(underhook.jobReader()))
                        .addSubcommand(new RoomCommand(underhook.roomAtPlaces()::find))
                        .addSubcommand(new PlanCommand(planDay))
                        .addSubcommand(
                                new CompareCommand(underhook.jobReader(), new CompareDays(planDay)))
                        .addSubcommand(
                                new AheadCommand(underhook.jobReader(), underhook.planReader()))
                        .addSubcommand(new VerifyCommand(underhook.verifyPlan()))
                        .addSubcommand(new ReplanCommand(underhook.replanDay()))
                        .addSubcommand(new CloseCommand(underhook.closeDay()))
                        .addSubcommand(new ArchiveCommand(underhook.archives()))
                        .addSubcommand(new QuoteCommand(underhook.quoteJob()::quote))
                        .addSubcommand(new ChangesCommand(underhook.mapChanges()::compare))
                        .addSubcommand(
                                new ServeCommand(showing, System.getenv(), underhook::rehearse))
                        .addSubcommand(
                                new DemoCommand(
                                        underhook::writeDemo,
                                        planDay,
                                        showing,
                                        data.resolve("demo")))
                        .addSubcommand(calcLine(underhook.calc()))
                        .addSubcommand(new ReportCommand(data, settings.program()));
        settle(commandLine, data);
        return commandLine;
    }

    private static CommandLine calcLine(Calc calc) {
        CommandLine line = new CommandLine(new CalcCommand(calc::run));
        line.getCommandSpec().usageMessage().footer(topics(calc));
        return line;
    }

    /** Each topic with its flags, those in brackets optional. */
    private static String[] topics(Calc calc) {
        Stream<String> lines =
                calc.listTopics().stream()
                        .map(topic -> "  " + topic + " " + String.join(" ", calc.listFlags(topic)));
        return Stream.concat(Stream.of("", "Topics and their flags:"), lines)
                .toArray(String[]::new);
    }

    private static int smallWholeNumber(String text) {
        try {
            return Math.toIntExact(wholeNumber(text));
        } catch (ArithmeticException large) {
            throw new TypeConversionException("'" + text + "' is too large");
        }
    }

    private static long wholeNumber(String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException none) {
            throw new TypeConversionException("'" + text + "' is no whole number");
        }
    }

    /** Java names files by the locale that it was started in: ASCII alone where none is set. */
    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException unnameable) {
            throw new TypeConversionException(
                    "this name cannot be read in the locale as set. Perhaps start with LC_ALL=C.UTF-8,"
                            + " or by ./underhook");
        }
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException none) {
            throw new TypeConversionException("'" + text + "' is no number");
        }
    }

    /** Whatever word fails unforeseen ends here, once. */
    static void settle(CommandLine commandLine, Path data) {
        commandLine
                .registerConverter(long.class, Main::wholeNumber)
                .registerConverter(Long.class, Main::wholeNumber)
                .registerConverter(int.class, Main::smallWholeNumber)
                .registerConverter(Integer.class, Main::smallWholeNumber)
                .registerConverter(Double.class, Main::number)
                .registerConverter(Path.class, Main::path)
                .setParameterExceptionHandler(new Mistyped());
        commandLine.setExecutionExceptionHandler(
                (failure, failed, parsed) -> {
                    if (failure instanceof FolderBusyException) {
                        failed.getErr().println("underhook: " + failure.getMessage());
                        return Exit.FAILED;
                    }
                    try {
                        Logs.keepIn(data);
                    } catch (IOException unwritable) {
                        failed.getErr().println("underhook: no log is kept: " + unwritable);
                    }
                    LOG.log(System.Logger.Level.ERROR, failed.getCommandName(), failure);
                    failed.getErr().println("underhook: failed: " + told(failure));
                    return Exit.FAILED;
                });
    }

    /** Of a file or a disk what it says; of all else its kind too, which is what a maintainer asks for. */
    private static String told(Exception failure) {
        if (failure instanceof FileSystemException file && file.getFile() != null) {
            String reason =
                    file.getReason() == null ? "not allowed or not there" : file.getReason();
            return file.getFile() + ": " + reason;
        }
        boolean isDisk = failure instanceof IOException && failure.getMessage() != null;
        return isDisk ? String.valueOf(failure.getMessage()) : failure.toString();
    }

    /**
     * Text in UTF-8 that steers no terminal.
     *
     * @param returns whether a line may be begun anew
     */
    static PrintWriter terminal(OutputStream where, boolean returns) {
        Writer utf8 = new OutputStreamWriter(where, StandardCharsets.UTF_8);
        return new PrintWriter(new BufferedWriter(new PlainWriter(utf8, returns)), true);
    }
}
