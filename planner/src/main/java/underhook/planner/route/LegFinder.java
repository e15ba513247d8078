package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.site.Wall;
import underhook.core.site.Walls;
import underhook.core.unit.Units;
import underhook.core.wire.Flyer;

/**
 * Finds the legs of a job.
 *
 * <p>Not safe for threads: ways in plan are kept once found.
 */
public final class LegFinder {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Slowest over the ground in a turn, so that a turn is flown and not hovered. @source PRACTICE 20 kt */
    private static final double LEAST_TURN_M_PER_S = Units.ktToMPerS(20);

    /** Ways in and out are judged in steps of this. */
    public static final int DIRECTION_STEP_DEG = Directions.STEP_DEG;

    /** Two places nearer than this many finals are flown straight from one to the other. */
    private static final double SHORT_HOP_FINALS_RATIO = 1.0;

    /** A way that does not cross a road keeps off its line by this, m. @source PRACTICE */
    private static final double KEEP_OFF_M = 1;

    /** In a proof only what touches a line crosses it, m. */
    private static final double PROOF_OFF_M = Exposed.TOUCH_M / 2;

    /** So often ways are split by what they pay when one is looked for, in open country. */
    private static final int SEARCH_PARTS = 10;

    /** Each split makes a map: with so many spots or more in it there is time for none. */
    private static final int TOWN_SPOTS = 4000;

    /** So often when the least is proven. */
    private static final int PROOF_PARTS = 40;

    /** So many of the cheapest ways in plan are rounded; turns may change their order. */
    private static final int ROUNDED_WAYS = 2;

    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final HeightProfile profile;
    private final ByPlace<WirePlan> wiresByPlace;
    private final Passed passed;
    private final WayMaps maps;
    private final LegBound bound;
    private final Map<String, List<List<PlanePoint>>> ways = new HashMap<>();
    private final Map<String, Optional<RoundedWay>> roundedWays = new HashMap<>();
    private final Map<String, Optional<HeightProfile.Profile>> profiles = new HashMap<>();
    private final double strongestWindMPerS;
    private final Map<String, Map<Long, Lies>> liesByPlace = new HashMap<>();
    private final WaysIn waysIn;
    private final Map<String, Exposures> exposures = new HashMap<>();
    private final Map<String, Double> pricesAnyhowS = new HashMap<>();

    public LegFinder(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.strongestWindMPerS = strongestWindMPerS(job);
        this.wires = WirePlan.all(job, ground);
        this.waysIn =
                new WaysIn(
                        new Judges.Limits(
                                job.rules().tailwindMPerS(), job.rules().crosswindMPerS()),
                        job.machine().pilotSide());
        this.profile = new HeightProfile(ground, wires);
        this.bound =
                new LegBound(
                        profile,
                        new LegBound.Rates(
                                job.machine().climbMPerS(), job.machine().descentMPerS()));
        this.wiresByPlace = new ByPlace<>(wires, wire -> ByPlace.extent(wire.supports()));
        this.passed = new Passed(job, ground, wires);
        this.maps = new WayMaps(job, ground, wires);
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
        return rounded(request, keepM)
                .flatMap(
                        way ->
                                profiles.computeIfAbsent(
                                                roundedKey(request, keepM)
                                                        + "|"
                                                        + request.underHookM(),
                                                unused -> profile.find(way.points(), need(request)))
                                        .map(found -> assemble(request, way, found)));
    }

    /** Towards which end of the way in plan its height cannot be told; empty where it can. */
    Optional<ClearLegs.Side> findUnknown(Request request, Map<String, Double> keepM) {
        return rounded(request, keepM)
                .flatMap(way -> profile.findUnknown(way.points(), need(request)))
                .map(along -> ClearLegs.Side.of(along < 0.5, along >= 0.5));
    }

    /** The way with its corners flown as arcs; what must stay straight stays so. */
    private Optional<RoundedWay> rounded(Request request, Map<String, Double> keepM) {
        return roundedWays.computeIfAbsent(
                roundedKey(request, keepM),
                unused ->
                        ways(request, keepM).stream()
                                .map(way -> costed(request, way, maps.of(request.kinds(), keepM)))
                                .min(Comparator.comparingDouble(Costed::costS))
                                .map(Costed::way));
    }

    private String roundedKey(Request request, Map<String, Double> keepM) {
        return wayKey(request, keepM) + "|" + request.speedMPerS();
    }

    private record Costed(RoundedWay way, double costS) {}

    private Costed costed(Request request, List<PlanePoint> way, WayMap map) {
        RoundedWay rounded = round(request, way, map);
        double priceS = exposures(request.kinds(), KEEP_OFF_M).priceS(rounded.points());
        return new Costed(rounded, rounded.timeS(request.speedMPerS()) + priceS);
    }

    private RoundedWay round(Request request, List<PlanePoint> way, WayMap map) {
        Set<Integer> rigid = new TreeSet<>();
        if (hasFinals(request)) {
            rigid.add(0);
            rigid.add(way.size() - 2);
        }
        for (int i = 0; i + 1 < way.size(); i++) {
            if (!passed.crossesNoWire(way.get(i), way.get(i + 1))) {
                rigid.add(i);
            }
        }
        Exposures priced = exposures(request.kinds(), KEEP_OFF_M);
        return RoundedWay.of(
                way,
                rigid,
                turning(request),
                new RoundedWay.Over(map.walk()::isFree, priced::priceS));
    }

    /** What has a price under loads of these kinds; nothing under the empty line. */
    private Exposures exposures(List<String> kinds, double keepOffM) {
        return exposures.computeIfAbsent(
                kinds.isEmpty() ? "" : maps.key(kinds) + "|" + keepOffM,
                unused ->
                        Exposures.of(job, ground, kinds, keepOffM)
                                .with(kinds.isEmpty() ? List.of() : wires, ground, job.rules()));
    }

    /** What a leg with loads of these kinds passes over at a price, s. */
    public double priceS(FlownLeg leg, List<String> kinds) {
        return exposures(kinds, KEEP_OFF_M).priceS(leg.points());
    }

    /** What a leg with loads of these kinds passes over at a price, each thing once with its price in s. */
    public Map<String, Double> pricesS(FlownLeg leg, List<String> kinds) {
        Map<String, Double> prices = new TreeMap<>();
        exposures(kinds, KEEP_OFF_M)
                .passed(leg.points())
                .forEach(one -> prices.merge(one.id(), one.priceS(), Double::sum));
        return prices;
    }

    /** How long a leg with loads of these kinds is over ground that has a price, m. */
    public double overM(FlownLeg leg, List<String> kinds) {
        return exposures(kinds, KEEP_OFF_M).passed(leg.points()).stream()
                .mapToDouble(Exposures.Passing::overM)
                .sum();
    }

    /**
     * What the cheapest way in plan between the ends of a request pays, whatever its directions there, s.
     * Other directions make a leg no cheaper than that by much.
     */
    public double priceAnyhowS(Request request) {
        String key =
                maps.key(request.kinds())
                        + request.from().point()
                        + request.to().point()
                        + request.speedMPerS();
        return pricesAnyhowS.computeIfAbsent(key, unused -> findPriceAnyhowS(request));
    }

    private double findPriceAnyhowS(Request request) {
        Exposures things = exposures(request.kinds(), KEEP_OFF_M);
        WayMap.Wind still = new WayMap.Wind(0, 0, request.speedMPerS());
        double leastS = Double.POSITIVE_INFINITY;
        double priceS = 0;
        for (List<PlanePoint> way :
                between(request.from().point(), request.to().point(), request, Map.of())) {
            double ownS = things.priceS(way);
            double costS = ownS + CheapestWay.timeS(way, still);
            if (costS < leastS) {
                leastS = costS;
                priceS = ownS;
            }
        }
        return priceS;
    }

    private RoundedWay.Turning turning(Request request) {
        return new RoundedWay.Turning(
                request.speedMPerS(),
                request.speedMPerS() + strongestWindMPerS,
                Math.min(LEAST_TURN_M_PER_S, request.speedMPerS()),
                job.rules().margins().bankRad(),
                hasFinals(request) ? job.rules().finalM() : 0);
    }

    private boolean hasFinals(Request request) {
        double finalM = job.rules().finalM();
        double apartM = request.from().point().distanceToM(request.to().point());
        return finalM > 0 && apartM >= SHORT_HOP_FINALS_RATIO * finalM;
    }

    /** Mean wind that may blow along any leg of the day from behind, m/s. */
    private static double strongestWindMPerS(Job job) {
        double windMPerS =
                job.weather().hours().stream().mapToDouble(WeatherHour::windMPerS).max().orElse(0);
        double exposure = job.places().stream().mapToDouble(Place::exposureFactor).max().orElse(1);
        return windMPerS * exposure;
    }

    private HeightProfile.Need need(Request request) {
        double groundSpeedMPerS = request.speedMPerS();
        return new HeightProfile.Need(
                request.underHookM(),
                job.rules().clearanceM(),
                job.machine().climbMPerS() / groundSpeedMPerS,
                job.machine().descentMPerS() / groundSpeedMPerS,
                job.rules().canopyLegM());
    }

    /**
     * What no legal leg between two ends goes below, whatever its directions there, s.
     *
     * @param wind as it counts for the leg's time
     */
    public double leastS(Request request, WayMap.Wind wind) {
        return bound.leastS(request, need(request), air(request, wind));
    }

    /** The same for its directions. */
    public double leastAsDirectedS(Request request, WayMap.Wind wind) {
        return hasFinals(request)
                ? bound.leastS(request, need(request), air(request, wind), turning(request))
                : leastS(request, wind);
    }

    /** What no legal leg for its directions goes below in time and prices together, s. */
    public double leastCostAsDirectedS(Request request, WayMap.Wind wind) {
        LegBound.Air air =
                new LegBound.Air(wind, maps.ofBound(request.kinds()), priced(request, wind));
        return hasFinals(request)
                ? bound.leastS(request, need(request), air, turning(request))
                : bound.leastS(request, need(request), air);
    }

    private LegBound.Priced priced(Request request, WayMap.Wind wind) {
        Exposures things = exposures(request.kinds(), PROOF_OFF_M);
        WayMap map = maps.ofBound(request.kinds());
        CheapestWay cheapest =
                new CheapestWay(
                        things,
                        (key, closed) ->
                                maps.closing(
                                        maps.key(request.kinds()) + "bound" + key, map, closed),
                        parts(map, PROOF_PARTS));
        return new LegBound.Priced() {
            @Override
            public double wayS(PlanePoint from, PlanePoint to, double leastS) {
                CheapestWay.Found found = cheapest.find(from, to, wind, leastS);
                return found.ways().isEmpty()
                        ? from.distanceToM(to) / wind.airspeedMPerS()
                        : found.boundS();
            }

            @Override
            public double priceS(PlanePoint a, PlanePoint b) {
                return things.priceS(List.of(a, b));
            }
        };
    }

    private LegBound.Air air(Request request, WayMap.Wind wind) {
        return new LegBound.Air(wind, maps.ofBound(request.kinds()));
    }

    private FlownLeg assemble(Request request, RoundedWay rounded, HeightProfile.Profile found) {
        List<PlanePoint> way = rounded.points();
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
                points,
                hooks,
                doneM,
                verticalS,
                found.leastClearanceM(),
                passed.along(way),
                rounded.turnLossS(),
                rounded.turns().stream()
                        .filter(RoundedWay.Turn::isKept)
                        .map(
                                turn ->
                                        new FlownLeg.Tight(
                                                turn.at(), turn.bankRad(), turn.speedMPerS()))
                        .toList());
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

    /** Ways in plan that are worth rounding, cheapest first; none where there is no way. */
    private List<List<PlanePoint>> ways(Request request, Map<String, Double> keepM) {
        return ways.computeIfAbsent(
                wayKey(request, keepM) + (isPriced(request) ? "|" + request.speedMPerS() : ""),
                unused -> findWays(request, keepM));
    }

    private boolean isPriced(Request request) {
        return !exposures(request.kinds(), KEEP_OFF_M).isEmpty();
    }

    private List<List<PlanePoint>> findWays(Request request, Map<String, Double> keepM) {
        PlanePoint a = request.from().point();
        PlanePoint b = request.to().point();
        if (!hasFinals(request)) {
            return between(a, b, request, keepM);
        }
        PlanePoint out = a.towards(request.from().bearingGridRad(), job.rules().finalM());
        PlanePoint in = b.towards(request.to().bearingGridRad(), job.rules().finalM());
        WayMap ends = maps.of(request.kinds());
        if (!ends.isFree(a, out) || !ends.isFree(in, b)) {
            return List.of();
        }
        return between(out, in, request, keepM).stream()
                .map(
                        middle -> {
                            List<PlanePoint> whole = new ArrayList<>();
                            whole.add(a);
                            whole.addAll(middle);
                            whole.add(b);
                            return List.copyOf(whole);
                        })
                .toList();
    }

    /** Fewer in a map of many corners, none in a town. */
    private static int parts(WayMap map, int most) {
        return Math.max(0, most * (TOWN_SPOTS - map.spotCount()) / TOWN_SPOTS);
    }

    /** The quickest way, and where it passes over something at a price the cheapest. */
    private List<List<PlanePoint>> between(
            PlanePoint from, PlanePoint to, Request request, Map<String, Double> keepM) {
        WayMap map = maps.of(request.kinds(), keepM);
        Optional<List<PlanePoint>> quickest = map.findWay(from, to);
        Exposures things = exposures(request.kinds(), KEEP_OFF_M);
        if (quickest.isEmpty()
                || !(things.priceS(quickest.get()) > 0)
                || things.near(quickest.get()).size() > CheapestWay.MOST_OPEN) {
            return quickest.stream().toList();
        }
        WayMap.Wind still = new WayMap.Wind(0, 0, request.speedMPerS());
        CheapestWay.Found found =
                new CheapestWay(
                                things,
                                (key, closed) ->
                                        maps.closing(
                                                maps.key(request.kinds()) + keepM + "off" + key,
                                                map,
                                                closed),
                                parts(map, SEARCH_PARTS))
                        .find(from, to, still);
        CrossingBends bends = new CrossingBends(things, map, still);
        List<List<PlanePoint>> ways = new ArrayList<>(List.of(quickest.get()));
        found.ways().stream()
                .limit(ROUNDED_WAYS)
                .forEach(
                        way -> {
                            ways.add(bends.bend(way));
                            ways.add(way);
                        });
        return ways.stream().distinct().toList();
    }

    private String wayKey(Request request, Map<String, Double> keepM) {
        boolean finals = hasFinals(request);
        return String.join("|", request.kinds())
                + request.from().point()
                + (finals ? request.from().bearingGridRad() : "")
                + request.to().point()
                + (finals ? request.to().bearingGridRad() : "")
                + (keepM.isEmpty() ? "" : keepM);
    }

    /** What closes every way between two points with these kinds on the hook. */
    public Blocked.Found findBlock(PlanePoint from, PlanePoint to, List<String> kinds) {
        List<Blocked.Thing> things = new ArrayList<>();
        for (Obstacle feature : maps.closedFeatures()) {
            things.add(
                    new Blocked.Thing(feature.id(), feature.area(), featureOpener(feature.id())));
        }
        for (Obstacle zone : Obstacles.zones(job, ground, kinds)) {
            things.add(new Blocked.Thing(zone.id(), zone.area(), zoneOpener(zone.id())));
        }
        for (WirePlan wire : wires) {
            if (!wire.isCrossable()) {
                things.add(
                        new Blocked.Thing(
                                wire.wire().id(),
                                wire.corridor(job.rules().wireClearanceM()),
                                "an agreement to cross " + wire.wire().id()));
            }
        }
        return Blocked.between(from, to, things);
    }

    /** Whether somebody's word can open the ground round a thing, also below a last part: no wire's. */
    public boolean canOpen(String id) {
        return job.zones().stream().anyMatch(zone -> zone.id().equals(id))
                || job.features().stream().anyMatch(feature -> feature.id().equals(id));
    }

    /** What would open the ground round things by their ids, in words. */
    public List<String> openers(List<String> ids) {
        return ids.stream()
                .map(
                        id ->
                                job.zones().stream().anyMatch(zone -> zone.id().equals(id))
                                        ? zoneOpener(id)
                                        : featureOpener(id))
                .distinct()
                .toList();
    }

    private String featureOpener(String id) {
        MapFeature feature =
                job.features().stream()
                        .filter(one -> one.id().equals(id))
                        .findFirst()
                        .orElseThrow();
        return switch (feature.kind()) {
            case ROAD, TRACK, TRAIL, RAILWAY -> "a guard at " + id;
            case HOUSE, PEOPLE -> "nobody at " + id + " and its owner's word";
            case MAST -> "a survey that shows " + id + " to be lower or elsewhere";
            case WATER, FOREST, PROTECTED -> "a permission for " + id;
        };
    }

    private String zoneOpener(String id) {
        Zone zone =
                job.zones().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
        return zone.closedUntil()
                .map(last -> "a day after " + last + ", when " + id + " is open again")
                .orElse("a permission for zone " + id);
    }

    /** Whether any way joins two points with these kinds on the hook. */
    public boolean isJoined(PlanePoint from, PlanePoint to, List<String> kinds) {
        return maps.of(kinds).findWay(from, to).isPresent();
    }

    /** Ids of what a straight piece may not pass with these kinds on the hook. */
    public List<String> blockers(PlanePoint a, PlanePoint b, List<String> kinds) {
        List<String> ids = new ArrayList<>();
        LineString piece = line(a, b);
        for (Obstacle obstacle : maps.obstacles(kinds).near(a, b, 0)) {
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

    /** Whether a place itself lies where nothing may be flown. */
    public boolean isClosed(PlanePoint point, List<String> kinds) {
        return maps.of(kinds).isInsideBlock(point);
    }

    /**
     * The wind at a place.
     *
     * @param fromGridRad where it comes from, rad from grid north
     * @param speedMPerS mean wind, m/s
     */
    public record PlaceWind(double fromGridRad, double speedMPerS) {}

    /**
     * The way in and out of a place: as near into the wind as what speaks against it allows.
     *
     * @return empty when no direction is allowed
     */
    public Optional<WayIn> findWayIn(PlaceHour at) {
        return rankWays(at, Map.of()).map(RankedWays::best);
    }

    /**
     * Every way in and out that is allowed, best first, when some directions are shut, because a load let
     * go there could hit something.
     *
     * @param shut what it could hit, by the bearing from the place that the way would come from, in
     *     millionths of a radian
     * @return empty when no direction is allowed
     */
    public Optional<RankedWays> rankWays(PlaceHour at, Map<Long, List<String>> shut) {
        Map<Long, Lies> known =
                liesByPlace.computeIfAbsent(
                        at.place() + maps.key(at.kinds()) + "|" + at.kinds().isEmpty(),
                        unused -> new HashMap<>());
        return waysIn.rank(
                at,
                bearing -> {
                    long millionths = millionths(bearing);
                    List<String> hit = shut.get(millionths);
                    return hit != null
                            ? Lies.hitting(hit)
                            : known.computeIfAbsent(
                                    millionths, unused -> lies(at.place(), bearing, at.kinds()));
                });
    }

    /** A bearing as a whole number, to be looked up by. */
    public static long millionths(double bearingGridRad) {
        return Math.round(Directions.normalRad(bearingGridRad) * 1e6);
    }

    /** What lies under the piece from a place as long as the last part. */
    private Lies lies(PlanePoint place, double bearingGridRad, List<String> kinds) {
        PlanePoint end = place.towards(bearingGridRad, job.rules().finalM());
        if (!maps.of(kinds).isFree(place, end) || !passed.crossesNoWire(place, end)) {
            return new Lies(false, blockers(place, end, kinds), List.of());
        }
        // Under the empty line nobody has to keep away.
        List<String> guarded = kinds.isEmpty() ? List.of() : passed.guarded(place, end);
        return new Lies(true, List.of(), guarded);
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
