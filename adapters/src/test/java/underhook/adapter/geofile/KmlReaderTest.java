package underhook.adapter.geofile;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;

/** Elements and rules from OGC 07-147r2; the places are invented. */
class KmlReaderTest {
    static final String SAMPLE =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <kml xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://www.google.com/kml/ext/2.2">
            <Document><name>all</name>
              <Style id="s"><LineStyle><color>ff0000ff</color></LineStyle></Style>
              <Folder><name>places</name>
                <Placemark id="p1"><name>Upper ledge</name><description><![CDATA[<b>steep</b>]]></description>
                  <ExtendedData><Data name="kind"><displayName>Kind</displayName><value>site</value></Data></ExtendedData>
                  <Point><altitudeMode>absolute</altitudeMode><coordinates> 11.1,46.2,300.5 </coordinates></Point>
                </Placemark>
                <Placemark><name>S2</name><Point><coordinates>11.2,46.3,0</coordinates></Point></Placemark>
                <Placemark id="p3"><name>S3</name>
                  <ExtendedData><SchemaData schemaUrl="#x"><SimpleData name="id">own</SimpleData>
                    <SimpleData name="name"></SimpleData></SchemaData></ExtendedData>
                  <Point><altitudeMode>relativeToGround</altitudeMode><coordinates>11.2,46.3,20</coordinates></Point>
                </Placemark>
              </Folder>
              <Folder><name>deep</name><Folder><name>lines</name>
                <Placemark><name>L</name><MultiGeometry>
                  <LineString><coordinates>11,46 11.1,46.1
                     11.2,46.2</coordinates></LineString>
                  <Polygon><outerBoundaryIs><LinearRing><coordinates>11,46,5 11.1,46,6 11.1,46.1,7 11,46,5</coordinates></LinearRing></outerBoundaryIs>
                    <innerBoundaryIs><LinearRing><coordinates>11.05,46.01 11.06,46.01 11.06,46.02 11.05,46.01</coordinates></LinearRing></innerBoundaryIs>
                    <altitudeMode>absolute</altitudeMode></Polygon>
                  <gx:Track><when>2026-06-01</when><gx:coord>11 46 1</gx:coord><gx:coord>12 47 2</gx:coord></gx:Track>
                  <LinearRing><coordinates>11,46 11.1,46 11.1,46.1 11,46</coordinates></LinearRing>
                </MultiGeometry></Placemark>
                <Placemark><name>none</name></Placemark>
              </Folder></Folder>
            </Document>
            </kml>
            """;

    @TempDir Path folder;
    private final List<StatedFeature> read = new ArrayList<>();

    private String read(String text, String layer) throws IOException {
        return read(Files.writeString(folder.resolve("a.kml"), text), layer, Optional.empty());
    }

    private String read(Path file, String layer, Optional<ReferenceSystem> system) {
        read.clear();
        String name = String.valueOf(file.getFileName());
        assertThat(new KmlReader().reads(name)).isTrue();
        return new KmlReader()
                .read(new Request(file, name, system, layer), read::add).stream()
                        .map(Fault::toString)
                        .reduce("", (a, b) -> a + b + "\n");
    }

    @Test
    void names_ids_and_values() throws Exception {
        assertThat(read(SAMPLE, "places")).isEmpty();

        assertThat(read).hasSize(3);
        assertThat(read.get(0).values().toString())
                .isEqualTo("{id=p1, name=Upper ledge, description=<b>steep</b>, kind=site}");
        assertThat(read.get(1).values().toString()).isEqualTo("{name=S2, id=S2}");
        assertThat(read.get(2).values().toString()).isEqualTo("{id=own, name=S3}");
        assertThat(read.get(0).line()).isEqualTo(6);
        assertThat(read.get(0).system()).isSameAs(Wgs84.SYSTEM);
    }

    @Test
    void an_altitude_counts_only_where_it_is_absolute() throws Exception {
        assertThat(read(SAMPLE, "places")).isEmpty();

        assertThat(read.get(0).outline())
                .containsExactly(new Corner(11.1, 46.2, OptionalDouble.of(300.5)));
        assertThat(read.get(1).outline())
                .containsExactly(new Corner(11.2, 46.3, OptionalDouble.empty()));
        assertThat(read.get(2).outline())
                .containsExactly(new Corner(11.2, 46.3, OptionalDouble.empty()));
    }

    @Test
    void parts_of_a_placemark_are_counted() throws Exception {
        assertThat(read(SAMPLE, "lines")).isEmpty();

        assertThat(read).extracting(StatedFeature::part).containsExactly(1, 2, 3, 4, 0);
        assertThat(read)
                .extracting(StatedFeature::shape)
                .containsExactly(Shape.LINE, Shape.AREA, Shape.LINE, Shape.LINE, Shape.NONE);
        assertThat(read)
                .extracting(StatedFeature::hasHoles)
                .containsExactly(false, true, false, false, false);
        assertThat(read.get(1).outline()).hasSize(3);
        assertThat(read.get(1).outline().get(2).elevationM()).hasValue(7);
        assertThat(read.get(2).outline()).hasSize(2);
        assertThat(read.get(3).outline()).hasSize(4);
    }

    @Test
    void a_folder_holds_what_its_folders_hold() throws Exception {
        assertThat(read(SAMPLE, "deep")).isEmpty();
        assertThat(read).hasSize(5);
        assertThat(read(SAMPLE, "")).isEmpty();
        assertThat(read).hasSize(8);
        assertThat(read(SAMPLE, "all")).isEmpty();
        assertThat(read).hasSize(8);
        assertThat(read(SAMPLE, "gone")).contains("is not there").contains("deep, lines, places");
    }

    @Test
    void kmz_is_unpacked() throws Exception {
        Path packed = folder.resolve("a.kmz");
        zip(packed, "images/x.png", "no picture", "doc.kml", SAMPLE);
        assertThat(read(packed, "", Optional.empty())).isEmpty();
        assertThat(read).hasSize(8);

        zip(packed, "x.txt", "nothing");
        assertThat(read(packed, "", Optional.empty())).contains("holds no KML");
        Files.writeString(packed, "no zip");
        assertThat(read(packed, "", Optional.empty())).contains("cannot be unpacked");
    }

    @Test
    void a_kmz_that_unpacks_to_more_than_it_may_is_refused() throws Exception {
        Path packed = folder.resolve("a.kmz");
        try (OutputStream out = Files.newOutputStream(packed);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("doc.kml"));
            zip.write("<kml xmlns=\"http://www.opengis.net/kml/2.2\">".getBytes(UTF_8));
            byte[] blank = ("<Style id=\"" + "x".repeat(8000) + "\"/>").repeat(131).getBytes(UTF_8);
            for (int i = 0; i < 70; i++) {
                zip.write(blank);
            }
        }
        assertThat(Files.size(packed)).isLessThan(1 << 20);

        assertThat(read(packed, "", Optional.empty())).contains("too large").contains("64 MB");
    }

    private static void zip(Path file, String... namesAndTexts) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(namesAndTexts[i + 1].getBytes(UTF_8));
            }
        }
    }

    @Test
    void what_cannot_be_meant_is_a_fault_of_its_placemark() throws Exception {
        assertThat(read(SAMPLE.replace("11.2,46.3,0", "11.2;46.3"), ""))
                .contains("a.kml:10: coordinates: is no position, found \"11.2;46.3\"");
        assertThat(read).hasSize(7);
        assertThat(read(SAMPLE.replace("11.2,46.3,0", "46.3,111.2"), ""))
                .contains("is no latitude");
        assertThat(read(SAMPLE.replace("11.2,46.3,0", "11.2,46.3 11,46"), ""))
                .contains("is no point");
        assertThat(read(SAMPLE.replace("11.2,46.3,0", "11,2,46,3"), "")).contains("is no position");
        assertThat(read(SAMPLE.replace("11.1,46.1,7 11,46,5", "11.1,46.1,7 11,46.5,5"), ""))
                .contains("is no closed ring");
        assertThat(
                        read(
                                SAMPLE.replace(
                                        "<LinearRing><coordinates>11,46 ",
                                        "<Model/><LinearRing><coordinates>11,46 "),
                                ""))
                .contains("has no outline");
    }

    @Test
    void nothing_is_fetched() throws Exception {
        String link =
                "<NetworkLink><Link><href>http://127.0.0.1:9/x.kml</href></Link></NetworkLink>";
        assertThat(read(SAMPLE.replace("<Style ", link + "<Style "), ""))
                .contains("is not followed");
        assertThat(read(SAMPLE.replace("<Style ", link + "<Style "), "places")).isEmpty();
    }

    @Test
    void another_system_than_wgs_84_contradicts_it() throws Exception {
        Path file = Files.writeString(folder.resolve("a.kml"), SAMPLE);
        Proj4jReferenceSystems systems = new Proj4jReferenceSystems();

        assertThat(read(file, "", Optional.of(systems.find("EPSG:4326").getValue()))).isEmpty();
        assertThat(read(file, "", Optional.of(systems.find("EPSG:32632").getValue())))
                .contains("contradicts the file");
        assertThat(read(file, "", Optional.of(systems.find("EPSG:4314").getValue())))
                .contains("contradicts the file");
    }

    @Test
    void hostile_xml_is_refused() throws Exception {
        String head = "<?xml version=\"1.0\"?>";
        String laughs =
                head
                        + "<!DOCTYPE kml [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><kml"
                        + " xmlns=\"http://www.opengis.net/kml/2.2\"><name>&b;</name></kml>";
        assertThat(read(laughs, "")).contains("has a document type");
        Path secret = Files.writeString(folder.resolve("secret.txt"), "11,46");
        String outside =
                head
                        + "<!DOCTYPE kml [<!ENTITY a SYSTEM \""
                        + secret.toUri()
                        + "\">]><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Placemark><Point><coordinates>"
                        + "&a;</coordinates></Point></Placemark></kml>";
        assertThat(read(outside, "")).contains("has a document type");
        assertThat(read).isEmpty();
        assertThat(read(SAMPLE.replace("S2", "&nbsp;"), "")).isNotEmpty();
        String deep = "<Folder>".repeat(100_000);
        assertThat(read(SAMPLE.replace("<Style ", deep + "<Style "), "")).contains("deep");
        assertThat(read(SAMPLE.substring(0, 900), "")).contains("no well-formed XML");
        assertThat(read("", "")).contains("no well-formed XML");
        assertThat(read("<gpx/>", "")).contains("is no KML");
        String huge = "<Placemark id=\"" + "x".repeat(17 << 20) + "\"/>";
        assertThat(read(SAMPLE.replace("<Style ", huge + "<Style "), "")).contains("too large");
    }
}
