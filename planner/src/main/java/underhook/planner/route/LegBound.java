package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * Least time that any legal leg between two places can take.
 *
 * <p>What is left free, so that nothing legal is forgotten: the angle and place at which wires are
 * crossed, and how high the ground between the first and the last part stands. What is kept: closed ground
 * and wires never crossed in plan, the wind by the plan's own rule, the height that each end asks for and,
 * where the directions at the ends are given, the straight first and last part, the ground below them and
 * the turns from and to them.
 *
 * <p>Over the start the hook must be at least {@code a} above where it hovered, over the end at least
 * {@code b} above where it will hover; whoever arrives {@code H} above the start's hover, or leaves
 * {@code D} above the end's, gained or lost that on the spot or along the way, at the rates of the
 * machine. A way of length {@code L} at airspeed {@code V} takes {@code T >= L / V} and lifts by no more
 * than {@code climb * L / V}. So no leg is shorter than {@code T + a / climb + b / descent}, nor than
 * {@code H / climb + b / descent}, nor than {@code D / descent + a / climb}.
 */
final class LegBound {
    /** Ways are sums of rounded lengths; the bound gives way to that. */
    private static final double ROUNDING_FACTOR = 1 - 1e-7;

    private final HeightProfile profile;
    private final Rates rates;

    /** How fast the machine climbs and descends. */
    record Rates(double climbMPerS, double descentMPerS) {}

    /**
     * What is flown through.
     *
     * @param wind as it counts for the leg's time
     * @param map closed ground and wires that are never crossed, nothing else
     */
    record Air(WayMap.Wind wind, WayMap map) {}

    LegBound(HeightProfile profile, Rates rates) {
        this.profile = profile;
        this.rates = rates;
    }

    /** The bound whatever the directions at the ends, s. */
    double leastS(LegFinder.Request request, HeightProfile.Need need, Air air) {
        PlanePoint from = request.from().point();
        PlanePoint to = request.to().point();
        return leastS(
                request,
                wayS(from, to, air),
                new Ends(profile.leastAmslM(from, need), profile.leastAmslM(to, need)));
    }

    /**
     * The bound for the directions at the ends, s.
     *
     * @param turning with a first and a last part
     */
    double leastS(
            LegFinder.Request request,
            HeightProfile.Need need,
            Air air,
            RoundedWay.Turning turning) {
        PlanePoint from = request.from().point();
        PlanePoint to = request.to().point();
        PlanePoint out = from.towards(request.from().bearingGridRad(), turning.finalM());
        PlanePoint in = to.towards(request.to().bearingGridRad(), turning.finalM());
        double turnedS =
                new TurnBound(air.wind(), turning)
                        .leastS(
                                new TurnBound.Pose(out, request.from().bearingGridRad()),
                                new TurnBound.Pose(in, request.to().bearingGridRad() + Math.PI));
        double wayS =
                pieceS(from, out, air.wind())
                        + Math.max(turnedS, wayS(out, in, air))
                        + pieceS(in, to, air.wind());
        return leastS(
                request,
                wayS,
                new Ends(
                        profile.leastAmslM(from, out, need, need.climbRatio()),
                        profile.leastAmslM(to, in, need, need.descentRatio())));
    }

    /** Least altitude of the hook over the start and over the end; infinite where not known. */
    private record Ends(double overStartAmslM, double overEndAmslM) {
        boolean isKnown() {
            return overStartAmslM < Double.POSITIVE_INFINITY
                    && overEndAmslM < Double.POSITIVE_INFINITY;
        }
    }

    private double leastS(LegFinder.Request request, double wayS, Ends ends) {
        if (!ends.isKnown()) {
            return wayS * ROUNDING_FACTOR;
        }
        double startS = climbS(ends.overStartAmslM() - request.from().hookAmslM());
        double endS = descentS(ends.overEndAmslM() - request.to().hookAmslM());
        double climbS = climbS(ends.overEndAmslM() - request.from().hookAmslM());
        double descentS = descentS(ends.overStartAmslM() - request.to().hookAmslM());
        double leastS = Math.max(wayS + startS + endS, Math.max(climbS + endS, descentS + startS));
        return leastS * ROUNDING_FACTOR;
    }

    private double climbS(double riseM) {
        return Math.max(0, riseM) / rates.climbMPerS();
    }

    private double descentS(double fallM) {
        return Math.max(0, fallM) / rates.descentMPerS();
    }

    /** The quickest way in plan; straight in still air where the map has none. */
    private static double wayS(PlanePoint from, PlanePoint to, Air air) {
        return air.map()
                .findWay(from, to, air.wind())
                .map(way -> wayS(way, air.wind()))
                .orElse(from.distanceToM(to) / air.wind().airspeedMPerS());
    }

    private static double wayS(List<PlanePoint> way, WayMap.Wind wind) {
        double sumS = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumS += pieceS(way.get(i), way.get(i + 1), wind);
        }
        return sumS;
    }

    private static double pieceS(PlanePoint a, PlanePoint b, WayMap.Wind wind) {
        return wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
    }
}
