package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.ToDoubleFunction;
import underhook.core.geo.PlanePoint;

/**
 * Bends a way elsewhere where it crosses wires. Gates beside a wire stand some way apart and know nothing of turns: a
 * way that is a little longer may turn less, or where there is room.
 */
final class WireBends {
    /** A way of whose time turns take less than this is left as it is, s. @source PRACTICE own choice */
    static final double LITTLE_S = 3;

    /** Half as far as gates stand apart, then a third of that: nearer gains next to nothing. */
    private static final List<Double> STEPS_M = List.of(Gates.SPACING_M / 2, Gates.SPACING_M / 6);

    private static final double LEAST_GAIN_S = 0.05;
    private static final int DIRECTIONS = 8;

    private final WayMap map;
    private final BiPredicate<PlanePoint, PlanePoint> crossesWire;
    private final ToDoubleFunction<List<PlanePoint>> costS;

    /**
     * @param costS what a way costs with its corners flown as arcs, s
     */
    WireBends(
            WayMap map,
            BiPredicate<PlanePoint, PlanePoint> crossesWire,
            ToDoubleFunction<List<PlanePoint>> costS) {
        this.map = map;
        this.crossesWire = crossesWire;
        this.costS = costS;
    }

    /**
     * The way with each corner at the end of a crossing left out or moved, as long as that gains something.
     *
     * @param kept so many pieces at either end stay as they are
     */
    List<PlanePoint> bend(List<PlanePoint> way, int kept) {
        List<PlanePoint> best = way;
        double bestS = costS.applyAsDouble(way);
        for (double stepM : STEPS_M) {
            for (int at = kept + 1; at < best.size() - 1 - kept; at++) {
                if (!endsCrossing(best, at)) {
                    continue;
                }
                for (List<PlanePoint> other : others(best, at, stepM)) {
                    double otherS = costS.applyAsDouble(other);
                    if (otherS < bestS - LEAST_GAIN_S) {
                        best = other;
                        bestS = otherS;
                    }
                }
            }
        }
        return best;
    }

    private boolean endsCrossing(List<PlanePoint> way, int at) {
        return crossesWire.test(way.get(at - 1), way.get(at))
                || crossesWire.test(way.get(at), way.get(at + 1));
    }

    /** Without a corner, and with it a step away; those of them that may be flown. */
    private List<List<PlanePoint>> others(List<PlanePoint> way, int at, double stepM) {
        PlanePoint before = way.get(at - 1);
        PlanePoint after = way.get(at + 1);
        List<List<PlanePoint>> all = new ArrayList<>();
        if (map.isFree(before, after)) {
            List<PlanePoint> without = new ArrayList<>(way);
            without.remove(at);
            all.add(without);
        }
        for (int k = 0; k < DIRECTIONS; k++) {
            PlanePoint moved = way.get(at).towards(2 * Math.PI * k / DIRECTIONS, stepM);
            if (map.isFree(before, moved) && map.isFree(moved, after)) {
                List<PlanePoint> other = new ArrayList<>(way);
                other.set(at, moved);
                all.add(other);
            }
        }
        return all;
    }
}
