package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Steps follow each other in time and place and last as long as the rules say. */
final class ClockCheck {
    private final Day day;
    private final Rules rules;

    ClockCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
    }

    void run() {
        PlaceId at = day.job().machineStart();
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            String name = Day.name(i + 1);
            PlaceId here = at;
            day.ledger()
                    .demand(
                            step.from().equals(here),
                            FindingCode.STEP_CHAIN,
                            name,
                            () ->
                                    Told.of(
                                            "plan",
                                            name
                                                    + " starts at "
                                                    + step.from()
                                                    + " while the machine is at "
                                                    + here
                                                    + "."));
            if (i > 0) {
                checkJoint(name, day.plan().steps().get(i - 1), step);
            }
            boolean stays = Day.flies(step) || step.from().equals(step.to());
            day.ledger()
                    .demand(
                            stays,
                            FindingCode.STEP_CHAIN,
                            name,
                            () ->
                                    Told.of(
                                            "plan",
                                            name + " (" + step.kind() + ") moves the machine."));
            checkDuration(i, name, step);
            checkPlaces(step);
            at = step.to();
        }
    }

    private void checkJoint(String name, Step before, Step step) {
        double gap = Day.betweenS(before.endAt(), step.startAt());
        day.ledger()
                .demand(
                        gap >= -Tolerance.TIME_S,
                        FindingCode.STEP_OVERLAP,
                        name,
                        () ->
                                Told.of("plan", name + " starts before the step ahead of it ends.")
                                        .figures(gap, 0, "s"));
        day.ledger()
                .demand(
                        gap <= Tolerance.TIME_S,
                        FindingCode.STEP_TIME,
                        name,
                        () ->
                                Told.of(
                                                "plan",
                                                "Nothing is said of the time ahead of "
                                                        + name
                                                        + ".")
                                        .figures(gap, 0, "s"));
    }

    private void checkDuration(int at, String name, Step step) {
        double least =
                switch (step.kind()) {
                    case ROTATION -> rotationS(step.rotation().orElseThrow());
                    case POSITION -> legsS(step.legs());
                    // People get on and off: boarding counts twice.
                    case CREW_MOVE -> legsS(step.legs()) + 2 * rules.times().boardingS();
                    case REFUEL ->
                            rules.refuelling().refuelS()
                                    + Math.max(0, step.fuelEndKg() - step.fuelStartKg())
                                            / rules.refuelling().refuelKgPerS();
                    case LINE_CHANGE -> rules.times().lineChangeS();
                    case BREAK -> rules.duty().breakS() - offBeforeS(at);
                    case WAIT -> 0;
                };
        double lasts = Day.durationS(step);
        day.ledger()
                .demand(
                        lasts >= least - Tolerance.TIME_S,
                        FindingCode.STEP_TIME,
                        name,
                        () ->
                                Told.of("rules", name + " (" + step.kind() + ") is too short.")
                                        .figures(lasts, least, "s"));
        step.rotation().ifPresent(rotation -> checkReleases(step, rotation));
        step.rotation().ifPresent(rotation -> checkReturn(step, rotation));
    }

    /** How long the engine was off straight before a step, s: a break may begin with fuelling. */
    private double offBeforeS(int at) {
        double sum = 0;
        for (int i = at - 1; i >= 0 && !day.plan().steps().get(i).engineRunning(); i--) {
            sum += Day.durationS(day.plan().steps().get(i));
        }
        return sum;
    }

    private static double legsS(List<Leg> legs) {
        return legs.stream().mapToDouble(Leg::durationS).sum();
    }

    /** Least time of a rotation, s: hooking up, every way, every set-down, turning in on the return. */
    private double rotationS(Rotation rotation) {
        double sum = legsS(rotation.legs()) + day.hookUpS(rotation);
        for (int i = 0; i < rotation.drops().size(); i++) {
            sum += setDownS(rotation, i);
        }
        List<Leg> legs = rotation.legs();
        boolean returns = !legs.isEmpty() && legs.get(legs.size() - 1).carrying().isEmpty();
        return sum + (returns ? rules.times().returnExtraS() : 0);
    }

    /** Least time in the hover for one release, s; a further one on the trip adds its own time. */
    private double setDownS(Rotation rotation, int index) {
        LoadKind kind = day.kindOf(day.job().getLoad(rotation.drops().get(index).load()));
        return index == 0 ? kind.setDownS() : rules.times().secondReleaseS();
    }

    private void checkReleases(Step step, Rotation rotation) {
        double least = day.hookUpS(rotation);
        int leg = 0;
        List<Leg> legs = rotation.legs();
        for (int i = 0; i < rotation.drops().size(); i++) {
            Drop drop = rotation.drops().get(i);
            while (leg < legs.size()
                    && (legs.get(leg).carrying().contains(drop.load()) || isAhead(legs, leg))) {
                least += legs.get(leg).durationS();
                leg++;
            }
            least += setDownS(rotation, i);
            double needs = least;
            double lasts = Day.betweenS(step.startAt(), drop.releasedAt());
            double hangs = needs - unhungS(rotation);
            double hung = Day.betweenS(rotation.hookedAt(), drop.releasedAt());
            boolean inStep =
                    !drop.releasedAt().isAfter(step.endAt())
                            && !rotation.hookedAt().isBefore(step.startAt());
            day.ledger()
                    .demand(
                            inStep && lasts >= needs - Tolerance.TIME_S,
                            FindingCode.STEP_TIME,
                            drop.load().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    "The release of "
                                                            + drop.load()
                                                            + " does not fit its rotation.")
                                            .figures(lasts, needs, "s"));
            day.ledger()
                    .demand(
                            hung >= hangs - Tolerance.TIME_S,
                            FindingCode.STEP_TIME,
                            drop.load().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    drop.load()
                                                            + " is hooked up too late for its release.")
                                            .figures(hung, hangs, "s"));
        }
    }

    /** What is flown after the last release fits between it and the rotation's end. */
    private void checkReturn(Step step, Rotation rotation) {
        Drop last = rotation.drops().get(rotation.drops().size() - 1);
        List<Leg> legs = rotation.legs();
        int from = legs.size();
        while (from > 0 && legs.get(from - 1).carrying().isEmpty()) {
            from--;
        }
        List<Leg> back = from == 0 ? List.of() : legs.subList(from, legs.size());
        double needs = legsS(back) + (back.isEmpty() ? 0 : rules.times().returnExtraS());
        double left = Day.betweenS(last.releasedAt(), step.endAt());
        day.ledger()
                .demand(
                        left >= needs - Tolerance.TIME_S,
                        FindingCode.STEP_TIME,
                        last.load().value(),
                        () ->
                                Told.of(
                                                "rules",
                                                last.load()
                                                        + " is let go too late for the way back.")
                                        .figures(left, needs, "s"));
    }

    /** Time of a rotation until its loads hang: ways flown before the hook-up, and hooking up, s. */
    private double unhungS(Rotation rotation) {
        List<Leg> legs = rotation.legs();
        double sum = day.hookUpS(rotation);
        for (int i = 0; i < legs.size() && isAhead(legs, i); i++) {
            sum += legs.get(i).durationS();
        }
        return sum;
    }

    /** Whether a leg is flown before the hook-up. */
    private static boolean isAhead(List<Leg> legs, int index) {
        return legs.get(index).carrying().isEmpty()
                && legs.stream().limit(index).allMatch(leg -> leg.carrying().isEmpty());
    }

    private void checkPlaces(Step step) {
        checkAgreed(step.from());
        checkAgreed(step.to());
        step.rotation().stream()
                .flatMap(rotation -> rotation.drops().stream())
                .forEach(drop -> checkAgreed(drop.place()));
        if (step.kind() == StepKind.BREAK || !step.engineRunning()) {
            Place place = day.job().getPlace(step.from());
            day.ledger()
                    .demand(
                            place.standing(),
                            FindingCode.PLACE_REFUSED,
                            place.id().value(),
                            () ->
                                    Told.of(
                                            "places",
                                            "The machine may not stand at "
                                                    + place.id()
                                                    + " with the engine off."));
        }
        if (Day.flies(step)) {
            Instant at = step.startAt();
            day.ledger()
                    .demand(
                            step.engineRunning(),
                            FindingCode.PLAN_UNREADABLE,
                            step.from().value(),
                            () -> Told.of("plan", "The flight at " + at + " has its engine off."));
        }
    }

    private void checkAgreed(PlaceId id) {
        day.ledger()
                .demand(
                        day.job().getPlace(id).agreed(),
                        FindingCode.PLACE_REFUSED,
                        id.value(),
                        () -> Told.of("places", "The use of " + id + " is not agreed."));
    }
}
