package underhook.planner.route;

import java.util.OptionalDouble;
import underhook.core.geo.PlanePoint;
import underhook.core.unit.Units;

/** Directions, turns and tangents in the plane; directions count from east to the left. */
final class Circles {
    private Circles() {}

    /** Direction from one point to another, rad from east, to the left positive. */
    static double directionRad(PlanePoint from, PlanePoint to) {
        return Math.atan2(to.northM() - from.northM(), to.eastM() - from.eastM());
    }

    /** Turn from one direction to another, rad, to the left positive, in [-pi, pi]. */
    static double turnRad(double fromRad, double toRad) {
        return Units.wrapPiRad(toRad - fromRad);
    }

    /** A point so far left of another, seen along a direction; right where negative. */
    static PlanePoint aside(PlanePoint point, double alongRad, double leftM) {
        return new PlanePoint(
                point.eastM() - leftM * Math.sin(alongRad),
                point.northM() + leftM * Math.cos(alongRad));
    }

    /**
     * Direction of the straight piece that leaves one disc and meets the next, rad; empty where the discs
     * lie too near for one.
     */
    static OptionalDouble tangentRad(Disc a, Disc b) {
        double apartM = a.centre().distanceToM(b.centre());
        double sine = (a.side() * a.radiusM() - b.side() * b.radiusM()) / apartM;
        // Also where the centres are one point and the sine is no number.
        return Math.abs(sine) <= 1
                ? OptionalDouble.of(directionRad(a.centre(), b.centre()) + Math.asin(sine))
                : OptionalDouble.empty();
    }

    /**
     * How far one can go from a point in a direction and still be within reach of another, m; minus
     * infinity where the reach is too short for any step.
     */
    static double reachBackM(
            PlanePoint from, PlanePoint other, double directionRad, double reachM) {
        double east = other.eastM() - from.eastM();
        double north = other.northM() - from.northM();
        double alongM = east * Math.cos(directionRad) + north * Math.sin(directionRad);
        double asideM2 = east * east + north * north - alongM * alongM;
        double square = reachM * reachM - asideM2;
        return square < 0 ? Double.NEGATIVE_INFINITY : alongM + Math.sqrt(square);
    }
}
