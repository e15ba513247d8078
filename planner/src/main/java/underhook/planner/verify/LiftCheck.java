package underhook.planner.verify;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.finding.FindingCode;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Masses on the hook against hook, line and every hover of a rotation. */
final class LiftCheck {
    private final Day day;
    private final Machine machine;
    private final Air air;
    private final Chart chart;

    LiftCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
        this.air = new Air(day.job().weather());
        this.chart = new Chart(machine.hover(), machine.maxExternalMassKg());
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(rotation -> check(step, rotation));
        }
    }

    private void check(Step step, Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        Optional<LineItem> line = findLine(step);
        // A missing mass and an unknown line are refused elsewhere; no figure can be made of them.
        if (line.isEmpty() || loads.stream().anyMatch(load -> load.massKg().isEmpty())) {
            return;
        }
        checkHook(rotation, loads, line.get());
        double hover = Double.POSITIVE_INFINITY;
        double fuel = Double.POSITIVE_INFINITY;
        double operating = machine.emptyMassKg() + machine.crewMassKg() + line.get().massKg();
        for (int i = -1; i < rotation.drops().size(); i++) {
            List<Load> hanging = loads.subList(Math.max(0, i), loads.size());
            PlaceId place = i < 0 ? loads.get(0).from() : rotation.drops().get(i).place();
            // Over the set-down it hangs from when it comes until it is let go, in whatever rows
            // that is.
            List<WeatherHour> rows =
                    i < 0 ? air.listRows(rotation.hookedAt()) : day.rowsOver(rotation, i);
            OptionalDouble here = findHoverKg(place, rows, hanging.get(0));
            if (here.isEmpty()) {
                return;
            }
            double burnt =
                    i < 0 ? 0 : FuelCheck.leastBurnKg(day, rotation, rotation.drops().get(i));
            double least = here.getAsDouble();
            hover = Math.min(hover, least);
            double needs = capacityKg(hanging, rotation.ballastKg());
            fuel = Math.min(fuel, least - operating - needs + burnt);
        }
        checkFuel(rotation, hover, fuel);
    }

    private Optional<LineItem> findLine(Step step) {
        return machine.lines().stream()
                .filter(line -> Math.abs(line.lengthM() - step.lineLengthM()) < Tolerance.LENGTH_M)
                .findFirst();
    }

    /** Sling capacity that the loads need, kg: for construction part of it stays unused. */
    private double capacityKg(List<Load> loads, double ballastKg) {
        double mass = loads.stream().mapToDouble(day::liftMassKg).sum() + ballastKg;
        boolean construction =
                loads.stream().anyMatch(load -> day.kindOf(load).constructionMargin());
        return construction ? mass / (1 - day.job().rules().masses().constructionFraction()) : mass;
    }

    private void checkHook(Rotation rotation, List<Load> loads, LineItem line) {
        String first = loads.get(0).id().value();
        double below = loads.stream().mapToDouble(day::liftMassKg).sum() + rotation.ballastKg();
        double onHook = below + line.massKg();
        double stated = rotation.massOnHookKg();
        String perhaps =
                day.plan().summary().anew().isPresent()
                        ? " Perhaps it was weighed during the day: enter its mass in the load list, then"
                                + " check again."
                        : "";
        day.ledger()
                .demand(
                        stated >= onHook - Tolerance.DUST_KG
                                && stated <= onHook + loads.size() + 2 * Tolerance.MASS_KG,
                        FindingCode.MASS_ARITHMETIC,
                        first,
                        () ->
                                Told.of(
                                                "loads",
                                                "Mass on the hook with "
                                                        + first
                                                        + " does not add up."
                                                        + perhaps)
                                        .figures(stated, onHook, "kg"));
        double ballastLimit = Math.ceil(day.job().rules().masses().ballastKg()) * loads.size();
        day.ledger()
                .demand(
                        rotation.ballastKg() >= 0
                                && rotation.ballastKg() <= ballastLimit + Tolerance.DUST_KG,
                        FindingCode.MASS_ARITHMETIC,
                        first,
                        () ->
                                Told.of(
                                                "rules",
                                                "More ballast under " + first + " than is carried.")
                                        .figures(rotation.ballastKg(), ballastLimit, "kg"));
        day.ledger()
                .demand(
                        onHook <= machine.hookLimitKg() + Tolerance.DUST_KG,
                        FindingCode.HOOK_LIMIT,
                        first,
                        () ->
                                Told.of("machine", "Too much hangs on the hook with " + first + ".")
                                        .figures(onHook, machine.hookLimitKg(), "kg"));
        day.ledger()
                .demand(
                        below <= line.limitKg() + Tolerance.DUST_KG,
                        FindingCode.LINE_LIMIT,
                        first,
                        () ->
                                Told.of(
                                                "machine",
                                                "Too much hangs on line "
                                                        + line.name()
                                                        + " with "
                                                        + first
                                                        + ".")
                                        .figures(below, line.limitKg(), "kg"));
    }

    /** Least hover mass of the rows that count, kg; empty and entered where there is none. */
    private OptionalDouble findHoverKg(PlaceId place, List<WeatherHour> rows, Load load) {
        boolean known =
                day.ledger()
                        .demand(
                                !rows.isEmpty(),
                                FindingCode.WEATHER_MISSING,
                                load.id().value(),
                                () ->
                                        Told.of(
                                                day.job().weather().source(),
                                                "No weather is known for "
                                                        + load.id()
                                                        + " at "
                                                        + place
                                                        + "."));
        if (!known) {
            return OptionalDouble.empty();
        }
        double least = Double.POSITIVE_INFINITY;
        double elevation = day.groundAmslM(place);
        for (WeatherHour row : rows) {
            double altitude = Math.ceil(Air.pressureAltitudeM(row, elevation) - 1e-6);
            double temperature = air.temperatureK(row, elevation);
            OptionalDouble mass = chart.findMassKg(altitude, temperature);
            boolean charted =
                    day.ledger()
                            .demand(
                                    mass.isPresent(),
                                    FindingCode.CHART_RANGE,
                                    load.id().value(),
                                    () ->
                                            Told.of(
                                                    machine.hover().source(),
                                                    "The hover of "
                                                            + load.id()
                                                            + " at "
                                                            + place
                                                            + " lies outside the chart."));
            if (!charted) {
                return OptionalDouble.empty();
            }
            least = Math.min(least, mass.orElseThrow());
        }
        return OptionalDouble.of(least);
    }

    private void checkFuel(Rotation rotation, double hoverKg, double mostFuelKg) {
        String first = rotation.loads().get(0).value();
        day.ledger()
                .demand(
                        rotation.hogeMassKg() <= hoverKg + Tolerance.MASS_KG,
                        FindingCode.HOVER_MASS,
                        first,
                        () ->
                                Told.of(
                                                machine.hover().source(),
                                                "The hover mass of "
                                                        + first
                                                        + " is stated too high.")
                                        .figures(rotation.hogeMassKg(), hoverKg, "kg"));
        day.ledger()
                .demand(
                        rotation.fuelMaxKg() <= mostFuelKg + Tolerance.MASS_KG,
                        FindingCode.FUEL_ABOVE_MAXIMUM,
                        first,
                        () ->
                                Told.of(
                                                machine.hover().source(),
                                                "The most fuel for "
                                                        + first
                                                        + " is stated too high.")
                                        .figures(rotation.fuelMaxKg(), mostFuelKg, "kg"));
        double read = rotation.fuelAtHookKg() + machine.fuelGaugeSpreadKg();
        day.ledger()
                .demand(
                        read <= rotation.fuelMaxKg() + Tolerance.MASS_KG,
                        FindingCode.FUEL_ABOVE_MAXIMUM,
                        first,
                        () ->
                                Told.of(
                                                "plan",
                                                "There may be more fuel at hook-up of "
                                                        + first
                                                        + " than the most that is stated.")
                                        .figures(read, rotation.fuelMaxKg(), "kg"));
        day.ledger()
                .demand(
                        read <= mostFuelKg + Tolerance.MASS_KG,
                        FindingCode.FUEL_ABOVE_MAXIMUM,
                        first,
                        () ->
                                Told.of(
                                                machine.hover().source(),
                                                "There may be too much fuel to lift " + first + ".")
                                        .figures(read, mostFuelKg, "kg"));
    }
}
