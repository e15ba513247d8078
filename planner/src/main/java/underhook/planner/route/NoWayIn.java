package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.function.Predicate;

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
     * @param fewest of these all would have to be opened for a direction with wind enough in some hour, and
     *     they are no more than for any other; empty where none can be opened so
     */
    public record Found(
            Cause cause, List<String> ids, List<Double> openGridRad, List<String> fewest) {
        public Found {
            ids = List.copyOf(ids);
            openGridRad = List.copyOf(openGridRad);
            fewest = List.copyOf(fewest);
        }
    }

    /**
     * What lies under a last part.
     *
     * @param passed ids of what the straight last part passes that comes from a bearing
     * @param canOpen whether somebody's word lets it be passed there; never so for wires
     */
    public record Below(DoubleFunction<List<String>> passed, Predicate<String> canOpen) {}

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
     * @param winds the wind at the place at each hour
     */
    public static Found find(Below below, List<PlaceWind> winds, Limits limits) {
        TreeSet<String> ids = new TreeSet<>();
        List<Double> open = new ArrayList<>();
        List<String> fewest = List.of();
        boolean suits = false;
        for (int deg = 0; deg < 360; deg += STEP_DEG) {
            double fromGridRad = Math.toRadians(deg);
            List<String> passed = below.passed().apply(fromGridRad);
            boolean suited = winds.stream().anyMatch(wind -> isWithin(wind, fromGridRad, limits));
            ids.addAll(passed);
            if (passed.isEmpty()) {
                open.add(fromGridRad);
                suits |= suited;
            } else if (suited
                    && (fewest.isEmpty() || passed.size() < fewest.size())
                    && passed.stream().allMatch(below.canOpen())) {
                fewest = passed;
            }
        }
        Cause cause = open.isEmpty() ? Cause.BLOCKED : suits ? Cause.ROOM : Cause.WIND;
        return new Found(cause, List.copyOf(ids), open, fewest);
    }

    /** Whether whoever comes from a bearing keeps the limits: into the wind is away from it. */
    private static boolean isWithin(PlaceWind wind, double fromBearingGridRad, Limits limits) {
        double off = wind.fromGridRad() - (fromBearingGridRad + Math.PI);
        double tailMPerS = -wind.speedMPerS() * Math.cos(off);
        double crossMPerS = wind.speedMPerS() * Math.abs(Math.sin(off));
        return tailMPerS <= limits.tailMPerS() && crossMPerS <= limits.crossMPerS();
    }
}
