package underhook.app.port;

import underhook.core.geo.GeoPoint;

/** A reference system of coordinates: x is easting or longitude, y is northing or latitude. */
public interface ReferenceSystem {
    /** "EPSG:25832", or a name from the WKT. */
    String name();

    /** Whether x and y are degrees. */
    boolean isGeographic();

    /** Metres of one unit of x and y; 1 for a geographic system, where it means nothing. */
    double metresPerUnit();

    /**
     * Position on WGS 84.
     *
     * @throws IllegalArgumentException if the point cannot be transformed
     */
    GeoPoint toGeo(double x, double y);

    /** x and y of a position. */
    Xy fromGeo(GeoPoint point);

    /** A pair in this system's own units. */
    record Xy(double x, double y) {}
}
