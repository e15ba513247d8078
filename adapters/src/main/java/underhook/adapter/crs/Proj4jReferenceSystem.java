package underhook.adapter.crs;

import org.locationtech.proj4j.BasicCoordinateTransform;
import org.locationtech.proj4j.CoordinateReferenceSystem;
import org.locationtech.proj4j.Proj4jException;
import org.locationtech.proj4j.ProjCoordinate;
import underhook.app.port.ReferenceSystem;
import underhook.core.geo.GeoPoint;

/** A reference system that proj4j transforms. */
final class Proj4jReferenceSystem implements ReferenceSystem {
    private final CoordinateReferenceSystem system;
    private final BasicCoordinateTransform toWgs84;
    private final BasicCoordinateTransform fromWgs84;

    Proj4jReferenceSystem(CoordinateReferenceSystem system, CoordinateReferenceSystem wgs84) {
        this.system = system;
        toWgs84 = new BasicCoordinateTransform(system, wgs84);
        fromWgs84 = new BasicCoordinateTransform(wgs84, system);
    }

    @Override
    public String name() {
        return system.getName();
    }

    @Override
    public boolean isGeographic() {
        return system.isGeographic();
    }

    @Override
    public double metresPerUnit() {
        return isGeographic() ? 1 : 1 / system.getProjection().getFromMetres();
    }

    @Override
    public GeoPoint toGeo(double x, double y) {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("x (" + x + ") and y (" + y + ") must be finite.");
        }
        if (isGeographic() && !(Math.abs(x) <= 360 && Math.abs(y) <= 90)) {
            throw new IllegalArgumentException(
                    "x (" + x + ") must be a longitude and y (" + y + ") a latitude.");
        }
        // The library sets longitudes beyond 180 degrees to 180; nothing is clamped here.
        double xHere = isGeographic() ? Math.IEEEremainder(x, 360) : x;
        ProjCoordinate there = transform(toWgs84, xHere, y);
        return new GeoPoint(there.y, Math.IEEEremainder(there.x, 360));
    }

    @Override
    public Xy fromGeo(GeoPoint point) {
        ProjCoordinate there = transform(fromWgs84, point.lonDeg(), point.latDeg());
        return new Xy(there.x, there.y);
    }

    private ProjCoordinate transform(BasicCoordinateTransform how, double x, double y) {
        ProjCoordinate there;
        try {
            there = how.transform(new ProjCoordinate(x, y, 0), new ProjCoordinate());
        } catch (Proj4jException e) {
            throw new IllegalArgumentException(x + ", " + y + " is outside " + name(), e);
        }
        if (!Double.isFinite(there.x) || !Double.isFinite(there.y)) {
            throw new IllegalArgumentException(x + ", " + y + " is outside " + name());
        }
        return there;
    }
}
