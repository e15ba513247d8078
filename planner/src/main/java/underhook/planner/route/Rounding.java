package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import underhook.core.geo.PlanePoint;
import underhook.planner.route.RoundedWay.Turn;
import underhook.planner.route.RoundedWay.Turning;
import underhook.planner.route.TightString.Bends;

/** The search for speeds at which all turns of a way have room. Used once. */
final class Rounding {
    /** Corners that have no room are rounded by no more than this. */
    private static final double KEPT_RADIUS_M = 1;

    private final List<PlanePoint> way;
    private final Bends bends;
    private final Turning turning;
    private final RoundedWay.Over over;
    private final TurnTimes times;
    private final int[] tries;

    /** Corners beside a straight piece that are turned at the long way round. */
    private final boolean[] longWay;

    Rounding(List<PlanePoint> way, Set<Integer> rigid, Turning turning, RoundedWay.Over over) {
        this.way = way;
        this.bends = Bends.of(way, rigid);
        this.turning = turning;
        this.over = over;
        this.times = new TurnTimes(bends, turning);
        this.tries = new int[way.size()];
        this.longWay = new boolean[way.size()];
    }

    /**
     * The way with all turns as fast as there is room for, each after the other.
     *
     * @param finely whether each turn is then tried at other speeds by itself, which takes ten times as long
     */
    RoundedWay find(boolean finely) {
        if (turning.radiusM(turning.fullMPerS()) < RoundedWay.INSIDE_M) {
            return new RoundedWay(way, List.of(), 0);
        }
        while (true) {
            Pulled pulled = pull();
            Set<Integer> tight =
                    pulled.tight().isEmpty() ? blocked(pulled.string()) : pulled.tight();
            if (tight.isEmpty()) {
                RoundedWay found = written(pulled.string());
                return finely ? quicker(found) : found;
            }
            boolean isSlower = false;
            for (int corner : tight) {
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
     * Each corner once more by itself: it may have been slowed for its neighbour's sake, and a wide turn
     * takes the less time the slower it is flown.
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
                Optional<RoundedWay> other = quickerThan(bestS - 1e-6);
                if (other.isPresent()) {
                    best = other.get();
                    bestS = costS(best);
                    bestTries = tries[corner];
                    bestLong = longWay[corner];
                }
            }
            tries[corner] = bestTries;
            longWay[corner] = bestLong;
        }
        return best;
    }

    /** The way at the present speeds if it may be flown and costs less; what is soonest said comes first. */
    private Optional<RoundedWay> quickerThan(double mostS) {
        Pulled pulled = pull();
        if (!pulled.tight().isEmpty()) {
            return Optional.empty();
        }
        RoundedWay other = written(pulled.string());
        // No price is below nothing: most need not be looked up, nor whether they have room.
        return other.timeS(turning.airspeedMPerS()) < mostS
                        && blocked(pulled.string()).isEmpty()
                        && costS(other) < mostS
                ? Optional.of(other)
                : Optional.empty();
    }

    /** Next try: slower; behind a straight piece, when slower is too slow, to the other side. */
    private void slower(int corner) {
        tries[corner]++;
        boolean atStraight = bends.isRigid(corner - 1) != bends.isRigid(corner);
        if (isKept(corner) && atStraight && !longWay[corner]) {
            longWay[corner] = true;
            tries[corner] = 0;
        }
    }

    private double costS(RoundedWay rounded) {
        return rounded.timeS(turning.airspeedMPerS())
                + over.priceS().applyAsDouble(rounded.points());
    }

    private double speedMPerS(int corner) {
        return turning.speedMPerS(tries[corner], times.isAtFinal(corner));
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
        double turnRad = bends.turnRad(corner);
        boolean rigidIn = bends.isRigid(corner - 1);
        boolean rigidOut = bends.isRigid(corner);
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
            double alongRad = bends.directionRad(rigidIn ? corner - 1 : corner);
            return new Disc(
                    Circles.aside(at, alongRad, side * radiusM), radiusM, side, List.of(corner));
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
        double inRad = bends.directionRad(first - 1);
        // From the middle of the corners inwards, square to the way's mean direction there.
        double meanRad = inRad + Circles.turnRad(inRad, bends.directionRad(last)) / 2;
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
                                    radiusM - RoundedWay.INSIDE_M));
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

    /** A string, and corners that cannot be flown so, if any. */
    private record Pulled(TightString string, Set<Integer> tight) {}

    /** Pulls the string at the present speeds; corners too near to each other share one disc. */
    private Pulled pull() {
        List<Disc> discs = discs();
        while (true) {
            TightString string = new TightString(bends, discs);
            if (string.untouched() >= 0) {
                return new Pulled(
                        string, string.corners(string.untouched(), string.untouched() + 1));
            }
            int at = string.backwards();
            if (at < 0) {
                return new Pulled(string, Set.of());
            }
            int other = string.partner(at);
            if (other < 0) {
                return new Pulled(string, string.around(at));
            }
            int first = Math.min(at, other);
            List<Integer> corners = new ArrayList<>(discs.get(first).corners());
            corners.addAll(discs.get(first + 1).corners());
            Optional<Disc> both = round(corners, discs.get(first).side());
            if (both.isEmpty()) {
                return new Pulled(string, new TreeSet<>(corners));
            }
            discs.set(first, both.get());
            discs.remove(first + 1);
        }
    }

    /** Corners at the first piece that is not free, if any. */
    private Set<Integer> blocked(TightString string) {
        PlanePoint at = way.get(0);
        for (int i = 1; i < string.discs().size(); i++) {
            PlanePoint begins = string.begins(i);
            if (!string.isAsFound(i) && !isOpen(at, begins)) {
                return string.corners(i - 1, i);
            }
            at = begins;
            if (i + 1 < string.discs().size()) {
                for (PlanePoint next : string.arc(i)) {
                    if (!isOpen(at, next)) {
                        return new TreeSet<>(string.discs().get(i).corners());
                    }
                    at = next;
                }
            }
        }
        return Set.of();
    }

    private boolean isOpen(PlanePoint a, PlanePoint b) {
        return a.distanceToM(b) < 1e-9 || over.isFree().test(a, b);
    }

    private RoundedWay written(TightString string) {
        List<PlanePoint> points = new ArrayList<>(List.of(way.get(0)));
        List<Turn> turns = new ArrayList<>();
        double turnLossS = 0;
        for (int i = 1; i + 1 < string.discs().size(); i++) {
            Disc disc = string.discs().get(i);
            List<PlanePoint> flown = new ArrayList<>();
            flown.add(string.begins(i));
            flown.addAll(string.arc(i));
            Turn turn = turn(disc);
            if (turn.bankRad() > 0) {
                turns.add(turn);
                turnLossS += times.slowS(turn, disc, RoundedWay.lengthM(flown));
            }
            flown.forEach(point -> add(points, point));
        }
        PlanePoint end = way.get(way.size() - 1);
        if (points.size() > 1
                && points.get(points.size() - 1).distanceToM(end) < RoundedWay.INSIDE_M) {
            points.remove(points.size() - 1);
        }
        points.add(end);
        return new RoundedWay(points, turns, turnLossS);
    }

    private static void add(List<PlanePoint> points, PlanePoint point) {
        if (points.get(points.size() - 1).distanceToM(point) >= RoundedWay.INSIDE_M) {
            points.add(point);
        }
    }

    private Turn turn(Disc disc) {
        int first = disc.first();
        boolean straight = disc.radiusM() <= 0 && Math.abs(bends.turnRad(first)) < 1e-6;
        if (straight) {
            return new Turn(way.get(first), 0, turning.fullMPerS(), 0);
        }
        boolean kept = disc.radiusM() <= KEPT_RADIUS_M;
        if (kept) {
            return times.tooTight(first);
        }
        double speedMPerS = Double.POSITIVE_INFINITY;
        for (int corner : disc.corners()) {
            speedMPerS = Math.min(speedMPerS, speedMPerS(corner));
        }
        return new Turn(way.get(first), disc.radiusM(), speedMPerS, turning.bankRad());
    }

    /** Where not even kept corners go together, the way as it was found. */
    private RoundedWay unchanged() {
        List<Turn> turns = new ArrayList<>();
        double turnLossS = 0;
        for (int i = 1; i + 1 < way.size(); i++) {
            if (Math.abs(bends.turnRad(i)) >= 1e-6) {
                Turn turn = times.tooTight(i);
                turns.add(turn);
                turnLossS += times.slowS(turn, Disc.point(way.get(i), i), 0);
            }
        }
        return new RoundedWay(way, turns, turnLossS);
    }
}
