package underhook.planner.route;

import underhook.core.geo.PlanePoint;

/**
 * A point where a way may turn.
 *
 * @param corner number of the corner of closed ground it is; negative when it is none
 */
record Spot(double eastM, double northM, int corner) {
    private static final int NO_CORNER = -1;

    static Spot of(PlanePoint point) {
        return new Spot(point.eastM(), point.northM(), NO_CORNER);
    }

    boolean isCorner() {
        return corner >= 0;
    }

    PlanePoint toPoint() {
        return new PlanePoint(eastM, northM);
    }
}
