package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.replan.Change;
import underhook.app.replan.Proposal;
import underhook.app.replan.ReplanDay;
import underhook.core.finding.Finding;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Plan;
import underhook.core.unit.Units;

/** Orders the rest of a day anew. */
@Command(
        name = "replan",
        mixinStandardHelpOptions = true,
        description =
                "Freezes what is done of a plan and orders the rest anew, as near the plan as may be."
                        + " Times are ISO 8601 with offset.")
final class ReplanCommand implements Callable<Integer> {
    private final ReplanDay replanDay;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Parameters(index = "1", paramLabel = "PLAN", description = "plan.json that is flown")
    private Path plan;

    @Option(names = "--at", required = true, paramLabel = "TIME", description = "now")
    private String at;

    @Option(
            names = "--taps",
            paramLabel = "FILE",
            description = "table of what was tapped; without it the plan counts as flown")
    private @Nullable Path taps;

    @Option(names = "--fuel-kg", paramLabel = "KG", description = "fuel as read now")
    private @Nullable Double fuelKg;

    @Option(names = "--crew-late", paramLabel = "CREW=TIME", description = "not there before")
    private Map<String, String> late = new TreeMap<>();

    @Option(
            names = "--crew-here",
            paramLabel = "CREW=PLACE[,TIME]",
            description = "a crew is there, since TIME or now, whatever was planned")
    private Map<String, String> here = new TreeMap<>();

    @Option(names = "--weighed", paramLabel = "LOAD=KG", description = "mass as weighed now")
    private Map<String, Double> weighed = new TreeMap<>();

    @Option(
            names = "--wind-earlier-min",
            paramLabel = "N",
            description = "all of the forecast to come is so much earlier")
    private long windEarlierMin;

    @Option(
            names = "--wind-seen",
            paramLabel = "PLACE=DEG,KT,KT",
            description =
                    "wind at a place now: from degrees true, mean and gust; nowhere less for an"
                            + " hour")
    private Map<String, String> windSeen = new TreeMap<>();

    @Option(names = "--place-closed", paramLabel = "PLACE", description = "may be repeated")
    private List<String> closed = new ArrayList<>();

    @Option(
            names = "--place-moved",
            paramLabel = "PLACE=DEG,M,CLEAR",
            description =
                    "from where the job has it: degrees true, metres, no trees within so many")
    private Map<String, String> moved = new TreeMap<>();

    @Option(
            names = "--stands",
            paramLabel = "PLACE=DEG,M,HEIGHT",
            description =
                    "something stands there: degrees true and metres from a place, its height")
    private Map<String, String> stands = new TreeMap<>();

    @Option(names = "--load-dropped", paramLabel = "LOAD", description = "may be repeated")
    private List<String> dropped = new ArrayList<>();

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "output folder")
    private Path out;

    ReplanCommand(ReplanDay replanDay) {
        this.replanDay = replanDay;
    }

    @Override
    public Integer call() throws IOException {
        CommandLine line = spec.commandLine();
        Given.requireOutFolder(line, out);
        ReplanDay.Result result;
        LongWork.Stop stop;
        try (LongWork work = LongWork.begin(line.getErr())) {
            result =
                    replanDay.replan(
                            new ReplanDay.Request(
                                    folder,
                                    plan,
                                    Optional.ofNullable(taps),
                                    time("--at", at),
                                    fuelKg == null
                                            ? OptionalDouble.empty()
                                            : OptionalDouble.of(fuelKg),
                                    changes(),
                                    out,
                                    work::mustEnd),
                            work);
            stop = work.stop();
        }
        PrintWriter printer = line.getOut();
        printer.print(Words.ofNewOrder(stop));
        result.faults().forEach(printer::println);
        result.refusals().stream().map(Words::of).forEach(printer::println);
        result.proposal().ifPresent(proposal -> tell(proposal, printer));
        result.files().forEach(file -> printer.println("wrote " + file));
        if (result.proposal().isEmpty()) {
            return Exit.INPUT_REFUSED;
        }
        return result.proposal().get().isVerified() ? Exit.DONE : Exit.CHECK_REFUSED;
    }

    private List<Change> changes() {
        try {
            return given();
        } catch (IllegalArgumentException wrong) {
            String why = String.valueOf(wrong.getMessage());
            throw new ParameterException(spec.commandLine(), why, wrong);
        }
    }

    private List<Change> given() {
        List<Change> all = new ArrayList<>();
        late.forEach(
                (crew, until) ->
                        all.add(new Change.CrewLate(new CrewId(crew), time("--crew-late", until))));
        here.forEach((crew, said) -> all.add(here(crew, said)));
        weighed.forEach((load, kg) -> all.add(new Change.Weighed(new LoadId(load), kg)));
        if (windEarlierMin != 0) {
            all.add(new Change.WindEarlier(Duration.ofMinutes(windEarlierMin)));
        }
        windSeen.forEach((place, said) -> all.add(wind(new PlaceId(place), said)));
        closed.forEach(place -> all.add(new Change.PlaceClosed(new PlaceId(place))));
        moved.forEach(
                (place, said) -> {
                    int[] three = three("--place-moved", said);
                    all.add(
                            new Change.PlaceMoved(
                                    new PlaceId(place),
                                    Units.degToRad(three[0]),
                                    three[1],
                                    three[2]));
                });
        stands.forEach(
                (place, said) -> {
                    int[] three = three("--stands", said);
                    all.add(
                            new Change.StandsThere(
                                    new PlaceId(place),
                                    Units.degToRad(three[0]),
                                    three[1],
                                    three[2]));
                });
        dropped.forEach(load -> all.add(new Change.LoadDropped(new LoadId(load))));
        return all;
    }

    private Change wind(PlaceId place, String said) {
        int[] three = three("--wind-seen", said);
        return new Change.WindSeen(
                place,
                Units.degToRad(three[0]),
                Units.ktToMPerS(three[1]),
                Units.ktToMPerS(three[2]),
                time("--at", at));
    }

    private Change here(String crew, String said) {
        int comma = said.indexOf(',');
        String place = comma < 0 ? said : said.substring(0, comma);
        Instant since =
                comma < 0 ? time("--at", at) : time("--crew-here", said.substring(comma + 1));
        return new Change.CrewHere(new CrewId(crew), new PlaceId(place), since);
    }

    private int[] three(String option, String text) {
        if (!text.matches("([0-9]|[1-9][0-9]|[12][0-9]{2}|3[0-5][0-9]),[0-9]{1,3},[0-9]{1,3}")) {
            throw new ParameterException(
                    spec.commandLine(),
                    option
                            + " ("
                            + text
                            + ") must be degrees below 360 and two whole numbers below 1000.");
        }
        return Arrays.stream(text.split(",", -1)).mapToInt(Integer::parseInt).toArray();
    }

    private Instant time(String option, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException noTime) {
            throw new ParameterException(
                    spec.commandLine(),
                    option
                            + " ("
                            + text
                            + ") must be a time such as "
                            + LocalDate.EPOCH
                            + "T10:15:00+02:00.",
                    noTime);
        }
    }

    private static void tell(Proposal proposal, PrintWriter out) {
        Plan plan = proposal.plan();
        out.println(Words.summary(plan, proposal.job().job().zone()));
        out.println(
                "Steps done or begun: "
                        + proposal.frozenSteps()
                        + "; lifts to come that change places: "
                        + proposal.moved().size()
                        + ".");
        proposal.differences().forEach(out::println);
        out.println(Words.costs(proposal.costs(), proposal.job().job().zone()));
        proposal.doubts().stream().map(Words::of).forEach(out::println);
        List<Finding> unhooked = proposal.unhooked();
        unhooked.stream()
                .map(one -> "Begun, but not hooked yet: " + Words.of(one))
                .forEach(out::println);
        proposal.over().stream()
                .filter(one -> !unhooked.contains(one))
                .map(one -> "Of what is done or begun: " + Words.of(one))
                .forEach(out::println);
        proposal.broken().stream().map(Words::of).forEach(out::println);
        if (!proposal.isVerified()) {
            out.println("The verifier refused the plan; no plan was written.");
        }
    }
}
