package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LineItem;
import underhook.core.job.Zone;
import underhook.core.site.Rig;

/** Whether a trip can be flown at some hour with some line, and if not why. */
final class Liftable {
    private final DayModel model;

    Liftable(DayModel model) {
        this.model = model;
    }

    /**
     * Why a trip can be flown at no hour with no line; empty when it can.
     *
     * @param ended when it is, nothing more is looked at
     */
    Optional<Finding> findStop(Trip trip, BooleanSupplier ended) {
        String id = trip.loads().get(0).id().value();
        boolean wind = false;
        boolean room = false;
        boolean hook = false;
        boolean hung = false;
        List<Integer> unhung = new ArrayList<>();
        boolean way = false;
        boolean chart = false;
        boolean balanced = false;
        double mostFuelKg = Double.NEGATIVE_INFINITY;
        double fuelNeedKg = Double.POSITIVE_INFINITY;
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            for (int line : model.linesByLength()) {
                if (ended.getAsBoolean() || model.legs().isCut(trip)) {
                    return notLookedAt(id);
                }
                if (!model.air().isWindWithin(trip, slot)) {
                    continue;
                }
                wind = true;
                var item = model.machine.lines().get(line);
                if (trip.liftMassKg() > item.limitKg()
                        || trip.liftMassKg() + item.massKg() > model.machine.hookLimitKg()) {
                    continue;
                }
                hook = true;
                Rig rig = trip.rig(item.lengthM());
                Rig hooking = rig.withoutCredit();
                if (model.ways().wayIn(trip.to(), slot, trip.kindNames(), rig).isEmpty()
                        || model.ways()
                                .hookUp(trip.from(), slot, trip.kindNames(), hooking)
                                .isEmpty()) {
                    continue;
                }
                room = true;
                if (!model.legs().isHung(trip, line)) {
                    unhung.add(line);
                    continue;
                }
                hung = true;
                Optional<DayLegs.LegAt> leg = model.legs().loadedLeg(trip, line, slot, slot);
                Optional<DayLegs.LegAt> back =
                        model.legs().emptyLeg(trip.to(), trip.from(), line, slot);
                if (leg.isEmpty() || back.isEmpty()) {
                    continue;
                }
                way = true;
                if (!model.air().isInChart(trip.from(), slot)
                        || !model.air().isInChart(trip.to(), slot)) {
                    continue;
                }
                chart = true;
                double need = fuelNeedKg(trip, leg.get(), back.get());
                double most = model.hoverFuelMaxKg(trip, line, slot, slot);
                if (most >= need && model.fuelMaxKg(trip, line, slot, slot) < need) {
                    continue;
                }
                balanced = true;
                if (most - need > mostFuelKg - fuelNeedKg
                        || mostFuelKg == Double.NEGATIVE_INFINITY) {
                    mostFuelKg = most;
                    fuelNeedKg = need;
                }
                if (most >= need) {
                    return Optional.empty();
                }
            }
        }
        if (model.legs().isCut(trip)) {
            return notLookedAt(id);
        }
        if (!wind) {
            return Optional.of(new NoAir(model).sayWind(trip, id));
        }
        if (!hook) {
            return stop(
                    FindingCode.LINE_LIMIT,
                    id,
                    "No line in stock may carry it with the hook's limit kept.");
        }
        if (!room) {
            Optional<Finding> tooLow = tooLow(trip);
            if (tooLow.isPresent()) {
                return tooLow;
            }
            Optional<String> closed = new NoWay(model).sayNoWayIn(trip);
            if (closed.isPresent()) {
                return stop(FindingCode.NO_WAY, id, closed.get());
            }
            return Optional.of(new NoRoom(model, trip).say());
        }
        if (!hung) {
            return Optional.of(sayUnhung(trip, unhung.get(0)));
        }
        if (!way) {
            return stop(FindingCode.NO_WAY, id, new NoWay(model).say(trip));
        }
        if (!chart) {
            return Optional.of(
                    new NoAir(model)
                            .sayChart(trip, id, slot -> model.air().isWindWithin(trip, slot)));
        }
        if (!balanced) {
            return stop(
                    FindingCode.CENTRE_OF_GRAVITY,
                    id,
                    "With it on the hook the centre of gravity leaves its limits at some fuel between"
                            + " the reserve and the least it is flown with.");
        }
        double wholeKg = Math.floor(mostFuelKg);
        return Optional.of(
                new Finding(
                        FindingCode.FUEL_TOO_LOW_FOR_LOAD,
                        Severity.STOP,
                        id,
                        Figures.text(Math.max(0, wholeKg), 0),
                        Figures.text(Math.ceil(fuelNeedKg), 0),
                        "kg",
                        "machine",
                        (wholeKg > 0
                                        ? "At the best hour it lifts with at most "
                                                + Figures.text(wholeKg, 0)
                                                + " kg of fuel"
                                        : "It cannot be lifted with any fuel, at no hour"
                                                + (wholeKg < 0
                                                        ? ": with none aboard it is still "
                                                                + Figures.text(-wholeKg, 0)
                                                                + " kg too heavy"
                                                        : ""))
                                + "; the trip with reserve and contingency needs "
                                + Figures.text(Math.ceil(fuelNeedKg), 0)
                                + (trip.kinds().get(0).standsUp()
                                        ? " kg. Perhaps on a cooler day, from nearer by or with a"
                                                + " stronger machine."
                                        : " kg. Perhaps it can be split.")));
    }

    /** Why it does not hang on the line that has room, though it may on another that has none. */
    private Finding sayUnhung(Trip trip, int line) {
        String id = trip.loads().get(0).id().value();
        LineItem item = model.machine.lines().get(line);
        Optional<Finding> gear = model.gear().findStop(trip, item);
        if (gear.isPresent()) {
            return gear.get();
        }
        double lackingKg = model.carriage().lackingBallastKg(line);
        if (lackingKg > 0) {
            return new Finding(
                    FindingCode.EMPTY_LINE_LIGHT,
                    Severity.STOP,
                    id,
                    Figures.text(lackingKg, 1),
                    "",
                    "kg",
                    "SERVICE-LETTER-1727",
                    "The line "
                            + item.name()
                            + " would fly back empty with too little at its end: "
                            + Figures.text(Math.ceil(lackingKg), 0)
                            + " kg of ballast are lacking there. Hang them on it, state them in the line's"
                            + " mass and end mass, or bring a longer line.");
        }
        return Finding.of(
                FindingCode.NO_WAY,
                Severity.STOP,
                id,
                "rules",
                "With the line "
                        + item.name()
                        + ", which has room there, it would be flown slower than is worth flying: line or"
                        + " load swing too near the tail, or trail too far. Perhaps a longer line.");
    }

    /** Zones over an end in which not even the longest line hovers high enough. */
    private Optional<Finding> tooLow(Trip trip) {
        List<Integer> lines = model.linesByLength();
        double longestM = model.machine.lines().get(lines.get(lines.size() - 1)).lengthM();
        Rig rig = trip.rig(longestM);
        return tooLow(trip, trip.to(), rig)
                .or(() -> tooLow(trip, trip.from(), rig.withoutCredit()));
    }

    private Optional<Finding> tooLow(Trip trip, int place, Rig rig) {
        List<Optional<Zone>> hours =
                IntStream.range(0, model.air().slots.size())
                        .mapToObj(
                                slot -> model.ways().findTooLow(place, slot, trip.kindNames(), rig))
                        .toList();
        return hours.stream()
                .flatMap(Optional::stream)
                .filter(unused -> hours.stream().allMatch(Optional::isPresent))
                .findFirst()
                .map(
                        zone ->
                                new Finding(
                                        FindingCode.HOVER_IN_ZONE,
                                        Severity.STOP,
                                        trip.loads().get(0).id().value(),
                                        Figures.text(Math.floor(rig.hookAglM()), 0),
                                        Figures.text(zone.minAglM(), 0),
                                        "m",
                                        zone.source(),
                                        model.places.get(place).id()
                                                + " lies in zone "
                                                + zone.id()
                                                + ", where nobody "
                                                + (zone.rule() == Zone.Rule.MIN_HEIGHT
                                                        ? "flies"
                                                        : "hovers")
                                                + " lower than "
                                                + Figures.text(zone.minAglM(), 0)
                                                + " m above ground. Perhaps another place, or a"
                                                + " permission."));
    }

    /** No refusal: nobody knows whether it could be flown. */
    private static Optional<Finding> notLookedAt(String id) {
        return stop(
                FindingCode.SEARCH_CUT,
                id,
                "The search was stopped before all ways for it were looked at. "
                        + Unflown.MORE_TIME);
    }

    /**
     * Least fuel to read at hook-up: the trip and the way back, reserve and contingency, and the gauge
     * off both ways.
     */
    private double fuelNeedKg(Trip trip, DayLegs.LegAt out, DayLegs.LegAt back) {
        double burn = model.machine.burnKgPerS();
        double flownKg =
                burn * (out.durationS() + back.durationS() + model.rules.times().returnExtraS())
                        + Math.max(burn, model.machine.hoverBurnKgPerS()) * trip.setDownS();
        return flownKg
                + burn * (model.machine.reserveS() + model.rules.refuelling().contingencyS())
                + 2 * model.machine.fuelGaugeSpreadKg();
    }

    private static Optional<Finding> stop(FindingCode code, String id, String message) {
        return Optional.of(Finding.of(code, Severity.STOP, id, "rules", message));
    }
}
