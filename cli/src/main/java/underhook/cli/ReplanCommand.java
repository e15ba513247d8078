package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
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
                        + " TIME is HH:MM[:SS] on the job's day in its zone, or ISO 8601 with offset."
                        + " MASS is in kg, or in lb where that stands behind it.")
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
    private @Nullable String fuelKg;

    @Option(names = "--fuel-lb", paramLabel = "LB", description = "the same in pounds")
    private @Nullable String fuelLb;

    @Option(names = "--crew-late", paramLabel = "CREW=TIME", description = "not there before")
    private List<String> late = new ArrayList<>();

    @Option(
            names = "--crew-here",
            paramLabel = "CREW=PLACE[,TIME]",
            description = "a crew is there, since TIME or now, whatever was planned")
    private List<String> here = new ArrayList<>();

    @Option(names = "--weighed", paramLabel = "LOAD=MASS", description = "mass as weighed now")
    private List<String> weighed = new ArrayList<>();

    @Option(
            names = "--wind-earlier-min",
            paramLabel = "N",
            description = "all of the forecast to come is so much earlier")
    private @Nullable String windEarlierMin;

    @Option(
            names = "--wind-seen",
            paramLabel = "PLACE=DEG,KT,KT",
            description =
                    "wind at a place now: from degrees true, mean and gust; nowhere less for an"
                            + " hour")
    private List<String> windSeen = new ArrayList<>();

    @Option(names = "--place-closed", paramLabel = "PLACE", description = "may be repeated")
    private List<String> closed = new ArrayList<>();

    @Option(
            names = "--place-moved",
            paramLabel = "PLACE=DEG,M,CLEAR",
            description =
                    "from where the job has it: degrees true, metres, no trees within so many")
    private List<String> moved = new ArrayList<>();

    @Option(
            names = "--stands",
            paramLabel = "PLACE=DEG,M,HEIGHT",
            description =
                    "something stands there: degrees true and metres from a place, its height")
    private List<String> stands = new ArrayList<>();

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
        Typed typed = new Typed(() -> replanDay.findDay(folder));
        Optional<Instant> now = typed.read("--at", at, typed::time);
        OptionalDouble fuel = fuelKg(typed);
        List<Change> changes = changes(typed, now.orElse(Instant.EPOCH));
        typed.requireAll(line);
        ReplanDay.Result result;
        LongWork.Stop stop;
        try (LongWork work = LongWork.begin(line.getErr())) {
            result =
                    replanDay.replan(
                            new ReplanDay.Request(
                                    folder,
                                    plan,
                                    Optional.ofNullable(taps),
                                    now.orElseThrow(),
                                    fuel,
                                    changes,
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

    private OptionalDouble fuelKg(Typed typed) {
        if (fuelKg != null && fuelLb != null) {
            typed.refuse("--fuel-lb", fuelLb, "--fuel-kg says it already; one of them is allowed.");
            return OptionalDouble.empty();
        }
        return fuelKg != null
                ? typed.number("--fuel-kg", fuelKg)
                : fuelLb != null ? toKg(typed.number("--fuel-lb", fuelLb)) : OptionalDouble.empty();
    }

    private static OptionalDouble toKg(OptionalDouble massLb) {
        return massLb.isPresent() ? OptionalDouble.of(Units.lbToKg(massLb.getAsDouble())) : massLb;
    }

    private List<Change> changes(Typed typed, Instant now) {
        List<Change> all = new ArrayList<>();
        all.addAll(
                typed.readOnce(
                        "--crew-late",
                        late,
                        (crew, until) -> new Change.CrewLate(new CrewId(crew), typed.time(until))));
        all.addAll(
                typed.readOnce(
                        "--crew-here",
                        here,
                        (crew, said) -> {
                            String[] where = said.split(",", 2);
                            return new Change.CrewHere(
                                    new CrewId(crew),
                                    new PlaceId(where[0]),
                                    where.length == 1 ? now : typed.time(where[1]));
                        }));
        all.addAll(
                typed.readOnce(
                        "--weighed",
                        weighed,
                        (load, mass) -> new Change.Weighed(new LoadId(load), Typed.massKg(mass))));
        if (windEarlierMin != null) {
            typed.read("--wind-earlier-min", windEarlierMin, ReplanCommand::windEarlier)
                    .filter(earlier -> !earlier.by().isZero())
                    .ifPresent(all::add);
        }
        all.addAll(
                typed.readEach("--wind-seen", windSeen, (place, said) -> wind(place, said, now)));
        closed.forEach(
                place ->
                        typed.read("--place-closed", place, PlaceId::new)
                                .ifPresent(id -> all.add(new Change.PlaceClosed(id))));
        all.addAll(typed.readOnce("--place-moved", moved, ReplanCommand::moved));
        all.addAll(typed.readEach("--stands", stands, ReplanCommand::stands));
        dropped.forEach(
                load ->
                        typed.read("--load-dropped", load, LoadId::new)
                                .ifPresent(id -> all.add(new Change.LoadDropped(id))));
        return all;
    }

    private static Change.WindEarlier windEarlier(String text) {
        return new Change.WindEarlier(Duration.ofMinutes(Typed.wholeNumber(text)));
    }

    private static Change moved(String place, String said) {
        List<Integer> three = Typed.three(said);
        return new Change.PlaceMoved(
                new PlaceId(place), Units.degToRad(three.get(0)), three.get(1), three.get(2));
    }

    private static Change stands(String place, String said) {
        List<Integer> three = Typed.three(said);
        return new Change.StandsThere(
                new PlaceId(place), Units.degToRad(three.get(0)), three.get(1), three.get(2));
    }

    private static Change wind(String place, String said, Instant now) {
        List<Integer> three = Typed.three(said);
        return new Change.WindSeen(
                new PlaceId(place),
                Units.degToRad(three.get(0)),
                Units.ktToMPerS(three.get(1)),
                Units.ktToMPerS(three.get(2)),
                now);
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
