package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * Least time that any legal leg between two places can take.
 *
 * <p>What is left free, so that nothing legal is forgotten: the directions at both ends, the angle and
 * place at which wires are crossed, turns, and how high the ground between the ends stands. What is kept:
 * closed ground and wires never crossed in plan, the wind by the plan's own rule, and the height that
 * each end itself asks for.
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

    LegBound(HeightProfile profile, Rates rates) {
        this.profile = profile;
        this.rates = rates;
    }

    /**
     * The bound, s.
     *
     * @param map closed ground and wires that are never crossed, nothing else
     */
    double leastS(
            LegFinder.Request request, HeightProfile.Need need, WayMap.Wind wind, WayMap map) {
        PlanePoint from = request.from().point();
        PlanePoint to = request.to().point();
        double overStartAmslM = profile.leastAmslM(from, need);
        double overEndAmslM = profile.leastAmslM(to, need);
        double wayS = wayS(from, to, wind, map);
        if (!(overStartAmslM < Double.POSITIVE_INFINITY
                && overEndAmslM < Double.POSITIVE_INFINITY)) {
            return wayS * ROUNDING_FACTOR;
        }
        double startS = climbS(overStartAmslM - request.from().hookAmslM());
        double endS = descentS(overEndAmslM - request.to().hookAmslM());
        double climbS = climbS(overEndAmslM - request.from().hookAmslM());
        double descentS = descentS(overStartAmslM - request.to().hookAmslM());
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
    private static double wayS(PlanePoint from, PlanePoint to, WayMap.Wind wind, WayMap map) {
        return map.findWay(from, to, wind)
                .map(way -> wayS(way, wind))
                .orElse(from.distanceToM(to) / wind.airspeedMPerS());
    }

    private static double wayS(List<PlanePoint> way, WayMap.Wind wind) {
        double sumS = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumS +=
                    wind.durationS(
                            way.get(i + 1).eastM() - way.get(i).eastM(),
                            way.get(i + 1).northM() - way.get(i).northM());
        }
        return sumS;
    }
}
