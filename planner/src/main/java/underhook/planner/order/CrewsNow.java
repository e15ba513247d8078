package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.planner.search.DayTable;
import underhook.planner.search.Midday;

/** Where the teams are now, by the plan of record and what is told. */
final class CrewsNow {
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
    private List<CrewStay> lines(Crew crew) {
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
            boolean waits = stay.doing().startsWith("flown") && flight(stay).isEmpty();
            if (waits || !stay.fromAt().isBefore(now.at())) {
                break;
            }
            all.add(stay);
        }
        return all;
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
        told(crew, going).ifPresent(all::add);
        return all;
    }

    /** Where it was until it is told to be elsewhere, or until what is begun is done and it is late. */
    private Optional<CrewStay> told(Crew crew, Optional<CrewStay> going) {
        Optional<CrewStay> at = going.filter(stay -> !stay.isOnTheWay());
        if (now.crews().containsKey(crew.id())) {
            return at.map(stay -> until(stay, now.at()));
        }
        return at.filter(stay -> late(crew, stay.place()).isPresent())
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
            Instant until = now.late().get(crew.id());
            if (crew.stays() && until != null && until.isAfter(now.at())) {
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
        return going(crew).stream()
                .filter(stay -> now.late().containsKey(crew.id()) && !stay.isOnTheWay())
                .filter(
                        stay ->
                                (crew.stays() ? neededUntil(stay.place()) : busyUntil(stay.place()))
                                        .isAfter(now.at()))
                .map(
                        stay ->
                                Finding.of(
                                        FindingCode.CREW_ABSENT,
                                        Severity.CAUTION,
                                        crew.id().value(),
                                        "crews",
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
        Standing.CrewAt told = now.crews().get(crew.id());
        if (told != null) {
            place = told.place();
            arrived = told.freeFrom();
            free = told.freeFrom();
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
