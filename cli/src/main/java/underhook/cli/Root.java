package underhook.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program itself: says what words there are. */
@Command(
        name = "underhook",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "WORD",
        commandListHeading = "%nWords:%n",
        description = {
            "Plans a helicopter external-load day: which load when, from where to where, with which"
                    + " line and how much fuel, checked load by load.",
            "",
            "A planning aid. The pilot in command, the flight manual, the operator's manual and the"
                    + " line owner's rules decide."
        },
        footer = {
            "",
            "From the checkout, ./underhook also knows: test [fast], bench [NAME].",
            "Exit codes: 0 done, 1 failed, 2 input refused, 3 no plan possible, 4 plan refused by the"
                    + " verifier, 130 or 143 stopped before there was anything to write."
        },
        subcommands = HelpCommand.class)
final class Root implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), "Say what to do: one of the words below.");
    }
}
