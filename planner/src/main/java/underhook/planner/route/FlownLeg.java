package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * A leg in the local plane.
 *
 * @param points bends, first to last; a point that repeats in plan climbs or descends on the spot
 * @param hookAmslM altitude of the hook under the belly at each point, m AMSL
 * @param distanceM length in plan, m
 * @param verticalS time spent climbing or descending on the spot, s
 * @param leastClearanceM least distance below the load to ground and canopy between the places, m
 * @param crossings ids and points of what it passes over
 */
public record FlownLeg(
        List<PlanePoint> points,
        List<Double> hookAmslM,
        double distanceM,
        double verticalS,
        double leastClearanceM,
        List<Crossed> crossings) {
    /** A thing passed over. */
    public record Crossed(String feature, PlanePoint at, String rule) {}

    public FlownLeg {
        points = List.copyOf(points);
        hookAmslM = List.copyOf(hookAmslM);
        crossings = List.copyOf(crossings);
    }
}
