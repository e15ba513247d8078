package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.Rules;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.DayPrice;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.core.plan.ToldPlace;
import underhook.planner.search.DayTable;

/** A day ordered anew as one plan: what is frozen of the plan of record, and then the new order. */
final class JoinedDay {
    private static final Set<StepKind> STOPS =
            EnumSet.of(StepKind.REFUEL, StepKind.LINE_CHANGE, StepKind.BREAK, StepKind.POSITION);

    private static final String NO_ROOM =
            "What is left of the day has no room for it: wind, light, crews, fuel or duty end"
                    + " first.";

    private static final Unflown.Reason NOT_FOUND =
            new Unflown.Reason(
                    FindingCode.SEARCH_CUT,
                    "In the time there was no order near the known one was found in which it fits."
                            + " Perhaps ask again while nothing else runs.");

    private final DayModel model;
    private final TripMaker maker;
    private final DayTable table;
    private final People people;
    private final Plan record;
    private final Standing now;
    private final Frozen frozen;
    private final CrewsNow before;

    /** The loads' trips and the table of them. */
    record Puzzle(TripMaker maker, DayTable table) {}

    /** The plan that is flown, how its day stands, what of it is done, and where its crews are now. */
    record Old(Plan record, Standing now, Frozen frozen, CrewsNow crews) {}

    /**
     * What no order of the rest ends before.
     *
     * @param provenFor over which ways of combining its loads, as the plan says it
     */
    record Bound(Instant finishAt, String provenFor) {}

    JoinedDay(DayModel model, Puzzle puzzle, People people, Old old) {
        this.model = model;
        this.maker = puzzle.maker();
        this.table = puzzle.table();
        this.people = people;
        this.record = old.record();
        this.now = old.now();
        this.frozen = old.frozen();
        this.before = old.crews();
    }

    /**
     * The whole day: crews, poles and findings of what is done come from the plan of record.
     *
     * @param cut whether the search for it was ended before its end
     */
    Plan plan(DayState day, PlanSettings settings, Optional<Bound> bound, boolean cut) {
        List<RefusedComfort> comforts = new Discomforts(model).list(maker.trips(), people, day);
        Plan fresh =
                new PlanBuilder(
                                model,
                                maker,
                                people,
                                new PlanBuilder.Built(
                                        day, cut, Optional.empty(), comforts, frozen.steps()))
                        .build(settings, leftOut(day, cut), findings(model, people, maker, day));
        List<CrewStay> gone =
                people.teams.stream().flatMap(crew -> before.gone(crew).stream()).toList();
        List<CrewStay> crews = new ArrayList<>(gone);
        crews.addAll(fresh.crews());
        List<PoleSetting> poles = new ArrayList<>(fresh.poles());
        record.poles().stream().filter(pole -> frozen.holds(pole.load())).forEach(poles::add);
        List<Finding> findings = new ArrayList<>(fresh.findings());
        model.job.crews().forEach(crew -> findings.addAll(before.doubts(crew)));
        findings.addAll(frozen.doubts());
        findings.addAll(stops(fresh.leftOut()));
        findings.addAll(ofDone(findings));
        List<RefusedComfort> refused =
                new ArrayList<>(new Discomforts(model).ofDone(frozen.steps(), gone));
        refused.addAll(comforts);
        refused.sort(Comparator.comparing(RefusedComfort::at));
        return new Plan(
                fresh.id(),
                fresh.job(),
                fresh.made(),
                priced(fresh, refused, new Known(bound, told(before.told(), crews))),
                fresh.steps().stream().map(this::asTold).toList(),
                crews,
                fresh.leftOut(),
                findings,
                fresh.rooms(),
                poles,
                fresh.kit(),
                Optional.empty());
    }

    /** A stop that is made as it was planned is made for what that says. */
    private Step asTold(Step step) {
        return record.steps().stream()
                .filter(one -> one.kind() == step.kind() && one.startAt().equals(step.startAt()))
                .filter(one -> one.endAt().equals(step.endAt()) && one.to().equals(step.to()))
                .filter(one -> STOPS.contains(one.kind()))
                .findFirst()
                .map(one -> step.withBecause(one.because()))
                .orElse(step);
    }

    /** Where crews were said to be, as far as their lines still have it. */
    private static List<ToldPlace> told(List<ToldPlace> all, List<CrewStay> lines) {
        return all.stream()
                .filter(
                        one ->
                                lines.stream()
                                        .filter(line -> line.crew().equals(one.crew()))
                                        .anyMatch(line -> line.isAt(one.place(), one.at())))
                .toList();
    }

    /** What is stated with the sums of a day. */
    private record Known(Optional<Bound> bound, List<ToldPlace> told) {}

    private Summary priced(Plan fresh, List<RefusedComfort> refused, Known known) {
        Summary sum = fresh.summary();
        // Where nothing is flown any more the day ended before the order was asked for.
        Optional<Bound> bound =
                known.bound().filter(one -> !one.finishAt().isAfter(sum.finishAt()));
        Rules.Costs costs = model.rules.costs();
        Instant startAt = model.instant(new DayTables(model, maker, people).startS());
        List<Step> done = frozen.steps();
        Instant fromAt = done.isEmpty() ? startAt : done.get(done.size() - 1).endAt();
        DayPrice price =
                DayCosts.price(
                        costs,
                        millis(sum.flightS()),
                        Duration.between(startAt, sum.finishAt()),
                        refused);
        List<Step> toCome = fresh.steps().subList(done.size(), fresh.steps().size());
        DayPrice rest =
                DayCosts.price(
                        costs,
                        millis(PlanBuilder.flownS(toCome)),
                        Duration.between(fromAt, sum.finishAt()),
                        refused.stream().filter(one -> !one.at().isBefore(fromAt)).toList());
        Summary old = record.summary();
        return new Summary(
                sum.flightS(),
                sum.finishAt(),
                sum.counts(),
                new Summary.Bounds(
                        OptionalDouble.empty(),
                        bound.map(Bound::finishAt),
                        bound.map(Bound::provenFor)),
                sum.cutShort(),
                Optional.of(price),
                List.of(),
                Optional.of(
                        new Anew(
                                record.id(),
                                fromAt,
                                rest,
                                moreS(sum.flightS() - old.flightS()),
                                Duration.between(old.finishAt(), sum.finishAt()).toMillis()
                                        / 1000.0,
                                old.price()
                                        .map(
                                                was ->
                                                        OptionalLong.of(
                                                                price.totalCents()
                                                                        - was.totalCents()))
                                        .orElse(OptionalLong.empty()),
                                frozen.readings(),
                                known.told())));
    }

    private static Duration millis(double timeS) {
        return Duration.ofMillis(Math.round(timeS * 1000));
    }

    /** A plan that was read back has its minutes to six decimals: what is below a thousandth is no difference. */
    private static double moreS(double differenceS) {
        return Math.rint(differenceS * 1000) / 1000;
    }

    /** What the day as told says besides its lifts. */
    static List<Finding> findings(DayModel model, People people, TripMaker maker, DayState day) {
        List<Finding> all = new ArrayList<>(model.job.readingFindings());
        all.addAll(model.zonesAtPlaces().list());
        all.addAll(maker.findings());
        all.addAll(new DayFindings(model, people, maker, day).list());
        return Waivers.applied(model.job, all);
    }

    private List<Finding> stops(List<LeftOut> leftOut) {
        return leftOut.stream()
                .filter(out -> !maker.leftOut().containsKey(out.load()))
                .map(
                        out ->
                                Finding.of(
                                        out.code(),
                                        Severity.STOP,
                                        out.load().value(),
                                        "rules",
                                        out.message()))
                .toList();
    }

    /** What the plan of record says of loads that are flown, where the new one says nothing of it any more. */
    private List<Finding> ofDone(List<Finding> said) {
        return record.findings().stream()
                .filter(one -> isDone(one.subject()))
                .filter(
                        one ->
                                said.stream()
                                        .noneMatch(
                                                also ->
                                                        also.code() == one.code()
                                                                && also.subject()
                                                                        .equals(one.subject())))
                .toList();
    }

    private boolean isDone(String subject) {
        return model.job.loads().stream()
                .map(Load::id)
                .anyMatch(id -> id.value().equals(subject) && frozen.holds(id));
    }

    private List<LeftOut> leftOut(DayState day, boolean cut) {
        Map<LoadId, LeftOut> out = new LinkedHashMap<>(maker.leftOut());
        out.keySet().removeIf(frozen::holds);
        Optional<String> stuck = stuck();
        for (int k = 0; k < maker.trips().size(); k++) {
            Trip trip = maker.trips().get(k);
            if (day.releasedS().get(k) < 0) {
                Unflown unflown = new Unflown(table, k, trip, new Boarding(model, people));
                Unflown.Reason otherwise =
                        unflown.nobody()
                                .orElseGet(
                                        () ->
                                                cut && stuck.isEmpty()
                                                        ? NOT_FOUND
                                                        : new Unflown.Reason(
                                                                FindingCode.NO_ROOM_IN_DAY,
                                                                stuck.orElse(NO_ROOM)));
                trip.ids().forEach(id -> out.put(id, why(id, trip, day, otherwise)));
            }
        }
        return List.copyOf(out.values());
    }

    private LeftOut why(LoadId id, Trip trip, DayState day, Unflown.Reason otherwise) {
        for (int place : new int[] {trip.from(), trip.to()}) {
            if (now.closed().contains(model.places.get(place).id())) {
                // Of a day that is over no lift to come shows that the place is shut.
                return new LeftOut(
                        id,
                        frozen.isOver() ? FindingCode.NO_ROOM_IN_DAY : FindingCode.PLACE_UNUSED,
                        model.places.get(place).id() + " was closed during the day.");
            }
        }
        Waits waits = new Waits(model.job);
        Optional<LeftOut> vain = waits.inVain(id, before -> isFlown(before, day));
        return vain.orElse(new LeftOut(id, otherwise.code(), otherwise.message()));
    }

    private boolean isFlown(LoadId load, DayState day) {
        for (int k = 0; k < maker.trips().size(); k++) {
            if (day.releasedS().get(k) >= 0 && maker.trips().get(k).carries(load)) {
                return true;
            }
        }
        return false;
    }

    /** That the machine is where nothing leads away from any more; empty when something does. */
    private Optional<String> stuck() {
        List<Step> done = frozen.steps();
        if (done.isEmpty()) {
            return Optional.empty();
        }
        Step last = done.get(done.size() - 1);
        int at = model.place(last.to());
        int slot = model.air().slot(model.seconds(last.endAt()));
        int line = KnownOrder.line(model, last.lineLengthM());
        boolean leads = slot < 0;
        boolean leadsToFuel = slot < 0 || model.places.get(at).fuel();
        for (int to = 0; !(leads && leadsToFuel) && to < model.places.size(); to++) {
            Optional<DayLegs.LegAt> way =
                    to == at ? Optional.empty() : model.legs().emptyLeg(at, to, line, slot);
            leads |= way.isPresent();
            leadsToFuel |=
                    model.places.get(to).fuel()
                            && way.filter(leg -> keepsReserve(last, leg.durationS())).isPresent();
        }
        if (leads && leadsToFuel) {
            return Optional.empty();
        }
        return Optional.of(
                leads
                        ? "With "
                                + Figures.text(Math.floor(last.fuelEndKg()), 0)
                                + " kg of fuel at "
                                + last.to()
                                + " no way to fuel keeps the reserve. It must go there by eye; perhaps"
                                + " a new order once it is refuelled."
                        : "The machine is at "
                                + last.to()
                                + ", from where no way keeps the rules any more. It must leave by eye;"
                                + " perhaps a new order once the next lift is hooked elsewhere.");
    }

    private boolean keepsReserve(Step last, long flownS) {
        Machine machine = model.machine;
        double burnKg =
                machine.burnKgPerS() * (flownS + machine.reserveS())
                        + (last.engineRunning() ? 0 : machine.startFuelKg());
        return last.fuelEndKg() - machine.fuelGaugeSpreadKg() >= burnKg;
    }
}
