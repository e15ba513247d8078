package underhook.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import picocli.CommandLine;
import underhook.assembly.Settings;

/** What the whole program, run in this process with one line of words, said and how it ended. */
record Said(int exit, String out, String err) {
    /** Runs the program; {@code data} stands for its data folder. */
    static Said of(Path data, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = Main.commandLine(new Settings(data, "underhook test"));
        line.setOut(new PrintWriter(out, true)).setErr(new PrintWriter(err, true));
        int exit = line.execute(arguments);
        return new Said(exit, out.toString(), err.toString());
    }
}
