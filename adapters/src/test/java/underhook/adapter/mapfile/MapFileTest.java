package underhook.adapter.mapfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.adapter.fixture.SmallDay;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

class MapFileTest {
    /**
     * Order of the children of each element.
     *
     * @source TOPOGRAFIX-GPX-1.1 gpxType, metadataType, copyrightType, wptType, rteType
     */
    private static final Map<String, List<String>> GPX_ORDER =
            Map.of(
                    "gpx",
                    List.of("metadata", "wpt", "rte", "trk", "extensions"),
                    "metadata",
                    List.of(
                            "name",
                            "desc",
                            "author",
                            "copyright",
                            "link",
                            "time",
                            "keywords",
                            "bounds",
                            "extensions"),
                    "copyright",
                    List.of("year", "license"),
                    "wpt",
                    List.of(
                            "ele",
                            "time",
                            "magvar",
                            "geoidheight",
                            "name",
                            "cmt",
                            "desc",
                            "src",
                            "link",
                            "sym",
                            "type"),
                    "rtept",
                    List.of("ele", "time", "magvar", "geoidheight", "name", "cmt", "desc"),
                    "rte",
                    List.of(
                            "name",
                            "cmt",
                            "desc",
                            "src",
                            "link",
                            "number",
                            "type",
                            "extensions",
                            "rtept"));

    /**
     * Order of the children of each element.
     *
     * @source OGC-07-147R2 AbstractFeatureGroup, LineStringType, PolygonType, PointType
     */
    private static final Map<String, List<String>> KML_ORDER =
            Map.of(
                    "kml",
                    List.of("Document"),
                    "Document",
                    List.of("name", "description", "Style", "Folder"),
                    "Folder",
                    List.of("name", "description", "Placemark"),
                    "Placemark",
                    List.of(
                            "name",
                            "description",
                            "styleUrl",
                            "ExtendedData",
                            "Point",
                            "LineString",
                            "Polygon"),
                    "LineString",
                    List.of("extrude", "tessellate", "altitudeMode", "coordinates"),
                    "Point",
                    List.of("extrude", "altitudeMode", "coordinates"),
                    "Polygon",
                    List.of("extrude", "tessellate", "altitudeMode", "outerBoundaryIs"));

    @TempDir Path folder;

    @Test
    void geojson_holds_one_of_each_with_closed_anticlockwise_rings() throws Exception {
        JsonNode root = JsonMapper.shared().readTree(text(new GeoJsonWriter(), ""));

        List<String> kinds = new ArrayList<>();
        root.get("features").forEach(f -> kinds.add(f.at("/properties/kind").stringValue()));
        assertThat(kinds)
                .containsExactly(
                        "place",
                        "place",
                        "leg",
                        "leg",
                        "drop",
                        "zone",
                        "zone",
                        "wire",
                        "road",
                        "trail",
                        "house",
                        "people",
                        "releaseArea");
        JsonNode leg = root.at("/features/2");
        assertThat(leg.at("/geometry/coordinates/1").toString()).isEqualTo("[11.105,46.205,400.1]");
        assertThat(leg.at("/properties/carrying").toString()).isEqualTo("[\"L1\"]");
        assertThat(leg.at("/properties/leastClearanceM").decimalValue()).hasToString("12.3");
        // The ring was given clockwise; RFC 7946 section 3.1.6 wants it the other way round,
        // closed.
        assertThat(root.at("/features/5/geometry/coordinates/0").toString())
                .isEqualTo("[[11.13,46.2],[11.13,46.21],[11.12,46.21],[11.12,46.2],[11.13,46.2]]");
        assertThat(root.get("caution").stringValue()).isEqualTo(Caution.TEXT);
        assertThat(root.has("licence")).isFalse();
    }

    @Test
    void a_round_zone_is_drawn_around_its_circle() throws Exception {
        JsonNode ring =
                JsonMapper.shared()
                        .readTree(text(new GeoJsonWriter(), ""))
                        .at("/features/6/geometry/coordinates/0");
        LocalFrame frame = LocalFrame.of(new GeoPoint(46.21, 11.11));

        for (int i = 0; i + 1 < ring.size(); i++) {
            PlanePoint a = plane(frame, ring.get(i));
            PlanePoint b = plane(frame, ring.get(i + 1));
            double middleM = Math.hypot((a.eastM() + b.eastM()) / 2, (a.northM() + b.northM()) / 2);
            // Radius 200 m; 7 decimals of a degree are up to 8 mm
            assertThat(middleM).isCloseTo(200, within(0.02));
        }
    }

    private static PlanePoint plane(LocalFrame frame, JsonNode position) {
        return frame.toPlane(
                new GeoPoint(position.get(1).doubleValue(), position.get(0).doubleValue()));
    }

    @Test
    void gpx_keeps_the_order_of_its_schema() throws Exception {
        Document gpx = xml(text(new GpxWriter(), "ODbL 1.0"));

        assertOrder(gpx.getDocumentElement(), GPX_ORDER);
        assertThat(gpx.getElementsByTagName("wpt").getLength()).isEqualTo(2);
        assertThat(gpx.getElementsByTagName("rte").getLength()).isEqualTo(2);
        assertThat(gpx.getElementsByTagName("rtept").getLength()).isEqualTo(6);
        Element waypoint = (Element) gpx.getElementsByTagName("wpt").item(0);
        assertThat(waypoint.getAttribute("lat")).isEqualTo("46.2");
        assertThat(waypoint.getElementsByTagName("ele").item(0).getTextContent()).isEqualTo("300");
        assertThat(gpx.getElementsByTagName("license").item(0).getTextContent())
                .isEqualTo("https://opendatacommons.org/licenses/odbl/1-0/");
        assertThat(waypoint.getElementsByTagName("cmt").item(0).getTextContent())
                .isEqualTo("a bell \uFFFD & <stones>");
    }

    @Test
    void kml_keeps_the_order_of_its_schema() throws Exception {
        Document kml = xml(text(new KmlWriter(), ""));

        assertOrder(kml.getDocumentElement(), KML_ORDER);
        assertThat(kml.getElementsByTagName("Folder").getLength()).isEqualTo(10);
        Element leg = (Element) kml.getElementsByTagName("LineString").item(0);
        assertThat(leg.getElementsByTagName("altitudeMode").item(0).getTextContent())
                .isEqualTo("absolute");
        assertThat(leg.getElementsByTagName("coordinates").item(0).getTextContent())
                .isEqualTo("11.1,46.2,325 11.105,46.205,400.1 11.11,46.21,325");
    }

    @Test
    void each_file_carries_caution_plan_attribution_and_licence() throws Exception {
        for (OutputWriter writer : List.of(new GeoJsonWriter(), new GpxWriter(), new KmlWriter())) {
            assertThat(text(writer, "ODbL 1.0"))
                    .as(writer.fileName())
                    .contains(Caution.TEXT)
                    .contains("plan-0001")
                    .contains("Mapping Agency of Nowhere (ODbL 1.0)")
                    .contains("itself under ODbL 1.0");
            assertThat(text(writer, "CC-BY 4.0")).doesNotContain("ODbL");
        }
    }

    private static void assertOrder(Element element, Map<String, List<String>> order) {
        List<String> allowed = order.getOrDefault(element.getTagName(), List.of());
        int last = 0;
        for (Node n = element.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element child) {
                if (!allowed.isEmpty()) {
                    int at = allowed.indexOf(child.getTagName());
                    assertThat(at)
                            .as(child.getTagName() + " in " + element.getTagName())
                            .isGreaterThanOrEqualTo(last);
                    last = at;
                }
                assertOrder(child, order);
            }
        }
    }

    private Document xml(String text) throws Exception {
        Path file = folder.resolve("x.xml");
        Files.writeString(file, text, StandardCharsets.UTF_8);
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(file.toFile());
    }

    private String text(OutputWriter writer, String licence) throws IOException {
        Path file = folder.resolve(writer.fileName());
        writer.write(SmallDay.outputUnder(licence), file);
        return Files.readString(file, StandardCharsets.UTF_8);
    }
}
