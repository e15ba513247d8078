package underhook.adapter.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.geo.GeoPoint;

class Proj4jReferenceSystemsReferenceTest {
    private static final String MERCATOR =
            "PROJCS[\"m\",GEOGCS[\"g\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
                    + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
                    + "PROJECTION[\"Mercator_1SP\"],PARAMETER[\"central_meridian\",0],"
                    + "PARAMETER[\"scale_factor\",1],PARAMETER[\"false_easting\",0],"
                    + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]";

    private final Proj4jReferenceSystems systems = new Proj4jReferenceSystems();

    private void holds(String text, GeoPoint point, double x, double y, double toleranceM) {
        ReferenceSystem.Xy xy = systems.find(text).getValue().fromGeo(point);

        assertThat(xy.x()).isCloseTo(x, within(toleranceM));
        assertThat(xy.y()).isCloseTo(y, within(toleranceM));
    }

    @Test
    void agrees_with_the_published_transverse_mercators() {
        // IOGP GIGS test 5101 parts 2 and 3; the guideline allows 0.03 m.
        holds("EPSG:32631", new GeoPoint(60, -2), 221288.770, 6661953.041, 0.03);
        holds("32631", new GeoPoint(60, -4), 110043.299, 6672079.494, 0.03);
        holds("EPSG:32631", new GeoPoint(0, -2), -57087.120, 0, 0.03);
        holds("EPSG:28354", new GeoPoint(-40, 146), 926893.302, 5560253.083, 0.03);
    }

    @Test
    void agrees_with_the_printed_clarke_example_from_wkt() {
        // Snyder, USGS PP 1395 (1987), UTM numerical example; printed to 0.1 m.
        String wkt =
                "PROJCS[\"Clarke\",GEOGCS[\"c\",DATUM[\"c\",SPHEROID[\"Clarke 1866\",6378206.4,294.9786982],TOWGS84[0,0,0]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-75],PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";
        GeoPoint onClarke = new GeoPoint(40.5, -73.5);
        // Geocentric shift of nothing: where the printed Clarke position lies on WGS 84.
        String geographic = wkt.substring(wkt.indexOf("GEOGCS"), wkt.indexOf(",PROJECTION"));
        GeoPoint onWgs84 =
                systems.find(geographic).getValue().toGeo(onClarke.lonDeg(), onClarke.latDeg());

        holds(wkt, onWgs84, 627106.5, 4484124.4, 0.1);
    }

    /** A full turn is no way: 190 degrees east is 170 west. Definition of longitude. */
    @Test
    void codes_are_read_as_people_type_them() {
        for (String typed : new String[] {"epsg:32628", "EPSG: 32628", "32628"}) {
            assertThat(systems.find(typed).findings()).as(typed).isEmpty();
        }
        assertThat(systems.find("EPSG:9999999").findings().get(0).message())
                .contains("no such code");
    }

    @Test
    void a_longitude_beyond_180_is_turned_and_not_cut_off() {
        ReferenceSystem degrees = systems.find("EPSG:4326").getValue();

        assertThat(degrees.toGeo(190, 46).lonDeg()).isCloseTo(-170, within(1e-9));
        assertThat(degrees.toGeo(-190, 46).lonDeg()).isCloseTo(170, within(1e-9));
    }

    @Test
    void refuses_what_it_does_not_know() {
        assertUnknown("EPSG:999999");
        assertUnknown("Gauss");
        assertUnknown("");
        assertUnknown("PROJCS[\"x\"");
        // North American Datum 1927 needs a grid of shifts.
        assertUnknown("EPSG:26711");
        // Its axes point west and south.
        assertUnknown("EPSG:2046");
        // The library computes a polyconic wrongly, by kilometres.
        assertUnknown("EPSG:5880");
        // Its extension makes a sphere of the ellipsoid, and no code says which.
        assertUnknown(MERCATOR + ",EXTENSION[\"PROJ4\",\"+proj=merc\"]]");
        assertThat(systems.find(MERCATOR + "]").isDone()).isTrue();
        // Hellenic: a modern ellipsoid, yet 300 m from WGS 84.
        assertUnknown(MERCATOR.replace("WGS_1984", "D_GGRS_1987") + "]");
    }

    private void assertUnknown(String text) {
        Outcome<ReferenceSystem> found = systems.find(text);

        assertThat(found.isDone()).as(text).isFalse();
        assertThat(found.findings().get(0).code()).isEqualTo(FindingCode.REFERENCE_SYSTEM_UNKNOWN);
    }
}
