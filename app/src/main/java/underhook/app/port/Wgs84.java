package underhook.app.port;

import underhook.core.geo.GeoPoint;

/** Longitude and latitude on WGS 84, which need no stated system. */
public final class Wgs84 implements ReferenceSystem {
    /** The only one, so that readers may ask for it by identity. */
    public static final ReferenceSystem SYSTEM = new Wgs84();

    private Wgs84() {}

    @Override
    public String name() {
        return "WGS 84";
    }

    @Override
    public boolean isGeographic() {
        return true;
    }

    @Override
    public double metresPerUnit() {
        return 1;
    }

    @Override
    public GeoPoint toGeo(double x, double y) {
        return new GeoPoint(y, x);
    }

    @Override
    public Xy fromGeo(GeoPoint point) {
        return new Xy(point.lonDeg(), point.latDeg());
    }
}
