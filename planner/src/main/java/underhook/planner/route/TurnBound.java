package underhook.planner.route;

import underhook.core.geo.PlanePoint;
import underhook.core.unit.Units;

/**
 * Least time from a point on one track to another point on another track, whatever is flown between.
 *
 * <p>Straight on, a metre in direction b takes t(b), which is convex; in a turn at speed u the metre takes
 * 1/u − 1/V more, for V the airspeed, and turns by G/u², for G = g tan(bank); u lies between the least
 * speed in a turn and V. On the spot nothing turns faster than G/u at the least u. Let q be the slope of
 * the time to the end, so that q·b never exceeds t(b), and s(b) = t(b) − q·b what a metre in direction b
 * wastes. For any k(b) with {@code q·b + k(b) G/u² <= t(b) + 1/u − 1/V} for every u, and at most u/G at
 * the least u, a flight takes at least the time of the straight way and the sum of k over the directions
 * that it turns through. The largest such k is the least of {@code (u² (s − 1/V) + u) / G} at the least u,
 * {@code V² s / G} and {@code u / G}: between the two speeds the first is concave wherever it matters.
 *
 * <p>Whoever ends straight ahead of where it began has flown in the direction of the end at some time. Or it
 * never has; then it came forward on one side of that direction and back to it on the other, and between the
 * two it turned through the opposite direction. What must be turned through counts each time.
 */
final class TurnBound {
    /** Steps round the compass; each counts with the least that it may hold. */
    private static final int STEPS = 3600;

    private static final double STEP_RAD = 2 * Math.PI / STEPS;

    /** Winds stronger than this part of the airspeed: nothing is said of turns. */
    private static final double MOST_WIND_RATIO = 0.7;

    /** So short a way has no direction, m. */
    private static final double SHORT_M = 1;

    private final WayMap.Wind wind;
    private final RoundedWay.Turning turning;
    private final double gripMPerS2;

    TurnBound(WayMap.Wind wind, RoundedWay.Turning turning) {
        this.wind = wind;
        this.turning = turning;
        this.gripMPerS2 = Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(turning.bankRad());
    }

    /** Where a flight begins or ends, and on which track, rad from grid north. */
    record Pose(PlanePoint at, double trackGridRad) {}

    /** The bound, s. */
    double leastS(Pose from, Pose to) {
        double eastM = to.at().eastM() - from.at().eastM();
        double northM = to.at().northM() - from.at().northM();
        double straightS = wind.durationS(eastM, northM);
        double windMPerS = Math.hypot(wind.towardsEastMPerS(), wind.towardsNorthMPerS());
        if (Math.hypot(eastM, northM) < SHORT_M
                || windMPerS > MOST_WIND_RATIO * wind.airspeedMPerS()
                || !(straightS < Double.POSITIVE_INFINITY)) {
            return straightS;
        }
        double aheadRad = Math.atan2(eastM, northM);
        double[] turnedS = turnedS(aheadRad, windMPerS);
        double firstS = atS(turnedS, from.trackGridRad() - aheadRad);
        double lastS = atS(turnedS, to.trackGridRad() - aheadRad);
        double turnS = Math.min(aheadS(turnedS, firstS, lastS), aroundS(turnedS, firstS, lastS));
        return straightS + Math.max(0, turnS - slackS(turnedS));
    }

    /** Through the direction of the end. */
    private static double aheadS(double[] turnedS, double firstS, double lastS) {
        double wholeS = turnedS[STEPS];
        return Math.min(firstS, wholeS - firstS) + Math.min(lastS, wholeS - lastS);
    }

    /** Never through it: forward on one side, through the opposite to the other. */
    private static double aroundS(double[] turnedS, double firstS, double lastS) {
        double wholeS = turnedS[STEPS];
        double backS = turnedS[STEPS / 2];
        double throughS = Math.abs(backS - firstS) + Math.abs(lastS - backS);
        double rightS = aroundS(backS, turnedS[STEPS / 4], firstS, lastS);
        double leftS =
                aroundS(
                        wholeS - backS,
                        wholeS - turnedS[STEPS - STEPS / 4],
                        wholeS - firstS,
                        wholeS - lastS);
        return Math.max(throughS, Math.min(rightS, leftS));
    }

    /** Forward is below a quarter, back beyond a half; in either order. */
    private static double aroundS(double halfS, double quarterS, double firstS, double lastS) {
        double forwardFirstS = Math.max(0, firstS - quarterS) + Math.max(0, halfS - lastS);
        double forwardLastS = Math.max(0, halfS - firstS) + Math.max(0, lastS - quarterS);
        return halfS - quarterS + Math.min(forwardFirstS, forwardLastS);
    }

    /** What turning from straight ahead to the right by so many steps adds, s. */
    private double[] turnedS(double aheadRad, double windMPerS) {
        double slope = (metreS(aheadRad + STEP_RAD) - metreS(aheadRad - STEP_RAD)) / (2 * STEP_RAD);
        double ahead = metreS(aheadRad);
        double airspeed = wind.airspeedMPerS();
        double slowest = airspeed - windMPerS;
        double steepest =
                (windMPerS
                                        + windMPerS
                                                * windMPerS
                                                / Math.sqrt(
                                                        airspeed * airspeed
                                                                - windMPerS * windMPerS))
                                / (slowest * slowest)
                        + 1 / slowest
                        + Math.abs(slope);
        double[] sum = new double[STEPS + 1];
        for (int i = 0; i < STEPS; i++) {
            double off = (i + 0.5) * STEP_RAD;
            double wasted = metreS(aheadRad + off) - ahead * Math.cos(off) - slope * Math.sin(off);
            // The least within the step.
            double least = Math.max(0, wasted - steepest * STEP_RAD / 2);
            sum[i + 1] = sum[i] + STEP_RAD * eachRadS(least);
        }
        return sum;
    }

    /** What each radian adds where a metre wastes so much, s. */
    private double eachRadS(double wastedSPerM) {
        double least = turning.leastMPerS();
        double full = wind.airspeedMPerS();
        double slow = least * least * (wastedSPerM - 1 / full) + least;
        return Math.max(0, Math.min(Math.min(slow, full * full * wastedSPerM), least)) / gripMPerS2;
    }

    /** Time for a metre on a track, s. */
    private double metreS(double trackGridRad) {
        return wind.durationS(Math.sin(trackGridRad), Math.cos(trackGridRad));
    }

    private static double atS(double[] turnedS, double offRad) {
        return turnedS[(int) (Directions.normalRad(offRad) / STEP_RAD) % STEPS];
    }

    /** Two directions lie within a step each. */
    private static double slackS(double[] turnedS) {
        double most = 0;
        for (int i = 0; i < STEPS; i++) {
            most = Math.max(most, turnedS[i + 1] - turnedS[i]);
        }
        return 2 * most;
    }
}
