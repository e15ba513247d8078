package underhook.planner.route;

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
     * @param priced time and prices; the bound is then on both together
     */
    record Air(WayMap.Wind wind, WayMap map, Priced priced) {
        /** Minutes alone. */
        Air(WayMap.Wind wind, WayMap map) {
            this(
                    wind,
                    map,
                    new Priced() {
                        @Override
                        public double wayS(PlanePoint from, PlanePoint to, double leastS) {
                            return LegBound.wayS(from, to, wind, map);
                        }

                        @Override
                        public double priceS(PlanePoint a, PlanePoint b) {
                            return 0;
                        }
                    });
        }
    }

    /** What a way takes at least where some of the ground has a price. */
    interface Priced {
        /**
         * Time and prices of any way at least, s.
         *
         * @param leastS no way takes less time for the turns at its ends, s
         */
        double wayS(PlanePoint from, PlanePoint to, double leastS);

        /** Price of a straight piece, s. */
        double priceS(PlanePoint a, PlanePoint b);
    }

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
                air.priced().wayS(from, to, 0),
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
                pieceS(from, out, air)
                        + Math.max(turnedS, air.priced().wayS(out, in, turnedS))
                        + pieceS(in, to, air);
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
    private static double wayS(PlanePoint from, PlanePoint to, WayMap.Wind wind, WayMap map) {
        return map.findWay(from, to, wind)
                .map(way -> CheapestWay.timeS(way, wind))
                .orElse(from.distanceToM(to) / wind.airspeedMPerS());
    }

    private static double pieceS(PlanePoint a, PlanePoint b, Air air) {
        return air.wind().durationS(b.eastM() - a.eastM(), b.northM() - a.northM())
                + air.priced().priceS(a, b);
    }
}
