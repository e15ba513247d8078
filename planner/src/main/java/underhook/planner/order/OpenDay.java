package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.planner.search.DayTable;
import underhook.planner.search.Midday;
import underhook.planner.search.Ordered;
import underhook.planner.search.RestOrder;

/**
 * A day kept open: its model stays warm, and what is left of it is ordered anew from how it stands. Not safe
 * for threads.
 */
public final class OpenDay {
    /** Days that the search near the known order builds for each trip left. */
    private static final int DAYS_PER_TRIP = 400;

    private static final int LEAST_TRIPS = 8;

    private final Job job;
    private final DayModel model;
    private final TripMaker maker;
    private final People people;
    private final DayTable table;

    /**
     * How long it may look.
     *
     * @param searches whether it looks for a better order than the known one
     * @param bounds whether it says what no order ends before
     * @param stop says true when it must end with the best so far
     */
    public record Effort(boolean searches, boolean bounds, BooleanSupplier stop) {
        /** The known order alone. */
        public static final Effort FIRST = new Effort(false, false, () -> false);
    }

    /**
     * The rest of a day ordered anew.
     *
     * @param plan the whole day, what is frozen first; not yet re-checked
     * @param frozen the same up to now alone, for the re-check to tell old from new
     * @param frozenSteps how many of its steps are done or begun
     */
    public record Reordered(Plan plan, Plan frozen, int frozenSteps) {}

    /** Opens a day; takes as long as finding its ways does. */
    public OpenDay(Job job, Ground ground) {
        this(job, new DayModel(job, ground));
    }

    private OpenDay(Job job, DayModel model) {
        this.job = job;
        this.model = model;
        this.maker = new TripMaker(model, new Ceiling(() -> false));
        this.people = new People(model);
        this.table = new DayTables(model, maker, people).table();
    }

    /**
     * The same day as another job has it. Where nothing but masses of loads is other, all is kept but the ways of
     * those; where the weather is too, what stands round the places; else it is opened anew. To be used in the
     * same thread.
     */
    public OpenDay with(Job other) {
        if (model.isButForMasses(other)) {
            return new OpenDay(other, new DayModel(other, model));
        }
        DayModel anew = new DayModel(other, model.ground);
        return new OpenDay(other, model.isButForHours(other) ? anew.withRoomsOf(model) : anew);
    }

    /**
     * Orders what is left.
     *
     * @param record the plan that is flown
     * @param settings id and seed of the new plan
     */
    public Reordered reorder(Plan record, Standing now, PlanSettings settings, Effort effort) {
        Frozen frozen = new Frozen(job, record, now);
        List<Step> done = frozen.steps();
        Midday midday = midday(record, now, frozen);
        RestOrder rest = rest(record, frozen, midday);
        Ordered ordered =
                effort.searches()
                        ? rest.better(settings.seed(), days(midday), effort.stop())
                        : rest.first();
        Optional<Instant> bound =
                effort.bounds()
                        ? Optional.of(model.instant(rest.finishBoundS(ordered)))
                        : Optional.empty();
        DayState day = new DayStory(model, maker, people, table).tell(ordered);
        Plan fresh =
                new PlanBuilder(
                                model,
                                maker,
                                people,
                                new PlanBuilder.Built(day, false, Optional.empty(), done))
                        .build(settings, leftOut(day, now, frozen), findings(day));
        return new Reordered(
                joined(record, fresh, new Seen(now, frozen, bound)),
                upToNow(record, done, now),
                done.size());
    }

    /**
     * Tries a lift at another turn of a plan's order; takes as long as telling one day does.
     *
     * @param moved a load of the lift
     * @param behind a load of the lift after which it is to come; empty for the first turn of the day
     * @throws IllegalArgumentException when the plan does not fly them
     */
    public TriedMove tryMove(
            Plan record, LoadId moved, Optional<LoadId> behind, PlanSettings settings) {
        Standing morning =
                new Standing(
                        model.instant(firstS(record)),
                        Standing.Log.AS_PLANNED,
                        List.of(),
                        OptionalDouble.empty(),
                        Map.of(),
                        Map.of(),
                        Set.of(),
                        Set.of());
        Frozen nothing = new Frozen(job, record, morning);
        RestOrder rest = rest(record, nothing, midday(record, morning, nothing));
        int trip = flown(moved);
        int before = behind.map(this::flown).orElse(DayTable.NONE);
        return tried(rest.first(), rest.moved(trip, before), new Turn(trip, before), settings);
    }

    /** A trip, and the one after which it is to come. */
    private record Turn(int trip, int before) {}

    private TriedMove tried(Ordered known, Ordered other, Turn turn, PlanSettings settings) {
        DayState day = new DayStory(model, maker, people, table).tell(other);
        PlanBuilder.Built built = new PlanBuilder.Built(day, false, Optional.empty(), List.of());
        List<LoadId> leftOut = new ArrayList<>();
        for (int k = 0; k < maker.trips().size(); k++) {
            if (known.isFlown(k) && !other.isFlown(k)) {
                leftOut.addAll(maker.trips().get(k).ids());
            }
        }
        List<DayState.Event> lifts =
                day.events().stream().filter(event -> event.flown() != null).toList();
        int before = DayTable.NONE;
        String because = "";
        boolean there = false;
        for (DayState.Event lift : lifts) {
            int trip = Objects.requireNonNull(lift.flown()).trip();
            if (trip == turn.trip()) {
                there = before == turn.before();
                because = lift.because();
            }
            before = trip;
        }
        return new TriedMove(
                there,
                because,
                other.flownS() - known.flownS(),
                other.finishS() - known.finishS(),
                burntKg(other) - burntKg(known),
                leftOut,
                new PlanBuilder(model, maker, people, built)
                        .build(settings, List.of(), findings(day))
                        .findings());
    }

    private static double burntKg(Ordered day) {
        return day.events().stream()
                .filter(event -> event.kind() != StepKind.REFUEL)
                .mapToDouble(event -> event.fuelStartKg() - event.fuelEndKg())
                .sum();
    }

    private int flown(LoadId load) {
        for (int k = 0; k < maker.trips().size(); k++) {
            if (maker.trips().get(k).carries(load)) {
                return k;
            }
        }
        throw new IllegalArgumentException(load + " is not flown.");
    }

    private int days(Midday midday) {
        long left = midday.releasedS().stream().filter(at -> at < 0).count();
        return DAYS_PER_TRIP * (int) Math.max(LEAST_TRIPS, left);
    }

    private List<Integer> closed(Standing now, Frozen frozen) {
        List<Integer> closed = new ArrayList<>();
        for (int k = 0; k < maker.trips().size(); k++) {
            Trip trip = maker.trips().get(k);
            boolean shut =
                    now.closed().contains(model.places.get(trip.from()).id())
                            || now.closed().contains(model.places.get(trip.to()).id())
                            || trip.ids().stream().anyMatch(now.dropped()::contains);
            if (shut && trip.ids().stream().noneMatch(frozen::holds)) {
                closed.add(k);
            }
        }
        return closed;
    }

    /** What is left of a plan's day, to be ordered from how it stands. */
    private RestOrder rest(Plan record, Frozen frozen, Midday midday) {
        KnownOrder known = new KnownOrder(model, maker, people);
        return RestOrder.of(table, midday, known.of(record, frozen.steps().size(), frozen));
    }

    private Midday midday(Plan record, Standing now, Frozen frozen) {
        List<Step> done = frozen.steps();
        List<Integer> closed = closed(now, frozen);
        Engine engine = new Engine();
        done.forEach(engine::step);
        List<Long> refuelBusyS = new ArrayList<>();
        for (int i = 0; i < model.places.size(); i++) {
            refuelBusyS.add(refuelBusyS(done, i));
        }
        List<Midday.Team> teams = new ArrayList<>();
        CrewsNow crews = new CrewsNow(model, record, now, done);
        for (Crew crew : people.teams) {
            teams.add(crews.team(crew));
        }
        List<Long> releasedS = maker.trips().stream().map(trip -> releasedS(trip, done)).toList();
        if (done.isEmpty()) {
            return new Midday(
                    Math.max(model.seconds(now.at()), firstS(record)),
                    model.place(job.machineStart()),
                    now.fuelKg().orElse(firstKg(record)),
                    DayTable.NONE,
                    true,
                    0,
                    0,
                    releasedS,
                    closed,
                    teams,
                    refuelBusyS);
        }
        Step last = done.get(done.size() - 1);
        return new Midday(
                laterS(last.endAt()),
                model.place(last.to()),
                last.fuelEndKg(),
                line(last),
                !last.engineRunning(),
                Math.round(Math.ceil(engine.stretchS)),
                Math.round(Math.ceil(engine.onS)),
                releasedS,
                closed,
                teams,
                refuelBusyS);
    }

    private long firstS(Plan record) {
        return record.steps().isEmpty()
                ? model.seconds(job.rules().dutyFrom())
                : model.seconds(record.steps().get(0).startAt());
    }

    private static double firstKg(Plan record) {
        return record.steps().isEmpty() ? 0 : record.steps().get(0).fuelStartKg();
    }

    /** Whole seconds, the next one where a part of one has gone. */
    private long laterS(Instant at) {
        long whole = model.seconds(at);
        return model.instant(whole).isBefore(at) ? whole + 1 : whole;
    }

    private int line(Step step) {
        return KnownOrder.line(model, step.lineLengthM());
    }

    private long releasedS(Trip trip, List<Step> done) {
        return done.stream()
                .flatMap(step -> step.rotation().stream())
                .filter(rotation -> rotation.loads().stream().anyMatch(trip::carries))
                .mapToLong(
                        rotation ->
                                laterS(
                                        rotation.drops()
                                                .get(rotation.drops().size() - 1)
                                                .releasedAt()))
                .findFirst()
                .orElse(-1);
    }

    private long refuelBusyS(List<Step> done, int place) {
        long busyS = 0;
        for (Step step : done) {
            if (step.kind() == StepKind.REFUEL && model.place(step.from()) == place) {
                busyS = laterS(step.endAt()) + (long) Math.ceil(job.rules().refuelHandlerBusyS());
            }
        }
        return busyS;
    }

    /** The engine over what is done. */
    private final class Engine {
        private double onS;
        private double stretchS;
        private double offS;

        void step(Step step) {
            double lastsS = Duration.between(step.startAt(), step.endAt()).toMillis() / 1000.0;
            if (!step.engineRunning()) {
                offS += lastsS;
                stretchS = offS >= job.rules().breakS() ? 0 : stretchS;
                return;
            }
            offS = 0;
            onS += lastsS;
            stretchS += lastsS;
        }
    }

    private List<LeftOut> leftOut(DayState day, Standing now, Frozen frozen) {
        Map<LoadId, LeftOut> out = new LinkedHashMap<>(maker.leftOut());
        out.keySet().removeIf(frozen::holds);
        Optional<String> stuck = stuck(frozen.steps());
        for (int k = 0; k < maker.trips().size(); k++) {
            if (day.releasedS().get(k) < 0) {
                Trip trip = maker.trips().get(k);
                trip.ids().forEach(id -> out.put(id, why(id, trip, now, stuck)));
            }
        }
        return List.copyOf(out.values());
    }

    /** That the machine is where nothing leads away from any more; empty when something does. */
    private Optional<String> stuck(List<Step> done) {
        if (done.isEmpty()) {
            return Optional.empty();
        }
        Step last = done.get(done.size() - 1);
        int at = model.place(last.to());
        int slot = model.slot(model.seconds(last.endAt()));
        boolean leads = slot < 0;
        for (int to = 0; !leads && to < model.places.size(); to++) {
            leads = to != at && model.emptyLeg(at, to, line(last), slot).isPresent();
        }
        return leads
                ? Optional.empty()
                : Optional.of(
                        "The machine is at "
                                + last.to()
                                + ", from where no way keeps the rules any more. It must leave by eye;"
                                + " perhaps a new order once the next lift is hooked elsewhere.");
    }

    private LeftOut why(LoadId id, Trip trip, Standing now, Optional<String> stuck) {
        if (now.dropped().contains(id)) {
            return new LeftOut(id, FindingCode.NO_ROOM_IN_DAY, "It was taken off the day.");
        }
        for (int place : new int[] {trip.from(), trip.to()}) {
            if (now.closed().contains(model.places.get(place).id())) {
                return new LeftOut(
                        id,
                        FindingCode.PLACE_UNUSED,
                        model.places.get(place).id() + " was closed during the day.");
            }
        }
        return new LeftOut(
                id,
                FindingCode.NO_ROOM_IN_DAY,
                stuck.orElse(
                        "What is left of the day has no room for it: wind, crews, fuel or duty end"
                                + " first."));
    }

    private List<Finding> findings(DayState day) {
        List<Finding> all = new ArrayList<>(job.readingFindings());
        all.addAll(model.zonesAtPlaces().list());
        all.addAll(maker.findings());
        all.addAll(new DayFindings(model, people, maker, day).list());
        return Waivers.applied(job, all);
    }

    /** What a new plan is joined with. */
    private record Seen(Standing now, Frozen frozen, Optional<Instant> bound) {}

    /** The whole day: crews and poles of what is done come from the plan of record. */
    private Plan joined(Plan record, Plan fresh, Seen seen) {
        List<CrewStay> crews = new ArrayList<>();
        CrewsNow before = new CrewsNow(model, record, seen.now(), seen.frozen().steps());
        people.teams.forEach(crew -> crews.addAll(before.gone(crew)));
        crews.addAll(fresh.crews());
        List<PoleSetting> poles = new ArrayList<>(fresh.poles());
        record.poles().stream()
                .filter(pole -> seen.frozen().holds(pole.load()))
                .forEach(poles::add);
        List<Finding> findings = new ArrayList<>(fresh.findings());
        people.teams.forEach(crew -> findings.addAll(before.doubts(crew)));
        fresh.leftOut().stream()
                .filter(out -> !maker.leftOut().containsKey(out.load()))
                .map(
                        out ->
                                Finding.of(
                                        out.code(),
                                        Severity.STOP,
                                        out.load().value(),
                                        "rules",
                                        out.message()))
                .forEach(findings::add);
        Summary sum = fresh.summary();
        return new Plan(
                fresh.id(),
                fresh.job(),
                fresh.plannedAt(),
                fresh.seed(),
                fresh.effort(),
                fresh.program(),
                new Summary(
                        sum.flightS(),
                        sum.finishAt(),
                        sum.rotations(),
                        sum.refuels(),
                        sum.lineChanges(),
                        OptionalDouble.empty(),
                        seen.bound().filter(at -> !at.isAfter(sum.finishAt())),
                        seen.bound().map(at -> "chosen-combination"),
                        false),
                fresh.steps(),
                crews,
                fresh.leftOut(),
                findings,
                fresh.rooms(),
                poles,
                fresh.kit());
    }

    /** The plan of record cut off now: what its re-check complains of is not the new order's fault. */
    private Plan upToNow(Plan record, List<Step> done, Standing now) {
        List<CrewStay> crews = new ArrayList<>();
        for (CrewStay stay : record.crews()) {
            if (stay.fromAt().isBefore(now.at())) {
                crews.add(stay);
            }
        }
        Instant end = done.isEmpty() ? now.at() : done.get(done.size() - 1).endAt();
        return new Plan(
                record.id(),
                record.job(),
                record.plannedAt(),
                record.seed(),
                record.effort(),
                record.program(),
                new Summary(
                        record.summary().flightS(),
                        end,
                        0,
                        0,
                        0,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        false),
                done,
                crews,
                record.leftOut(),
                record.findings(),
                record.rooms(),
                record.poles(),
                record.kit());
    }
}
