package underhook.core.geo;

/**
 * Position on WGS 84.
 *
 * @param latDeg latitude, degrees north, in [-90, 90]
 * @param lonDeg longitude, degrees east, in [-180, 180]
 */
public record GeoPoint(double latDeg, double lonDeg) {
    public GeoPoint {
        if (!(latDeg >= -90 && latDeg <= 90)) {
            throw new IllegalArgumentException("latDeg (" + latDeg + ") must lie in [-90, 90].");
        }
        if (!(lonDeg >= -180 && lonDeg <= 180)) {
            throw new IllegalArgumentException("lonDeg (" + lonDeg + ") must lie in [-180, 180].");
        }
    }
}
