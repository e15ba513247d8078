package underhook.adapter.geofile.aixm;

import java.util.List;
import underhook.app.port.MapBox;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.job.MapFeature.Shape;

/** Where a part of an obstacle stands. */
record Outline(Shape shape, List<GeoPoint> points) {
    private static final int CIRCLE_CORNERS = 36;

    Outline {
        points = List.copyOf(points);
    }

    /** Of the shape that is meant, or the simpler one that so few points can make. */
    static Outline of(Shape meant, List<GeoPoint> points) {
        List<GeoPoint> corners = points;
        boolean isClosed = points.size() > 1 && points.get(0).equals(points.get(points.size() - 1));
        if (meant == Shape.AREA && isClosed) {
            corners = points.subList(0, points.size() - 1);
        }
        if (corners.size() == 1) {
            return new Outline(Shape.POINT, corners);
        }
        boolean isLine = meant == Shape.LINE || corners.size() == 2;
        return new Outline(isLine ? Shape.LINE : Shape.AREA, corners);
    }

    /** Corners around a circle, which lies inside of them. */
    static Outline around(GeoPoint centre, double radiusM) {
        return new Outline(Shape.AREA, LocalFrame.aroundCircle(centre, radiusM, CIRCLE_CORNERS));
    }

    /** The smallest box around it. */
    MapBox box() {
        return new MapBox(
                points.stream().mapToDouble(GeoPoint::latDeg).min().orElseThrow(),
                points.stream().mapToDouble(GeoPoint::lonDeg).min().orElseThrow(),
                points.stream().mapToDouble(GeoPoint::latDeg).max().orElseThrow(),
                points.stream().mapToDouble(GeoPoint::lonDeg).max().orElseThrow());
    }

    /** Whether the boxes around both have a point in common. */
    boolean touches(MapBox other) {
        MapBox own = box();
        return own.southDeg() <= other.northDeg()
                && own.northDeg() >= other.southDeg()
                && own.westDeg() <= other.eastDeg()
                && own.eastDeg() >= other.westDeg();
    }

    /** Whether the boxes around both are no further apart than this, in either direction. */
    boolean isNear(Outline other, double distanceM) {
        MapBox own = box();
        double latDeg = Math.min(89, Math.max(Math.abs(own.southDeg()), Math.abs(own.northDeg())));
        double northDeg = distanceM / 110_000;
        double eastDeg = northDeg / Math.cos(Math.toRadians(latDeg));
        return other.touches(
                new MapBox(
                        own.southDeg() - northDeg,
                        own.westDeg() - eastDeg,
                        own.northDeg() + northDeg,
                        own.eastDeg() + eastDeg));
    }
}
