package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.job.MapFeature;
import underhook.core.site.Wall;
import underhook.core.site.Walls;
import underhook.core.wire.Flyer;

/**
 * Finds the legs of a job.
 *
 * <p>Not safe for threads: ways in plan are kept once found.
 */
public final class LegFinder {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Candidate directions are this far apart. */
    private static final double DIRECTION_STEP_RAD = Math.toRadians(10);

    /** Two places nearer than this many finals are flown straight from one to the other. */
    private static final double SHORT_HOP_FINALS_RATIO = 1.0;

    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final HeightProfile profile;
    private final ByPlace<WirePlan> wiresByPlace;
    private final ByPlace<Outline> crossable;
    private final List<Obstacle> closedFeatures;
    private final Geometry closedFeatureGround;
    private final Map<String, WayMap> mapsByKinds = new HashMap<>();
    private final Map<String, ByPlace<Obstacle>> obstaclesByKinds = new HashMap<>();
    private final Map<String, Optional<List<PlanePoint>>> ways = new HashMap<>();

    public LegFinder(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.wires = WirePlan.all(job, ground);
        this.profile = new HeightProfile(ground, wires);
        this.wiresByPlace = new ByPlace<>(wires, wire -> ByPlace.extent(wire.supports()));
        this.crossable =
                new ByPlace<>(
                        job.features().stream()
                                .filter(feature -> feature.crossing() != CrossingRule.NEVER)
                                .map(feature -> Outline.of(feature, ground))
                                .toList(),
                        outline -> ByPlace.extent(outline.points()));
        this.closedFeatures = Obstacles.features(job, ground);
        this.closedFeatureGround =
                ClosedGround.union(closedFeatures.stream().map(Obstacle::area).toList());
    }

    /** A feature that may be passed over, in the plane. */
    private record Outline(MapFeature feature, List<PlanePoint> points) {
        static Outline of(MapFeature feature, Ground ground) {
            return new Outline(
                    feature,
                    feature.outline().stream().map(at -> ground.frame().toPlane(at)).toList());
        }
    }

    /**
     * From where to where with what.
     *
     * @param from start, with the track it leaves on
     * @param to end, with the bearing it is approached from
     * @param kinds kinds of load carried; empty for the empty line
     * @param underHookM from the hook to the lowest end of the load, m
     * @param speedMPerS true airspeed, m/s
     */
    public record Request(
            End from, End to, List<String> kinds, double underHookM, double speedMPerS) {
        public Request {
            kinds = List.copyOf(kinds);
        }
    }

    /**
     * One end of a leg.
     *
     * @param point the place
     * @param bearingGridRad at the start the track out, at the end the bearing it comes from
     * @param hookAmslM altitude of the hook over the place while it hovers there, m AMSL
     */
    public record End(PlanePoint point, double bearingGridRad, double hookAmslM) {}

    /** The leg; empty when there is no way that keeps the rules. */
    public Optional<FlownLeg> findLeg(Request request) {
        return findLeg(request, Map.of());
    }

    /**
     * The leg that keeps further off some things, away from its first and last part.
     *
     * @param keepM how far from houses, people or zones by their ids, m
     */
    Optional<FlownLeg> findLeg(Request request, Map<String, Double> keepM) {
        Optional<List<PlanePoint>> way = way(request, keepM);
        if (way.isEmpty()) {
            return Optional.empty();
        }
        double groundSpeedMPerS = request.speedMPerS();
        HeightProfile.Need need =
                new HeightProfile.Need(
                        request.underHookM(),
                        job.rules().clearanceM(),
                        job.machine().climbMPerS() / groundSpeedMPerS,
                        job.machine().descentMPerS() / groundSpeedMPerS,
                        job.rules().canopyLegM());
        return profile.find(way.get(), need).map(found -> assemble(request, way.get(), found));
    }

    private FlownLeg assemble(Request request, List<PlanePoint> way, HeightProfile.Profile found) {
        TreeSet<Double> stations = new TreeSet<>(found.alongM());
        List<Double> bends = new ArrayList<>();
        double doneM = 0;
        bends.add(0.0);
        for (int i = 0; i + 1 < way.size(); i++) {
            doneM += way.get(i).distanceToM(way.get(i + 1));
            bends.add(doneM);
        }
        stations.addAll(bends);
        List<PlanePoint> points = new ArrayList<>();
        List<Double> hooks = new ArrayList<>();
        double firstM = HeightProfile.hookAmslM(found.alongM(), found.hookAmslM(), 0);
        double lastM = HeightProfile.hookAmslM(found.alongM(), found.hookAmslM(), doneM);
        double verticalS = 0;
        if (firstM > request.from().hookAmslM()) {
            points.add(way.get(0));
            hooks.add(request.from().hookAmslM());
            verticalS += (firstM - request.from().hookAmslM()) / job.machine().climbMPerS();
        }
        double beforeM = Double.NEGATIVE_INFINITY;
        for (double station : stations) {
            if (station - beforeM < 0.01 && !points.isEmpty()) {
                continue;
            }
            beforeM = station;
            points.add(pointAt(way, bends, station));
            hooks.add(HeightProfile.hookAmslM(found.alongM(), found.hookAmslM(), station));
        }
        if (lastM > request.to().hookAmslM()) {
            points.add(way.get(way.size() - 1));
            hooks.add(request.to().hookAmslM());
            verticalS += (lastM - request.to().hookAmslM()) / job.machine().descentMPerS();
        }
        return new FlownLeg(
                points, hooks, doneM, verticalS, found.leastClearanceM(), crossings(way));
    }

    private static PlanePoint pointAt(List<PlanePoint> way, List<Double> bends, double stationM) {
        for (int i = 0; i + 1 < way.size(); i++) {
            if (stationM <= bends.get(i + 1) + 1e-9) {
                double runM = bends.get(i + 1) - bends.get(i);
                double t =
                        runM <= 0 ? 1 : Math.max(0, Math.min(1, (stationM - bends.get(i)) / runM));
                return Plane.between(way.get(i), way.get(i + 1), t);
            }
        }
        return way.get(way.size() - 1);
    }

    private Optional<List<PlanePoint>> way(Request request, Map<String, Double> keepM) {
        PlanePoint a = request.from().point();
        PlanePoint b = request.to().point();
        double finalM = job.rules().finalM();
        boolean shortHop = a.distanceToM(b) < SHORT_HOP_FINALS_RATIO * finalM;
        String key =
                String.join("|", request.kinds())
                        + a
                        + (shortHop ? "" : request.from().bearingGridRad())
                        + b
                        + (shortHop ? "" : request.to().bearingGridRad())
                        + (keepM.isEmpty() ? "" : keepM);
        return ways.computeIfAbsent(
                key,
                unused -> {
                    WayMap map = map(request.kinds(), keepM);
                    if (shortHop || finalM <= 0) {
                        return map.findWay(a, b);
                    }
                    PlanePoint out = a.towards(request.from().bearingGridRad(), finalM);
                    PlanePoint in = b.towards(request.to().bearingGridRad(), finalM);
                    WayMap ends = map(request.kinds());
                    if (!ends.isFree(a, out) || !ends.isFree(in, b)) {
                        return Optional.empty();
                    }
                    return map.findWay(out, in)
                            .map(
                                    middle -> {
                                        List<PlanePoint> whole = new ArrayList<>();
                                        whole.add(a);
                                        whole.addAll(middle);
                                        whole.add(b);
                                        return List.copyOf(whole);
                                    });
                });
    }

    private WayMap map(List<String> kinds) {
        return map(kinds, Map.of());
    }

    private WayMap map(List<String> kinds, Map<String, Double> keepM) {
        return mapsByKinds.computeIfAbsent(
                mapKey(kinds) + (keepM.isEmpty() ? "" : keepM),
                unused -> {
                    List<Geometry> closed = new ArrayList<>();
                    closed.add(closedFeatureGround);
                    Obstacles.zones(job, ground, kinds).forEach(zone -> closed.add(zone.area()));
                    Under.of(job, ground, kinds).stream()
                            .filter(under -> keepM.containsKey(under.id()))
                            .forEach(
                                    under ->
                                            closed.add(
                                                    Obstacles.widen(
                                                            under.area(),
                                                            keepM.getOrDefault(under.id(), 0.0))));
                    return new WayMap(closed, wires, job.rules().wireClearanceM());
                });
    }

    private ByPlace<Obstacle> obstacles(List<String> kinds) {
        return obstaclesByKinds.computeIfAbsent(
                mapKey(kinds),
                unused -> {
                    List<Obstacle> all = new ArrayList<>(closedFeatures);
                    all.addAll(Obstacles.zones(job, ground, kinds));
                    return new ByPlace<>(all, obstacle -> obstacle.area().getEnvelopeInternal());
                });
    }

    /** Kinds that no zone speaks of share one map. */
    private String mapKey(List<String> kinds) {
        TreeSet<String> spoken = new TreeSet<>();
        for (String kind : kinds) {
            if (job.zones().stream().anyMatch(zone -> zone.kinds().contains(kind))) {
                spoken.add(kind);
            }
        }
        return String.join("|", spoken);
    }

    /** Ids of what a straight piece may not pass with these kinds on the hook. */
    public List<String> blockers(PlanePoint a, PlanePoint b, List<String> kinds) {
        List<String> ids = new ArrayList<>();
        LineString piece = line(a, b);
        for (Obstacle obstacle : obstacles(kinds).near(a, b, 0)) {
            if (obstacle.area().intersects(piece)) {
                ids.add(obstacle.id());
            }
        }
        for (WirePlan wire : wiresByPlace.near(a, b, widestCorridorM())) {
            if (crossesWire(wire, a, b) || isNearWire(wire, a, b)) {
                ids.add(wire.wire().id());
            }
        }
        return ids;
    }

    private double widestCorridorM() {
        double clearanceM = job.rules().wireClearanceM();
        return wires.stream().mapToDouble(wire -> wire.corridorM(clearanceM)).max().orElse(0);
    }

    /** Whether an end of a straight piece lies in a wire's corridor. */
    private boolean isNearWire(WirePlan wire, PlanePoint a, PlanePoint b) {
        double corridorM = wire.corridorM(job.rules().wireClearanceM());
        for (int i = 0; i + 1 < wire.supports().size(); i++) {
            PlanePoint c = wire.supports().get(i);
            PlanePoint d = wire.supports().get(i + 1);
            if (Math.min(Plane.distanceToPieceM(c, d, a), Plane.distanceToPieceM(c, d, b))
                    < corridorM) {
                return true;
            }
        }
        return false;
    }

    private static boolean crossesWire(WirePlan wire, PlanePoint a, PlanePoint b) {
        for (int i = 0; i + 1 < wire.supports().size(); i++) {
            if (Plane.crossingFraction(a, b, wire.supports().get(i), wire.supports().get(i + 1))
                    >= 0) {
                return true;
            }
        }
        return false;
    }

    /**
     * Everywhere that wires can be, for the room at a place; wider where the table of buffers asks for more
     * than the operator's own distance.
     */
    public List<Wall> wireWalls() {
        double ownM = job.rules().wireClearanceM();
        return wires.stream()
                .flatMap(
                        plan ->
                                Walls.wire(
                                        plan.wire().id(),
                                        plan.tube(),
                                        Math.max(0, plan.needM() - ownM))
                                        .stream())
                .toList();
    }

    /** Every wire that a leg comes near with what hangs there, one entry for each wire. */
    public List<NearWire> listNearWires(FlownLeg leg, Flyer flyer) {
        return NearWire.list(wires, leg, flyer);
    }

    /** Least distance in plan of a way and an outline, both points in a row, m. */
    public double distanceM(List<PlanePoint> outline, List<PlanePoint> way) {
        double leastM = Double.POSITIVE_INFINITY;
        for (int i = 0; i < outline.size(); i++) {
            PlanePoint next = outline.get(Math.min(i + 1, outline.size() - 1));
            for (int k = 0; k + 1 < way.size(); k++) {
                leastM =
                        Math.min(
                                leastM,
                                Plane.pieceDistanceM(
                                        way.get(k), way.get(k + 1), outline.get(i), next));
            }
        }
        return leastM;
    }

    /** Reach of a machine about its hook to any side, m. */
    public static double machineReachM(Machine machine) {
        return WirePlan.machineReachM(machine);
    }

    private boolean crossesNoWire(PlanePoint a, PlanePoint b) {
        return wiresByPlace.near(a, b, 0).stream().noneMatch(wire -> crossesWire(wire, a, b));
    }

    /** Whether a place itself lies where nothing may be flown. */
    public boolean isClosed(PlanePoint point, List<String> kinds) {
        return map(kinds).isInsideBlock(point);
    }

    /**
     * The wind at a place.
     *
     * @param fromGridRad where it comes from, rad from grid north
     * @param speedMPerS mean wind, m/s
     */
    public record PlaceWind(double fromGridRad, double speedMPerS) {}

    /**
     * Where there is room.
     *
     * @param in whether the last part and the hover have room on a heading, rad from grid north
     * @param out whether the first part of a way out has room on a track, rad from grid north
     */
    public record Headings(
            java.util.function.DoublePredicate in, java.util.function.DoublePredicate out) {}

    /**
     * The way in and out of a place: as near into the wind as what lies under the last part allows.
     *
     * @param headings where there is room at the place
     * @return empty when no direction is allowed
     */
    public Optional<WayIn> findWayIn(
            PlanePoint place, PlaceWind wind, List<String> kinds, Headings headings) {
        double finalM = job.rules().finalM();
        WayMap map = map(kinds);
        double bestOff = Double.POSITIVE_INFINITY;
        double bestFrom = -1;
        int count = (int) Math.round(2 * Math.PI / DIRECTION_STEP_RAD);
        for (int k = 0; k < count; k++) {
            // Steps are counted from straight into the wind, left and right in turn.
            double turn = ((k + 1) >> 1) * DIRECTION_STEP_RAD * (k % 2 == 0 ? 1 : -1);
            double heading = wind.fromGridRad() + turn;
            double from = normalRad(heading + Math.PI);
            double off = Math.abs(turn);
            if (off >= bestOff) {
                continue;
            }
            double head = wind.speedMPerS() * Math.cos(turn);
            double cross = wind.speedMPerS() * Math.abs(Math.sin(turn));
            PlanePoint in = place.towards(from, finalM);
            boolean allowed =
                    -head <= job.rules().tailwindMPerS()
                            && cross <= job.rules().crosswindMPerS()
                            && headings.in().test(normalRad(heading))
                            && map.isFree(place, in)
                            && crossesNoWire(place, in);
            if (allowed) {
                bestOff = off;
                bestFrom = from;
            }
        }
        if (bestFrom < 0) {
            return Optional.empty();
        }
        double heading = normalRad(bestFrom + Math.PI);
        Optional<Double> out = findWayOut(place, wind, kinds, headings);
        if (out.isEmpty()) {
            return Optional.empty();
        }
        List<String> refused =
                bestOff < 1e-6
                        ? List.of()
                        : blockers(
                                place, place.towards(wind.fromGridRad() + Math.PI, finalM), kinds);
        double headMPerS = wind.speedMPerS() * Math.cos(wind.fromGridRad() - heading);
        double crossMPerS = wind.speedMPerS() * Math.sin(wind.fromGridRad() - heading);
        List<String> reasons = new ArrayList<>();
        if (bestOff < 1e-6) {
            reasons.add("straight into the wind");
        } else {
            reasons.add(
                    Math.round(Math.toDegrees(bestOff))
                            + "° off the wind, because straight into it "
                            + (refused.isEmpty()
                                    ? "there is no room for rotor, tail, line and load"
                                    : "the last part would pass " + String.join(", ", refused)));
        }
        return Optional.of(new WayIn(bestFrom, out.get(), headMPerS, crossMPerS, reasons, refused));
    }

    private Optional<Double> findWayOut(
            PlanePoint place, PlaceWind wind, List<String> kinds, Headings headings) {
        WayMap map = map(kinds);
        int count = (int) Math.round(2 * Math.PI / DIRECTION_STEP_RAD);
        for (int k = 0; k < count; k++) {
            double turn = ((k + 1) >> 1) * DIRECTION_STEP_RAD * (k % 2 == 0 ? 1 : -1);
            double track = normalRad(wind.fromGridRad() + turn);
            PlanePoint out = place.towards(track, job.rules().finalM());
            boolean allowed =
                    -wind.speedMPerS() * Math.cos(turn) <= job.rules().tailwindMPerS()
                            && headings.out().test(track)
                            && map.isFree(place, out)
                            && crossesNoWire(place, out);
            if (allowed) {
                return Optional.of(track);
            }
        }
        return Optional.empty();
    }

    private static double normalRad(double bearingRad) {
        double turn = 2 * Math.PI;
        double rest = bearingRad % turn;
        return rest < 0 ? rest + turn : rest;
    }

    private List<FlownLeg.Crossed> crossings(List<PlanePoint> way) {
        List<FlownLeg.Crossed> found = new ArrayList<>();
        for (Outline outline : crossable.near(ByPlace.extent(way))) {
            String rule =
                    outline.feature().crossing() == CrossingRule.GUARDED
                            ? "guarded: nobody under the load while it passes"
                            : "allowed";
            for (int i = 0; i + 1 < way.size(); i++) {
                for (PlanePoint at : crossed(outline, way.get(i), way.get(i + 1))) {
                    found.add(new FlownLeg.Crossed(outline.feature().id(), at, rule));
                }
            }
        }
        for (WirePlan wire : wiresByPlace.near(ByPlace.extent(way))) {
            for (int i = 0; i + 1 < way.size(); i++) {
                for (int k = 0; k + 1 < wire.supports().size(); k++) {
                    double t =
                            Plane.crossingFraction(
                                    way.get(i),
                                    way.get(i + 1),
                                    wire.supports().get(k),
                                    wire.supports().get(k + 1));
                    if (t >= 0) {
                        found.add(
                                new FlownLeg.Crossed(
                                        wire.wire().id(),
                                        Plane.between(way.get(i), way.get(i + 1), t),
                                        "near square, at least "
                                                + Math.round(wire.wire().crossingAboveM())
                                                + " m above the highest wire; no release here"));
                    }
                }
            }
        }
        return found;
    }

    /** Where a straight piece passes over a feature's line or edge. */
    private static List<PlanePoint> crossed(Outline outline, PlanePoint a, PlanePoint b) {
        List<PlanePoint> points = outline.points();
        List<PlanePoint> found = new ArrayList<>();
        boolean area = outline.feature().shape() == MapFeature.Shape.AREA;
        int edges = area ? points.size() : points.size() - 1;
        for (int i = 0; i < edges; i++) {
            PlanePoint next = points.get((i + 1) % points.size());
            double t = Plane.crossingFraction(a, b, points.get(i), next);
            if (t >= 0) {
                found.add(Plane.between(a, b, t));
            }
        }
        return found;
    }

    private static LineString line(PlanePoint a, PlanePoint b) {
        return FACTORY.createLineString(
                new Coordinate[] {
                    new Coordinate(a.eastM(), a.northM()), new Coordinate(b.eastM(), b.northM())
                });
    }

    /** The point of the plane for a position. */
    public PlanePoint toPlane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }
}
