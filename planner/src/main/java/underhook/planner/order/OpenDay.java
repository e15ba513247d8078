package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import underhook.core.finding.Outcome;
import underhook.core.geo.Ground;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.planner.search.Aim;
import underhook.planner.search.DayTable;
import underhook.planner.search.HookChoices;
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

    /** Of all loads that can be flown, with everybody where the job has them. */
    private final Puzzle whole;

    /** The last in which some loads were settled otherwise than that has them, or somebody was away. */
    private Puzzle partly;

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

        private Effort until(BooleanSupplier other) {
            return new Effort(searches, bounds, other);
        }
    }

    /** Remembers that a search was told to end. */
    private static final class Asked implements BooleanSupplier {
        private final BooleanSupplier stop;
        private boolean ended;

        Asked(BooleanSupplier stop) {
            this.stop = stop;
        }

        @Override
        public boolean getAsBoolean() {
            ended = ended || stop.getAsBoolean();
            return ended;
        }
    }

    /**
     * The rest of a day ordered anew.
     *
     * @param plan the whole day, what is frozen first; not yet re-checked
     * @param frozenSteps how many of its steps are done or begun
     */
    public record Reordered(Plan plan, int frozenSteps) {}

    /** Opens a day; takes as long as finding its ways does. */
    public OpenDay(Job job, Ground ground) {
        this(job, new DayModel(job, ground));
    }

    private OpenDay(Job job, DayModel model) {
        this.job = job;
        this.model = model;
        this.whole = puzzle(Settled.NOTHING, new People(model));
        this.partly = whole;
    }

    /** The day's trips when some loads are settled, and the table of them. */
    private record Puzzle(Settled settled, People people, TripMaker maker, DayTable table) {
        List<Trip> trips() {
            return maker.trips();
        }
    }

    private Puzzle puzzle(Settled settled, People people) {
        TripMaker maker = new TripMaker(model, settled);
        DayTable table = new DayTables(model, maker, people).table();
        return new Puzzle(settled, people, maker, table);
    }

    /** With what is flown as it hung, and what is dropped out of it: who hung with that may hang otherwise. */
    private Puzzle left(JoinedDay.Old old, Set<LoadId> alone) {
        Set<LoadId> off =
                old.now().dropped().stream()
                        .filter(id -> !old.frozen().holds(id))
                        .collect(Collectors.toSet());
        Settled settled = new Settled(old.frozen().lifts(), off, alone);
        Map<CrewId, People.Away> away = old.crews().away();
        if (away.isEmpty() && alone.isEmpty() && settled.leaves(model.job, whole.trips())) {
            return whole;
        }
        if (!settled.equals(partly.settled()) || !away.equals(partly.people().away())) {
            partly = puzzle(settled, new People(model, away));
        }
        return partly;
    }

    /**
     * The same day as another job has it. Where nothing but masses of loads and hours of the weather is other, all
     * is kept that hangs on neither, and of legs what hangs on the air alone; where the day's strongest wind or its
     * densest air is other too, what stands round the places; else it is opened anew. To be used in the same thread.
     */
    public OpenDay with(Job other) {
        if (model.isButForMasses(other) || model.isButForHours(other)) {
            return new OpenDay(other, new DayModel(other, model));
        }
        DayModel anew = new DayModel(other, model.ground);
        return new OpenDay(other, model.hasPlacesOf(other) ? anew.withRoomsOf(model) : anew);
    }

    /**
     * Orders what is left.
     *
     * @param record the plan that is flown
     * @param settings id and seed of the new plan
     */
    public Reordered reorder(Plan record, Standing now, PlanSettings settings, Effort effort) {
        JoinedDay.Old old = old(record, now);
        Asked asked = new Asked(effort.stop());
        Puzzle puzzle = left(old, Set.of());
        Midday midday = midday(puzzle, old);
        RestOrder rest = rest(puzzle, old, midday);
        Ordered ordered = ordered(rest, midday, settings, effort.until(asked));
        Set<LoadId> alone = new HashSet<>();
        while (alone.addAll(waitingPartners(puzzle, ordered))) {
            puzzle = left(old, alone);
            midday = midday(puzzle, old);
            rest = rest(puzzle, old, midday);
            ordered = ordered(rest, midday, settings, effort.until(asked));
        }
        People people = puzzle.people();
        if (ordered.events().isEmpty()) {
            old = old(record, now, old.frozen().ended());
        }
        Optional<JoinedDay.Bound> bound =
                effort.bounds() ? Optional.of(bound(puzzle, rest, ordered)) : Optional.empty();
        DayState day = new DayStory(model, puzzle.maker(), people, puzzle.table()).tell(ordered);
        JoinedDay joined =
                new JoinedDay(
                        model, new JoinedDay.Puzzle(puzzle.maker(), puzzle.table()), people, old);
        return new Reordered(
                joined.plan(day, settings, bound, asked.ended), old.frozen().steps().size());
    }

    /** What is done or begun, with crews on no flight that they were said not to be on. */
    private JoinedDay.Old old(Plan record, Standing now) {
        JoinedDay.Old laid = old(record, now, new Frozen(job, record, now));
        Set<Step> without = laid.crews().without();
        return without.isEmpty() ? laid : old(record, now, new Frozen(job, record, now, without));
    }

    private JoinedDay.Old old(Plan record, Standing now, Frozen frozen) {
        return new JoinedDay.Old(
                record, now, frozen, new CrewsNow(model, record, now, frozen.steps()));
    }

    private Ordered ordered(RestOrder rest, Midday midday, PlanSettings settings, Effort effort) {
        return effort.searches()
                ? rest.better(settings.seed(), days(midday), effort.stop())
                : rest.first();
    }

    /** Loads of trips not flown that wait for what is not flown either, where others of the trip do not. */
    private Set<LoadId> waitingPartners(Puzzle puzzle, Ordered day) {
        Waits waits = new Waits(job);
        Set<LoadId> all = new HashSet<>();
        List<Trip> trips = puzzle.trips();
        for (int k = 0; k < trips.size(); k++) {
            if (day.isFlown(k)) {
                continue;
            }
            Trip trip = trips.get(k);
            List<LoadId> waiting =
                    trip.ids().stream()
                            .filter(
                                    id ->
                                            waits.inVain(id, one -> flies(puzzle, day, one))
                                                    .isPresent())
                            .toList();
            if (waiting.size() < trip.ids().size()) {
                all.addAll(waiting);
            }
        }
        return all;
    }

    private static boolean flies(Puzzle puzzle, Ordered day, LoadId load) {
        List<Trip> trips = puzzle.trips();
        for (int k = 0; k < trips.size(); k++) {
            if (day.isFlown(k) && trips.get(k).carries(load)) {
                return true;
            }
        }
        return false;
    }

    private JoinedDay.Bound bound(Puzzle puzzle, RestOrder rest, Ordered ordered) {
        Combinations ways = new Combinations(model, puzzle.trips(), k -> rest.flies(ordered, k));
        boolean all = ways.isAll();
        DayTable table =
                all
                        ? new DayTables(model, puzzle.maker(), puzzle.people()).table(ways.trips())
                        : puzzle.table();
        HookChoices hooks = all ? ways.hooks() : rest.asFlown(ordered);
        return new JoinedDay.Bound(
                model.instant(rest.finishBoundS(table, hooks)), DayBounds.provenFor(all));
    }

    /**
     * The whole day near a plan's order, told as a plan of its own.
     *
     * @param record of this job, perhaps with other loads left for another day
     * @param effort without a search it is the known order
     * @param aim what is looked for
     * @return not yet re-checked, cut short where the record is; refused when nothing is flown
     */
    public Outcome<Plan> whole(Plan record, PlanSettings settings, Effort effort, Aim aim) {
        JoinedDay.Old morning = morning(record);
        Midday begins = midday(whole, morning).freeAt(whole.table().startS());
        RestOrder rest = rest(whole, morning, begins);
        Ordered day =
                effort.searches()
                        ? rest.aimed(settings.seed(), days(begins), aim, effort.stop())
                        : rest.first();
        DayTables tables = new DayTables(model, whole.maker(), whole.people());
        boolean isCut = record.summary().cutShort();
        return new WholeDay(model, whole.maker(), whole.people(), whole.table())
                .plan(
                        day,
                        settings,
                        new WholeDay.Found(
                                isCut,
                                trip -> isCut,
                                List.of(),
                                () ->
                                        effort.bounds()
                                                ? DayBounds.of(model, tables, day, effort.stop())
                                                : DayBounds.unproven(tables.startS())));
    }

    /** Nothing of a plan is done. */
    private JoinedDay.Old morning(Plan record) {
        Standing morning =
                new Standing(
                        model.instant(firstS(record)),
                        Standing.Log.AS_PLANNED,
                        List.of(),
                        OptionalDouble.empty(),
                        List.of(),
                        Map.of(),
                        Set.of(),
                        Set.of(),
                        Standing.Engine.UNTOLD);
        return old(record, morning, new Frozen(job, record, morning));
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
        JoinedDay.Old morning = morning(record);
        RestOrder rest = rest(whole, morning, midday(whole, morning));
        int trip = flown(moved);
        int before = behind.map(this::flown).orElse(DayTable.NONE);
        return tried(
                rest.withOwnStops(), rest.moved(trip, before), new Turn(trip, before), settings);
    }

    /** A trip, and the one after which it is to come. */
    private record Turn(int trip, int before) {}

    private TriedMove tried(Ordered known, Ordered other, Turn turn, PlanSettings settings) {
        TripMaker maker = whole.maker();
        People people = whole.people();
        DayState day = new DayStory(model, maker, people, whole.table()).tell(other);
        PlanBuilder.Built built =
                new PlanBuilder.Built(day, false, Optional.empty(), List.of(), List.of());
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
                        .build(settings, List.of(), JoinedDay.findings(model, people, maker, day))
                        .findings());
    }

    private static double burntKg(Ordered day) {
        return day.events().stream()
                .filter(event -> event.kind() != StepKind.REFUEL)
                .mapToDouble(event -> event.fuelStartKg() - event.fuelEndKg())
                .sum();
    }

    private int flown(LoadId load) {
        List<Trip> trips = whole.trips();
        for (int k = 0; k < trips.size(); k++) {
            if (trips.get(k).carries(load)) {
                return k;
            }
        }
        throw new IllegalArgumentException(load + " is not flown.");
    }

    private int days(Midday midday) {
        long left = midday.releasedS().stream().filter(at -> at < 0).count();
        return DAYS_PER_TRIP * (int) Math.max(LEAST_TRIPS, left);
    }

    private List<Integer> closed(List<Trip> trips, Standing now, Frozen frozen) {
        List<Integer> closed = new ArrayList<>();
        for (int k = 0; k < trips.size(); k++) {
            Trip trip = trips.get(k);
            boolean shut =
                    now.closed().contains(model.places.get(trip.from()).id())
                            || now.closed().contains(model.places.get(trip.to()).id());
            if (shut && trip.ids().stream().noneMatch(frozen::holds)) {
                closed.add(k);
            }
        }
        return closed;
    }

    /** What is left of a plan's day, to be ordered from how it stands. */
    private RestOrder rest(Puzzle puzzle, JoinedDay.Old old, Midday midday) {
        KnownOrder known = new KnownOrder(model, puzzle.maker(), puzzle.people());
        int done = old.frozen().steps().size();
        return RestOrder.of(puzzle.table(), midday, known.of(old.record(), done, old.frozen()));
    }

    private Midday midday(Puzzle puzzle, JoinedDay.Old old) {
        Plan record = old.record();
        Standing now = old.now();
        List<Step> done = old.frozen().steps();
        List<Integer> closed = closed(puzzle.trips(), now, old.frozen());
        Engine engine = new Engine();
        done.forEach(engine::step);
        engine.told(now, done);
        List<Long> refuelBusyS = new ArrayList<>();
        for (int i = 0; i < model.places.size(); i++) {
            refuelBusyS.add(refuelBusyS(done, i));
        }
        List<Midday.Team> teams = new ArrayList<>();
        for (Crew crew : puzzle.people().teams) {
            teams.add(old.crews().team(crew));
        }
        List<Long> releasedS = puzzle.trips().stream().map(trip -> releasedS(trip, done)).toList();
        if (done.isEmpty()) {
            return new Midday(
                    Math.max(model.seconds(now.at()), firstS(record)),
                    model.place(job.machineStart()),
                    now.fuelKg().orElse(firstKg(record)),
                    DayTable.NONE,
                    true,
                    0,
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
                (long) Math.floor(engine.offS),
                Math.round(Math.ceil(engine.stretchS)),
                Math.round(Math.ceil(engine.onS)),
                releasedS,
                closed,
                teams,
                refuelBusyS);
    }

    private long firstS(Plan record) {
        return record.steps().isEmpty()
                ? model.seconds(job.rules().duty().from())
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
                busyS =
                        laterS(step.endAt())
                                + (long) Math.ceil(job.rules().refuelling().refuelHandlerBusyS());
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
            double lastsS = spanS(step.startAt(), step.endAt());
            if (!step.engineRunning()) {
                offS += lastsS;
                stretchS = offS >= job.rules().duty().breakS() ? 0 : stretchS;
                return;
            }
            offS = 0;
            onS += lastsS;
            stretchS += lastsS;
        }

        /**
         * As it was told, where that is longer: it ran whenever nobody told that it was off, and what goes on now may
         * run until it is done.
         */
        void told(Standing now, List<Step> done) {
            if (now.log() != Standing.Log.KEPT || done.isEmpty()) {
                return;
            }
            Step last = done.get(done.size() - 1);
            Instant end = last.endAt().isAfter(now.at()) ? last.endAt() : now.at();
            boolean isOff = now.offSince().isPresent() && !last.engineRunning();
            double ranS = 0;
            double sinceBreakS = 0;
            Instant from = done.get(0).startAt();
            for (Standing.Spell ran : now.engine().ran()) {
                from = ran.from().isBefore(from) ? ran.from() : from;
            }
            for (Standing.Spell stood : now.stood()) {
                if (from.isBefore(stood.from())) {
                    ranS += spanS(from, stood.from());
                    sinceBreakS += spanS(from, stood.from());
                }
                boolean rested = spanS(stood.from(), stood.to()) >= job.rules().duty().breakS();
                sinceBreakS = rested ? 0 : sinceBreakS;
                from = stood.to().isAfter(from) ? stood.to() : from;
            }
            double goesOnS = isOff ? 0 : Math.max(0, spanS(from, end));
            offS = Math.min(offS, now.offSince().map(off -> spanS(off, end)).orElse(0.0));
            onS = Math.max(onS, ranS + goesOnS);
            if (offS < job.rules().duty().breakS()) {
                stretchS = Math.max(stretchS, sinceBreakS + goesOnS);
            }
        }

        private static double spanS(Instant from, Instant to) {
            return Duration.between(from, to).toMillis() / 1000.0;
        }
    }
}
