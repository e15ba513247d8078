package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadShape;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;

/**
 * Where what hangs on the hook would hit, let go at some spot of a flight: each load, or the empty line.
 *
 * <p>Falls once worked out are kept; the air is as dense as where they were first asked for.
 */
final class FallBoxes {
    /** Heights are rounded down to this, so that falls can be kept, m. */
    private static final double HEIGHT_STEP_M = 2.5;

    private static final double SPEED_STEP_M_PER_S = 0.5;
    private static final double ANGLE_STEP_RAD = Math.toRadians(5);

    /** Slowest speed near a place that is counted, m/s. */
    private static final double LEAST_SPEED_M_PER_S = 3;

    /** More than the air's density changes along a leg. */
    private static final double REACH_FACTOR = 1.5;

    private static final double LIGHT_DRAG_FACTOR = 1.2;
    private static final double HEAVY_DRAG_FACTOR = 0.6;
    private static final double WEIGHED_SPREAD_RATIO = 0.01;

    /** A line 20 mm thick with a coefficient of 1. @source PRACTICE */
    private static final double LINE_DRAG_M2_PER_M = 0.02;

    /** Slopes are looked at from so far before to so far behind where it lands, as parts of the throw. */
    private static final double ABOUT_FROM_RATIO = 0.7;

    private static final double ABOUT_TO_RATIO = 1.3;

    private static final int ABOUT_STEPS = 6;

    /** Slope by two stencils, in a fall and in a rise. */
    private static final double FALL_SPREAD_RAD = 0.02;

    private static final double RISE_STEP_RAD = 0.05;

    private static final double MOST_RISE_RAD = 1.5;

    private final Day day;
    private final Air air;
    private final IdentityHashMap<Flight, List<Hung>> hung = new IdentityHashMap<>();

    /** Of each thing on each flight by how it is let go. */
    private final IdentityHashMap<Hung, Map<Steps, Falls>> falls = new IdentityHashMap<>();

    /** All that tells one release from another but how high it is, in whole steps. */
    private record Steps(long speed, long off) {}

    /** Where it is let go. */
    record Spot(PlanePoint at, double bearingGridRad, double hookAmslM, double alongM) {}

    /** The wind of a leg. */
    record Wind(double towardsGridRad, double speedMPerS, double gustMPerS) {}

    /**
     * What may be let go by itself.
     *
     * @param lightKg its lightest
     * @param heavyKg its heaviest
     * @param dragAreaM2 drag coefficient times area
     * @param underHookM from the hook to its lower end
     * @param shape of what runs on where it hits the ground; empty for the line
     */
    record Hung(
            String id,
            double lightKg,
            double heavyKg,
            double dragAreaM2,
            double underHookM,
            Optional<LoadShape> shape) {}

    FallBoxes(Day day) {
        this.day = day;
        this.air = new Air(day.job().weather());
    }

    /** All that the boxes of a flight hang on. */
    Proofs.Asked asked(Class<?> check, Flight flight) {
        return Proofs.Asked.of(
                check,
                day.haul(flight),
                List.of(air.listRows(flight.step().startAt()), windRows(flight)));
    }

    private List<WeatherHour> windRows(Flight flight) {
        return air.listRows(
                flight.step().rotation().map(Rotation::hookedAt).orElse(flight.step().startAt()));
    }

    /** Each load of a flight; the line where there is none; nothing with the line off. */
    List<Hung> hung(Flight flight) {
        return hung.computeIfAbsent(flight, this::listHung);
    }

    private List<Hung> listHung(Flight flight) {
        double line = flight.step().lineLengthM();
        List<Hung> all = new ArrayList<>();
        for (Load load : flight.loads()) {
            all.add(hung(flight, load));
        }
        if (all.isEmpty() && line > Tolerance.LENGTH_M) {
            double mass =
                    day.job().machine().lines().stream()
                            .filter(one -> Math.abs(one.lengthM() - line) < Tolerance.LENGTH_M)
                            .mapToDouble(LineItem::massKg)
                            .findFirst()
                            .orElse(line);
            all.add(
                    new Hung(
                            "line", mass, mass, LINE_DRAG_M2_PER_M * line, line, Optional.empty()));
        }
        return all;
    }

    private Hung hung(Flight flight, Load load) {
        double ballast = flight.ballastKg();
        double mass = load.massKg().orElseThrow();
        double off =
                load.massStatus() == MassStatus.ESTIMATED
                        ? 1 + (day.job().rules().masses().estimatedMassFactor() - 1) / 2
                        : 1 + WEIGHED_SPREAD_RATIO;
        double face =
                Math.max(
                        load.lengthM() * load.widthM(),
                        Math.max(load.lengthM() * load.heightM(), load.widthM() * load.heightM()));
        boolean stands = day.kindOf(load).standsUp();
        return new Hung(
                load.id().value(),
                mass / off + ballast,
                mass * off + ballast,
                load.dragAreaM2().orElse(day.kindOf(load).dragCoefficient() * face),
                flight.step().lineLengthM() + (stands ? load.lengthM() : load.heightM()),
                Optional.of(day.kindOf(load).shape()));
    }

    /** Further than anything flies that is let go on a flight: from the highest spot, at full speed. */
    double reachM(Flight flight, List<Spot> spots, Wind wind) {
        double highest = 0;
        for (Spot spot : spots) {
            highest = Math.max(highest, spot.hookAmslM() - day.groundAmslM(spot.at()));
        }
        double speed = flight.leg().speedMPerS() + wind.speedMPerS();
        Falls.Toss toss =
                new Falls.Toss(
                        speed + SPEED_STEP_M_PER_S,
                        wind.speedMPerS(),
                        wind.speedMPerS(),
                        wind.gustMPerS());
        double reach = 0;
        for (Hung hung : hung(flight)) {
            Falls.Body body =
                    body(flight, hung, flight.leg().speedMPerS(), spots.get(0).hookAmslM());
            FallBox box = new Falls(body, toss, HEIGHT_STEP_M).at(depth(highest) + 2);
            reach = Math.max(reach, Math.max(Math.abs(box.backM()), box.forwardM()));
            reach = Math.max(reach, Math.max(box.leftM(), box.rightM()));
        }
        return REACH_FACTOR * reach + flight.step().lineLengthM();
    }

    /** Corners of the box in the plane. */
    List<PlanePoint> corners(Flight flight, Hung hung, Spot spot, Wind wind) {
        return corners(spot, box(flight, hung, spot, wind), List.of(0.0, 0.0, 0.0, 0.0));
    }

    /** The same with what the thing runs on after the blow, over the least of the slopes about there. */
    List<PlanePoint> cornersRun(Flight flight, Hung hung, Spot spot, Wind wind) {
        FallBox box = box(flight, hung, spot, wind);
        if (hung.shape().isEmpty()) {
            return corners(flight, hung, spot, wind);
        }
        double friction = Friction.frictionCoefficient(hung.shape().get());
        List<Double> falls = leastFallsRad(spot, box);
        List<Double> runs = new ArrayList<>();
        for (int side = 0; side < falls.size(); side++) {
            FallBox.Blow blow = box.blows().get(side);
            runs.add(blow.runM(friction, falls.get(side), Friction.capM(hung.shape().get())));
        }
        return corners(spot, box, runs);
    }

    /** No run is longer, m. */
    static double mostRunM(List<Hung> hung) {
        return hung.stream()
                .flatMap(one -> one.shape().stream())
                .mapToDouble(Friction::capM)
                .max()
                .orElse(0);
    }

    /** Widened by so much forward, back, to the right and to the left. */
    private static List<PlanePoint> corners(Spot spot, FallBox box, List<Double> runsM) {
        double across = spot.bearingGridRad() + Math.PI / 2;
        double ahead = box.forwardM() + runsM.get(0);
        double behind = box.backM() - runsM.get(1);
        double right = box.rightM() + runsM.get(2);
        double left = box.leftM() + runsM.get(3);
        PlanePoint near = Plane.along(spot.at(), spot.bearingGridRad(), behind);
        PlanePoint far = Plane.along(spot.at(), spot.bearingGridRad(), ahead);
        return List.of(
                Plane.along(near, across, -left),
                Plane.along(near, across, right),
                Plane.along(far, across, right),
                Plane.along(far, across, -left));
    }

    /** How the ground falls forward, back, right and left, rad: the least from before to behind the landings. */
    private List<Double> leastFallsRad(Spot spot, FallBox box) {
        double[] least = new double[4];
        Arrays.fill(least, Math.PI / 2);
        double cell = day.ground().terrain().cellSizeM();
        double first = Math.min(box.backM(), ABOUT_FROM_RATIO * box.forwardM()) - cell / 2;
        double last = ABOUT_TO_RATIO * box.forwardM() + cell / 2;
        for (int i = 0; i <= ABOUT_STEPS; i++) {
            double far = first + (last - first) * i / ABOUT_STEPS;
            PlanePoint at = Plane.along(spot.at(), spot.bearingGridRad(), far);
            double ahead = fallRad(at, spot.bearingGridRad(), cell);
            double right = fallRad(at, spot.bearingGridRad() + Math.PI / 2, cell);
            least[0] = Math.min(least[0], ahead);
            least[1] = Math.min(least[1], -ahead);
            least[2] = Math.min(least[2], right);
            least[3] = Math.min(least[3], -right);
        }
        return Arrays.stream(least).map(FallBoxes::surelyRad).boxed().toList();
    }

    /** Level where the ground is not known: nothing is claimed of it. */
    private double fallRad(PlanePoint at, double bearingGridRad, double cellM) {
        PlanePoint ahead = Plane.along(at, bearingGridRad, cellM);
        PlanePoint back = Plane.along(at, bearingGridRad, -cellM);
        return day.isKnown(ahead) && day.isKnown(back)
                ? Math.atan2(day.groundAmslM(back) - day.groundAmslM(ahead), 2 * cellM)
                : 0;
    }

    /** A fall of the ground is known to {@link #FALL_SPREAD_RAD}; a rise is counted in steps besides. */
    private static double surelyRad(double fallRad) {
        return Math.max(
                -MOST_RISE_RAD, fallRad - FALL_SPREAD_RAD - (fallRad < 0 ? RISE_STEP_RAD : 0));
    }

    private FallBox box(Flight flight, Hung hung, Spot spot, Wind wind) {
        double off = Math.IEEEremainder(wind.towardsGridRad() - spot.bearingGridRad(), 2 * Math.PI);
        double offSteps = Math.rint(off / ANGLE_STEP_RAD);
        double offRad = offSteps * ANGLE_STEP_RAD;
        double end = spot.hookAmslM() - hung.underHookM();
        double airspeed = airspeedMPerS(flight, spot);
        double speedSteps =
                Math.max(
                        0,
                        Math.rint(
                                (airspeed + wind.speedMPerS() * Math.cos(offRad))
                                        / SPEED_STEP_M_PER_S));
        Falls way =
                falls.computeIfAbsent(hung, unused -> new HashMap<>())
                        .computeIfAbsent(
                                new Steps((long) speedSteps, (long) offSteps),
                                unused ->
                                        new Falls(
                                                body(flight, hung, airspeed, end),
                                                new Falls.Toss(
                                                        speedSteps * SPEED_STEP_M_PER_S,
                                                        wind.speedMPerS() * Math.cos(offRad),
                                                        wind.speedMPerS() * Math.sin(offRad),
                                                        wind.gustMPerS()),
                                                HEIGHT_STEP_M));
        return way.at(depth(end - day.groundAmslM(spot.at())));
    }

    private static int depth(double heightM) {
        return (int) Math.max(0, Math.floor(heightM / HEIGHT_STEP_M));
    }

    /** Even slowing over the last part, from where the plan says it begins; even gain over the first. */
    private double airspeedMPerS(Flight flight, Spot spot) {
        List<PlanePoint> track = flight.track();
        double whole = flight.leg().distanceM();
        double toEnd = Math.min(spot.alongM(), Math.max(0, whole - spot.alongM()));
        double last = day.job().rules().flying().finalM();
        double share = last > 0 && !track.isEmpty() ? Math.min(1, Math.sqrt(toEnd / last)) : 1;
        double begin = flight.leg().slowing().map(Leg.Slowing::beginM).orElse(0.0);
        if (begin > 0) {
            share = Math.min(share, Math.sqrt(Math.max(0, whole - spot.alongM()) / begin));
        }
        return Math.max(LEAST_SPEED_M_PER_S, flight.leg().speedMPerS() * share);
    }

    private Falls.Body body(Flight flight, Hung hung, Number airspeed, Number amsl) {
        double density = 0;
        for (WeatherHour row : air.listRows(flight.step().startAt())) {
            density = Math.max(density, air.densityKgPerM3(row, amsl.doubleValue()));
        }
        double pressure = 0.5 * density * airspeed.doubleValue() * airspeed.doubleValue();
        double area = hung.dragAreaM2();
        double middle = (hung.lightKg() + hung.heavyKg()) / 2;
        return new Falls.Body(
                0.5 * density * area * LIGHT_DRAG_FACTOR / hung.lightKg(),
                0.5 * density * area * HEAVY_DRAG_FACTOR / hung.heavyKg(),
                flight.step().lineLengthM(),
                Math.atan2(pressure * area, middle * 9.80665));
    }

    /** In the middle of what places shelter and expose. */
    Wind wind(Flight flight) {
        WeatherHour hour = null;
        for (WeatherHour row : windRows(flight)) {
            hour = hour == null || row.windMPerS() > hour.windMPerS() ? row : hour;
        }
        if (hour == null) {
            return new Wind(0, 0, 0);
        }
        Place from = day.job().getPlace(flight.leg().from());
        Place to = day.job().getPlace(flight.leg().to());
        double factor = (from.exposureFactor() + to.exposureFactor()) / 2;
        double convergence = Plane.convergenceRad(day.ground().frame(), from.position());
        return new Wind(
                hour.windFromTrueRad() - convergence + Math.PI,
                hour.windMPerS() * factor,
                Math.max(0, hour.gustMPerS() - hour.windMPerS()) * factor / 2);
    }
}
