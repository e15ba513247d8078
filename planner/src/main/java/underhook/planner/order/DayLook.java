package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import underhook.core.air.Wind;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.Sun;
import underhook.core.geo.SunPosition;
import underhook.core.job.HoverTable;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.site.HeadingRoom;
import underhook.core.site.Margin;
import underhook.core.unit.Units;

/** What the planner knows of single places and hours, for people who ask how a number came about. */
public final class DayLook {
    private final DayModel model;
    private final PlaceRooms rooms;

    /** By the wire's id: what stands round an end is looked for once. */
    private final Map<String, List<WireEnd>> openEnds = new ConcurrentHashMap<>();

    /** What decides on one heading. */
    public record Heading(
            double headingTrueRad,
            Fit fit,
            String part,
            String cause,
            double marginM,
            double neededM,
            double unknownM) {}

    /**
     * Room with one line on every heading.
     *
     * @param standsM length of the load that stands up under it, m; 0 for loads that hang
     */
    public record LineRose(
            String line, double lineLengthM, double standsM, List<Heading> headings) {
        public LineRose {
            headings = List.copyOf(headings);
        }
    }

    /**
     * The air at a place in the hour that is planned with.
     *
     * @param otherWind the less windy of two winds that may hold; the same where only one may
     * @param hoverMassKg hover mass out of ground effect, kg, rounded down; 0 outside the chart
     * @param table the printed values that it lies between; empty outside the chart
     */
    public record AirThere(
            double elevationAmslM,
            double qnhPa,
            double pressureAltitudeM,
            double temperatureK,
            double windFromTrueRad,
            double windMPerS,
            Wind otherWind,
            double gustMPerS,
            double hoverMassKg,
            Optional<TablePoint> table) {}

    /** Four printed masses and the altitudes and temperatures they stand for. */
    public record TablePoint(
            double lowerAltitudeM,
            double upperAltitudeM,
            double lowerTemperatureK,
            double upperTemperatureK,
            List<Double> massKg) {
        public TablePoint {
            massKg = List.copyOf(massKg);
        }
    }

    public DayLook(Job job, Ground ground) {
        this.model = new DayModel(job, ground);
        this.rooms = new PlaceRooms(model);
    }

    /**
     * How far beyond an end at which a wire may well go on a leg leads round it, m; empty when it leads round
     * none, or far beyond.
     */
    public OptionalDouble findBeyondEndM(Wire wire, Leg leg) {
        LocalFrame frame = model.ground.frame();
        List<WireEnd> open =
                openEnds.computeIfAbsent(
                        wire.id(), any -> WireEnd.listOpen(wire, model.job, frame));
        double leastM =
                WireEnd.leastBeyondM(
                        open, leg.path().stream().map(at -> frame.toPlane(at.position())).toList());
        return leastM <= WireEnd.GOES_ON_M ? OptionalDouble.of(leastM) : OptionalDouble.empty();
    }

    /** Room at a place for some loads with each line in stock; empty where it is not known. */
    public synchronized List<LineRose> rose(PlaceId place, List<Load> loads) {
        double convergenceRad = model.air().convergenceRad(model.place(place));
        List<LineRose> all = new ArrayList<>();
        for (PlaceRooms.LineHeadings one : rooms.headings(place, loads)) {
            List<Heading> headings =
                    one.headings().stream().map(room -> heading(room, convergenceRad)).toList();
            all.add(new LineRose(one.line().name(), one.line().lengthM(), one.standsM(), headings));
        }
        return all;
    }

    private static Heading heading(HeadingRoom room, double convergenceRad) {
        Margin worst = room.tightest();
        return new Heading(
                Units.wrapTwoPiRad(room.headingGridRad() + convergenceRad),
                fit(worst),
                worst.part().word(),
                worst.id().isEmpty() ? worst.cause().word() : worst.id(),
                worst.marginM(),
                worst.neededM(),
                worst.unknownM());
    }

    private static Fit fit(Margin margin) {
        return switch (margin.fit()) {
            case FREE -> Fit.FREE;
            case NEAR -> Fit.NEAR;
            case REFUSED -> Fit.REFUSED;
        };
    }

    /** The air at a place; empty when no weather is known then or the ground is not. */
    public synchronized Optional<AirThere> findAir(PlaceId id, Instant at) {
        int place = model.place(id);
        int slot = model.air().slot(model.seconds(at));
        if (slot < 0 || !model.isKnown(place)) {
            return Optional.empty();
        }
        DayAir.Slot air = model.air().slots.get(slot);
        double exposure = model.places.get(place).exposureFactor();
        double altitudeM = model.air().pressureAltitudeM(place, slot);
        double temperatureK = model.air().temperatureK(place, slot);
        return Optional.of(
                new AirThere(
                        model.elevationAmslM[place],
                        air.qnhPa(),
                        altitudeM,
                        temperatureK,
                        air.windFromTrueRad(),
                        air.windMPerS() * exposure,
                        new Wind(air.otherFromTrueRad(), air.otherMPerS() * exposure),
                        air.gustMPerS() * exposure,
                        model.air().hoverMassKg(place, slot),
                        model.air().isInChart(place, slot)
                                ? Optional.of(tablePoint(altitudeM, temperatureK))
                                : Optional.empty()));
    }

    /**
     * Most fuel to read at hook-up with which a planned rotation may be hooked at another time, kg,
     * rounded down; empty when no weather is known then, the air lies outside the chart or the fuel
     * would be less than none.
     *
     * @param step that the rotation is part of
     * @param at when it is hooked; the set-down follows after as long as planned
     * @param massFactor what the loads' masses are multiplied with, at least 1
     */
    public synchronized OptionalDouble findMostFuelKg(
            Step step, Rotation rotation, Instant at, double massFactor) {
        double hoverKg = hoverMassKg(step.hookedUpAt(), at);
        for (Drop drop : rotation.drops()) {
            // Over the place it hangs from when it comes until it is let go.
            double setDownS = model.job.getKind(model.job.getLoad(drop.load()).kind()).setDownS();
            Duration planned = Duration.between(rotation.hookedAt(), drop.releasedAt());
            Instant released = at.plus(planned);
            Instant comes = released.minusMillis(Math.round(setDownS * 1000));
            hoverKg = Math.min(hoverKg, hoverMassKg(drop.place(), released));
            hoverKg = Math.min(hoverKg, hoverMassKg(drop.place(), comes));
        }
        LineItem line = line(step.lineLengthM());
        double lineKg = line.massKg();
        List<Load> loads = rotation.loads().stream().map(model.job::getLoad).toList();
        double liftKg =
                rotation.ballastKg()
                        + Math.ceil(
                                Math.max(1, massFactor)
                                        * loads.stream().mapToDouble(model::liftMassKg).sum());
        boolean construction =
                loads.stream()
                        .anyMatch(load -> model.job.getKind(load.kind()).constructionMargin());
        double needKg =
                construction
                        ? Math.ceil(liftKg / (1 - model.rules.masses().constructionFraction()))
                        : liftKg;
        double bareKg = model.operatingMassKg() + lineKg + model.machine.fuelGaugeSpreadKg();
        double mostKg =
                Math.floor(
                        Math.min(
                                model.machine.fuelUsableKg(),
                                Math.min(
                                        hoverKg - bareKg - needKg,
                                        model.machine.maxExternalMassKg() - bareKg - liftKg)));
        boolean hangs =
                liftKg <= line.limitKg()
                        && liftKg + lineKg <= model.machine.hookLimitKg()
                        && slingsHold(step, rotation, line, massFactor);
        BalancedFuel fuel = model.balancedFuel();
        double readKg = Math.min(mostKg, fuel.readKg(fuel.withLoadKg(liftKg + lineKg)));
        return hangs && readKg >= 0 ? OptionalDouble.of(readKg) : OptionalDouble.empty();
    }

    /** Whether everything that the loads hang in holds them so much heavier. */
    private boolean slingsHold(Step step, Rotation rotation, LineItem line, double massFactor) {
        List<Load> heavy =
                rotation.loads().stream()
                        .map(model.job::getLoad)
                        .map(load -> heavier(load, massFactor))
                        .toList();
        List<LoadKind> kinds = heavy.stream().map(load -> model.job.getKind(load.kind())).toList();
        double liftKg = heavy.stream().mapToDouble(model::liftMassKg).sum() + rotation.ballastKg();
        int from = model.place(step.hookedUpAt());
        int to = model.place(rotation.drops().get(0).place());
        Trip trip =
                new Trip(
                        heavy,
                        kinds,
                        from,
                        to,
                        Math.ceil(liftKg),
                        Math.ceil(liftKg),
                        rotation.ballastKg(),
                        0,
                        0,
                        0,
                        0);
        return model.gear().findings(trip, line).stream()
                .noneMatch(finding -> finding.severity() == Severity.STOP);
    }

    private static Load heavier(Load load, double massFactor) {
        return load.massKg().isPresent() && massFactor > 1
                ? load.weighing(load.massKg().getAsDouble() * massFactor)
                : load;
    }

    /** Hover mass, kg; 0 outside the chart and where no weather is known. */
    private double hoverMassKg(PlaceId place, Instant at) {
        return findAir(place, at).map(AirThere::hoverMassKg).orElse(0.0);
    }

    /** The line of a length; of several, or where none is of it, the heaviest. */
    private LineItem line(double lengthM) {
        Comparator<LineItem> byMass = Comparator.comparingDouble(LineItem::massKg);
        return model.machine.lines().stream()
                .filter(line -> Math.abs(line.lengthM() - lengthM) < 0.05)
                .max(byMass)
                .orElseGet(() -> model.machine.lines().stream().max(byMass).orElseThrow());
    }

    private TablePoint tablePoint(double altitudeM, double temperatureK) {
        HoverTable table = model.machine.hover();
        int column = below(table.pressureAltitudeM(), altitudeM);
        int row = below(table.temperatureK(), temperatureK);
        List<List<Double>> massKg = table.massKg();
        return new TablePoint(
                table.pressureAltitudeM().get(column),
                table.pressureAltitudeM().get(column + 1),
                table.temperatureK().get(row),
                table.temperatureK().get(row + 1),
                List.of(
                        massKg.get(row).get(column),
                        massKg.get(row).get(column + 1),
                        massKg.get(row + 1).get(column),
                        massKg.get(row + 1).get(column + 1)));
    }

    /** Index of the printed value at or below; the last but one at the upper end. */
    private static int below(List<Double> printed, double valueRatio) {
        int at = 0;
        while (at < printed.size() - 2 && valueRatio >= printed.get(at + 1)) {
            at++;
        }
        return at;
    }

    /** Where the sun stands as seen from a place. */
    public SunPosition sun(PlaceId place, Instant at) {
        return Sun.position(model.places.get(model.place(place)).position(), at);
    }

    /** Whether the sun dazzles on a way in that is flown on this track. */
    public synchronized boolean isSunAhead(PlaceId place, Instant at, double trackTrueRad) {
        boolean leansRight = model.machine.pilotSide() == Machine.PilotSide.RIGHT;
        return model.sky().seen(model.place(place), at).glare(trackTrueRad, leansRight).isAhead();
    }
}
