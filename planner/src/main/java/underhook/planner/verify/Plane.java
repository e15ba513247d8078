package underhook.planner.verify;

import java.util.List;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/**
 * Plane and ellipsoid geometry of the verifier's own.
 *
 * @source DERIVED elementary vector geometry; NGA-WGS84 table 3.1 for the ellipsoid
 */
final class Plane {
    /** WGS 84 semi-major axis, m. @source NGA-WGS84 table 3.1 */
    private static final double EQUATOR_M = 6378137.0;

    /** WGS 84 first eccentricity squared. @source NGA-WGS84 table 3.1 */
    private static final double ECCENTRICITY_SQUARED_RATIO = 6.69437999014e-3;

    private Plane() {}

    /**
     * Distance along the ellipsoid by the radii of curvature at the middle latitude, m; below 10 km it
     * is right to a few millimetres.
     */
    static double distanceM(GeoPoint a, GeoPoint b) {
        double mid = Math.toRadians((a.latDeg() + b.latDeg()) / 2);
        double w2 = 1 - ECCENTRICITY_SQUARED_RATIO * Math.sin(mid) * Math.sin(mid);
        double prime = EQUATOR_M / Math.sqrt(w2);
        double meridian = EQUATOR_M * (1 - ECCENTRICITY_SQUARED_RATIO) / (w2 * Math.sqrt(w2));
        double dLon = Math.toRadians(Math.IEEEremainder(b.lonDeg() - a.lonDeg(), 360));
        double dLat = Math.toRadians(b.latDeg() - a.latDeg());
        return Math.hypot(meridian * dLat, prime * Math.cos(mid) * dLon);
    }

    /** Angle from true north to the plane's north, rad, east positive; spherical, good to 1e-5 rad. */
    static double convergenceRad(LocalFrame frame, GeoPoint at) {
        double dLon = Math.IEEEremainder(at.lonDeg() - frame.origin().lonDeg(), 360);
        return Math.toRadians(dLon) * Math.sin(Math.toRadians(at.latDeg()));
    }

    static double apartM(PlanePoint a, PlanePoint b) {
        double east = b.eastM() - a.eastM();
        double north = b.northM() - a.northM();
        return Math.sqrt(east * east + north * north);
    }

    /** Bearing from plane north, rad, in (-π, π]. */
    static double bearingGridRad(PlanePoint from, PlanePoint to) {
        return Math.atan2(to.eastM() - from.eastM(), to.northM() - from.northM());
    }

    static PlanePoint between(PlanePoint a, PlanePoint b, double alongFraction) {
        return new PlanePoint(
                a.eastM() + alongFraction * (b.eastM() - a.eastM()),
                a.northM() + alongFraction * (b.northM() - a.northM()));
    }

    /** Where somebody stands who has gone so far along a track; at its end where it is shorter. */
    static PlanePoint walked(List<PlanePoint> track, double wantedM) {
        PlanePoint far = track.get(0);
        double left = wantedM;
        for (int i = 1; i < track.size() && left > 0; i++) {
            double piece = apartM(track.get(i - 1), track.get(i));
            far =
                    piece > left
                            ? between(track.get(i - 1), track.get(i), left / piece)
                            : track.get(i);
            left -= piece;
        }
        return far;
    }

    static PlanePoint along(PlanePoint a, double bearingGridRad, double distanceM) {
        return new PlanePoint(
                a.eastM() + distanceM * Math.sin(bearingGridRad),
                a.northM() + distanceM * Math.cos(bearingGridRad));
    }

    /** Where on a segment (0 at a, 1 at b) the point nearest to p lies. */
    static double nearestFraction(PlanePoint p, PlanePoint a, PlanePoint b) {
        double east = b.eastM() - a.eastM();
        double north = b.northM() - a.northM();
        double square = east * east + north * north;
        if (!(square > 0)) {
            return 0;
        }
        double dot = (p.eastM() - a.eastM()) * east + (p.northM() - a.northM()) * north;
        return Math.max(0, Math.min(1, dot / square));
    }

    static double toSegmentM(PlanePoint p, PlanePoint a, PlanePoint b) {
        return apartM(p, between(a, b, nearestFraction(p, a, b)));
    }

    private static double turnM2(PlanePoint a, PlanePoint b, PlanePoint p) {
        return (b.eastM() - a.eastM()) * (p.northM() - a.northM())
                - (b.northM() - a.northM()) * (p.eastM() - a.eastM());
    }

    /** Whether two segments cross or touch. */
    static boolean cross(Stretch one, Stretch other) {
        double a = turnM2(one.a(), one.b(), other.a());
        double b = turnM2(one.a(), one.b(), other.b());
        double c = turnM2(other.a(), other.b(), one.a());
        double d = turnM2(other.a(), other.b(), one.b());
        if (((a > 0 && b < 0) || (a < 0 && b > 0)) && ((c > 0 && d < 0) || (c < 0 && d > 0))) {
            return true;
        }
        double touch = 1e-9;
        return Plane.toSegmentM(other.a(), one.a(), one.b()) < touch
                || Plane.toSegmentM(other.b(), one.a(), one.b()) < touch
                || Plane.toSegmentM(one.a(), other.a(), other.b()) < touch
                || Plane.toSegmentM(one.b(), other.a(), other.b()) < touch;
    }

    /** Where two segments that cross do so; on the middle of the first where they run along each other. */
    static PlanePoint crossingPoint(Stretch one, Stretch other) {
        double a = turnM2(other.a(), other.b(), one.a());
        double b = turnM2(other.a(), other.b(), one.b());
        double share = a - b == 0 ? 0.5 : a / (a - b);
        return between(one.a(), one.b(), Math.max(0, Math.min(1, share)));
    }

    static double stretchesApartM(Stretch one, Stretch other) {
        if (cross(one, other)) {
            return 0;
        }
        return Math.min(
                Math.min(
                        toSegmentM(other.a(), one.a(), one.b()),
                        toSegmentM(other.b(), one.a(), one.b())),
                Math.min(
                        toSegmentM(one.a(), other.a(), other.b()),
                        toSegmentM(one.b(), other.a(), other.b())));
    }

    /** Whether a point lies inside a ring, by counting the edges north of it. */
    static boolean inside(PlanePoint p, List<PlanePoint> ring) {
        boolean in = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            PlanePoint a = ring.get(i);
            PlanePoint b = ring.get(j);
            if ((a.eastM() > p.eastM()) != (b.eastM() > p.eastM())) {
                double share = (p.eastM() - a.eastM()) / (b.eastM() - a.eastM());
                if (p.northM() < a.northM() + share * (b.northM() - a.northM())) {
                    in = !in;
                }
            }
        }
        return in;
    }

    /** A straight piece in the plane. */
    record Stretch(PlanePoint a, PlanePoint b) {}
}
