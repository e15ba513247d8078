package underhook.planner.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Handling.Exposure;
import underhook.core.job.Handling.Exposure.Poor;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;

/**
 * What each leg with a load passes over at a price: lines crossed, and metre by metre the ground below.
 * Where two right ways to count may differ, the lesser counts.
 */
final class ExposureCheck {
    private static final double STEP_M = 1;

    /** The edge of a strip along a road is drawn by chords, or is an arc, m. */
    private static final double ALONG_SPREAD_M = 1;

    /** A square is surely steep when it is steeper by so much: heights by two interpolations. */
    private static final double STEEP_SPREAD_RATIO = 0.01;

    /** Lengths over areas by whole steps. */
    private static final double STEPS_FRACTION = 0.98;

    private final Day day;
    private final Exposure stated;
    private final Map<Long, Double> steepness = new HashMap<>();
    private final Box around;

    /** Ground at a price for each 100 m. */
    private record Priced(double priceS, Predicate<PlanePoint> below) {}

    /** What a leg comes to at least. */
    private record Least(double priceS, double overM) {}

    ExposureCheck(Day day) {
        this.day = day;
        this.stated = day.job().rules().handling().exposure();
        this.around =
                Box.round(day.job().places().stream().map(p -> day.planeOf(p.id())).toList())
                        .widened(Poor.AROUND_M - Poor.CELL_M);
    }

    void run() {
        // Plans that state nothing of any leg claim nothing; nothing of one leg is a claim.
        boolean tells =
                day.listFlights().stream()
                        .anyMatch(one -> !one.leg().exposure().equals(Leg.Exposure.NONE));
        for (Flight flight : day.listFlights()) {
            checkBound(flight);
            if (tells && !flight.loads().isEmpty()) {
                day.prove(
                        Proofs.Asked.of(ExposureCheck.class, day.haul(flight)),
                        () -> checkPassed(flight));
            }
        }
    }

    /** A bound above what the leg itself comes to is none. */
    private void checkBound(Flight flight) {
        Leg leg = flight.leg();
        double whole = leg.durationS() + leg.exposure().priceS();
        day.ledger()
                .demand(
                        leg.exposure().boundS() <= whole + Tolerance.TIME_S,
                        FindingCode.LEG_TIME,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "plan",
                                                "Time and prices of the leg are less than their stated bound.")
                                        .figures(whole, leg.exposure().boundS(), "s"));
    }

    private void checkPassed(Flight flight) {
        Leg leg = flight.leg();
        Least areas = overAreas(flight);
        double own = crossedS(flight) + areas.priceS();
        day.ledger()
                .demand(
                        leg.exposure().priceS() >= own - Tolerance.TIME_S,
                        FindingCode.LEG_CROSSINGS,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "rules",
                                                "What the leg passes over comes to more than is stated.")
                                        .figures(leg.exposure().priceS(), own, "s"));
        day.ledger()
                .demand(
                        leg.exposure().overM() >= areas.overM() - Tolerance.DISTANCE_M,
                        FindingCode.LEG_CROSSINGS,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "rules",
                                                "The leg is longer over ground at a price than is stated.")
                                        .figures(leg.exposure().overM(), areas.overM(), "m"));
    }

    /** Each road, trail, railway and wire that is crossed, once and as if at a right angle. */
    private double crossedS(Flight flight) {
        double sum = 0;
        for (MapFeature feature : day.job().features()) {
            if (mayCross(feature)) {
                boolean crossed = crosses(flight, day.shapeOf(feature));
                boolean guarded = feature.crossing() == CrossingRule.GUARDED;
                sum += crossed ? guarded ? stated.guardedS() : stated.openS() : 0;
            }
        }
        for (Wire wire : day.job().wires()) {
            List<PlanePoint> supports = wire.supports().stream().map(day::planeOf).toList();
            if (wire.crossing() != CrossingRule.NEVER
                    && crosses(flight, new Shape(supports, 0, false))) {
                sum += stated.wireS();
            }
        }
        return sum;
    }

    private static boolean mayCross(MapFeature feature) {
        return feature.shape() == MapFeature.Shape.LINE && feature.crossing() != CrossingRule.NEVER;
    }

    private static boolean crosses(Flight flight, Shape shape) {
        Box flown = Box.round(flight.track());
        if (Box.round(shape.outline()).misses(flown)) {
            return false;
        }
        for (int i = 1; i < flight.track().size(); i++) {
            Plane.Stretch piece =
                    new Plane.Stretch(flight.track().get(i - 1), flight.track().get(i));
            if (shape.listEdges().stream().anyMatch(edge -> Plane.cross(piece, edge))) {
                return true;
            }
        }
        return false;
    }

    private Least overAreas(Flight flight) {
        List<Priced> all = areas(flight);
        double price = 0;
        double over = 0;
        List<PlanePoint> track = flight.track();
        for (int i = 1; i < track.size() && !all.isEmpty(); i++) {
            double piece = Plane.apartM(track.get(i - 1), track.get(i));
            int steps = (int) Math.ceil(piece / STEP_M);
            for (int k = 0; k < steps; k++) {
                PlanePoint at = Plane.between(track.get(i - 1), track.get(i), (k + 0.5) / steps);
                for (Priced area : all) {
                    if (area.below().test(at)) {
                        over += piece / steps;
                        price += area.priceS() * piece / steps / Exposure.PER_M;
                    }
                }
            }
        }
        return new Least(STEPS_FRACTION * price, STEPS_FRACTION * over);
    }

    private List<Priced> areas(Flight flight) {
        List<Priced> all = new ArrayList<>();
        Box flown = Box.round(flight.track());
        for (MapFeature feature : day.job().features()) {
            if (feature.shape() == MapFeature.Shape.AREA
                    && feature.crossing() != CrossingRule.NEVER) {
                add(all, flown, day.shapeOf(feature), areaS(feature.kind()));
            }
        }
        for (Zone zone : day.job().zones()) {
            if (zone.rule() == Zone.Rule.NO_HOVER_BELOW && Ways.applies(day, zone, flight)) {
                add(all, flown, day.shapeOf(zone), stated.quietS());
            }
        }
        if (stated.poor().alongS() > 0) {
            List<Shape> lines = linesNear(flown);
            all.add(new Priced(stated.poor().alongS(), p -> isAlong(p, lines)));
        }
        if (stated.poor().steepS() > 0) {
            double friction = leastFrictionCoefficient(flight.loads()) + STEEP_SPREAD_RATIO;
            all.add(new Priced(stated.poor().steepS(), p -> steepnessRatio(p) >= friction));
        }
        return all;
    }

    private static void add(List<Priced> all, Box flown, Shape shape, double priceS) {
        if (priceS > 0 && !Box.round(shape.outline()).widened(shape.radiusM()).misses(flown)) {
            all.add(new Priced(priceS, shape::covers));
        }
    }

    private double areaS(MapFeature.Kind kind) {
        if (kind == MapFeature.Kind.FOREST) {
            return stated.poor().forestS();
        }
        return kind == MapFeature.Kind.WATER ? stated.waterS() : stated.quietS();
    }

    private List<Shape> linesNear(Box flown) {
        return day.job().features().stream()
                .filter(ExposureCheck::mayCross)
                .map(feature -> day.shapeOf(feature))
                .filter(line -> !Box.round(line.outline()).widened(Poor.ALONG_M).misses(flown))
                .toList();
    }

    private static boolean isAlong(PlanePoint p, List<Shape> lines) {
        Plane.Stretch here = new Plane.Stretch(p, p);
        return lines.stream()
                .anyMatch(line -> line.distanceM(here) <= Poor.ALONG_M - ALONG_SPREAD_M);
    }

    /** Friction that holds the least of the loads on a slope. */
    private double leastFrictionCoefficient(List<Load> loads) {
        return loads.stream()
                .mapToDouble(load -> Friction.frictionCoefficient(day.kindOf(load).shape()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Rise over run of the square that a point lies in; 0 where it is not looked at or not known. */
    private double steepnessRatio(PlanePoint p) {
        if (around.misses(p)) {
            return 0;
        }
        int column = (int) Math.floor(p.eastM() / Poor.CELL_M);
        int row = (int) Math.floor(p.northM() / Poor.CELL_M);
        return steepness.computeIfAbsent(
                ((long) column << 32) ^ (row & 0xffffffffL), unused -> squareRatio(column, row));
    }

    private double squareRatio(int column, int row) {
        double side = Poor.CELL_M;
        PlanePoint corner = new PlanePoint(column * side, row * side);
        PlanePoint east = new PlanePoint(corner.eastM() + side, corner.northM());
        PlanePoint north = new PlanePoint(corner.eastM(), corner.northM() + side);
        PlanePoint far = new PlanePoint(corner.eastM() + side, corner.northM() + side);
        for (PlanePoint one : List.of(corner, east, north, far)) {
            if (!day.isKnown(one)) {
                return 0;
            }
        }
        // Both diagonals: the plane that fits four corners best rises along each by its mean.
        double up = (day.groundAmslM(far) - day.groundAmslM(corner)) / (side * Math.sqrt(2));
        double down = (day.groundAmslM(east) - day.groundAmslM(north)) / (side * Math.sqrt(2));
        return Math.hypot(up, down);
    }
}
