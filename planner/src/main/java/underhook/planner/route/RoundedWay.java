package underhook.planner.route;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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

    /** Corners that have no room are rounded by no more than this. */
    private static final double KEPT_RADIUS_M = 1;

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
        return new Rounding(bends, kept, turning, over).find();
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

    private static double lengthM(List<PlanePoint> points) {
        double sumM = 0;
        for (int i = 0; i + 1 < points.size(); i++) {
            sumM += points.get(i).distanceToM(points.get(i + 1));
        }
        return sumM;
    }

    /** The search for speeds at which all turns have room. */
    private static final class Rounding {
        private final List<PlanePoint> way;
        private final Set<Integer> rigid;
        private final Turning turning;
        private final Over over;
        private final int[] tries;

        /** Corners beside a straight piece that are turned at the long way round. */
        private final boolean[] longWay;

        Rounding(List<PlanePoint> way, Set<Integer> rigid, Turning turning, Over over) {
            this.way = way;
            this.rigid = rigid;
            this.turning = turning;
            this.over = over;
            this.tries = new int[way.size()];
            this.longWay = new boolean[way.size()];
        }

        RoundedWay find() {
            if (turning.radiusM(turning.fullMPerS()) < INSIDE_M) {
                return new RoundedWay(way, List.of(), 0);
            }
            while (true) {
                List<Disc> discs = discs();
                Optional<Set<Integer>> tight = merge(discs).or(() -> blocked(discs));
                if (tight.isEmpty()) {
                    return quicker(written(discs));
                }
                boolean isSlower = false;
                for (int corner : tight.get()) {
                    if (!isKept(corner)) {
                        slower(corner);
                        isSlower = true;
                    }
                }
                if (!isSlower) {
                    return unchanged();
                }
            }
        }

        /**
         * Each corner once more by itself: it may have been slowed for its neighbour's sake, and a wide
         * turn takes the less time the slower it is flown.
         */
        private RoundedWay quicker(RoundedWay found) {
            RoundedWay best = found;
            double bestS = costS(found);
            for (int corner = 1; corner + 1 < way.size(); corner++) {
                int bestTries = tries[corner];
                boolean bestLong = longWay[corner];
                tries[corner] = 0;
                longWay[corner] = false;
                for (; !isKept(corner); slower(corner)) {
                    List<Disc> discs = discs();
                    if (merge(discs).or(() -> blocked(discs)).isEmpty()) {
                        RoundedWay other = written(discs);
                        // No price is below nothing: most need not be looked up.
                        if (other.timeS(turning.airspeedMPerS()) < bestS - 1e-6
                                && costS(other) < bestS - 1e-6) {
                            best = other;
                            bestS = costS(other);
                            bestTries = tries[corner];
                            bestLong = longWay[corner];
                        }
                    }
                }
                tries[corner] = bestTries;
                longWay[corner] = bestLong;
            }
            return best;
        }

        /** Next try: slower; behind a straight piece, when slower is too slow, to the other side. */
        private void slower(int corner) {
            tries[corner]++;
            boolean atStraight = rigid.contains(corner - 1) != rigid.contains(corner);
            if (isKept(corner) && atStraight && !longWay[corner]) {
                longWay[corner] = true;
                tries[corner] = 0;
            }
        }

        private double costS(RoundedWay rounded) {
            return rounded.timeS(turning.airspeedMPerS())
                    + over.priceS().applyAsDouble(rounded.points());
        }

        private boolean isAtFinal(int corner) {
            return turning.finalM() > 0
                    && ((corner == 1 && rigid.contains(0))
                            || (corner == way.size() - 2 && rigid.contains(way.size() - 2)));
        }

        private double speedMPerS(int corner) {
            return turning.speedMPerS(tries[corner], isAtFinal(corner));
        }

        private boolean isKept(int corner) {
            return speedMPerS(corner) < turning.leastMPerS() * (1 - 1e-9);
        }

        private double radiusM(int corner) {
            return isKept(corner) ? KEPT_RADIUS_M : turning.radiusM(speedMPerS(corner));
        }

        /** One disc for each corner, and points for the ends. */
        private List<Disc> discs() {
            List<Disc> discs = new ArrayList<>();
            discs.add(Disc.point(way.get(0), 0));
            for (int i = 1; i + 1 < way.size(); i++) {
                discs.add(disc(i));
            }
            discs.add(Disc.point(way.get(way.size() - 1), way.size() - 1));
            return discs;
        }

        private Disc disc(int corner) {
            PlanePoint at = way.get(corner);
            double inRad = Circles.directionRad(way.get(corner - 1), at);
            double outRad = Circles.directionRad(at, way.get(corner + 1));
            double turnRad = Circles.turnRad(inRad, outRad);
            boolean rigidIn = rigid.contains(corner - 1);
            boolean rigidOut = rigid.contains(corner);
            if (Math.abs(turnRad) < 1e-6 || (rigidIn && rigidOut)) {
                return Disc.point(at, corner);
            }
            int shortSide = turnRad > 0 ? 1 : -1;
            if (rigidIn || rigidOut) {
                if (isKept(corner)) {
                    return Disc.point(at, corner);
                }
                int side = longWay[corner] ? -shortSide : shortSide;
                double radiusM = radiusM(corner);
                double alongRad = rigidIn ? inRad : outRad;
                return new Disc(
                        Circles.aside(at, alongRad, side * radiusM),
                        radiusM,
                        side,
                        List.of(corner));
            }
            return round(List.of(corner), shortSide).orElseThrow();
        }

        /** The disc round corners that all turn to one side; empty where none of its size holds them. */
        private Optional<Disc> round(List<Integer> corners, int side) {
            int first = corners.get(0);
            int last = corners.get(corners.size() - 1);
            double radiusM = Double.POSITIVE_INFINITY;
            double east = 0;
            double north = 0;
            for (int corner : corners) {
                radiusM = Math.min(radiusM, radiusM(corner));
                east += way.get(corner).eastM() / corners.size();
                north += way.get(corner).northM() / corners.size();
            }
            double inRad = Circles.directionRad(way.get(first - 1), way.get(first));
            double outRad = Circles.directionRad(way.get(last), way.get(last + 1));
            // From the middle of the corners inwards, square to the way's mean direction there.
            double meanRad = inRad + Circles.turnRad(inRad, outRad) / 2;
            PlanePoint middle = new PlanePoint(east, north);
            double backM = Double.POSITIVE_INFINITY;
            for (int corner : corners) {
                backM =
                        Math.min(
                                backM,
                                Circles.reachBackM(
                                        middle,
                                        way.get(corner),
                                        meanRad + side * Math.PI / 2,
                                        radiusM - INSIDE_M));
            }
            return Double.isFinite(backM)
                    ? Optional.of(
                            new Disc(
                                    Circles.aside(middle, meanRad, side * backM),
                                    radiusM,
                                    side,
                                    corners))
                    : Optional.empty();
        }

        /** Puts corners too near to each other on one disc; corners that cannot be flown so, if any. */
        private Optional<Set<Integer>> merge(List<Disc> discs) {
            while (true) {
                Optional<Set<Integer>> apart = untouched(discs);
                if (apart.isPresent()) {
                    return apart;
                }
                int at = backwards(discs);
                if (at < 0) {
                    return Optional.empty();
                }
                int other = partner(discs, at);
                if (other < 0) {
                    return Optional.of(around(discs, at));
                }
                int first = Math.min(at, other);
                List<Integer> corners = new ArrayList<>(discs.get(first).corners());
                corners.addAll(discs.get(first + 1).corners());
                Optional<Disc> both = round(corners, discs.get(first).side());
                if (both.isEmpty()) {
                    return Optional.of(new TreeSet<>(corners));
                }
                discs.set(first, both.get());
                discs.remove(first + 1);
            }
        }

        /** Corners of the first two neighbours that no tangent joins. */
        private Optional<Set<Integer>> untouched(List<Disc> discs) {
            for (int i = 0; i + 1 < discs.size(); i++) {
                if (!isRigidAfter(discs.get(i))
                        && Circles.tangentRad(discs.get(i), discs.get(i + 1)).isEmpty()) {
                    return Optional.of(corners(discs, i, i + 1));
                }
            }
            return Optional.empty();
        }

        /** The first disc that the string would have to go round the wrong way; -1 where none. */
        private int backwards(List<Disc> discs) {
            for (int i = 1; i + 1 < discs.size(); i++) {
                if (discs.get(i).radiusM() > 0 && sweepRad(discs, i) > mostRad(discs.get(i))) {
                    return i;
                }
            }
            return -1;
        }

        /** Behind a final a turn may be wider than a half circle. */
        private double mostRad(Disc disc) {
            return isRigidBefore(disc) || isRigidAfter(disc) ? 1.5 * Math.PI : Math.PI;
        }

        private int partner(List<Disc> discs, int at) {
            int found = -1;
            double leastM = Double.POSITIVE_INFINITY;
            for (int other : new int[] {at - 1, at + 1}) {
                Disc one = discs.get(other);
                boolean fits =
                        one.radiusM() > 0
                                && one.side() == discs.get(at).side()
                                && isRound(one)
                                && isRound(discs.get(at));
                double apartM = one.centre().distanceToM(discs.get(at).centre());
                if (fits && apartM < leastM) {
                    leastM = apartM;
                    found = other;
                }
            }
            return found;
        }

        private boolean isRound(Disc disc) {
            return !isRigidBefore(disc) && !isRigidAfter(disc);
        }

        private boolean isRigidBefore(Disc disc) {
            return rigid.contains(disc.first() - 1);
        }

        private boolean isRigidAfter(Disc disc) {
            return rigid.contains(disc.last());
        }

        private static Set<Integer> around(List<Disc> discs, int at) {
            Set<Integer> corners = corners(discs, at - 1, at);
            corners.addAll(corners(discs, at, at + 1));
            return corners;
        }

        private static Set<Integer> corners(List<Disc> discs, int one, int other) {
            Set<Integer> corners = new TreeSet<>();
            for (Disc disc : List.of(discs.get(one), discs.get(other))) {
                // The ends of the way are no corners.
                if (disc.radiusM() > 0) {
                    corners.addAll(disc.corners());
                }
            }
            return corners;
        }

        private double directionRad(List<Disc> discs, int before) {
            Disc a = discs.get(before);
            Disc b = discs.get(before + 1);
            return isRigidAfter(a)
                    ? Circles.directionRad(way.get(a.last()), way.get(b.first()))
                    : Circles.tangentRad(a, b).orElseThrow();
        }

        private double sweepRad(List<Disc> discs, int at) {
            double sweepRad =
                    discs.get(at).side() * (directionRad(discs, at) - directionRad(discs, at - 1));
            double whole = 2 * Math.PI;
            double wrapped = ((sweepRad % whole) + whole) % whole;
            // A hair of turning back is rounding.
            return wrapped > whole - 1e-9 ? 0 : wrapped;
        }

        /** Corners at the first piece that is not free, if any. */
        private Optional<Set<Integer>> blocked(List<Disc> discs) {
            PlanePoint at = way.get(0);
            for (int i = 1; i < discs.size(); i++) {
                Disc disc = discs.get(i);
                PlanePoint begins = touch(disc, directionRad(discs, i - 1));
                boolean asFound = isRigidAfter(discs.get(i - 1));
                if (!asFound && !isOpen(at, begins)) {
                    return Optional.of(corners(discs, i - 1, i));
                }
                at = begins;
                if (i + 1 < discs.size()) {
                    for (PlanePoint next : arc(discs, i)) {
                        if (!isOpen(at, next)) {
                            return Optional.of(new TreeSet<>(disc.corners()));
                        }
                        at = next;
                    }
                }
            }
            return Optional.empty();
        }

        private boolean isOpen(PlanePoint a, PlanePoint b) {
            return a.distanceToM(b) < 1e-9 || over.isFree().test(a, b);
        }

        private static PlanePoint touch(Disc disc, double directionRad) {
            return Circles.aside(disc.centre(), directionRad, -disc.side() * disc.radiusM());
        }

        /** The arc's outside points and its end. */
        private List<PlanePoint> arc(List<Disc> discs, int at) {
            Disc disc = discs.get(at);
            double inRad = directionRad(discs, at - 1);
            double sweepRad = disc.radiusM() > 0 ? sweepRad(discs, at) : 0;
            int pieces = (int) Math.ceil(Math.toDegrees(sweepRad) / STEP_DEG - 1e-9);
            List<PlanePoint> points = new ArrayList<>();
            double outsideM = disc.radiusM() / Math.cos(sweepRad / (2 * Math.max(1, pieces)));
            for (int k = 0; k < pieces; k++) {
                double directionRad = inRad + disc.side() * sweepRad * (k + 0.5) / pieces;
                points.add(Circles.aside(disc.centre(), directionRad, -disc.side() * outsideM));
            }
            points.add(touch(disc, directionRad(discs, at)));
            return points;
        }

        private RoundedWay written(List<Disc> discs) {
            List<PlanePoint> points = new ArrayList<>(List.of(way.get(0)));
            List<Turn> turns = new ArrayList<>();
            double turnLossS = 0;
            for (int i = 1; i + 1 < discs.size(); i++) {
                List<PlanePoint> flown = new ArrayList<>();
                flown.add(touch(discs.get(i), directionRad(discs, i - 1)));
                flown.addAll(arc(discs, i));
                Turn turn = turn(discs.get(i));
                if (turn.bankRad() > 0) {
                    turns.add(turn);
                    turnLossS += slowS(turn, discs.get(i), lengthM(flown));
                }
                flown.forEach(point -> add(points, point));
            }
            PlanePoint end = way.get(way.size() - 1);
            if (points.size() > 1 && points.get(points.size() - 1).distanceToM(end) < INSIDE_M) {
                points.remove(points.size() - 1);
            }
            points.add(end);
            return new RoundedWay(points, turns, turnLossS);
        }

        private static void add(List<PlanePoint> points, PlanePoint point) {
            if (points.get(points.size() - 1).distanceToM(point) >= INSIDE_M) {
                points.add(point);
            }
        }

        private Turn turn(Disc disc) {
            int first = disc.first();
            boolean straight = disc.radiusM() <= 0 && Math.abs(cornerRad(first)) < 1e-6;
            if (straight) {
                return new Turn(way.get(first), 0, turning.fullMPerS(), 0);
            }
            boolean kept = disc.radiusM() <= KEPT_RADIUS_M;
            if (kept) {
                return tooTight(first);
            }
            double speedMPerS = Double.POSITIVE_INFINITY;
            for (int corner : disc.corners()) {
                speedMPerS = Math.min(speedMPerS, speedMPerS(corner));
            }
            return new Turn(way.get(first), disc.radiusM(), speedMPerS, turning.bankRad());
        }

        private double cornerRad(int corner) {
            return Circles.turnRad(
                    Circles.directionRad(way.get(corner - 1), way.get(corner)),
                    Circles.directionRad(way.get(corner), way.get(corner + 1)));
        }

        /** The bank with which the corner is cut by no more than obstacles stand out. */
        private Turn tooTight(int corner) {
            double half = Math.abs(cornerRad(corner)) / 2;
            double radiusM = Obstacles.MARGIN_M / (1 / Math.cos(Math.min(half, 1.57)) - 1);
            double speedMPerS = turning.leastMPerS();
            double bankRad =
                    Math.atan(
                            speedMPerS * speedMPerS / (Units.STANDARD_GRAVITY_M_PER_S2 * radiusM));
            return new Turn(way.get(corner), 0, speedMPerS, bankRad);
        }

        /** Time lost by flying a turn slower than the rest, s. */
        private double slowS(Turn turn, Disc disc, double lengthM) {
            if (turn.isKept()) {
                return spotS(disc.first());
            }
            double slowerMPerS = turning.airspeedMPerS() - turn.speedMPerS();
            if (slowerMPerS <= 0) {
                return 0;
            }
            double arcS = lengthM / turn.speedMPerS() - lengthM / turning.airspeedMPerS();
            // Beside a hover it is slow anyway; elsewhere it slows down before and speeds up after.
            double changeS =
                    isAtFinal(disc.first()) || isAtFinal(disc.last())
                            ? 0
                            : slowerMPerS
                                    * slowerMPerS
                                    / (SPEED_CHANGE_M_PER_S2 * turning.airspeedMPerS());
            return arcS + changeS;
        }

        /** Stopping, turning no quicker than in a turn at the least speed, and going on, s. */
        private double spotS(int corner) {
            double turnsRadPerS =
                    Units.STANDARD_GRAVITY_M_PER_S2
                            * Math.tan(turning.bankRad())
                            / turning.leastMPerS();
            double stopS = isAtFinal(corner) ? 0 : turning.airspeedMPerS() / SPEED_CHANGE_M_PER_S2;
            return Math.abs(cornerRad(corner)) / turnsRadPerS + stopS;
        }

        /** Where not even kept corners go together, the way as it was found. */
        private RoundedWay unchanged() {
            List<Turn> turns = new ArrayList<>();
            double turnLossS = 0;
            Arrays.fill(tries, Integer.MAX_VALUE / 2);
            for (int i = 1; i + 1 < way.size(); i++) {
                if (Math.abs(cornerRad(i)) >= 1e-6) {
                    Turn turn = tooTight(i);
                    turns.add(turn);
                    turnLossS += slowS(turn, Disc.point(way.get(i), i), 0);
                }
            }
            return new RoundedWay(way, turns, turnLossS);
        }
    }
}
