package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.site.Wall;
import underhook.core.site.Walls;
import underhook.core.wire.Flyer;

/**
 * Finds the legs of a job, and keeps what else is known of its ways: what they pay, what none goes below, what
 * closes them, and how places are come to.
 * Ways in plan are kept once found.
 */
public final class LegFinder {
    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final HeightProfile profile;
    private final Passed passed;
    private final LegRules rules;
    private final LegPrices prices;
    private final PlanWays ways;
    private final LeastLegs least;
    private final ClosedWays closed;
    private final Approaches approaches;
    private final Memo<Profiled, Optional<HeightProfile.Profile>> profiles = Memo.of();

    public LegFinder(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.rules = new LegRules(job);
        this.wires = WirePlan.all(job, ground);
        this.profile = new HeightProfile(ground, wires, job.rules().distances().stripHalfWidthM());
        this.passed = new Passed(job.features(), ground, wires);
        WayMaps maps = new WayMaps(job, ground, wires);
        this.prices = new LegPrices(job, ground, wires, maps);
        this.ways = new PlanWays(job, maps, passed, prices);
        this.least = new LeastLegs(job, profile, maps, prices);
        this.closed = new ClosedWays(job, ground, wires, maps);
        this.approaches = new Approaches(job, maps, passed, closed);
    }

    /** What legs pay for what they pass over. */
    public LegPrices prices() {
        return prices;
    }

    /** What no legal leg goes below. */
    public LeastLegs least() {
        return least;
    }

    /** What closes ways, and what would open them. */
    public ClosedWays closed() {
        return closed;
    }

    /** Ways in and out of places. */
    public Approaches approaches() {
        return approaches;
    }

    /**
     * From where to where with what.
     *
     * @param from start, with the track it leaves on
     * @param to end, with the bearing it is approached from
     * @param kinds kinds of load carried; empty for the empty line
     * @param underHookM from the hook to the lowest end of the load, m
     * @param speedMPerS true airspeed, m/s
     * @param slung whether a line hangs there: then first and last part are flown however near the ends are
     */
    public record Request(
            End from,
            End to,
            List<String> kinds,
            double underHookM,
            double speedMPerS,
            boolean slung) {
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

    /** A way in plan whose heights are asked for, and how low may be flown over it. */
    private record Profiled(List<PlanePoint> way, HeightProfile.Need need) {}

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
        return ways.rounded(request, keepM)
                .flatMap(
                        way ->
                                profiles.get(
                                                new Profiled(way.points(), rules.need(request)),
                                                unused ->
                                                        profile.find(
                                                                way.points(), rules.need(request)))
                                        .map(found -> assemble(request, way, found)));
    }

    /** Towards which end of the way in plan its height cannot be told; empty where it can. */
    Optional<ClearLegs.Side> findUnknown(Request request, Map<String, Double> keepM) {
        return ways.rounded(request, keepM)
                .flatMap(way -> profile.findUnknown(way.points(), rules.need(request)))
                .map(along -> ClearLegs.Side.of(along < 0.5, along >= 0.5));
    }

    /**
     * What the cheapest way in plan between the ends of a request pays, whatever its directions there, s.
     * Other directions make a leg no cheaper than that by much.
     */
    public double priceAnyhowS(Request request) {
        return ways.priceAnyhowS(request);
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

    /**
     * Everywhere that wires can be, for the room at a place; wider where the table of buffers asks for more
     * than the operator's own distance.
     */
    public List<Wall> wireWalls() {
        double ownM = job.rules().distances().wireClearanceM();
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

    /** The point of the plane for a position. */
    public PlanePoint toPlane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }
}
