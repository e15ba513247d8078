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
 * @param turnLossS time lost by flying turns slower than the rest, s
 * @param tight turns for which there is no room at the planned bank
 */
public record FlownLeg(
        List<PlanePoint> points,
        List<Double> hookAmslM,
        double distanceM,
        double verticalS,
        double leastClearanceM,
        List<Crossed> crossings,
        double turnLossS,
        List<Tight> tight) {
    /** A thing passed over. */
    public record Crossed(String feature, PlanePoint at, String rule) {}

    /**
     * A corner without room for the turn.
     *
     * @param bankRad bank that it takes at the speed, rad
     * @param speedMPerS slowest over the ground in a turn, m/s
     */
    public record Tight(PlanePoint at, double bankRad, double speedMPerS) {}

    /** A leg without turns. */
    public FlownLeg(
            List<PlanePoint> points,
            List<Double> hookAmslM,
            double distanceM,
            double verticalS,
            double leastClearanceM,
            List<Crossed> crossings) {
        this(points, hookAmslM, distanceM, verticalS, leastClearanceM, crossings, 0, List.of());
    }

    public FlownLeg {
        points = List.copyOf(points);
        hookAmslM = List.copyOf(hookAmslM);
        crossings = List.copyOf(crossings);
        tight = List.copyOf(tight);
    }
}
