package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.PlaceId;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.ToldPlace;
import underhook.planner.search.DayTable;
import underhook.planner.search.Midday;

/** Where the teams are now, by the plan of record and what is told. */
final class CrewsNow {
    private static final Duration WHOLE_DAY = Duration.ofDays(1);

    private final DayModel model;
    private final Plan record;
    private final Standing now;
    private final List<Step> done;

    CrewsNow(DayModel model, Plan record, Standing now, List<Step> done) {
        this.model = model;
        this.record = record;
        this.now = now;
        this.done = done;
    }

    private List<CrewStay> planned(CrewId crew) {
        return record.crews().stream()
                .filter(stay -> stay.crew().equals(crew))
                .sorted(Comparator.comparing(CrewStay::fromAt))
                .toList();
    }

    /**
     * As the plan of record has them; who landed later than planned, or was kept by work, walks on later, and as long
     * as ever. Who was flown sooner than planned had come as much sooner.
     */
    private List<CrewStay> asFlown(Crew crew) {
        List<CrewStay> all = new ArrayList<>();
        Instant there = Instant.MIN;
        CrewStay before = null;
        for (CrewStay stay : planned(crew.id())) {
            if (stay.doing().startsWith("flown")) {
                Optional<Step> flight = flight(stay);
                flight.ifPresent(flown -> cameBefore(flown.startAt(), all));
                there = flight.map(Step::endAt).orElse(stay.toAt());
                all.add(flight.map(f -> during(stay, f.startAt(), f.endAt())).orElse(stay));
            } else {
                Instant from = later(stay.fromAt(), there);
                if (stay.isOnTheWay() && before != null && !before.isOnTheWay()) {
                    CrewStay worked = all.remove(all.size() - 1);
                    from = leaves(before, stay, from);
                    all.add(until(worked, later(worked.toAt(), from)));
                }
                Instant end =
                        stay.isOnTheWay()
                                ? from.plus(Duration.between(stay.fromAt(), stay.toAt()))
                                : later(stay.toAt(), from);
                all.add(during(stay, from, end));
                there = stay.isOnTheWay() ? end : there;
            }
            before = stay;
        }
        return all;
    }

    /** The same, and from where they were said to be. */
    private List<CrewStay> lines(Crew crew) {
        List<CrewStay> all = asFlown(crew);
        return told(crew)
                .map(said -> said.in(reached(all), shown(crew, all, said.at()), now.at()))
                .orElse(all);
    }

    /**
     * Where a crew was said to be, the newest of it, once it is in its hours; who was said to be somewhere and that was
     * taken back is where it was before. Of who stays at its place all day the files alone say where it works.
     */
    private Optional<ToldPlace> told(Crew crew) {
        if (crew.stays()) {
            return Optional.empty();
        }
        Optional<ToldPlace> said = said(crew);
        Optional<ToldPlace> back =
                takenBack(crew)
                        .filter(gone -> said.filter(one -> one.at().isAfter(gone.at())).isEmpty());
        return back.map(gone -> new ToldPlace(crew.id(), before(crew, gone.at()), gone.at()))
                .or(() -> said)
                .map(
                        one ->
                                new ToldPlace(
                                        one.crew(),
                                        one.place(),
                                        later(one.at(), crew.availableFrom())));
    }

    private Optional<ToldPlace> said(Crew crew) {
        return now.told().stream()
                .filter(one -> one.crew().equals(crew.id()))
                .reduce((one, other) -> other.at().isBefore(one.at()) ? one : other);
    }

    /** What the plan of record was told and is told no more; of a day that nobody tells all of it still counts. */
    private Optional<ToldPlace> takenBack(Crew crew) {
        List<ToldPlace> known =
                now.log() == Standing.Log.AS_PLANNED
                        ? List.of()
                        : record.summary().anew().map(Anew::told).orElse(List.of());
        return known.stream()
                .filter(one -> one.crew().equals(crew.id()))
                .filter(one -> now.told().stream().noneMatch(said -> isOne(crew, said, one)))
                .findFirst();
    }

    /** Who was said to be there before its hours counts from their begin. */
    private static boolean isOne(Crew crew, ToldPlace said, ToldPlace known) {
        return said.crew().equals(known.crew())
                && said.place().equals(known.place())
                && later(said.at(), crew.availableFrom()).equals(known.at());
    }

    private PlaceId before(Crew crew, Instant at) {
        return planned(crew.id()).stream()
                .filter(stay -> !stay.isOnTheWay() && stay.fromAt().isBefore(at))
                .reduce((one, other) -> other)
                .map(CrewStay::place)
                .orElse(crew.start());
    }

    /** Lines as far as a crew came: where a flight was not made it stayed, and what follows is still to come. */
    private List<CrewStay> reached(List<CrewStay> lines) {
        Instant next = now.at().plusSeconds(1);
        List<CrewStay> all = new ArrayList<>();
        boolean waits = false;
        for (CrewStay line : lines) {
            if (!waits && isAwaitedFlight(line)) {
                waits = true;
                if (!all.isEmpty()) {
                    CrewStay last = all.remove(all.size() - 1);
                    all.add(until(last, later(last.toAt(), now.at())));
                }
            }
            all.add(
                    waits
                            ? during(line, later(line.fromAt(), next), later(line.toAt(), next))
                            : line);
        }
        return all;
    }

    private boolean isAwaitedFlight(CrewStay line) {
        return line.doing().startsWith("flown") && flight(line).isEmpty();
    }

    /**
     * Lines up to the last thing before a time that shows where a crew was: a lift done with it there, a flight. Who is
     * not where it was planned to be then may have been elsewhere since, and has worked nowhere.
     */
    private List<CrewStay> shown(Crew crew, List<CrewStay> lines, Instant at) {
        List<CrewStay> planned = planned(crew.id());
        List<CrewStay> all = new ArrayList<>();
        int shown = 0;
        for (int i = 0; i < lines.size(); i++) {
            CrewStay line = lines.get(i);
            if (!line.fromAt().isBefore(at) || isAwaitedFlight(line)) {
                break;
            }
            if (line.isOnTheWay()) {
                all.add(line);
                shown = line.doing().startsWith("flown") ? all.size() : shown;
                continue;
            }
            Optional<Instant> worked =
                    works(planned.get(i)).stream()
                            .flatMap(Optional::stream)
                            .filter(done -> !done.isAfter(at))
                            .max(Comparator.naturalOrder());
            all.add(worked.map(done -> until(line, later(line.fromAt(), done))).orElse(line));
            shown = worked.isPresent() ? all.size() : shown;
        }
        return List.copyOf(all.subList(0, shown));
    }

    /** Flights of the plan of record that were laid as made, with crews that were said to be elsewhere. */
    Set<Step> without() {
        Set<Step> all = new HashSet<>();
        for (Crew crew : model.job.crews()) {
            told(crew).ifPresent(said -> all.addAll(without(crew, said)));
        }
        return all;
    }

    private List<Step> without(Crew crew, ToldPlace said) {
        List<CrewStay> planned = planned(crew.id());
        List<CrewStay> lines = asFlown(crew);
        ToldPlace.Found found = said.findIn(reached(lines));
        // Who is where the day began for it, and was to be taken on at once, has no line there.
        boolean begins = said.place().equals(crew.start());
        List<Step> all = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            CrewStay line = lines.get(i);
            if (!line.doing().startsWith("flown") || isAwaitedFlight(line)) {
                continue;
            }
            boolean aboard =
                    switch (found.beside()) {
                        case AS_PLANNED -> true;
                        case BEHIND -> i < found.line();
                        case AHEAD ->
                                i > found.line()
                                        || (!begins && !line.toAt().isAfter(said.at()))
                                        || (line.fromAt().isBefore(said.at())
                                                && line.place().equals(said.place()));
                        case ELSEWHERE -> !begins && !line.toAt().isAfter(said.at());
                    };
            if (!aboard) {
                Instant startAt = planned.get(i).fromAt();
                record.steps().stream()
                        .filter(step -> step.crew().equals(Optional.of(crew.id())))
                        .filter(step -> step.startAt().equals(startAt))
                        .forEach(all::add);
            }
        }
        return all;
    }

    /** Where those who are moved are said to be, as it counts, and what the plan of record was told before. */
    List<ToldPlace> told() {
        Set<ToldPlace> all = new LinkedHashSet<>();
        record.summary().anew().ifPresent(anew -> all.addAll(anew.told()));
        for (Crew crew : model.job.crews()) {
            if (takenBack(crew).isEmpty() && said(crew).isPresent()) {
                told(crew).ifPresent(all::add);
            }
        }
        return List.copyOf(all);
    }

    /** Whoever was flown then had walked to where that began, as long as ever. */
    private static void cameBefore(Instant flown, List<CrewStay> all) {
        Instant end = flown;
        for (int i = all.size() - 1; i >= 0 && all.get(i).toAt().isAfter(end); i--) {
            CrewStay line = all.get(i);
            if (line.doing().startsWith("flown")) {
                return;
            }
            Instant from = line.fromAt();
            if (line.isOnTheWay()) {
                from = end.minus(Duration.between(from, line.toAt()));
            } else if (from.isAfter(end)) {
                from = end;
            }
            all.set(i, during(line, from, end));
            end = from;
        }
    }

    /**
     * When somebody sets out on a walk: not before what was planned for them where they are is done, however late it
     * came; what is still to come keeps them. What would keep them longer than is known of them does not: they had
     * gone before it.
     *
     * @param stay where they are, as planned
     */
    private Instant leaves(CrewStay stay, CrewStay walk, Instant from) {
        Instant leaves = from;
        for (Optional<Instant> work : works(stay)) {
            Instant worked = work.orElse(now.at());
            leaves = isElsewhereBefore(walk, worked) ? leaves : later(leaves, worked);
        }
        return leaves;
    }

    /** When each lift planned for somebody at a place keeps them there no more; empty while some of it is to come. */
    private List<Optional<Instant>> works(CrewStay stay) {
        List<Optional<Instant>> all = new ArrayList<>();
        for (Step step : record.steps()) {
            Rotation turn = step.rotation().orElse(null);
            if (turn == null || (!isAwaited(turn) && flown(turn).isEmpty())) {
                continue;
            }
            boolean hooks =
                    isDuring(stay, turn.hookedAt())
                            && turn.loads().stream()
                                    .anyMatch(
                                            id ->
                                                    model.job
                                                            .getLoad(id)
                                                            .from()
                                                            .equals(stay.place()));
            boolean receives =
                    turn.drops().stream()
                            .anyMatch(
                                    drop ->
                                            drop.place().equals(stay.place())
                                                    && isDuring(stay, drop.releasedAt()));
            if (hooks || receives) {
                Optional<Instant> done =
                        flown(turn).stream()
                                .map(one -> doneAt(one, stay.place(), hooks))
                                .max(Comparator.naturalOrder());
                all.add(isAwaited(turn) ? Optional.empty() : done);
            }
        }
        return all;
    }

    /**
     * Whether somebody who sets out then comes too late to what is known of them since: they were flown on, or
     * something was hooked that is set down where they were to be.
     */
    private boolean isElsewhereBefore(CrewStay walk, Instant leaves) {
        Instant there = leaves;
        for (CrewStay stay : planned(walk.crew())) {
            Instant soonest = there;
            boolean late = false;
            if (stay.fromAt().isBefore(walk.fromAt())) {
                continue;
            } else if (stay.doing().startsWith("flown")) {
                Optional<Step> flight = flight(stay);
                late = flight.filter(one -> one.startAt().isBefore(soonest)).isPresent();
                there = flight.map(Step::endAt).orElse(there);
            } else if (stay.isOnTheWay()) {
                there = there.plus(Duration.between(stay.fromAt(), stay.toAt()));
            } else {
                late =
                        isSetDown(
                                stay.place(),
                                stay.fromAt(),
                                drop -> neededAt(drop).isBefore(soonest));
                for (Optional<Instant> work : works(stay)) {
                    there = later(there, work.orElse(there));
                }
            }
            if (late) {
                return true;
            }
        }
        return false;
    }

    /** When whoever receives something must be there; before a pole as long as making ready for it and standing it up takes. */
    private Instant neededAt(Drop drop) {
        LoadKind kind = kind(drop.load());
        double readyS =
                done.stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(turn -> turn.drops().stream())
                        .filter(one -> kind.standsUp() && one.place().equals(drop.place()))
                        .filter(one -> one.releasedAt().isBefore(drop.releasedAt()))
                        .mapToDouble(one -> kind(one.load()).readyAfterS())
                        .max()
                        .orElse(0);
        double standingUpS = kind.standsUp() ? kind.setDownS() : 0;
        double aheadS = Math.max(DayTable.READY_BEFORE_S, readyS + standingUpS);
        return drop.releasedAt().minusMillis((long) Math.ceil(aheadS * 1000));
    }

    private LoadKind kind(LoadId load) {
        return model.job.getKind(model.job.getLoad(load).kind());
    }

    private static boolean isDuring(CrewStay stay, Instant at) {
        return !at.isBefore(stay.fromAt()) && !at.isAfter(stay.toAt());
    }

    /** As it was flown, in as many lifts; none when it was not begun. */
    private List<Rotation> flown(Rotation planned) {
        return done.stream()
                .flatMap(step -> step.rotation().stream())
                .filter(one -> one.loads().stream().anyMatch(planned.loads()::contains))
                .toList();
    }

    /** Whether some of its loads were neither flown nor taken off the day. */
    private boolean isAwaited(Rotation planned) {
        return planned.loads().stream()
                .filter(id -> !now.dropped().contains(id))
                .anyMatch(id -> flown(planned).stream().noneMatch(one -> one.loads().contains(id)));
    }

    /** When a lift keeps nobody at a place any more. */
    private Instant doneAt(Rotation turn, PlaceId place, boolean hooks) {
        Instant at = hooks ? turn.hookedAt().plusSeconds(1) : Instant.MIN;
        for (Drop drop : turn.drops()) {
            if (drop.place().equals(place)) {
                at = later(at, freeAfter(drop));
            }
        }
        return at;
    }

    private boolean isSetDown(PlaceId place, Instant after, Predicate<Drop> which) {
        return done.stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(turn -> turn.drops().stream())
                .filter(drop -> drop.place().equals(place))
                .filter(drop -> drop.releasedAt().isAfter(after))
                .anyMatch(which);
    }

    /** Lines that have begun; nothing from a flight on that was not flown. */
    private List<CrewStay> begun(Crew crew) {
        List<CrewStay> all = new ArrayList<>();
        for (CrewStay stay : lines(crew)) {
            boolean began = stay.fromAt().isBefore(now.at()) || isSaid(crew, stay);
            if (isAwaitedFlight(stay) || !began) {
                break;
            }
            all.add(stay);
        }
        return all;
    }

    /** Who is said to be somewhere is there already, though it was a moment ago. */
    private boolean isSaid(Crew crew, CrewStay stay) {
        return told(crew)
                .filter(said -> stay.isAt(said.place(), said.at()))
                .filter(said -> stay.fromAt().equals(said.at()))
                .isPresent();
    }

    /** The last line that has begun. */
    private Optional<CrewStay> going(Crew crew) {
        return begun(crew).stream().reduce((one, other) -> other);
    }

    /** As it was flown: the first flight to a place is the first that was planned, the second the second. */
    private Optional<Step> flight(CrewStay flown) {
        List<Step> flights =
                done.stream()
                        .filter(step -> step.kind() == StepKind.CREW_MOVE)
                        .filter(step -> step.crew().filter(flown.crew()::equals).isPresent())
                        .filter(step -> step.to().equals(flown.place()))
                        .toList();
        long before =
                planned(flown.crew()).stream()
                        .filter(stay -> stay.doing().startsWith("flown"))
                        .filter(stay -> stay.place().equals(flown.place()))
                        .filter(stay -> stay.fromAt().isBefore(flown.fromAt()))
                        .count();
        return flights.stream()
                .filter(step -> step.startAt().equals(flown.fromAt()))
                .findFirst()
                .or(() -> flights.stream().skip(before).findFirst());
    }

    /** Lines of the plan of record that are over, or moves that are going on. */
    List<CrewStay> gone(Crew crew) {
        List<CrewStay> all = new ArrayList<>();
        Optional<CrewStay> going = going(crew);
        Instant landed = Instant.MIN;
        for (CrewStay stay : begun(crew)) {
            boolean last = going.filter(stay::equals).isPresent();
            if (last && !stay.isOnTheWay()) {
                break;
            }
            Optional<Step> flight =
                    stay.doing().startsWith("flown") ? flight(stay) : Optional.empty();
            if (flight.isPresent()) {
                Step flown = flight.get();
                // Until it is flown it waits where it was, and it is nowhere else before it has
                // landed.
                if (!all.isEmpty() && !all.get(all.size() - 1).isOnTheWay()) {
                    all.add(until(all.remove(all.size() - 1), flown.startAt()));
                }
                landed = flown.endAt();
                all.add(during(stay, flown.startAt(), landed));
            } else {
                Instant from = later(stay.fromAt(), landed);
                all.add(during(stay, from, later(stay.toAt(), from)));
            }
        }
        untilLate(crew, going).ifPresent(all::add);
        return all;
    }

    /** Where it was until what is begun is done and it is late. */
    private Optional<CrewStay> untilLate(Crew crew, Optional<CrewStay> going) {
        return going.filter(stay -> !stay.isOnTheWay())
                .filter(stay -> late(crew, stay.place()).isPresent())
                .map(stay -> until(stay, later(now.at(), busyUntil(stay.place()))));
    }

    private static CrewStay until(CrewStay stay, Instant end) {
        return during(stay, stay.fromAt(), end);
    }

    private static CrewStay during(CrewStay stay, Instant from, Instant end) {
        return new CrewStay(stay.crew(), stay.place(), from, end, stay.doing());
    }

    /** Until when a team is late; a lift that is begun is finished by those it was begun with. */
    private Optional<Instant> late(Crew crew, PlaceId place) {
        return Optional.ofNullable(now.late().get(crew.id()))
                .filter(at -> at.isAfter(now.at()) && at.isAfter(busyUntil(place)));
    }

    /** Who stays at a place and is told not to be there, by crew. */
    Map<CrewId, People.Away> away() {
        Map<CrewId, People.Away> all = new HashMap<>();
        for (Crew crew : model.job.crews()) {
            Instant until = goneUntil(crew).orElse(now.at());
            if (crew.stays() && until.isAfter(now.at())) {
                Instant gone = later(now.at(), neededUntil(crew.start()));
                List<CrewStay> before =
                        lines(crew).stream()
                                .filter(stay -> stay.fromAt().isBefore(gone))
                                .map(stay -> stay.toAt().isAfter(gone) ? until(stay, gone) : stay)
                                .toList();
                all.put(crew.id(), new People.Away(before, later(until, gone)));
            }
        }
        return all;
    }

    /** Until when a crew is told not to be there; all day where it is said to be elsewhere and stays at one place. */
    private Optional<Instant> goneUntil(Crew crew) {
        return isElsewhere(crew)
                ? Optional.of(now.at().plus(WHOLE_DAY))
                : Optional.ofNullable(now.late().get(crew.id()));
    }

    private boolean isElsewhere(Crew crew) {
        return crew.stays()
                && said(crew).filter(one -> !one.place().equals(crew.start())).isPresent();
    }

    /** Until when what is begun needs those who stay at a place: to hook, to receive, to refuel. */
    private Instant neededUntil(PlaceId place) {
        Instant until = busyUntil(place);
        for (Step step : done) {
            boolean hooks =
                    step.rotation()
                            .map(one -> model.job.getLoad(one.loads().get(0)).from())
                            .filter(place::equals)
                            .isPresent();
            if (hooks) {
                until = later(until, step.rotation().orElseThrow().hookedAt());
            } else if (step.kind() == StepKind.REFUEL && step.from().equals(place)) {
                until = later(until, step.endAt());
            }
        }
        return until;
    }

    /** Lifts that are begun, to a place where a team should be that is told to be late. */
    List<Finding> doubts(Crew crew) {
        List<Finding> all = new ArrayList<>(awaited(crew));
        if (isElsewhere(crew)) {
            all.add(
                    absent(
                            crew,
                            crew.id()
                                    + " stays at "
                                    + crew.start()
                                    + " by the files and is said to be elsewhere: it counts nowhere"
                                    + " until it is said to be back."));
        }
        if (!crew.stays()) {
            takenBack(crew)
                    .ifPresent(
                            gone ->
                                    all.add(
                                            absent(
                                                    crew,
                                                    "That "
                                                            + crew.id()
                                                            + " is at "
                                                            + gone.place()
                                                            + " was taken back: it counts at "
                                                            + before(crew, gone.at())
                                                            + ", where it was before. Perhaps say"
                                                            + " where it is.")));
        }
        return all;
    }

    private static Finding absent(Crew crew, String words) {
        return Finding.of(
                FindingCode.CREW_ABSENT, Severity.CAUTION, crew.id().value(), "crews", words);
    }

    private List<Finding> awaited(Crew crew) {
        return going(crew).stream()
                .filter(stay -> goneUntil(crew).isPresent() && !stay.isOnTheWay())
                .filter(
                        stay ->
                                (crew.stays() ? neededUntil(stay.place()) : busyUntil(stay.place()))
                                        .isAfter(now.at()))
                .map(
                        stay ->
                                absent(
                                        crew,
                                        "A lift that is begun needs "
                                                + crew.id()
                                                + " at "
                                                + stay.place()
                                                + "; it is told to be late, and taken to be there"
                                                + " until that is done. If it is not there, nothing"
                                                + " may be set down."))
                .toList();
    }

    Midday.Team team(Crew crew) {
        Optional<CrewStay> going = going(crew);
        PlaceId place = going.map(CrewStay::place).orElse(crew.start());
        Instant arrived = going.map(CrewStay::fromAt).orElse(crew.availableFrom());
        if (going.filter(CrewStay::isOnTheWay).isPresent()) {
            CrewStay move = going.get();
            arrived =
                    move.doing().startsWith("flown")
                            ? flight(move).map(Step::endAt).orElse(move.toAt())
                            : move.toAt();
        }
        Instant free = later(arrived, busyUntil(place));
        if (going.filter(stay -> isSaid(crew, stay)).isPresent()) {
            // However soon it is taken on, the plan has it there for a moment.
            free = later(free, arrived.plusSeconds(1));
        }
        Optional<Instant> late = late(crew, place);
        if (late.isPresent()) {
            arrived = later(arrived, late.get());
            free = later(free, late.get());
        }
        // Nobody leaves before now, nor before what is begun there is hooked up.
        free = later(free, going.isPresent() ? now.at() : free);
        free = later(free, hookedUntil(place));
        return new Midday.Team(model.place(place), laterS(arrived), laterS(free));
    }

    /** Until when what is begun is hooked up at a site. */
    private Instant hookedUntil(PlaceId place) {
        Instant until = Instant.MIN;
        for (Step step : done) {
            boolean hooks =
                    model.job.getPlace(place).isSite()
                            && step.rotation().stream()
                                    .flatMap(one -> one.loads().stream())
                                    .anyMatch(id -> model.job.getLoad(id).from().equals(place));
            if (hooks) {
                until = later(until, step.rotation().orElseThrow().hookedAt().plusSeconds(1));
            }
        }
        return until;
    }

    private Instant busyUntil(PlaceId place) {
        Instant until = Instant.MIN;
        for (Step step : done) {
            if (step.rotation().isPresent()
                    && step.rotation().get().drops().get(0).place().equals(place)) {
                for (Drop drop : step.rotation().get().drops()) {
                    until = later(until, freeAfter(drop));
                }
            }
        }
        return until;
    }

    /** When those who received something are free again. */
    private Instant freeAfter(Drop drop) {
        double busyS = kind(drop.load()).busyAfterS();
        return drop.releasedAt().plusMillis((long) Math.ceil(busyS * 1000));
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private long laterS(Instant at) {
        long whole = model.seconds(at);
        return model.instant(whole).isBefore(at) ? whole + 1 : whole;
    }
}
