package underhook.planner.route;

import underhook.core.geo.PlanePoint;

/** Straight pieces in the local plane. */
final class Plane {
    private Plane() {}

    /** Where on the piece a–b the point nearest to {@code point} lies, as a alongFraction in [0, 1]. */
    static double nearestFraction(PlanePoint a, PlanePoint b, PlanePoint point) {
        double dx = b.eastM() - a.eastM();
        double dy = b.northM() - a.northM();
        double squareM2 = dx * dx + dy * dy;
        if (squareM2 <= 0) {
            return 0;
        }
        double t =
                ((point.eastM() - a.eastM()) * dx + (point.northM() - a.northM()) * dy) / squareM2;
        return Math.max(0, Math.min(1, t));
    }

    static double distanceToPieceM(PlanePoint a, PlanePoint b, PlanePoint point) {
        double t = nearestFraction(a, b, point);
        double east = a.eastM() + t * (b.eastM() - a.eastM()) - point.eastM();
        double north = a.northM() + t * (b.northM() - a.northM()) - point.northM();
        return Math.sqrt(east * east + north * north);
    }

    /**
     * Where a–b crosses c–d, as a alongFraction of a–b in [0, 1]; negative when they do not cross or run
     * along each other.
     */
    static double crossingFraction(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
        double rx = b.eastM() - a.eastM();
        double ry = b.northM() - a.northM();
        double sx = d.eastM() - c.eastM();
        double sy = d.northM() - c.northM();
        double cross = rx * sy - ry * sx;
        if (Math.abs(cross) < 1e-12) {
            return -1;
        }
        double qx = c.eastM() - a.eastM();
        double qy = c.northM() - a.northM();
        double t = (qx * sy - qy * sx) / cross;
        double u = (qx * ry - qy * rx) / cross;
        return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? t : -1;
    }

    static PlanePoint between(PlanePoint a, PlanePoint b, double alongFraction) {
        return new PlanePoint(
                a.eastM() + alongFraction * (b.eastM() - a.eastM()),
                a.northM() + alongFraction * (b.northM() - a.northM()));
    }

    /** Distance of two pieces in plan, m; 0 where they cross. */
    static double pieceDistanceM(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
        if (crossingFraction(a, b, c, d) >= 0) {
            return 0;
        }
        return Math.min(
                Math.min(distanceToPieceM(a, b, c), distanceToPieceM(a, b, d)),
                Math.min(distanceToPieceM(c, d, a), distanceToPieceM(c, d, b)));
    }
}
