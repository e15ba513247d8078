package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javax.net.ssl.SSLContext;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;
import underhook.app.desk.PlanRuns;
import underhook.app.port.Fault;

/** Opens the planning desk. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = {
            "Opens the planning desk on 127.0.0.1 with every job of the data folder.",
            "Job folders named here are taken in; the folders themselves stay as they are."
        })
final class ServeCommand implements Callable<Integer> {
    private static final int LEAST_SECRET = 12;

    private final Showing showing;
    private final Map<String, String> environment;
    private final Consumer<Instant> clock;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "JOB", arity = "0..*", description = "job folders")
    private List<Path> jobs = new ArrayList<>();

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = Showing.DEFAULT_PORT,
            description = "port (default ${DEFAULT-VALUE}); 0 takes any free one")
    private int port;

    @Option(
            names = "--network",
            description =
                    "also answer on the network, to whoever gives the secret that stands in the variable "
                            + Showing.SECRET_VARIABLE)
    private boolean network;

    @Option(
            names = "--certificate",
            paramLabel = "FILE",
            description =
                    "answer over https with this PKCS 12 file, opened by the variable "
                            + Certificate.PASSWORD_VARIABLE)
    private @Nullable Path certificate;

    @Option(
            names = "--rehearse",
            paramLabel = "TIME",
            description =
                    "set the clock of the desk to a time of the job's day, such as"
                            + " 2026-09-08T06:30-01:00, to try the day before it is flown")
    private @Nullable OffsetDateTime rehearse;

    ServeCommand(Showing showing, Map<String, String> environment, Consumer<Instant> clock) {
        this.clock = clock;
        this.showing = showing;
        this.environment = environment;
    }

    @Override
    public Integer call() throws IOException {
        CommandLine line = spec.commandLine();
        Given.requirePort(line, port);
        Optional<String> secret =
                Optional.ofNullable(environment.get(Showing.SECRET_VARIABLE))
                        .filter(said -> network);
        if (network && secret.filter(said -> said.length() >= LEAST_SECRET).isEmpty()) {
            throw new ParameterException(
                    line,
                    "--network needs a secret of at least "
                            + LEAST_SECRET
                            + " characters in the variable "
                            + Showing.SECRET_VARIABLE
                            + ".");
        }
        if (rehearse != null) {
            clock.accept(rehearse.toInstant());
        }
        for (Path job : jobs) {
            if (!Files.isDirectory(job)) {
                throw new ParameterException(line, job + " is no folder.");
            }
        }
        showing.untilStopped(
                new Showing.Where(port, secret, tls()),
                (desk, runs) -> {
                    for (Path job : jobs) {
                        lay(job, desk, runs, line.getOut());
                    }
                },
                line.getOut());
        return Exit.DONE;
    }

    private Optional<SSLContext> tls() throws IOException {
        return certificate == null
                ? Optional.empty()
                : Optional.of(
                        Certificate.read(
                                certificate,
                                environment.getOrDefault(Certificate.PASSWORD_VARIABLE, "")));
    }

    /** Faults do not keep a job from the desk: that is where they are mended. */
    private static void lay(Path folder, Desk desk, PlanRuns runs, PrintWriter out)
            throws IOException {
        DeskJob job = desk.importFolder(folder, Desk.idOf(folder));
        List<Fault> faults = job.read().faults();
        faults.forEach(out::println);
        out.println(
                folder
                        + " is on the desk as "
                        + job.id()
                        + ", revision "
                        + job.head().id()
                        + (faults.isEmpty()
                                ? "."
                                : ", with " + Words.counted(faults.size(), "fault") + "."));
        if (faults.isEmpty() && job.findPlan().filter(plan -> isOf(job, plan)).isEmpty()) {
            runs.start(job, new PlanRuns.Wish(1, Duration.ofSeconds(60)));
        }
    }

    private static boolean isOf(DeskJob job, DeskJob.KnownPlan plan) {
        try {
            return !job.isStale(plan.kept());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
