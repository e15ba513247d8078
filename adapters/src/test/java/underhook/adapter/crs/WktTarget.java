package underhook.adapter.crs;

import java.nio.charset.StandardCharsets;
import java.util.List;
import underhook.adapter.fuzz.Target;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.Outcome;
import underhook.core.geo.GeoPoint;

/** Codes and WKT; what is built must transform or say that it cannot. */
public final class WktTarget implements Target {
    private final Proj4jReferenceSystems systems = new Proj4jReferenceSystems();

    @Override
    public List<byte[]> seeds() {
        String geographic =
                "GEOGCS[\"g\",DATUM[\"D_WGS_1984\",SPHEROID[\"s\",6378137,298.257223563],TOWGS84[0,0,0]],"
                        + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";
        String projected =
                "PROJCS[\"p\","
                        + geographic
                        + ",PROJECTION[\"%s\"],PARAMETER[\"latitude_of_origin\",40],PARAMETER[\"central_meridian\",9],"
                        + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],"
                        + "UNIT[\"metre\",1],AUTHORITY[\"EPSG\",\"32632\"]]";
        String second =
                "BOUNDCRS[SOURCECRS[PROJCRS[\"p\",BASEGEOGCRS[\"b\",DATUM[\"ETRS89\",ELLIPSOID[\"e\",6378137,298.25,LENGTHUNIT[\"metre\",1]]],"
                        + "PRIMEM[\"Paris\",2.59,ANGLEUNIT[\"grad\",0.0157]]],CONVERSION[\"c\",METHOD[\"Lambert Conic Conformal (2SP)\"],"
                        + "PARAMETER[\"Latitude of false origin\",46.5],PARAMETER[\"Longitude of false origin\",3],"
                        + "PARAMETER[\"Latitude of 1st standard parallel\",49],PARAMETER[\"Latitude of 2nd standard parallel\",44],"
                        + "PARAMETER[\"Easting at false origin\",700000],PARAMETER[\"Northing at false origin\",6600000]],"
                        + "CS[Cartesian,2],LENGTHUNIT[\"metre\",1]]],TARGETCRS[\"t\"],ABRIDGEDTRANSFORMATION[\"t\",METHOD[\"Position Vector\"],"
                        + "PARAMETER[\"X-axis translation\",1],PARAMETER[\"Scale difference\",1.0001]]]";
        return List.of(
                        "EPSG:2056",
                        "urn:ogc:def:crs:EPSG::3857",
                        geographic,
                        projected.replace("%s", "Transverse_Mercator"),
                        projected.replace("%s", "Lambert_Conformal_Conic_1SP"),
                        projected.replace("%s", "Polar_Stereographic").replace(",40]", ",90]"),
                        projected.replace("%s", "Mercator_1SP"),
                        projected.replace("%s", "Oblique_Stereographic"),
                        second)
                .stream()
                .map(text -> text.getBytes(StandardCharsets.UTF_8))
                .toList();
    }

    @Override
    public boolean read(byte[] bytes) {
        Outcome<ReferenceSystem> found = systems.find(new String(bytes, StandardCharsets.UTF_8));
        if (!found.isDone()) {
            return false;
        }
        ReferenceSystem system = found.getValue();
        try {
            ReferenceSystem.Xy xy = system.fromGeo(new GeoPoint(46.8, 8.2));
            if (!Double.isFinite(xy.x()) || !Double.isFinite(xy.y())) {
                throw new AssertionError(xy.toString());
            }
            system.toGeo(xy.x(), xy.y());
        } catch (IllegalArgumentException outside) {
            return true; // declared: the point is outside the system
        }
        return true;
    }
}
