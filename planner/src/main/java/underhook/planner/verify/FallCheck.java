package underhook.planner.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.ReleaseArea;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;
import underhook.core.plan.Rotation;

/** Every metre of every loaded leg: whom the load would hit if it were let go there. */
final class FallCheck {
    /** Heights are rounded down to this, so that boxes can be kept, m. */
    private static final double HEIGHT_STEP_M = 2.5;

    private static final double SPEED_STEP_M_PER_S = 0.5;
    private static final double ANGLE_STEP_RAD = Math.toRadians(5);

    /** Slowest speed near a place that is counted, m/s. */
    private static final double LEAST_SPEED_M_PER_S = 3;

    /** A house or people drawn as a point, m. @source PRACTICE */
    private static final double POINT_RADIUS_M = 8;

    /** Stretches are written in millimetres and cut where ways bend, m. */
    private static final double STRETCH_M = 1;

    /** Times of stretches are stated to at least this part of ours. */
    private static final double TIME_FRACTION = 0.95;

    /** Nothing that lies further than this from a leg is hit, m. */
    private static final double NEAR_M = 1000;

    private static final double LIGHT_DRAG_FACTOR = 1.2;
    private static final double HEAVY_DRAG_FACTOR = 0.6;
    private static final double WEIGHED_SPREAD_RATIO = 0.01;

    private final Day day;
    private final Air air;
    private final Map<String, FallBox> boxes = new HashMap<>();

    /** Something on the ground; kept off means no load may be able to hit it. */
    private record Below(String id, Use use, boolean keptOff, Shape shape, Box box) {}

    /** Where the load is let go. */
    private record Spot(PlanePoint at, double bearingGridRad, double hookAmslM, double alongM) {}

    /** The wind of a leg. */
    private record Wind(double towardsGridRad, double speedMPerS, double gustMPerS) {}

    FallCheck(Day day) {
        this.day = day;
        this.air = new Air(day.job().weather());
    }

    void run() {
        for (Flight flight : day.listFlights()) {
            boolean known = flight.track().stream().allMatch(day::isKnown);
            boolean weighed = flight.loads().stream().allMatch(load -> load.massKg().isPresent());
            if (!flight.loads().isEmpty() && known && weighed) {
                check(flight);
            }
        }
    }

    private void check(Flight flight) {
        List<Spot> spots = spots(flight);
        List<Below> below = below(flight);
        Wind wind = wind(flight);
        ReleaseLook look = flight.leg().release().orElse(new ReleaseLook(List.of(), 0, 0, 0));
        TreeSet<String> hit = new TreeSet<>();
        TreeSet<String> unsaid = new TreeSet<>();
        for (Spot spot : spots) {
            Use stated = statedUse(look, spot.alongM());
            if (stated == Use.NAMED && !boxesInNamed(flight, spot, wind)) {
                unsaid.add("no named area");
            }
            Box within = Box.round(List.of(spot.at())).widened(reachM(flight, spot, wind));
            List<Below> near = below.stream().filter(one -> !one.box().misses(within)).toList();
            for (Load load : near.isEmpty() ? List.<Load>of() : flight.loads()) {
                List<PlanePoint> corners = corners(spot, box(flight, load, spot, wind));
                Box round = Box.round(corners);
                for (Below one : near) {
                    if (!one.box().misses(round) && touches(corners, one.shape())) {
                        if (one.keptOff()) {
                            hit.add(one.id());
                        }
                        if (stated.compareTo(one.use()) > 0) {
                            unsaid.add(one.id());
                        }
                    }
                }
            }
        }
        demand(flight, hit.isEmpty(), "Let go on this leg, a load would hit ", hit);
        demand(flight, unsaid.isEmpty(), "The leg does not say what it passes: ", unsaid);
        checkCovered(flight, look, spots);
        checkTimes(flight, look);
    }

    /** Further than any load flies: twice the time of a fall without drag, and five seconds. */
    private double reachM(Flight flight, Spot spot, Wind wind) {
        double height = Math.max(1, spot.hookAmslM() - day.groundAmslM(spot.at()));
        double fastest = flight.leg().speedMPerS() + wind.speedMPerS() + wind.gustMPerS();
        double longest = 2 * Math.sqrt(2 * height / 9.80665) + 5;
        return flight.step().lineLengthM() + (1.1 * fastest + 5) * longest;
    }

    private void demand(Flight flight, boolean holds, String message, Set<String> ids) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.LEG_RELEASE,
                        flight.subject(),
                        () -> Told.of("rules", message + String.join(", ", ids) + "."));
    }

    /** The stretches say something of every metre. */
    private void checkCovered(Flight flight, ReleaseLook look, List<Spot> spots) {
        boolean covered =
                spots.stream()
                        .allMatch(
                                spot ->
                                        look.stretches().stream()
                                                .anyMatch(part -> holds(part, spot.alongM())));
        demand(flight, covered, "The leg does not say all the way what letting go means", none());
    }

    private static Set<String> none() {
        return Set.of();
    }

    private static boolean holds(Stretch part, Number along) {
        double at = along.doubleValue();
        return part.fromM() - STRETCH_M <= at && at <= part.toM() + STRETCH_M;
    }

    /** The worst that is said of a metre. */
    private static Use statedUse(ReleaseLook look, Number along) {
        Use worst = Use.NAMED;
        boolean said = false;
        for (Stretch part : look.stretches()) {
            if (holds(part, along)) {
                said = true;
                worst = part.use().compareTo(worst) < 0 ? part.use() : worst;
            }
        }
        return said ? worst : Use.OPEN;
    }

    /** Times are not shorter than flown with all the wind behind, and the longest add up. */
    private void checkTimes(Flight flight, ReleaseLook look) {
        double fastest = flight.leg().speedMPerS() + wind(flight).speedMPerS();
        boolean longEnough =
                look.stretches().stream()
                        .allMatch(
                                part ->
                                        part.durationS() + Tolerance.TIME_S
                                                >= TIME_FRACTION
                                                        * (part.toM() - part.fromM())
                                                        / fastest);
        double closed = longestS(look, Use.GUARDED);
        double unnamed = longestS(look, Use.OPEN);
        day.ledger()
                .demand(
                        longEnough
                                && look.longestClosedS() >= closed - Tolerance.TIME_S
                                && look.longestUnnamedS() >= unnamed - Tolerance.TIME_S,
                        FindingCode.LEG_RELEASE,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "plan",
                                                "Times without a spot for letting go are too short.")
                                        .figures(look.longestClosedS(), closed, "s"));
    }

    private static double longestS(ReleaseLook look, Use best) {
        double longest = 0;
        double now = 0;
        for (Stretch part : look.stretches()) {
            now = part.use().compareTo(best) <= 0 ? now + part.durationS() : 0;
            longest = Math.max(longest, now);
        }
        return longest;
    }

    /** Every metre between the ends' surroundings. */
    private static List<Spot> spots(Flight flight) {
        List<Spot> spots = new ArrayList<>();
        double whole = 0;
        for (int i = 1; i < flight.track().size(); i++) {
            whole += Plane.apartM(flight.track().get(i - 1), flight.track().get(i));
        }
        double done = 0;
        for (int i = 1; i < flight.track().size(); i++) {
            PlanePoint a = flight.track().get(i - 1);
            PlanePoint b = flight.track().get(i);
            double piece = Plane.apartM(a, b);
            double low = flight.leg().path().get(i - 1).hookAltitudeAmslM();
            double high = flight.leg().path().get(i).hookAltitudeAmslM();
            for (double at = Math.ceil(done); at < done + piece; at++) {
                if (at > ReleaseLook.END_M && at < whole - ReleaseLook.END_M) {
                    double share = (at - done) / piece;
                    spots.add(
                            new Spot(
                                    Plane.between(a, b, share),
                                    Plane.bearingGridRad(a, b),
                                    low + share * (high - low),
                                    at));
                }
            }
            done += piece;
        }
        return spots;
    }

    private List<Below> below(Flight flight) {
        List<Below> all = new ArrayList<>();
        for (MapFeature feature : day.job().features()) {
            boolean never = feature.crossing() == CrossingRule.NEVER;
            if (feature.kind() == MapFeature.Kind.MAST
                    || (!never && feature.crossing() != CrossingRule.GUARDED)) {
                continue;
            }
            Shape shape = Ways.shapeOf(day, feature);
            boolean point = shape.outline().size() == 1;
            all.add(
                    below(
                            feature.id(),
                            never ? Use.CLOSED : Use.GUARDED,
                            never,
                            point ? new Shape(shape.outline(), POINT_RADIUS_M, false) : shape));
        }
        for (Zone zone : day.job().zones()) {
            if (zone.rule() == Zone.Rule.NO_OVERFLIGHT && Ways.applies(day, zone, flight.loads())) {
                all.add(below(zone.id(), Use.CLOSED, true, Ways.shapeOf(day, zone)));
            }
        }
        for (Wire wire : day.job().wires()) {
            if (wire.live()) {
                List<PlanePoint> line =
                        wire.supports().stream().map(at -> day.planeOf(at)).toList();
                all.add(below(wire.id(), Use.CLOSED, false, new Shape(line, 0, false)));
            }
        }
        Box near = Box.round(flight.track()).widened(NEAR_M);
        all.removeIf(one -> one.box().misses(near));
        return all;
    }

    private static Below below(String id, Use use, boolean keptOff, Shape shape) {
        Box box = Box.round(shape.outline()).widened(shape.radiusM());
        return new Below(id, use, keptOff, shape, box);
    }

    private boolean boxesInNamed(Flight flight, Spot spot, Wind wind) {
        return day.job().releaseAreas().stream()
                .filter(ReleaseArea::agreed)
                .map(area -> area.outline().stream().map(at -> day.planeOf(at)).toList())
                .anyMatch(
                        ring ->
                                flight.loads().stream()
                                        .flatMap(
                                                load ->
                                                        corners(spot, box(flight, load, spot, wind))
                                                                .stream())
                                        .allMatch(corner -> Plane.inside(corner, ring)));
    }

    private static List<PlanePoint> corners(Spot spot, FallBox box) {
        double across = spot.bearingGridRad() + Math.PI / 2;
        PlanePoint near = Plane.along(spot.at(), spot.bearingGridRad(), box.backM());
        PlanePoint far = Plane.along(spot.at(), spot.bearingGridRad(), box.forwardM());
        return List.of(
                Plane.along(near, across, -box.leftM()),
                Plane.along(near, across, box.rightM()),
                Plane.along(far, across, box.rightM()),
                Plane.along(far, across, -box.leftM()));
    }

    private static boolean touches(List<PlanePoint> corners, Shape shape) {
        if (shape.outline().stream().anyMatch(point -> Plane.inside(point, corners))) {
            return true;
        }
        for (int i = 0; i < corners.size(); i++) {
            PlanePoint next = corners.get((i + 1) % corners.size());
            if (shape.distanceM(new Plane.Stretch(corners.get(i), next)) <= 0) {
                return true;
            }
        }
        return false;
    }

    /** In the middle of what places shelter and expose. */
    private Wind wind(Flight flight) {
        WeatherHour hour = null;
        for (WeatherHour row :
                air.listRows(
                        flight.step()
                                .rotation()
                                .map(Rotation::hookedAt)
                                .orElse(flight.step().startAt()))) {
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

    private FallBox box(Flight flight, Load load, Spot spot, Wind wind) {
        double off = Math.IEEEremainder(wind.towardsGridRad() - spot.bearingGridRad(), 2 * Math.PI);
        double offRad = Math.rint(off / ANGLE_STEP_RAD) * ANGLE_STEP_RAD;
        double line = flight.step().lineLengthM();
        boolean stands = day.kindOf(load).standsUp();
        double end = spot.hookAmslM() - line - (stands ? load.lengthM() : load.heightM());
        double height =
                Math.max(
                        1,
                        Math.floor((end - day.groundAmslM(spot.at())) / HEIGHT_STEP_M)
                                * HEIGHT_STEP_M);
        double airspeed = airspeedMPerS(flight, spot);
        double speed =
                Math.max(
                        0,
                        Math.rint(
                                        (airspeed + wind.speedMPerS() * Math.cos(offRad))
                                                / SPEED_STEP_M_PER_S)
                                * SPEED_STEP_M_PER_S);
        String key =
                flight.number()
                        + flight.subject()
                        + load.id()
                        + "|"
                        + height
                        + "|"
                        + speed
                        + "|"
                        + offRad;
        return boxes.computeIfAbsent(
                key,
                unused ->
                        FallBox.of(
                                body(flight, load, airspeed, end),
                                new FallBox.Release(
                                        height,
                                        speed,
                                        wind.speedMPerS() * Math.cos(offRad),
                                        wind.speedMPerS() * Math.sin(offRad),
                                        wind.gustMPerS())));
    }

    /** Even slowing over the last part, even gain over the first. */
    private double airspeedMPerS(Flight flight, Spot spot) {
        List<PlanePoint> track = flight.track();
        double whole = flight.leg().distanceM();
        double toEnd = Math.min(spot.alongM(), Math.max(0, whole - spot.alongM()));
        double last = day.job().rules().finalM();
        double share = last > 0 && !track.isEmpty() ? Math.min(1, Math.sqrt(toEnd / last)) : 1;
        return Math.max(LEAST_SPEED_M_PER_S, flight.leg().speedMPerS() * share);
    }

    private FallBox.Body body(Flight flight, Load load, Number airspeed, Number amsl) {
        double ballast = flight.step().rotation().map(Rotation::ballastKg).orElse(0.0);
        double mass = load.massKg().orElseThrow();
        double off =
                load.massStatus() == MassStatus.ESTIMATED
                        ? 1 + (day.job().rules().estimatedMassFactor() - 1) / 2
                        : 1 + WEIGHED_SPREAD_RATIO;
        double face =
                Math.max(
                        load.lengthM() * load.widthM(),
                        Math.max(load.lengthM() * load.heightM(), load.widthM() * load.heightM()));
        double area = load.dragAreaM2().orElse(day.kindOf(load).dragCoefficient() * face);
        double density = 0;
        for (WeatherHour row : air.listRows(flight.step().startAt())) {
            density = Math.max(density, air.densityKgPerM3(row, amsl.doubleValue()));
        }
        double pressure = 0.5 * density * airspeed.doubleValue() * airspeed.doubleValue();
        return new FallBox.Body(
                0.5 * density * area * LIGHT_DRAG_FACTOR / (mass / off + ballast),
                0.5 * density * area * HEAVY_DRAG_FACTOR / (mass * off + ballast),
                flight.step().lineLengthM(),
                Math.atan2(pressure * area, (mass + ballast) * 9.80665));
    }
}
