package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.Caution;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.PlanReader;
import underhook.app.port.ReadJob;
import underhook.core.ahead.Ahead;
import underhook.core.ahead.Answer;
import underhook.core.finding.Finding;
import underhook.core.finding.Outcome;
import underhook.core.plan.Plan;

/** Says what can be said of a job beside its plan. */
@Command(
        name = "ahead",
        mixinStandardHelpOptions = true,
        description = {
            "Says what can be said of a job beside its plan, each with its figures: notices near its places"
                    + " and legs, whether the heaviest pieces can be lifted in that month, how often"
                    + " the weather of past years let a day be flown, how the"
                    + " laydowns are laid out, what letters allow.",
            "Nothing of it changes a plan, and nothing of it clears anybody to fly."
        })
final class AheadCommand implements Callable<Integer> {
    private final JobReader jobs;
    private final PlanReader plans;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            description = "plan.json, whose legs count; else the straight ways of the loads do")
    private @Nullable Path planFile;

    @Option(names = "--json", description = "as one JSON object")
    private boolean json;

    AheadCommand(JobReader jobs, PlanReader plans) {
        this.jobs = jobs;
        this.plans = plans;
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        JobReading reading = jobs.read(folder);
        reading.faults().forEach(out::println);
        if (reading.job().isEmpty()) {
            return Exit.INPUT_REFUSED;
        }
        Optional<Plan> plan = Optional.empty();
        if (planFile != null) {
            Outcome<Plan> read = plans.read(planFile);
            List<Finding> refused =
                    read.isDone()
                            ? Ahead.refusals(reading.job().get().job(), read.getValue())
                            : read.findings();
            if (!refused.isEmpty()) {
                refused.stream().map((Finding one) -> Words.of(one)).forEach(out::println);
                return Exit.INPUT_REFUSED;
            }
            plan = Optional.of(read.getValue());
        }
        ReadJob job = reading.job().get();
        List<Answer> answers = Ahead.of(job.job(), job.ground(), job.beside(), plan);
        if (json) {
            out.println(JsonMapper.shared().writeValueAsString(json(answers)));
        } else {
            answers.forEach(answer -> tell(answer, out));
            out.println(Caution.TEXT);
        }
        return Exit.DONE;
    }

    private static void tell(Answer answer, PrintWriter out) {
        out.println(answer.topic().title() + ". " + answer.topic().caution());
        for (Answer.Point point : answer.points()) {
            out.println(
                    "  "
                            + point.mark().name()
                            + " "
                            + point.subject()
                            + ": "
                            + String.join(" ", point.sentences()));
            point.quoted().lines().forEach(line -> out.println("      | " + line.stripTrailing()));
        }
    }

    private static ObjectNode json(List<Answer> answers) {
        ObjectNode node = JsonMapper.shared().createObjectNode();
        node.put("caution", Caution.TEXT);
        ArrayNode all = node.putArray("answers");
        for (Answer answer : answers) {
            ObjectNode one = all.addObject();
            one.put("topic", answer.topic().name());
            one.put("title", answer.topic().title());
            one.put("caution", answer.topic().caution());
            ArrayNode points = one.putArray("points");
            for (Answer.Point point : answer.points()) {
                ObjectNode said = points.addObject();
                said.put("mark", point.mark().name());
                said.put("subject", point.subject());
                ArrayNode sentences = said.putArray("sentences");
                point.sentences().forEach(sentences::add);
                said.put("quoted", point.quoted());
            }
        }
        return node;
    }
}
