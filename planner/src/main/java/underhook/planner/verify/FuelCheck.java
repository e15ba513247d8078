package underhook.planner.verify;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.job.Machine;
import underhook.core.job.Zone;
import underhook.core.plan.Anew;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * Fuel from step to step, recomputed: flow while the engine runs, the hover flow while a load is stood
 * up, a start after every stop. Refuelling sets our chain to the reading that the plan states. Of a step that was begun
 * when the day was ordered anew the end lies between that and what a hover throughout would have left; where the gauge
 * was read meanwhile, both count from what it said.
 */
final class FuelCheck {
    private final Day day;
    private final Machine machine;

    FuelCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
    }

    void run() {
        if (day.plan().steps().isEmpty()) {
            return;
        }
        double own = day.plan().steps().get(0).fuelStartKg();
        boolean running = false;
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            boolean starts = step.engineRunning() && !running;
            double begin = own;
            agree(i + 1, step.fuelStartKg(), begin);
            own -= burnKg(step, starts);
            if (step.kind() == StepKind.REFUEL) {
                checkRefuel(i + 1, step, own);
                own = step.fuelEndKg();
            } else if (day.isBegun(step)) {
                double startKg = starts ? machine.startFuelKg() : 0;
                double most = own;
                double least = begin - startKg - mostKg(step, Day.durationS(step));
                Optional<Anew.Reading> read = readDuring(step);
                if (read.isPresent()) {
                    double restS = Day.betweenS(read.get().at(), step.endAt());
                    most = read.get().fuelKg() - flowKg(step, restS);
                    least = read.get().fuelKg() - mostKg(step, restS);
                }
                agree(i + 1, step.fuelEndKg(), withinKg(step.fuelEndKg(), least, most));
                own = step.fuelEndKg();
            } else if (!agree(i + 1, step.fuelEndKg(), own)) {
                own = step.fuelEndKg();
            }
            checkReading(i + 1, step, begin - (starts ? machine.startFuelKg() : 0));
            running = step.engineRunning();
        }
    }

    private double burnKg(Step step, boolean starts) {
        if (!step.engineRunning()) {
            return 0;
        }
        double hover =
                step.rotation().stream()
                        .flatMap(rotation -> rotation.loads().stream())
                        .map(id -> day.kindOf(day.job().getLoad(id)))
                        .filter(kind -> kind.standsUp())
                        .mapToDouble(kind -> kind.setDownS())
                        .sum();
        return Day.durationS(step) * machine.burnKgPerS()
                + hover * Math.max(0, machine.hoverBurnKgPerS() - machine.burnKgPerS())
                + (starts ? machine.startFuelKg() : 0);
    }

    /** Nobody read what a step that went otherwise than planned burnt: it may have been in a hover throughout. */
    private double mostKg(Step step, double lastsS) {
        double kgPerS = Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        return step.engineRunning() ? lastsS * kgPerS : 0;
    }

    private double flowKg(Step step, double lastsS) {
        return step.engineRunning() ? lastsS * machine.burnKgPerS() : 0;
    }

    /** No tank holds less than nothing. */
    private static double withinKg(double statedKg, double leastKg, double mostKg) {
        return Math.max(0, Math.max(Math.min(leastKg, mostKg), Math.min(mostKg, statedKg)));
    }

    /** What the gauge said last in a step that was begun, after its begin and not after its end. */
    private Optional<Anew.Reading> readDuring(Step step) {
        return day.plan().summary().anew().stream()
                .filter(anew -> day.isBegun(step))
                .flatMap(anew -> anew.readings().stream())
                .filter(read -> read.at().isAfter(step.startAt()))
                .filter(read -> !read.at().isAfter(step.endAt()))
                // Nobody has read what is to come.
                .filter(read -> !read.at().isAfter(day.plan().plannedAt()))
                .sorted(Comparator.comparing(Anew.Reading::at))
                .reduce((one, other) -> other);
    }

    private boolean agree(int number, double statedKg, double ownKg) {
        return day.ledger()
                .demand(
                        Math.abs(statedKg - ownKg) <= Tolerance.FUEL_KG,
                        FindingCode.FUEL_ARITHMETIC,
                        Day.name(number),
                        () ->
                                Told.of(
                                                "machine",
                                                "Fuel of " + Day.name(number) + " does not add up.")
                                        .figures(statedKg, ownKg, "kg"));
    }

    private void checkReading(int number, Step step, double startKg) {
        String name = Day.name(number);
        if (!day.isBegun(step)) {
            checkTank(name, step);
        }
        double low = step.fuelEndKg() - machine.fuelGaugeSpreadKg();
        double reserve = machine.burnKgPerS() * machine.reserveS();
        day.ledger()
                .demand(
                        !step.engineRunning() || low >= reserve - Tolerance.DUST_KG,
                        FindingCode.FUEL_RESERVE,
                        name,
                        () ->
                                Told.of("machine", name + " goes into the reserve.")
                                        .figures(low, reserve, "kg"));
        step.rotation().ifPresent(rotation -> checkAtHook(step, rotation, startKg));
    }

    /**
     * What is to come must fit into the tank. What was begun when the day was ordered anew was flown with what was
     * there, perhaps with another machine.
     */
    private void checkTank(String name, Step step) {
        double mostKg = Math.max(step.fuelStartKg(), step.fuelEndKg());
        String perhaps =
                day.plan().summary().anew().isPresent()
                        ? " Perhaps the machine was changed: state the fuel as read, then order anew."
                        : "";
        day.ledger()
                .demand(
                        mostKg <= machine.fuelUsableKg() + Tolerance.DUST_KG,
                        FindingCode.FUEL_TANK,
                        name,
                        () ->
                                Told.of(
                                                "machine",
                                                name
                                                        + " has more fuel than the tank holds."
                                                        + perhaps)
                                        .figures(mostKg, machine.fuelUsableKg(), "kg"));
    }

    private void checkAtHook(Step step, Rotation rotation, double startKg) {
        Optional<Anew.Reading> read =
                readDuring(step).filter(one -> !one.at().isAfter(rotation.hookedAt()));
        Instant since = read.map(Anew.Reading::at).orElse(step.startAt());
        double from = read.map(Anew.Reading::fuelKg).orElse(startKg);
        double own = from - Day.betweenS(since, rotation.hookedAt()) * machine.burnKgPerS();
        double stated = rotation.fuelAtHookKg();
        String first = rotation.loads().get(0).value();
        day.ledger()
                .demand(
                        // The reading at hook-up may be that of the start of hooking up.
                        stated >= own - Tolerance.FUEL_KG && stated <= from + Tolerance.FUEL_KG,
                        FindingCode.FUEL_ARITHMETIC,
                        first,
                        () ->
                                Told.of(
                                                "machine",
                                                "Fuel at hook-up of " + first + " does not add up.")
                                        .figures(stated, own, "kg"));
    }

    private void checkRefuel(int number, Step step, double beforeKg) {
        String name = Day.name(number);
        String place = step.from().value();
        day.ledger()
                .demand(
                        step.fuelEndKg() >= beforeKg - Tolerance.FUEL_KG,
                        FindingCode.FUEL_ARITHMETIC,
                        name,
                        () ->
                                Told.of("plan", name + " takes fuel out.")
                                        .figures(step.fuelEndKg(), beforeKg, "kg"));
        day.ledger()
                .demand(
                        day.job().getPlace(step.from()).fuel(),
                        FindingCode.FUEL_PLACE,
                        place,
                        () -> Told.of("places", "No fuel is kept at " + place + "."));
        day.ledger()
                .demand(
                        !step.engineRunning(),
                        FindingCode.FUEL_PLACE,
                        name,
                        () ->
                                Told.of(
                                        "rules",
                                        name
                                                + " refuels with the engine running, which no job"
                                                + " approves."));
        day.job().zones().stream()
                .filter(zone -> zone.rule() == Zone.Rule.NO_FUEL)
                .filter(zone -> zone.isActiveOn(day.job().date()))
                .forEach(
                        zone ->
                                day.ledger()
                                        .demand(
                                                !day.shapeOf(zone).covers(day.planeOf(step.from())),
                                                FindingCode.FUEL_PLACE,
                                                place,
                                                () ->
                                                        Told.of(
                                                                zone.source(),
                                                                place
                                                                        + " lies in zone "
                                                                        + zone.id()
                                                                        + " where no fuel is handled.")));
    }

    /** Least fuel burnt from hook-up until a drop's hover begins, kg. */
    static double leastBurnKg(Day day, Rotation rotation, Drop drop) {
        Instant hooked = rotation.hookedAt();
        double setDown = day.kindOf(day.job().getLoad(drop.load())).setDownS();
        double flown = Day.betweenS(hooked, drop.releasedAt()) - setDown;
        return Math.max(0, flown) * day.job().machine().burnKgPerS();
    }
}
