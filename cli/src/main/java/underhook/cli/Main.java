package underhook.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import underhook.assembly.Underhook;

/** Where the program begins. */
public final class Main {
    private static final System.Logger LOG = System.getLogger("underhook");

    private Main() {}

    public static void main(String[] arguments) {
        Underhook underhook = new Underhook();
        CommandLine commandLine =
                new CommandLine(new Root())
                        .addSubcommand(new CheckCommand(underhook.jobReader()))
                        .addSubcommand(new VerifyCommand(underhook.verifyPlan()))
                        .addSubcommand(new CalcCommand(underhook.calc()::run));
        settle(commandLine);
        commandLine.setOut(utf8(FileDescriptor.out)).setErr(utf8(FileDescriptor.err));
        System.exit(commandLine.execute(arguments));
    }

    /** Whatever word fails unforeseen ends here, once. */
    static void settle(CommandLine commandLine) {
        commandLine.setExecutionExceptionHandler(
                (failure, failed, parsed) -> {
                    LOG.log(System.Logger.Level.ERROR, failed.getCommandName(), failure);
                    failed.getErr().println("underhook: failed: " + failure);
                    return Exit.FAILED;
                });
    }

    private static PrintWriter utf8(FileDescriptor where) {
        return new PrintWriter(
                new OutputStreamWriter(new FileOutputStream(where), StandardCharsets.UTF_8), true);
    }
}
