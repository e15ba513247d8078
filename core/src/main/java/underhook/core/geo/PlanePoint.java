package underhook.core.geo;

/**
 * Point of the job's local plane.
 *
 * @param eastM metres east of the frame's origin
 * @param northM metres north of the frame's origin
 */
public record PlanePoint(double eastM, double northM) {
    public PlanePoint {
        if (!Double.isFinite(eastM) || !Double.isFinite(northM)) {
            throw new IllegalArgumentException(
                    "eastM (" + eastM + ") and northM (" + northM + ") must be finite.");
        }
    }

    /** Distance in the plane, m. */
    public double distanceToM(PlanePoint other) {
        double east = other.eastM - eastM;
        double north = other.northM - northM;
        // Far quicker than Math.hypot, whose care for huge and tiny numbers no plane of a job
        // needs.
        return Math.sqrt(east * east + north * north);
    }

    /** Bearing to another point, rad from grid north, in [0, 2π); 0 when the points are the same. */
    public double bearingToGridRad(PlanePoint other) {
        double bearing = Math.atan2(other.eastM - eastM, other.northM - northM);
        return bearing < 0 ? bearing + 2 * Math.PI : bearing;
    }

    /** The point so many metres away on a bearing from grid north. */
    public PlanePoint towards(double bearingGridRad, double distanceM) {
        return new PlanePoint(
                eastM + distanceM * Math.sin(bearingGridRad),
                northM + distanceM * Math.cos(bearingGridRad));
    }
}
