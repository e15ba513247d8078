package underhook.planner.order;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.planner.route.Approaches;

/** Bearings at one end of a leg that are not flown, in millionths of a radian, and why. */
final class ShutWays {
    private static final double BESIDE_RAD = Math.toRadians(Approaches.DIRECTION_STEP_DEG);

    private final Map<Long, List<String>> tried = new HashMap<>();
    private final Map<Long, List<String>> beside = new HashMap<>();
    private final Map<Long, List<String>> looked = new HashMap<>();

    /** Shuts a bearing that was tried, and its neighbours for the time being. */
    void add(double bearingGridRad, List<String> why) {
        List<String> words = why.stream().map(id -> id + " (10° beside)").toList();
        tried.put(Approaches.millionths(bearingGridRad), why);
        beside.putIfAbsent(Approaches.millionths(bearingGridRad - BESIDE_RAD), words);
        beside.putIfAbsent(Approaches.millionths(bearingGridRad + BESIDE_RAD), words);
    }

    /** Keeps why a bearing did not do when one end of a leg was changed. */
    void look(double bearingGridRad, List<String> why) {
        looked.put(Approaches.millionths(bearingGridRad), why);
    }

    /** What was tried. */
    Map<Long, List<String>> tried() {
        return Map.copyOf(tried);
    }

    /** What was tried, and its neighbours. */
    Map<Long, List<String>> all() {
        Map<Long, List<String>> all = new HashMap<>(beside);
        all.putAll(tried);
        return all;
    }

    /**
     * What is shut for a reason of its own: tried first, or as a change.
     *
     * @param chosenGridRad the bearing that is flown: one that did not do with one other end may do with the
     *     next, and is then not shut
     */
    Map<Long, List<String>> seenBeside(double chosenGridRad) {
        Map<Long, List<String>> all = new HashMap<>(looked);
        long chosen = Approaches.millionths(chosenGridRad);
        all.keySet().removeIf(bearing -> Math.abs(bearing - chosen) <= 1);
        all.putAll(tried);
        return all;
    }

    /** Whether a neighbour was shut that was not tried. */
    boolean hasUnseen() {
        return !tried.keySet().containsAll(beside.keySet());
    }
}
