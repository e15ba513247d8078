package underhook.planner.verify;

import java.util.List;
import underhook.core.geo.PlanePoint;

/** The smallest upright rectangle round some points. */
record Box(double westM, double southM, double eastM, double northM) {
    static Box round(List<PlanePoint> points) {
        double west = Double.POSITIVE_INFINITY;
        double south = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        for (PlanePoint point : points) {
            west = Math.min(west, point.eastM());
            south = Math.min(south, point.northM());
            east = Math.max(east, point.eastM());
            north = Math.max(north, point.northM());
        }
        return new Box(west, south, east, north);
    }

    /** The same, larger by so much on all sides. */
    Box widened(double byM) {
        return new Box(westM - byM, southM - byM, eastM + byM, northM + byM);
    }

    /** Whether the rectangles have no point in common. */
    boolean misses(Box other) {
        return other.westM > eastM
                || other.eastM < westM
                || other.southM > northM
                || other.northM < southM;
    }

    boolean misses(PlanePoint point) {
        return point.eastM() < westM
                || point.eastM() > eastM
                || point.northM() < southM
                || point.northM() > northM;
    }
}
