package underhook.app.port;

import java.util.List;
import underhook.core.geo.GeoPoint;

/**
 * The part of the Earth that a job is about, in WGS 84 degrees. It does not reach over the date line.
 *
 * @param southDeg least latitude
 * @param westDeg least longitude
 * @param northDeg greatest latitude
 * @param eastDeg greatest longitude
 */
public record MapBox(double southDeg, double westDeg, double northDeg, double eastDeg) {
    /**
     * Metres of one degree of a meridian at the equator, where it is shortest; a degree of longitude is
     * never shorter than this times the cosine of the latitude.
     *
     * @source DERIVED from the axes of WGS 84: pi/180 a (1 - e2) = 110 574 m
     */
    private static final double LEAST_M_PER_DEGREE = 110_574;

    /** All of the Earth. */
    public static final MapBox EARTH = new MapBox(-90, -180, 90, 180);

    public MapBox {
        if (!(southDeg <= northDeg && westDeg <= eastDeg)) {
            throw new IllegalArgumentException("the box is empty.");
        }
    }

    /**
     * The boxes that hold every point within a distance of some points: one, or two when the points lie
     * astride the date line; none without points.
     *
     * @param marginM least distance from the points to the edge, m
     */
    public static List<MapBox> around(List<GeoPoint> points, double marginM) {
        if (points.isEmpty()) {
            return List.of();
        }
        double middleDeg = points.get(0).lonDeg();
        double south = 90;
        double north = -90;
        double west = 0;
        double east = 0;
        for (GeoPoint point : points) {
            south = Math.min(south, point.latDeg());
            north = Math.max(north, point.latDeg());
            double offDeg = Math.IEEEremainder(point.lonDeg() - middleDeg, 360);
            west = Math.min(west, offDeg);
            east = Math.max(east, offDeg);
        }
        south = Math.max(-90, south - marginM / LEAST_M_PER_DEGREE);
        north = Math.min(90, north + marginM / LEAST_M_PER_DEGREE);
        double narrowest = Math.cos(Math.toRadians(Math.max(Math.abs(south), Math.abs(north))));
        double sidewaysDeg =
                Math.min(180, marginM / (LEAST_M_PER_DEGREE * Math.max(1e-9, narrowest)));
        west = middleDeg + west - sidewaysDeg;
        east = middleDeg + east + sidewaysDeg;
        if (east - west >= 360) {
            return List.of(new MapBox(south, -180, north, 180));
        }
        if (west < -180) {
            return List.of(
                    new MapBox(south, west + 360, north, 180),
                    new MapBox(south, -180, north, east));
        }
        if (east > 180) {
            return List.of(
                    new MapBox(south, west, north, 180),
                    new MapBox(south, -180, north, east - 360));
        }
        return List.of(new MapBox(south, west, north, east));
    }

    /** Whether the box around an outline and this one have a point in common. */
    public boolean touches(List<GeoPoint> outline) {
        boolean isEast = outline.stream().allMatch(point -> point.lonDeg() > eastDeg);
        boolean isWest = outline.stream().allMatch(point -> point.lonDeg() < westDeg);
        boolean isNorth = outline.stream().allMatch(point -> point.latDeg() > northDeg);
        boolean isSouth = outline.stream().allMatch(point -> point.latDeg() < southDeg);
        return !isEast && !isWest && !isNorth && !isSouth;
    }

    /** Whether a point lies in it, its edge included. */
    public boolean holds(GeoPoint point) {
        return point.latDeg() >= southDeg
                && point.latDeg() <= northDeg
                && point.lonDeg() >= westDeg
                && point.lonDeg() <= eastDeg;
    }
}
