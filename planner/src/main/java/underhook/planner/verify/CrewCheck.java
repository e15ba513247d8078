package underhook.planner.verify;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import underhook.core.finding.FindingCode;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.ToldPlace;

/** People: where they are, how they get there, and that they are there when they are needed. */
final class CrewCheck {
    /** Whoever receives a load is there this long before it is let go, s. @source PRACTICE */
    private static final double RECEIVE_BEFORE_S = 60.0;

    private final Day day;
    private final Rules rules;
    private final Machine machine;
    private final Whereabouts where;
    private final Walks walks;

    CrewCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.machine = day.job().machine();
        this.where = new Whereabouts(day);
        this.walks = new Walks(day.job().places(), day.job().walks());
    }

    void run() {
        day.job().crews().forEach(this::checkDay);
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            if (step.kind() == StepKind.CREW_MOVE) {
                checkCabin(step);
            }
            if (step.kind() == StepKind.REFUEL) {
                checkRefuel(Day.name(i + 1), step);
            }
            step.rotation().ifPresent(this::checkRotation);
        }
    }

    private Crew crewOf(Step step) {
        return day.job().crews().stream()
                .filter(crew -> crew.id().equals(step.crew().orElseThrow()))
                .findFirst()
                .orElseThrow();
    }

    private void checkCabin(Step step) {
        Crew crew = crewOf(step);
        String id = crew.id().value();
        day.ledger()
                .demand(
                        crew.people() <= machine.seats(),
                        FindingCode.SEATS,
                        id,
                        () ->
                                Told.of(
                                                "machine",
                                                "Crew " + id + " needs more seats than there are.")
                                        .figures(crew.people(), machine.seats(), ""));
        double mass =
                machine.emptyMassKg()
                        + machine.crewMassKg()
                        + crew.people() * crew.massEachKg()
                        + step.fuelStartKg()
                        + machine.fuelGaugeSpreadKg();
        day.ledger()
                .demand(
                        mass <= machine.maxInternalMassKg() + Tolerance.DUST_KG,
                        FindingCode.CABIN_MASS,
                        id,
                        () ->
                                Told.of("machine", "The machine is too heavy with crew " + id + ".")
                                        .figures(mass, machine.maxInternalMassKg(), "kg"));
        day.ledger()
                .demand(
                        !crew.stays(),
                        FindingCode.CREW_MOVED,
                        id,
                        () -> Told.of("crews", "Crew " + id + " stays where it is all day."));
    }

    private void checkDay(Crew crew) {
        String id = crew.id().value();
        List<CrewStay> all = new ArrayList<>(where.staysOf(crew));
        if (all.isEmpty() && flightsOf(crew).isEmpty()) {
            return;
        }
        Instant from = crew.availableFrom();
        day.ledger()
                .demand(
                        all.isEmpty() || !all.get(0).fromAt().isBefore(from),
                        FindingCode.CREW_TOO_FAST,
                        id,
                        () ->
                                Told.of(
                                        "crews",
                                        "Crew " + id + " is not there before " + from + "."));
        // Only the place counts here: whoever is late at the start is judged just above.
        all.add(0, new CrewStay(crew.id(), crew.start(), from, from, "starts"));
        List<Step> flown = new ArrayList<>(flightsOf(crew));
        for (int i = 0; i < all.size(); i++) {
            CrewStay stay = all.get(i);
            Instant next = i + 1 < all.size() ? all.get(i + 1).fromAt() : Instant.MAX;
            day.ledger()
                    .demand(
                            !stay.toAt().isBefore(stay.fromAt())
                                    && (i == 0 || !stay.toAt().isAfter(next)),
                            FindingCode.CREW_TWO_PLACES,
                            id,
                            () ->
                                    Told.of(
                                            "plan",
                                            "Crew " + id + " is in two places at " + next + "."));
            checkMove(crew, stay, i + 1 < all.size() ? all.get(i + 1) : null, flown);
        }
        for (CrewStay move : where.movesOf(crew)) {
            day.ledger()
                    .demand(
                            !move.toAt().isBefore(move.fromAt()),
                            FindingCode.CREW_TOO_FAST,
                            id,
                            () ->
                                    Told.of(
                                            "plan",
                                            "Crew "
                                                    + id
                                                    + " is at "
                                                    + move.place()
                                                    + " before it sets out at "
                                                    + move.fromAt()
                                                    + "."));
            boolean apart =
                    where.staysOf(crew).stream()
                            .noneMatch(stay -> overlapS(stay, move) > Tolerance.TIME_S);
            day.ledger()
                    .demand(
                            apart,
                            FindingCode.CREW_TWO_PLACES,
                            id,
                            () ->
                                    Told.of(
                                            "plan",
                                            "Crew "
                                                    + id
                                                    + " stays and moves at once, "
                                                    + move.fromAt()
                                                    + "."));
        }
        checkSaid(crew);
        day.ledger()
                .demand(
                        !crew.stays() || all.stream().allMatch(s -> s.place().equals(crew.start())),
                        FindingCode.CREW_MOVED,
                        id,
                        () -> Told.of("crews", "Crew " + id + " stays where it is all day."));
    }

    private static double overlapS(CrewStay one, CrewStay other) {
        Instant from = one.fromAt().isAfter(other.fromAt()) ? one.fromAt() : other.fromAt();
        Instant to = one.toAt().isBefore(other.toAt()) ? one.toAt() : other.toAt();
        return Day.betweenS(from, to);
    }

    private List<Step> flightsOf(Crew crew) {
        return day.plan().steps().stream()
                .filter(step -> step.kind() == StepKind.CREW_MOVE)
                .filter(step -> step.crew().orElseThrow().equals(crew.id()))
                .toList();
    }

    /** From one stay to the next on foot and by the flights between them, each taken once. */
    private void checkMove(Crew crew, CrewStay stay, @Nullable CrewStay next, List<Step> flown) {
        String id = crew.id().value();
        PlaceId at = stay.place();
        Instant since = stay.toAt();
        // A flight belongs to the last stay that had begun when it left; boarding is part of it.
        while (!flown.isEmpty()
                && (next == null || flown.get(0).startAt().isBefore(next.fromAt()))) {
            Step flight = flown.remove(0);
            double walk = walks.durationS(at, flight.from());
            Instant left = since;
            boolean there =
                    walk == 0
                            ? !left.isAfter(flight.endAt())
                            : Day.betweenS(left, flight.startAt()) >= walk - Tolerance.TIME_S;
            day.ledger()
                    .demand(
                            there,
                            FindingCode.CREW_ABSENT,
                            id,
                            () ->
                                    Told.of(
                                            "plan",
                                            "Crew "
                                                    + id
                                                    + " is not at "
                                                    + flight.from()
                                                    + " when it is flown at "
                                                    + flight.startAt()
                                                    + "."));
            at = flight.to();
            // Getting off is part of the flight, so a stay may begin while it lasts.
            since = flight.endAt().minusMillis(Math.round(rules.times().boardingS() * 1000));
        }
        if (next == null) {
            return;
        }
        if (wasSaidToBeThere(crew, stay, next)) {
            return;
        }
        double needs = walks.durationS(at, next.place());
        double has = Day.betweenS(since, next.fromAt());
        PlaceId from = at;
        day.ledger()
                .demand(
                        needs == 0 || has >= needs - Tolerance.TIME_S,
                        FindingCode.CREW_TOO_FAST,
                        id,
                        () ->
                                Told.of(
                                                "crews",
                                                "Crew "
                                                        + id
                                                        + " cannot come from "
                                                        + from
                                                        + " to "
                                                        + next.place()
                                                        + " in this time.")
                                        .figures(has, needs, "s"));
    }

    /** Whoever said so is there, however he came; between the two stays nobody counts him anywhere. */
    private boolean wasSaidToBeThere(Crew crew, CrewStay stay, CrewStay next) {
        return saidOf(crew.id()).stream()
                .filter(told -> told.place().equals(next.place()))
                .filter(told -> Day.betweenS(stay.toAt(), told.at()) >= -Tolerance.TIME_S)
                .filter(told -> Day.betweenS(told.at(), next.fromAt()) >= -Tolerance.TIME_S)
                .anyMatch(told -> !told.at().isAfter(lastSaidAt(crew)));
    }

    private List<ToldPlace> saidOf(CrewId crew) {
        return day.plan().summary().anew().map(Anew::told).orElse(List.of()).stream()
                .filter(told -> told.crew().equals(crew))
                .toList();
    }

    /** In whole seconds, the next one; who is there before his hours counts from their begin. */
    private Instant lastSaidAt(Crew crew) {
        Instant now = day.plan().plannedAt().plusSeconds(1);
        return now.isBefore(crew.availableFrom()) ? crew.availableFrom() : now;
    }

    /** The plan has a crew where it was said to be, and nobody was told of what is still to come. */
    private void checkSaid(Crew crew) {
        String id = crew.id().value();
        List<Step> steps = day.plan().steps();
        Instant end = steps.isEmpty() ? Instant.MIN : steps.get(steps.size() - 1).endAt();
        for (ToldPlace told : saidOf(crew.id())) {
            if (!told.at().isBefore(end)) {
                continue;
            }
            boolean there =
                    where.staysOf(crew).stream()
                            .anyMatch(
                                    stay ->
                                            stay.place().equals(told.place())
                                                    && !stay.fromAt().isAfter(told.at())
                                                    && !stay.toAt().isBefore(told.at()));
            day.ledger()
                    .demand(
                            there && !told.at().isAfter(lastSaidAt(crew)),
                            FindingCode.CREW_TWO_PLACES,
                            id,
                            () ->
                                    Told.of(
                                            "plan",
                                            "Crew "
                                                    + id
                                                    + " was said to be at "
                                                    + told.place()
                                                    + " at "
                                                    + told.at()
                                                    + ", and the plan does not have it there."));
        }
    }

    private void checkRefuel(String name, Step step) {
        boolean there =
                !where.listPresent(Crew.Role.REFUEL, step.from(), step.startAt(), step.endAt())
                        .isEmpty();
        day.ledger()
                .demand(
                        there,
                        FindingCode.HANDLER_ABSENT,
                        name,
                        () ->
                                Told.of(
                                        "crews",
                                        "Nobody at " + step.from() + " refuels in " + name + "."));
    }

    private void checkRotation(Rotation rotation) {
        checkHookUp(rotation);
        for (Drop drop : rotation.drops()) {
            Load load = day.job().getLoad(drop.load());
            checkReceived(load, drop);
            if (day.kindOf(load).standsUp()) {
                checkGuyed(load, drop);
                checkReady(load, drop);
            }
        }
    }

    private void checkHookUp(Rotation rotation) {
        Load first = day.job().getLoad(rotation.loads().get(0));
        PlaceId place = first.from();
        Instant at = rotation.hookedAt();
        Instant begin = day.hookedFrom(rotation);
        List<Crew> hooks =
                where.listPresent(Crew.Role.HOOK, place, begin, at).stream()
                        .filter(crew -> !isGuying(crew, place, begin, at))
                        .toList();
        boolean anybody =
                day.ledger()
                        .demand(
                                !hooks.isEmpty(),
                                FindingCode.HANDLER_ABSENT,
                                first.id().value(),
                                () ->
                                        Told.of(
                                                "crews",
                                                "Nobody trained is free at "
                                                        + place
                                                        + " to hook "
                                                        + first.id()
                                                        + "."));
        if (!anybody) {
            return;
        }
        for (Step step : day.plan().steps()) {
            boolean busy =
                    step.kind() == StepKind.REFUEL
                            && step.from().equals(place)
                            && !at.isBefore(step.startAt())
                            && Day.betweenS(step.endAt(), begin)
                                    < rules.refuelling().refuelHandlerBusyS() - Tolerance.TIME_S;
            if (busy) {
                List<Crew> fuellers =
                        where.listPresent(Crew.Role.REFUEL, place, step.startAt(), step.endAt());
                // Somebody else must be able to do the one or the other.
                boolean two =
                        hooks.stream()
                                .anyMatch(
                                        hook ->
                                                fuellers.stream()
                                                        .anyMatch(f -> !f.id().equals(hook.id())));
                day.ledger()
                        .demand(
                                two,
                                FindingCode.REFUELLING_CONFLICT,
                                first.id().value(),
                                () ->
                                        Told.of(
                                                "rules",
                                                "Whoever should hook "
                                                        + first.id()
                                                        + " has just refuelled."));
            }
        }
    }

    private void checkReceived(Load load, Drop drop) {
        Instant before = drop.releasedAt().minusMillis(Math.round(RECEIVE_BEFORE_S * 1000));
        Instant needed = day.neededFrom(drop);
        Instant from = needed.isBefore(before) ? needed : before;
        List<Crew> there =
                where.listPresent(Crew.Role.RECEIVE, drop.place(), from, drop.releasedAt());
        boolean free =
                there.stream()
                        .anyMatch(crew -> !isGuying(crew, drop.place(), needed, drop.releasedAt()));
        day.ledger()
                .demand(
                        free,
                        FindingCode.CREW_ABSENT,
                        load.id().value(),
                        () ->
                                Told.of(
                                        "crews",
                                        "Nobody is free at "
                                                + drop.place()
                                                + " to receive "
                                                + load.id()
                                                + "."));
    }

    /** Whether a crew still guys an earlier pole there and nobody else does. */
    private boolean isGuying(Crew crew, PlaceId place, Instant from, Instant until) {
        for (Drop other : day.drops().values()) {
            LoadKind kind = day.kindOf(day.job().getLoad(other.load()));
            double since = Day.betweenS(other.releasedAt(), from);
            boolean busy =
                    kind.standsUp()
                            && other.place().equals(place)
                            && other.releasedAt().isBefore(until)
                            && since < kind.busyAfterS() - Tolerance.TIME_S;
            if (busy) {
                List<Crew> guying =
                        where.listPresent(
                                Crew.Role.GUY,
                                other.place(),
                                other.releasedAt(),
                                other.releasedAt()
                                        .plusMillis(Math.round(kind.busyAfterS() * 1000)));
                if (guying.stream().allMatch(one -> one.id().equals(crew.id()))) {
                    return true;
                }
            }
        }
        return false;
    }

    private void checkGuyed(Load load, Drop drop) {
        Instant until =
                drop.releasedAt().plusMillis(Math.round(day.kindOf(load).busyAfterS() * 1000));
        Instant from = day.neededFrom(drop);
        boolean there = !where.listPresent(Crew.Role.GUY, drop.place(), from, until).isEmpty();
        day.ledger()
                .demand(
                        there,
                        FindingCode.CREW_ABSENT,
                        load.id().value(),
                        () ->
                                Told.of(
                                        "crews",
                                        "Nobody stays at "
                                                + drop.place()
                                                + " to guy "
                                                + load.id()
                                                + "."));
    }

    /** Of two poles that both make ready either may be first. */
    private boolean bothMakeReady(Load one, Load other) {
        return day.kindOf(one).standsUp()
                && day.kindOf(other).standsUp()
                && day.kindOf(other).readyAfterS() > 0;
    }

    /** A pole that stood when the day was ordered anew is waited for by nothing. */
    private boolean comesToADoneOne(Load bag, Load pole) {
        return day.isDone(pole.id()) && !day.isDone(bag.id());
    }

    /** What makes a place ready must have lain there long enough, with people there to use it. */
    private void checkReady(Load pole, Drop drop) {
        List<Crew> guys =
                day.job().crews().stream()
                        .filter(crew -> crew.roles().contains(Crew.Role.GUY))
                        .filter(crew -> where.mayWork(crew, drop.place()))
                        .toList();
        for (Load bag : day.job().loads()) {
            Drop earlier = day.drops().get(bag.id());
            double needs = day.kindOf(bag).readyAfterS();
            boolean itself = bag.id().equals(pole.id());
            if (earlier == null || itself || !(needs > 0) || !bag.to().equals(pole.to())) {
                continue;
            }
            boolean behind = earlier.releasedAt().isAfter(drop.releasedAt());
            if (behind && (bothMakeReady(bag, pole) || comesToADoneOne(bag, pole))) {
                continue;
            }
            double had =
                    behind
                            ? -1
                            : where.presentS(
                                    guys, drop.place(), earlier.releasedAt(), day.neededFrom(drop));
            day.ledger()
                    .demand(
                            had >= needs - Tolerance.TIME_S,
                            FindingCode.ORDER_BROKEN,
                            pole.id().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    drop.place()
                                                            + " is not ready for "
                                                            + pole.id()
                                                            + " after "
                                                            + bag.id()
                                                            + ".")
                                            .figures(had, needs, "s"));
        }
    }
}
