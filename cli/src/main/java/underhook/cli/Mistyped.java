package underhook.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import underhook.app.port.NearestWord;

/** Says what was typed wrong, for what is not known the nearest known word, and how the word is used. */
final class Mistyped implements IParameterExceptionHandler {
    @Override
    public int handleParseException(ParameterException wrong, String[] typed) {
        CommandLine line = wrong.getCommandLine();
        PrintWriter err = line.getErr();
        err.println(wrong.getMessage());
        if (!(wrong instanceof UnmatchedArgumentException)
                && !line.getUnmatchedArguments().isEmpty()) {
            err.println("Unknown: " + String.join(" ", line.getUnmatchedArguments()));
        }
        List<String> unknown = line.getUnmatchedArguments();
        for (int i = 0; i < unknown.size(); i++) {
            // What follows an unknown word is what was meant for it.
            if (i == 0 || unknown.get(i).startsWith("-")) {
                hint(unknown.get(i), line, err);
            }
        }
        line.usage(err);
        return Exit.INPUT_REFUSED;
    }

    private static void hint(String typed, CommandLine line, PrintWriter err) {
        String word = typed.replaceFirst("=.*", "");
        boolean isOption = word.startsWith("-");
        List<String> known = isOption ? options(line) : List.copyOf(line.getSubcommands().keySet());
        String before = isOption ? "" : line.getCommandSpec().qualifiedName() + " ";
        if (!known.isEmpty()) {
            err.println(
                    NearestWord.find(word, known)
                            .map(near -> "Perhaps " + before + near + " is meant.")
                            .orElse(word + " is none of " + String.join(" ", known) + "."));
        }
    }

    private static List<String> options(CommandLine line) {
        return line.getCommandSpec().options().stream()
                .map(OptionSpec::longestName)
                .sorted()
                .toList();
    }
}
