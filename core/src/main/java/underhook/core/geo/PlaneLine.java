package underhook.core.geo;

import java.util.List;

/**
 * A straight line between two points of the local plane; the two may be the same.
 *
 * <p>Distances are exact in the plane but for rounding, 1e-9 of the coordinates.
 *
 * @param from where it begins
 * @param to where it ends
 */
public record PlaneLine(PlanePoint from, PlanePoint to) {
    /** Least distance of a point from the line, m. @source DERIVED foot of the perpendicular */
    public double distanceToM(PlanePoint point) {
        double east = to.eastM() - from.eastM();
        double north = to.northM() - from.northM();
        double square = east * east + north * north;
        double along =
                square <= 0
                        ? 0
                        : ((point.eastM() - from.eastM()) * east
                                        + (point.northM() - from.northM()) * north)
                                / square;
        double share = Math.max(0, Math.min(1, along));
        return Math.hypot(
                from.eastM() + share * east - point.eastM(),
                from.northM() + share * north - point.northM());
    }

    /**
     * Least distance of two lines, m; 0 where they cross.
     *
     * @source DERIVED two lines that do not cross are nearest at an end of one of them
     */
    public double distanceToM(PlaneLine other) {
        if (crosses(other)) {
            return 0;
        }
        return Math.min(
                Math.min(other.distanceToM(from), other.distanceToM(to)),
                Math.min(distanceToM(other.from), distanceToM(other.to)));
    }

    private boolean crosses(PlaneLine other) {
        return Math.signum(sideM2(other.from)) * Math.signum(sideM2(other.to)) < 0
                && Math.signum(other.sideM2(from)) * Math.signum(other.sideM2(to)) < 0;
    }

    /** Twice the area between line and point, m², above 0 to the left of the line. */
    private double sideM2(PlanePoint point) {
        return (to.eastM() - from.eastM()) * (point.northM() - from.northM())
                - (to.northM() - from.northM()) * (point.eastM() - from.eastM());
    }

    /**
     * Whether a point lies inside a ring, without its repeated last corner; on the ring either may be
     * said.
     *
     * @source DERIVED an odd number of sides meets a ray to the east
     */
    public static boolean isInside(PlanePoint point, List<PlanePoint> ring) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            PlanePoint a = ring.get(i);
            PlanePoint b = ring.get((i + 1) % ring.size());
            if (a.northM() > point.northM() != b.northM() > point.northM()) {
                double share = (point.northM() - a.northM()) / (b.northM() - a.northM());
                inside ^= point.eastM() < a.eastM() + share * (b.eastM() - a.eastM());
            }
        }
        return inside;
    }
}
