package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import underhook.core.fall.Fall;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.LoadShape;
import underhook.core.job.MassStatus;
import underhook.core.load.Trail;
import underhook.planner.route.Cargo;
import underhook.planner.route.Memo;

/** Loads and empty lines as bodies that may fall, each at its lightest and at its heaviest. */
final class Cargos {
    /** A weighed mass is known to this part of it. @source PRACTICE */
    private static final double WEIGHED_SPREAD_RATIO = 0.02;

    /** Drag areas are known to between these parts of them: a load turns and tumbles. @source PRACTICE */
    private static final double MOST_DRAG_FACTOR = 1.3;

    private static final double LEAST_DRAG_FACTOR = 0.5;

    /** Air is thinner than the day's densest by less than this: 2000 m up, 15 K warmer. @source PRACTICE */
    private static final double THIN_AIR_FACTOR = 0.75;

    /** A line's drag area for each metre across the flow: 20 mm thick at 1.2. @source PRACTICE */
    private static final double LINE_DRAG_M2_PER_M = 0.024;

    private final DayModel model;
    private final double airKgPerM3;
    private final Memo<Trip, Memo<Integer, List<Cargo>>> known = Memo.byIdentity();
    private final Memo<Integer, List<Cargo>> knownEmpty = Memo.of();

    Cargos(DayModel model) {
        this.model = model;
        this.airKgPerM3 = DayAir.densestKgPerM3(model, model.job.weather());
    }

    /** Each load of a trip under a line by itself. */
    List<Cargo> of(Trip trip, int line) {
        return known.get(trip, unused -> Memo.of()).get(line, unused -> list(trip, line));
    }

    private List<Cargo> list(Trip trip, int line) {
        double lineM = model.machine.lines().get(line).lengthM();
        Carriage.Carried carried = model.carriage().of(trip, line);
        double speedMPerS = carried.speedMPerS();
        List<Cargo> all = new ArrayList<>();
        for (int i = 0; i < trip.loads().size(); i++) {
            Load load = trip.loads().get(i);
            LoadKind kind = trip.kinds().get(i);
            double massKg = load.massKg().orElseThrow();
            double factor =
                    load.massStatus() == MassStatus.ESTIMATED
                            ? model.rules.masses().estimatedMassFactor()
                            : 1 + WEIGHED_SPREAD_RATIO;
            double areaM2 = OnHook.dragAreaM2(load, kind);
            double lightKg = massKg / factor + trip.ballastKg();
            double trailRad = Trail.of(lightKg, areaM2, speedMPerS, airKgPerM3).trailAngleRad();
            all.add(
                    new Cargo(
                            new Fall.Body(lightKg, areaM2 * MOST_DRAG_FACTOR, airKgPerM3),
                            new Fall.Body(
                                    massKg * factor * kind.heavierFactor() + trip.ballastKg(),
                                    areaM2 * LEAST_DRAG_FACTOR,
                                    airKgPerM3 * THIN_AIR_FACTOR),
                            kind.shape(),
                            lineM,
                            lineM + (kind.standsUp() ? load.lengthM() : load.heightM()),
                            speedMPerS,
                            trailRad,
                            carried.slowing().beginM()));
        }
        return all;
    }

    /** The line itself with its hook, which may be let go too: its far end falls like a stone or drags. */
    List<Cargo> ofEmpty(int number) {
        return knownEmpty.get(number, this::listEmpty);
    }

    private List<Cargo> listEmpty(int number) {
        LineItem line = model.machine.lines().get(number);
        double areaM2 = LINE_DRAG_M2_PER_M * line.lengthM();
        Carriage.Carried carried = model.carriage().ofEmpty(number);
        double speedMPerS = carried.speedMPerS();
        return List.of(
                new Cargo(
                        new Fall.Body(line.massKg(), areaM2 * MOST_DRAG_FACTOR, airKgPerM3),
                        new Fall.Body(line.massKg(), 0, airKgPerM3),
                        LoadShape.BAG,
                        line.lengthM(),
                        line.lengthM(),
                        speedMPerS,
                        Trail.of(line.massKg(), areaM2, speedMPerS, airKgPerM3).trailAngleRad(),
                        carried.slowing().beginM()));
    }
}
