package underhook.planner.order;

import static underhook.planner.order.DoneSteps.later;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.ToldPlace;
import underhook.planner.search.Midday;

/** Where the teams are now, by the plan of record and what is told. */
final class CrewsNow {
    private static final Duration WHOLE_DAY = Duration.ofDays(1);

    private final DayModel model;
    private final Plan record;
    private final Standing now;
    private final DoneSteps done;
    private final ToldCrews told;

    /** What keeps somebody at a place, as far as it was asked for. */
    private final Map<CrewStay, List<Optional<Instant>>> works = new HashMap<>();

    /** Lines as flown that were worked out already, by crew. */
    private final Map<CrewId, List<CrewStay>> flown = new HashMap<>();

    CrewsNow(DayModel model, Plan record, Standing now, List<Step> done) {
        this.model = model;
        this.record = record;
        this.now = now;
        this.done = new DoneSteps(model.job, done);
        this.told = new ToldCrews(model.job, record, now);
    }

    /** Where those who are moved are said to be, as it counts, and what the plan of record was told before. */
    List<ToldPlace> told() {
        return told.all();
    }

    /**
     * As the plan of record has them; who landed later than planned, or was kept by work, walks on later, and as long
     * as ever. Who was flown sooner than planned had come as much sooner.
     */
    private List<CrewStay> asFlown(Crew crew) {
        List<CrewStay> known = flown.get(crew.id());
        if (known == null) {
            known = List.copyOf(findFlown(crew));
            flown.put(crew.id(), known);
        }
        return known;
    }

    private List<CrewStay> findFlown(Crew crew) {
        List<CrewStay> all = new ArrayList<>();
        Instant there = Instant.MIN;
        CrewStay before = null;
        for (CrewStay stay : told.planned(crew.id())) {
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
        return told.find(crew)
                .map(said -> said.in(reached(all), shown(crew, all, said.at()), now.at()))
                .orElse(all);
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
        List<CrewStay> planned = told.planned(crew.id());
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
                            .filter(one -> !one.isAfter(at))
                            .max(Comparator.naturalOrder());
            all.add(worked.map(one -> until(line, later(line.fromAt(), one))).orElse(line));
            shown = worked.isPresent() ? all.size() : shown;
        }
        return List.copyOf(all.subList(0, shown));
    }

    /** Flights of the plan of record that were laid as made, with crews that were said to be elsewhere. */
    Set<Step> without() {
        Set<Step> all = new HashSet<>();
        for (Crew crew : model.job.crews()) {
            told.find(crew).ifPresent(said -> all.addAll(without(crew, said)));
        }
        return all;
    }

    private List<Step> without(Crew crew, ToldPlace said) {
        List<CrewStay> planned = told.planned(crew.id());
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
        return works.computeIfAbsent(stay, this::findWorks);
    }

    private List<Optional<Instant>> findWorks(CrewStay stay) {
        List<Optional<Instant>> all = new ArrayList<>();
        for (Step step : record.steps()) {
            Rotation turn = step.rotation().orElse(null);
            if (turn == null || (!isAwaited(turn) && done.flown(turn).isEmpty())) {
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
                Optional<Instant> worked =
                        done.flown(turn).stream()
                                .map(one -> done.doneAt(one, stay.place(), hooks))
                                .max(Comparator.naturalOrder());
                all.add(isAwaited(turn) ? Optional.empty() : worked);
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
        for (CrewStay stay : told.planned(walk.crew())) {
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
                        done.isSetDown(
                                stay.place(),
                                stay.fromAt(),
                                drop -> done.neededAt(drop).isBefore(soonest));
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

    private static boolean isDuring(CrewStay stay, Instant at) {
        return !at.isBefore(stay.fromAt()) && !at.isAfter(stay.toAt());
    }

    /** Whether some of its loads were neither flown nor taken off the day. */
    private boolean isAwaited(Rotation planned) {
        return planned.loads().stream()
                .filter(id -> !now.dropped().contains(id))
                .anyMatch(
                        id ->
                                done.flown(planned).stream()
                                        .noneMatch(one -> one.loads().contains(id)));
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
        return told.find(crew)
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
        List<Step> flights = done.flights(flown.crew(), flown.place());
        long before =
                told.planned(flown.crew()).stream()
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
                .map(stay -> until(stay, later(now.at(), done.busyUntil(stay.place()))));
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
                .filter(at -> at.isAfter(now.at()) && at.isAfter(done.busyUntil(place)));
    }

    /** Who stays at a place and is told not to be there, by crew. */
    Map<CrewId, People.Away> away() {
        Map<CrewId, People.Away> all = new HashMap<>();
        for (Crew crew : model.job.crews()) {
            Instant until = goneUntil(crew).orElse(now.at());
            if (crew.stays() && until.isAfter(now.at())) {
                Instant gone = later(now.at(), done.neededUntil(crew.start()));
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
        return told.isElsewhere(crew)
                ? Optional.of(now.at().plus(WHOLE_DAY))
                : Optional.ofNullable(now.late().get(crew.id()));
    }

    /** Lifts that are begun, to a place where a team should be that is told to be late. */
    List<Finding> doubts(Crew crew) {
        List<Finding> all = new ArrayList<>(awaited(crew));
        if (told.isElsewhere(crew)) {
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
            told.takenBack(crew)
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
                                                            + told.before(crew, gone.at())
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
                                (crew.stays()
                                                ? done.neededUntil(stay.place())
                                                : done.busyUntil(stay.place()))
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
        Instant free = later(arrived, done.busyUntil(place));
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
        free = later(free, done.hookedUntil(place));
        return new Midday.Team(model.place(place), laterS(arrived), laterS(free));
    }

    private long laterS(Instant at) {
        long whole = model.seconds(at);
        return model.instant(whole).isBefore(at) ? whole + 1 : whole;
    }
}
