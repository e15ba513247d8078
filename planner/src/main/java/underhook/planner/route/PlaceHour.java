package underhook.planner.route;

import java.util.List;
import java.util.stream.Stream;
import underhook.core.geo.PlanePoint;

/**
 * A place at an hour with what hangs there, as the ways in and out are chosen for it.
 *
 * @param winds every wind at the place that may hold in that hour; the way is as near as may be into the
 *     first, and the limits hold in all
 * @param alsoWinds other winds in which a way in must keep the limits: it may come in an hour before
 * @param kinds kinds of load carried; empty for the empty line
 * @param convergenceRad what is added to a grid bearing to make it TRUE, rad
 * @param suns the sun at both ends of the hour and in its middle
 * @param room for rotor, tail, line and load
 */
public record PlaceHour(
        PlanePoint place,
        List<PlaceWind> winds,
        List<PlaceWind> alsoWinds,
        List<String> kinds,
        double convergenceRad,
        List<SunSeen> suns,
        RoomView room) {
    public PlaceHour {
        winds = List.copyOf(winds);
        alsoWinds = List.copyOf(alsoWinds);
        if (winds.isEmpty()) {
            throw new IllegalArgumentException("winds must not be empty.");
        }
        kinds = List.copyOf(kinds);
        suns = List.copyOf(suns);
    }

    /** Every wind in which a way in must keep the limits. */
    List<PlaceWind> windsIn() {
        return Stream.concat(winds.stream(), alsoWinds.stream()).toList();
    }

    PlaceWind wind() {
        return winds.get(0);
    }
}
