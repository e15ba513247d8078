package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleFunction;

/** Says what refuses every direction in which a place could be come to, over all hours. */
public final class NoWayIn {
    private static final int STEP_DEG = 10;

    private NoWayIn() {}

    /** What is left when the causes are taken one after the other. */
    public enum Cause {
        /** The last part passes something that may not be passed, whatever its direction. */
        BLOCKED,
        /** Some directions pass nothing, but each has too much wind from behind or the side, always. */
        WIND,
        /** Neither: rotor, tail, line or load have no room where ground and wind would do. */
        ROOM
    }

    /**
     * The answer.
     *
     * @param ids what blocks any direction
     * @param openGridRad bearings from the place that pass nothing, rad from grid north
     */
    public record Found(Cause cause, List<String> ids, List<Double> openGridRad) {
        public Found {
            ids = List.copyOf(ids);
            openGridRad = List.copyOf(openGridRad);
        }
    }

    /**
     * The most wind on the last part.
     *
     * @param tailMPerS from behind
     * @param crossMPerS from the side
     */
    public record Limits(double tailMPerS, double crossMPerS) {}

    /**
     * Looks round the compass.
     *
     * @param blockers ids of what the straight last part passes that comes from a bearing
     * @param winds the wind at the place at each hour
     */
    public static Found find(
            DoubleFunction<List<String>> blockers, List<LegFinder.PlaceWind> winds, Limits limits) {
        TreeSet<String> ids = new TreeSet<>();
        List<Double> open = new ArrayList<>();
        boolean suits = false;
        for (int deg = 0; deg < 360; deg += STEP_DEG) {
            double fromGridRad = Math.toRadians(deg);
            List<String> passed = blockers.apply(fromGridRad);
            ids.addAll(passed);
            if (passed.isEmpty()) {
                open.add(fromGridRad);
                suits |= winds.stream().anyMatch(wind -> isWithin(wind, fromGridRad, limits));
            }
        }
        Cause cause = open.isEmpty() ? Cause.BLOCKED : suits ? Cause.ROOM : Cause.WIND;
        return new Found(cause, List.copyOf(ids), open);
    }

    /** Whether whoever comes from a bearing keeps the limits: into the wind is away from it. */
    private static boolean isWithin(
            LegFinder.PlaceWind wind, double fromBearingGridRad, Limits limits) {
        double off = wind.fromGridRad() - (fromBearingGridRad + Math.PI);
        double tailMPerS = -wind.speedMPerS() * Math.cos(off);
        double crossMPerS = wind.speedMPerS() * Math.abs(Math.sin(off));
        return tailMPerS <= limits.tailMPerS() && crossMPerS <= limits.crossMPerS();
    }
}
