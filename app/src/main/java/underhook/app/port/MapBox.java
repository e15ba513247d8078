package underhook.app.port;

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
    /** All of the Earth. */
    public static final MapBox EARTH = new MapBox(-90, -180, 90, 180);

    public MapBox {
        if (!(southDeg <= northDeg && westDeg <= eastDeg)) {
            throw new IllegalArgumentException("the box is empty.");
        }
    }

    /** Whether a point lies in it, its edge included. */
    public boolean holds(GeoPoint point) {
        return point.latDeg() >= southDeg
                && point.latDeg() <= northDeg
                && point.lonDeg() >= westDeg
                && point.lonDeg() <= eastDeg;
    }
}
