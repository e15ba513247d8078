package underhook.adapter.geofile.aixm;

import java.util.regex.Pattern;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Unreadable;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/**
 * Which of two numbers comes first in the systems that AIXM is written in.
 *
 * <p>ETRS 89 (4258) is taken as WGS 84; they are less than a metre apart.
 *
 * @source OGC-12-028 section 6 (reference systems and axis order in aviation data); EPSG codes 4326, 4979,
 *     4258, 4937
 */
enum Axes {
    /** Nobody has said; a position then has a fault. */
    UNKNOWN,
    LAT_LON,
    LON_LAT;

    private static final Pattern EPSG =
            Pattern.compile(
                    "(?:urn:(?:x-)?ogc:def:crs:EPSG:[0-9.]{0,9}:"
                            + "|https?://www\\.opengis\\.net/def/crs/EPSG/[0-9.]{1,9}/)"
                            + "(?:4326|4979|4258|4937)");
    private static final Pattern CRS84 =
            Pattern.compile(
                    "(?:urn:(?:x-)?ogc:def:crs:OGC:[0-9.]{0,9}:"
                            + "|https?://www\\.opengis\\.net/def/crs/OGC/[0-9.]{1,9}/)CRS84h?");
    private static final String ALLOWED =
            "urn:ogc:def:crs:EPSG::4326 or urn:ogc:def:crs:OGC:1.3:CRS84";

    /** By the name of a system; empty keeps these. */
    Axes or(String srsName) throws Unreadable {
        if (srsName.isEmpty()) {
            return this;
        }
        if (EPSG.matcher(srsName).matches()) {
            return LAT_LON;
        }
        if (CRS84.matcher(srsName).matches()) {
            return LON_LAT;
        }
        // "EPSG:4326" among them, which some take for longitude first and some for latitude first.
        throw Unreadable.of(
                        FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                        "is no reference system whose axes are known")
                .in("srsName")
                .found(srsName)
                .allowing(ALLOWED);
    }

    /** How many numbers a position of a system has. */
    static int dimensionOf(String srsName) {
        boolean hasHeight =
                srsName.endsWith("4979") || srsName.endsWith("4937") || srsName.endsWith("CRS84h");
        return hasHeight ? 3 : 2;
    }

    /** The point of two numbers in this order. */
    GeoPoint point(String first, String second) throws Unreadable {
        if (this == UNKNOWN) {
            throw Unreadable.of(FindingCode.REFERENCE_SYSTEM_MISSING, "has no reference system")
                    .in("srsName")
                    .allowing(ALLOWED);
        }
        double lat = Decimals.read("pos", this == LAT_LON ? first : second);
        double lon = Decimals.read("pos", this == LAT_LON ? second : first);
        if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) {
            throw Unreadable.range("pos", "is nowhere on Earth").found(first + " " + second);
        }
        return new GeoPoint(lat, lon);
    }
}
