package underhook.core.plan;

import java.util.List;
import underhook.core.geo.GeoPoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * One way through the air, straight between its points.
 *
 * @param carrying loads on the hook; empty for the empty line or no line
 * @param distanceM along the ground, m
 * @param durationS time in the air on this leg, s, without hooking up and setting down
 * @param leastClearanceM least distance of load, line or machine to ground, canopy and wires away from
 *     its two ends, m, rounded down
 * @param speedMPerS true airspeed, m/s
 */
public record Leg(
        List<LoadId> carrying,
        PlaceId from,
        PlaceId to,
        List<PathPoint> path,
        double distanceM,
        double durationS,
        double leastClearanceM,
        double speedMPerS,
        List<Crossing> crossings) {
    /**
     * A place where the leg passes over something that has a rule.
     *
     * @param feature id of the road, trail, wire or zone
     * @param at where
     * @param rule what must be so while it is crossed, in words
     */
    public record Crossing(String feature, GeoPoint at, String rule) {}

    public Leg {
        carrying = List.copyOf(carrying);
        path = List.copyOf(path);
        crossings = List.copyOf(crossings);
    }
}
