package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.VerifyPlan;

/** Re-checks a written plan. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = "Re-checks a written plan.json against its job, with the verifier alone.")
final class VerifyCommand implements Callable<Integer> {
    private final VerifyPlan verifyPlan;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json")
    private Path plan;

    VerifyCommand(VerifyPlan verifyPlan) {
        this.verifyPlan = verifyPlan;
    }

    @Override
    public Integer call() {
        VerifyPlan.Result result = verifyPlan.verify(folder, plan);
        PrintWriter out = spec.commandLine().getOut();
        result.faults().forEach(out::println);
        if (!result.faults().isEmpty()) {
            return Exit.INPUT_REFUSED;
        }
        result.report().over().stream()
                .map(one -> "Of what is done or begun: " + Words.of(one))
                .forEach(out::println);
        result.report().violations().stream().map(Words::of).forEach(out::println);
        boolean holds = result.report().holds();
        out.println(
                (holds ? "The plan holds: " : "Refused: ")
                        + result.report().checks()
                        + " checks, "
                        + result.report().violations().size()
                        + " violations.");
        return holds ? Exit.DONE : Exit.CHECK_REFUSED;
    }
}
