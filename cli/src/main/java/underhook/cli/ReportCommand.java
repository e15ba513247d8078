package underhook.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Packs what maintainers need to find an error. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description = {
            "Packs a report for the maintainers.",
            "In it are versions, sizes, and of the logs the times, levels, kinds of errors and lines of"
                    + " this program. No message, name, path or position is in it."
        })
final class ReportCommand implements Callable<Integer> {
    /** Time and level as the log writes them; a message follows, which is left out. */
    private static final Pattern HEAD =
            Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9:.]+Z [A-Z]+");

    private static final Pattern FRAME =
            Pattern.compile("\\s+at [A-Za-z0-9_.$/@<>-]+\\([A-Za-z0-9_ .:]*\\)");
    private static final Pattern ERROR =
            Pattern.compile("((?:Caused by: )?[a-z][A-Za-z0-9_.$]*\\.[A-Z][A-Za-z0-9_$]*)(?::.*)?");

    private final Path dataFolder;
    private final String program;

    @Spec private CommandSpec spec;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            defaultValue = "underhook-report.zip",
            description = "file to write (default ${DEFAULT-VALUE})")
    private Path out;

    ReportCommand(Path dataFolder, String program) {
        this.dataFolder = dataFolder;
        this.program = program;
    }

    @Override
    public Integer call() throws IOException {
        try (OutputStream file = Files.newOutputStream(out);
                ZipOutputStream zip = new ZipOutputStream(file, StandardCharsets.UTF_8)) {
            add(zip, "about.txt", about());
            int number = 0;
            for (Path log : list(dataFolder.resolve(Logs.FOLDER), ".log")) {
                number++;
                List<String> lines = Files.readAllLines(log, StandardCharsets.UTF_8);
                add(zip, "log-" + number + ".txt", withoutNames(lines));
            }
        }
        spec.commandLine().getOut().println("wrote " + out);
        return Exit.DONE;
    }

    private List<String> about() throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add(program);
        for (String property : List.of("java.version", "java.vm.name", "os.name", "os.arch")) {
            lines.add(property + " " + System.getProperty(property, "unknown"));
        }
        lines.add("memory " + (Runtime.getRuntime().maxMemory() >> 20) + " MiB");
        int number = 0;
        for (Path job : list(dataFolder.resolve("jobs"), ".underhook")) {
            number++;
            lines.add(String.format(Locale.ROOT, "job %d %d bytes", number, Files.size(job)));
        }
        return lines;
    }

    private static List<Path> list(Path folder, String ending) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }

    /** Only what has one of three known shapes is kept, and of these only the part without words. */
    static List<String> withoutNames(List<String> lines) {
        List<String> kept = new ArrayList<>();
        for (String line : lines) {
            Matcher head = HEAD.matcher(line);
            Matcher error = ERROR.matcher(line);
            if (head.lookingAt()) {
                kept.add(head.group());
            } else if (FRAME.matcher(line).matches()) {
                kept.add(line);
            } else if (error.matches()) {
                kept.add(error.group(1));
            }
        }
        return kept;
    }

    private static void add(ZipOutputStream zip, String name, List<String> lines)
            throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }
}
