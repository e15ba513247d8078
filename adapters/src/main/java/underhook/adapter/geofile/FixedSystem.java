package underhook.adapter.geofile;

import java.util.Optional;
import underhook.adapter.geofile.source.Unreadable;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;
import underhook.core.geo.GeoPoint;

/** The system of the formats that have no choice of one. */
final class FixedSystem {
    /** A tenth of a millimetre; a system that differs by more is another. */
    private static final double SAME_DEG = 1e-9;

    private FixedSystem() {}

    /** Refuses a stated system that is not the format's own. */
    static void require(String format, Optional<ReferenceSystem> stated) throws Unreadable {
        if (stated.isPresent() && !isWgs84(stated.get())) {
            throw Unreadable.range("crs", "contradicts the file, for " + format + " is WGS 84")
                    .found(stated.get().name())
                    .allowing("no crs, or EPSG:4326");
        }
    }

    private static boolean isWgs84(ReferenceSystem system) {
        return system == Wgs84.SYSTEM
                || (system.isGeographic()
                        && isSame(system, new GeoPoint(47, 11))
                        && isSame(system, new GeoPoint(-43, 170)));
    }

    private static boolean isSame(ReferenceSystem system, GeoPoint point) {
        GeoPoint there = system.toGeo(point.lonDeg(), point.latDeg());
        return Math.abs(there.latDeg() - point.latDeg()) <= SAME_DEG
                && Math.abs(there.lonDeg() - point.lonDeg()) <= SAME_DEG;
    }
}
