package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * A place at an hour with what hangs there, as the ways in and out are chosen for it.
 *
 * @param winds every wind at the place that may hold in that hour; the way is as near as may be into the
 *     first, and the limits hold in all
 * @param kinds kinds of load carried; empty for the empty line
 * @param convergenceRad what is added to a grid bearing to make it TRUE, rad
 * @param suns the sun at both ends of the hour and in its middle
 * @param room for rotor, tail, line and load
 */
public record PlaceHour(
        PlanePoint place,
        List<PlaceWind> winds,
        List<String> kinds,
        double convergenceRad,
        List<SunSeen> suns,
        RoomView room) {
    public PlaceHour {
        winds = List.copyOf(winds);
        if (winds.isEmpty()) {
            throw new IllegalArgumentException("winds must not be empty.");
        }
        kinds = List.copyOf(kinds);
        suns = List.copyOf(suns);
    }

    PlaceWind wind() {
        return winds.get(0);
    }
}
