package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import java.util.function.ToDoubleFunction;
import underhook.core.geo.PlanePoint;
import underhook.core.unit.Units;

/**
 * A way whose corners are flown as arcs.
 *
 * <p>A way bends where closed ground bulges towards it, so an arc inside the corner would cut that
 * ground. Round each corner lies a disc of the turn's radius that has the corner on its inside edge, and
 * the way is the string pulled tight round the discs: tangent, arc, tangent. Corners that lie nearer
 * together than a turn takes share one disc. A piece that must stay as it is (the last part of a way in,
 * the first of a way out, a piece across a wire) keeps its direction and its whole length: the turn
 * begins behind its end and ends before its start, to the shorter side or, where that has no room, to
 * the longer.
 *
 * <p>Arcs are written as straight pieces that touch the circle from outside, none turning more than
 * {@value #STEP_DEG}°. Each piece must be free; where one is not, the turns at its ends are flown slower
 * and so smaller. What has no room at the least speed is kept as a corner, said to be too tight and
 * counted as a stop and a turn on the spot.
 */
record RoundedWay(List<PlanePoint> points, List<Turn> turns, double turnLossS) {
    static final int STEP_DEG = 10;

    /** Corners lie this deep inside their discs, so that touching is no question of rounding. */
    static final double INSIDE_M = 0.01;

    /** Each try is slower by this. */
    private static final double SLOWER_RATIO = 0.85;

    /** Comfortable change of speed with a load on a long line, m/s². @source PRACTICE about g/10 */
    static final double SPEED_CHANGE_M_PER_S2 = 1;

    RoundedWay {
        points = List.copyOf(points);
        turns = List.copyOf(turns);
    }

    /**
     * How turns are flown.
     *
     * @param airspeedMPerS true airspeed between the turns, m/s
     * @param fullMPerS fastest over the ground at that airspeed, m/s
     * @param leastMPerS slowest over the ground in a turn, m/s
     * @param bankRad most bank, rad; a right angle stands for turns on the spot
     * @param finalM the straight first and last part; 0 where there is none
     */
    record Turning(
            double airspeedMPerS,
            double fullMPerS,
            double leastMPerS,
            double bankRad,
            double finalM) {
        /**
         * Radius of a level turn, m.
         *
         * @source DERIVED balance of forces in a level turn: tan(bank) = V² / (g r)
         */
        double radiusM(double speedMPerS) {
            return speedMPerS * speedMPerS / (Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(bankRad));
        }

        /** Speed of one try at a turn, the first at 0; below the least where none is left, m/s. */
        double speedMPerS(int tries, boolean atFinal) {
            // Who comes from a hover or goes to one is no faster at the other end of the final.
            double mostMPerS =
                    atFinal
                            ? Math.min(fullMPerS, Math.sqrt(2 * SPEED_CHANGE_M_PER_S2 * finalM))
                            : fullMPerS;
            double firstMPerS = Math.max(leastMPerS, mostMPerS);
            double speedMPerS = firstMPerS * Math.pow(SLOWER_RATIO, tries);
            boolean isLast = speedMPerS < leastMPerS && speedMPerS / SLOWER_RATIO > leastMPerS;
            return isLast ? leastMPerS : speedMPerS;
        }
    }

    /**
     * One turn as flown.
     *
     * @param at the corner it rounds, the first where it rounds several
     * @param radiusM radius, m; 0 where the corner had to be kept
     * @param speedMPerS most over the ground in it, m/s
     * @param bankRad bank that it takes at that speed, rad
     */
    record Turn(PlanePoint at, double radiusM, double speedMPerS, double bankRad) {
        boolean isKept() {
            return radiusM <= 0;
        }
    }

    /**
     * Rounds a way.
     *
     * @param way ends and corners, each piece of which may be flown
     * @param rigid numbers of the pieces that stay as they are
     */
    static RoundedWay of(List<PlanePoint> way, Set<Integer> rigid, Turning turning, Over over) {
        return rounding(way, rigid, turning, over).find(true);
    }

    /** The same before each turn is tried at other speeds by itself: never quicker, and found ten times as fast. */
    static RoundedWay roughly(
            List<PlanePoint> way, Set<Integer> rigid, Turning turning, Over over) {
        return rounding(way, rigid, turning, over).find(false);
    }

    private static Rounding rounding(
            List<PlanePoint> way, Set<Integer> rigid, Turning turning, Over over) {
        List<PlanePoint> bends = new ArrayList<>();
        Set<Integer> kept = new TreeSet<>();
        for (int i = 0; i < way.size(); i++) {
            // A point twice in a row has no direction.
            if (bends.isEmpty()
                    || bends.get(bends.size() - 1).distanceToM(way.get(i)) > INSIDE_M
                    || i == way.size() - 1) {
                bends.add(way.get(i));
            }
            if (rigid.contains(i)) {
                kept.add(bends.size() - 1);
            }
        }
        return new Rounding(bends, kept, turning, over);
    }

    /** Rounds a way over which nothing has a price. */
    static RoundedWay of(
            List<PlanePoint> way,
            Set<Integer> rigid,
            Turning turning,
            BiPredicate<PlanePoint, PlanePoint> isFree) {
        return of(way, rigid, turning, new Over(isFree, flown -> 0));
    }

    /**
     * What is flown over.
     *
     * @param isFree whether another straight piece may be flown
     * @param priceS what a way passes over at a price, s
     */
    record Over(
            BiPredicate<PlanePoint, PlanePoint> isFree,
            ToDoubleFunction<List<PlanePoint>> priceS) {}

    /** Time at the airspeed, without wind or heights, s. */
    double timeS(double airspeedMPerS) {
        return lengthM(points) / airspeedMPerS + turnLossS;
    }

    static double lengthM(List<PlanePoint> points) {
        double sumM = 0;
        for (int i = 0; i + 1 < points.size(); i++) {
            sumM += points.get(i).distanceToM(points.get(i + 1));
        }
        return sumM;
    }
}
