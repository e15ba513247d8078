package underhook.adapter.geofile.aixm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Fault;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.MapFeature.Shape;
import underhook.core.job.Wire;
import underhook.core.job.WireKind;

/**
 * Element names, nesting, axis orders and the way heights are stated follow the AIXM 5.1.1 schema and
 * EUROCONTROL's guidelines and sample for obstacle data sets; places and names are invented. Where a figure is
 * from that sample, the test says so.
 */
class AixmReaderTest {
    private static final MapBox BOX = new MapBox(46, 11, 47, 12);

    @TempDir Path folder;

    static String message(String... structures) {
        StringBuilder text =
                new StringBuilder(
                        """
                        <?xml version="1.0" encoding="UTF-8"?>
                        <message:AIXMBasicMessage xmlns:message="http://www.aixm.aero/schema/5.1.1/message"
                          xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:aixm="http://www.aixm.aero/schema/5.1.1"
                          xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" gml:id="M1">
                        """);
        for (String each : structures) {
            text.append("<message:hasMember>").append(each).append("</message:hasMember>\n");
        }
        return text.append("</message:AIXMBasicMessage>\n").toString();
    }

    static String structure(String... slices) {
        return "<aixm:VerticalStructure gml:id=\"v\"><gml:identifier codeSpace=\"urn:uuid:\">u-1</gml:identifier>"
                + String.join("\n", slices)
                + "</aixm:VerticalStructure>";
    }

    static String slice(String inner) {
        return slice("BASELINE", "2025-11-01T00:00:00Z", 1, inner);
    }

    static String slice(String interpretation, String begin, int correction, String inner) {
        return """
        <aixm:timeSlice><aixm:VerticalStructureTimeSlice gml:id="t">
          <gml:validTime><gml:TimePeriod gml:id="p"><gml:beginPosition>%s</gml:beginPosition>
            <gml:endPosition indeterminatePosition="unknown"/></gml:TimePeriod></gml:validTime>
          <aixm:interpretation>%s</aixm:interpretation><aixm:sequenceNumber>1</aixm:sequenceNumber>
          <aixm:correctionNumber>%d</aixm:correctionNumber>
          <aixm:name>OB-1</aixm:name>
          %s
        </aixm:VerticalStructureTimeSlice></aixm:timeSlice>
        """
                .formatted(begin, interpretation, correction, inner);
    }

    static String part(String inner) {
        return "<aixm:part><aixm:VerticalStructurePart gml:id=\"x\">"
                + inner
                + "</aixm:VerticalStructurePart></aixm:part>";
    }

    static String point(String srsName, String pos, String more) {
        return "<aixm:horizontalProjection_location><aixm:ElevatedPoint srsName=\""
                + srsName
                + "\" gml:id=\"e\"><gml:pos>"
                + pos
                + "</gml:pos>"
                + more
                + "</aixm:ElevatedPoint></aixm:horizontalProjection_location>";
    }

    static String curve(String srsName, String posList) {
        return "<aixm:horizontalProjection_linearExtent><aixm:ElevatedCurve srsName=\""
                + srsName
                + "\" gml:id=\"c\"><gml:segments><gml:GeodesicString><gml:posList>"
                + posList
                + "</gml:posList></gml:GeodesicString></gml:segments></aixm:ElevatedCurve>"
                + "</aixm:horizontalProjection_linearExtent>";
    }

    static final String LAT_LON = "urn:ogc:def:crs:EPSG::4326";
    static final String LON_LAT = "urn:ogc:def:crs:OGC:1.3:CRS84";
    static final String NIL = "<aixm:verticalExtent xsi:nil=\"true\" nilReason=\"inapplicable\"/>";

    static String extent(String value, String uom) {
        return "<aixm:verticalExtent uom=\"" + uom + "\">" + value + "</aixm:verticalExtent>";
    }

    private Contents read(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("obstacles.xml"), text);
        return new AixmReader().read(file, "obstacles.xml", BOX);
    }

    private Contents readWhole(String text) throws IOException {
        Contents contents = read(text);
        assertThat(contents.faults()).isEmpty();
        return contents;
    }

    private static final String ANTENNA =
            "<aixm:type>ANTENNA</aixm:type><aixm:radius uom=\"M\">7</aixm:radius>"
                    + part(
                            extent("120", "M")
                                    + "<aixm:type>ANTENNA</aixm:type>"
                                    + point(
                                            LAT_LON,
                                            "46.25 11.5",
                                            "<aixm:horizontalAccuracy uom=\"M\">50</aixm:horizontalAccuracy>"
                                                    + "<aixm:elevation uom=\"M\">150</aixm:elevation>")
                                    + "<aixm:lighting><aixm:LightElement gml:id=\"l\"><aixm:location>"
                                    + "<aixm:ElevatedPoint srsName=\""
                                    + LAT_LON
                                    + "\" gml:id=\"q\"><gml:pos>46.9 11.9</gml:pos></aixm:ElevatedPoint>"
                                    + "</aixm:location></aixm:LightElement></aixm:lighting>");

    /** 120 m high, guys 7 m out, position within 50 m: the first obstacle of the sample. */
    @Test
    void a_mast_stands_where_it_stands_and_not_where_its_light_is() throws Exception {
        Contents contents = readWhole(message(structure(slice(ANTENNA))));

        assertThat(contents.wires()).isEmpty();
        assertThat(contents.features()).hasSize(1);
        MapFeature mast = contents.features().get(0);
        assertThat(mast.id()).isEqualTo("OB-1");
        assertThat(mast.kind()).isEqualTo(MapFeature.Kind.MAST);
        assertThat(mast.outline()).containsExactly(new GeoPoint(46.25, 11.5));
        assertThat(mast.heightM()).hasValue(120);
        assertThat(mast.heightEstimated()).isFalse();
        assertThat(mast.bufferM()).isEqualTo(57);
        assertThat(mast.crossing()).isEqualTo(CrossingRule.NEVER);
        assertThat(mast.source()).isEqualTo("obstacles.xml");
    }

    @Test
    void the_name_of_the_system_says_which_number_comes_first() throws Exception {
        for (String latLon :
                List.of(
                        LAT_LON,
                        "urn:ogc:def:crs:EPSG:9.9.1:4979",
                        "http://www.opengis.net/def/crs/EPSG/0/4258")) {
            String third = latLon.endsWith("4979") ? " 150" : "";
            assertThat(at(point(latLon, "46.25 11.5" + third, "")))
                    .isEqualTo(new GeoPoint(46.25, 11.5));
        }
        for (String lonLat :
                List.of(
                        LON_LAT,
                        "urn:ogc:def:crs:OGC::CRS84",
                        "http://www.opengis.net/def/crs/OGC/1.3/CRS84")) {
            assertThat(at(point(lonLat, "11.5 46.25", ""))).isEqualTo(new GeoPoint(46.25, 11.5));
        }
        for (String unknown : List.of("EPSG:4326", "urn:ogc:def:crs:EPSG::32632", "here")) {
            assertThat(
                            read(message(structure(slice(part(point(unknown, "46.25 11.5", ""))))))
                                    .faults())
                    .extracting(Fault::code)
                    .containsExactly(FindingCode.REFERENCE_SYSTEM_UNKNOWN);
        }
        assertThat(read(message(structure(slice(part(point("", "46.25 11.5", "")))))).faults())
                .extracting(Fault::code)
                .containsExactly(FindingCode.REFERENCE_SYSTEM_MISSING);
    }

    private GeoPoint at(String geometry) throws IOException {
        return readWhole(message(structure(slice(part(geometry)))))
                .features()
                .get(0)
                .outline()
                .get(0);
    }

    @Test
    void a_message_may_state_the_system_once() throws Exception {
        String bounds =
                "<gml:boundedBy><gml:Envelope srsName=\""
                        + LON_LAT
                        + "\"><gml:lowerCorner>11 46</gml:lowerCorner></gml:Envelope></gml:boundedBy>";
        String text = message(structure(slice(part(point("", "11.5 46.25", "")))));

        Contents contents =
                readWhole(text.replaceFirst("<message:hasMember>", bounds + "<message:hasMember>"));

        assertThat(contents.features().get(0).outline()).containsExactly(new GeoPoint(46.25, 11.5));
    }

    @Test
    void units_are_converted() throws Exception {
        // Exact by definition: 1 ft = 0.3048 m.
        assertThat(heightM(extent("100", "FT"))).isCloseTo(30.48, within(1e-9));
        assertThat(heightM(extent("0.05", "KM"))).isCloseTo(50, within(1e-9));
        assertThat(heightM(extent("12000", "CM"))).isCloseTo(120, within(1e-9));
        assertThat(read(message(structure(slice(part(extent("9", "ELL") + HERE))))).faults())
                .extracting(Fault::toString)
                .containsExactly(
                        "obstacles.xml:5: verticalExtent: has no unit that is known, found \"ELL\", uom M or"
                                + " FT");
        assertThat(
                        read(message(structure(slice(part(extent("x1", "M") + HERE)))))
                                .features()
                                .get(0)
                                .heightEstimated())
                .isTrue();
        assertThat(read(message(structure(slice(part(extent("1,5", "M") + HERE))))).faults())
                .hasSize(1);
        assertThat(read(message(structure(slice(part(extent("3", "KM") + HERE))))).faults())
                .hasSize(1);
    }

    private static final String HERE = point(LAT_LON, "46.25 11.5", "");

    private double heightM(String extent) throws IOException {
        return readWhole(message(structure(slice(part(extent + HERE)))))
                .features()
                .get(0)
                .heightM()
                .orElseThrow();
    }

    /**
     * Building of 110 m with its top at 168 m, antenna of 12 m on it with its top at 180 m: the seventh
     * obstacle of the sample. The ground is at 58 m, so the antenna's top is 122 m above it.
     */
    @Test
    void a_part_on_a_roof_counts_from_the_ground() throws Exception {
        String building =
                part(
                        extent("110", "M")
                                + "<aixm:type>BUILDING</aixm:type><aixm:designator>OB-1-1</aixm:designator>"
                                + "<aixm:horizontalProjection_surfaceExtent><aixm:ElevatedSurface srsName=\""
                                + LAT_LON
                                + "\" gml:id=\"s\"><gml:patches><gml:PolygonPatch><gml:exterior><gml:Ring>"
                                + "<gml:curveMember><aixm:Curve gml:id=\"k\"><gml:segments><gml:GeodesicString>"
                                + "<gml:posList>46.25 11.5 46.251 11.5 46.251 11.501 46.25 11.501 46.25"
                                + " 11.5</gml:posList></gml:GeodesicString></gml:segments></aixm:Curve>"
                                + "</gml:curveMember></gml:Ring></gml:exterior><gml:interior><gml:LinearRing>"
                                + "<gml:posList>46.2502 11.5002 46.2503 11.5002 46.2503 11.5003 46.2502"
                                + " 11.5002</gml:posList></gml:LinearRing></gml:interior></gml:PolygonPatch>"
                                + "</gml:patches><aixm:elevation uom=\"M\">168</aixm:elevation>"
                                + "</aixm:ElevatedSurface></aixm:horizontalProjection_surfaceExtent>");
        String antenna =
                part(
                        extent("12", "M")
                                + "<aixm:type>ANTENNA</aixm:type><aixm:designator>OB-1-2</aixm:designator>"
                                + point(
                                        LAT_LON,
                                        "46.2505 11.5005",
                                        "<aixm:elevation uom=\"M\">180.0</aixm:elevation>"));

        Contents contents =
                readWhole(
                        message(
                                structure(
                                        slice(
                                                "<aixm:type>BUILDING</aixm:type>"
                                                        + building
                                                        + antenna))));

        assertThat(contents.features())
                .extracting(MapFeature::id)
                .containsExactly("OB-1-1", "OB-1-2");
        MapFeature area = contents.features().get(0);
        assertThat(area.shape()).isEqualTo(Shape.AREA);
        assertThat(area.outline()).hasSize(4);
        assertThat(area.heightM()).hasValue(110);
        assertThat(contents.features().get(1).heightM()).hasValue(122);
        assertThat(contents.features()).noneMatch(MapFeature::heightEstimated);

        String bare = building + antenna.replaceAll("<aixm:elevation.*?</aixm:elevation>", "");
        Contents piled = readWhole(message(structure(slice(bare))));
        assertThat(piled.features().get(1).heightM()).hasValue(122);
        assertThat(piled.features().get(1).heightEstimated()).isTrue();
    }

    @Test
    void parts_that_stand_apart_are_not_piled_up() throws Exception {
        String parts =
                part(extent("40", "M") + point(LAT_LON, "46.25 11.5", ""))
                        + part(extent("30", "M") + point(LAT_LON, "46.252 11.5", ""));

        Contents contents = readWhole(message(structure(slice(parts))));

        // 0.002 degrees of latitude are some 220 m.
        assertThat(contents.features())
                .extracting(f -> f.heightM().orElse(0))
                .containsExactly(40.0, 30.0);
    }

    @Test
    void a_part_that_is_nowhere_is_counted_and_piled_on_the_others() throws Exception {
        String parts =
                part(extent("120", "M") + point(LAT_LON, "46.25 11.5", ""))
                        + part(extent("15", "M") + "<aixm:type>ANTENNA</aixm:type>");

        Contents contents = readWhole(message(structure(slice(parts))));

        assertThat(contents.features()).hasSize(1);
        assertThat(contents.features().get(0).heightM()).hasValue(135);
        assertThat(contents.features().get(0).heightEstimated()).isTrue();
        assertThat(contents.passedOver()).isEqualTo(1);
    }

    @Test
    void without_a_height_there_is_a_default_that_says_so() throws Exception {
        String top = "<aixm:elevation uom=\"M\">2438</aixm:elevation>";
        for (String type : List.of("ANTENNA", "BUILDING", "OTHER:THING", "")) {
            Contents contents =
                    readWhole(
                            message(
                                    structure(
                                            slice(
                                                    "<aixm:type>"
                                                            + type
                                                            + "</aixm:type>"
                                                            + part(
                                                                    NIL
                                                                            + point(
                                                                                    LAT_LON,
                                                                                    "46.25 11.5",
                                                                                    top))))));

            MapFeature feature = contents.features().get(0);
            assertThat(feature.heightM()).hasValue(type.equals("ANTENNA") ? 300 : 150);
            assertThat(feature.heightEstimated()).isTrue();
        }
    }

    /** Spans first and pylons after, as some registers are written. */
    @Test
    void a_power_line_is_as_high_as_what_holds_it() throws Exception {
        String line =
                "<aixm:type>TRANSMISSION_LINE</aixm:type>"
                        + part(
                                NIL
                                        + "<aixm:type>CATENARY</aixm:type>"
                                        + curve(LON_LAT, "11.5 46.25 11.51 46.26"))
                        + part(extent("42", "M") + point(LON_LAT, "11.5 46.25", ""))
                        + part(extent("38", "M") + point(LON_LAT, "11.51 46.26", ""));

        Contents contents = readWhole(message(structure(slice(line))));

        assertThat(contents.features()).hasSize(2);
        Wire wire = contents.wires().get(0);
        assertThat(wire.supports())
                .containsExactly(new GeoPoint(46.25, 11.5), new GeoPoint(46.26, 11.51));
        assertThat(wire.highestM()).isEqualTo(42);
        assertThat(wire.hanging().kind()).isEqualTo(WireKind.POWER);
        assertThat(wire.hanging().heightEstimated()).isFalse();
        assertThat(wire.live()).isTrue();
        assertThat(wire.registered()).isTrue();
        assertThat(wire.lateralM()).isEqualTo(50);
        assertThat(wire.crossing()).isEqualTo(CrossingRule.NEVER);
        assertThat(wire.id()).isEqualTo("OB-1");
        assertThat(contents.features().get(0).id()).isEqualTo("OB-1-2");
    }

    /** The height of a rope stands in a note: 280 m, the fourth obstacle of the sample. */
    @Test
    void a_cableway_has_its_height_in_a_note() throws Exception {
        String note =
                "<aixm:annotation><aixm:Note gml:id=\"n\"><aixm:propertyName>verticalExtent</aixm:propertyName>"
                        + "<aixm:purpose>REMARK</aixm:purpose><aixm:translatedNote><aixm:LinguisticNote gml:id=\"m\">"
                        + "<aixm:note lang=\"ENG\">Maximum height above ground level is 280 M</aixm:note>"
                        + "</aixm:LinguisticNote></aixm:translatedNote></aixm:Note></aixm:annotation>";
        String rope =
                NIL + "<aixm:type>CATENARY</aixm:type>" + curve(LAT_LON, "46.25 11.5 46.26 11.51");
        String station =
                part(NIL + "<aixm:type>BUILDING</aixm:type>" + point(LAT_LON, "46.25 11.5", ""));
        String type = "<aixm:type>CABLE_CAR</aixm:type><aixm:length uom=\"KM\">2.44</aixm:length>";

        Contents noted = readWhole(message(structure(slice(type + part(note + rope) + station))));
        Contents bare = readWhole(message(structure(slice(type + part(rope) + station))));

        assertThat(noted.wires().get(0).highestM()).isEqualTo(280);
        assertThat(noted.wires().get(0).hanging().heightEstimated()).isFalse();
        assertThat(noted.wires().get(0).hanging().kind()).isEqualTo(WireKind.CABLEWAY);
        assertThat(noted.wires().get(0).live()).isFalse();
        assertThat(noted.features().get(0).bufferM()).isEqualTo(50);
        assertThat(bare.wires().get(0).highestM()).isEqualTo(300);
        assertThat(bare.wires().get(0).hanging().heightEstimated()).isTrue();
    }

    @Test
    void a_line_that_is_not_known_to_stand_hangs() throws Exception {
        for (String type : List.of("", "OTHER:SLACKLINE", "CATENARY")) {
            Contents contents = readWhole(message(structure(slice(lineOf(type)))));

            assertThat(contents.wires()).hasSize(1);
            assertThat(contents.wires().get(0).hanging().kind()).isEqualTo(WireKind.OTHER);
            assertThat(contents.wires().get(0).live()).isTrue();
        }
        Contents fence = readWhole(message(structure(slice(lineOf("FENCE")))));
        assertThat(fence.wires()).isEmpty();
        assertThat(fence.features().get(0).shape()).isEqualTo(Shape.LINE);
        assertThat(fence.features().get(0).heightM()).hasValue(4);
    }

    private static String lineOf(String type) {
        return "<aixm:type>"
                + type
                + "</aixm:type>"
                + part(extent("4", "M") + curve(LAT_LON, "46.25 11.5 46.26 11.51"));
    }

    @Test
    void the_latest_slice_counts_and_later_changes_stand_beside_it() throws Exception {
        String[] heights = {"10", "20", "30", "40", "50"};
        String text =
                message(
                        structure(
                                slice("BASELINE", "2025-01-01T00:00:00Z", 1, mastOf(heights[1])),
                                slice("BASELINE", "2025-01-01T00:00:00Z", 0, mastOf(heights[0])),
                                slice("TEMPDELTA", "2024-12-01T00:00:00Z", 0, mastOf(heights[2])),
                                slice("TEMPDELTA", "2025-02-01T00:00:00Z", 0, mastOf(heights[3])),
                                slice(
                                        "TEMPDELTA",
                                        "2025-03-01T00:00:00Z",
                                        0,
                                        "<aixm:lighted>NO</aixm:lighted>")));

        assertThat(readWhole(text).features())
                .extracting(f -> f.heightM().orElse(0))
                .containsExactly(20.0, 40.0);
        assertThat(readWhole(text.replace("BASELINE", "PERMDELTA")).features()).hasSize(4);
    }

    private static String mastOf(String height) {
        return part(extent(height, "M") + HERE);
    }

    @Test
    void only_what_touches_the_box_is_kept_and_only_its_faults_count() throws Exception {
        String far = part(extent("9", "ELL") + point(LAT_LON, "40 11.5", ""));
        String across =
                "<aixm:type>TRANSMISSION_LINE</aixm:type>"
                        + part(extent("40", "M") + curve(LAT_LON, "45 11.5 48 11.6"));
        String nowhere = part(extent("9", "ELL"));

        Contents contents = readWhole(message(structure(slice(far)), structure(slice(across))));
        assertThat(contents.features()).isEmpty();
        assertThat(contents.wires()).hasSize(1);
        assertThat(contents.passedOver()).isZero();
        assertThat(read(message(structure(slice(nowhere)))).faults()).hasSize(1);
        assertThat(read(message(structure(slice(nowhere)))).passedOver()).isEqualTo(1);
    }

    @Test
    void a_circle_is_drawn_around() throws Exception {
        String circle =
                "<aixm:horizontalProjection_surfaceExtent><aixm:ElevatedSurface srsName=\""
                        + LAT_LON
                        + "\" gml:id=\"s\"><gml:patches><gml:PolygonPatch><gml:exterior><gml:Ring>"
                        + "<gml:curveMember><gml:Curve gml:id=\"k\"><gml:segments><gml:CircleByCenterPoint"
                        + " numArc=\"1\"><gml:pos>46.25 11.5</gml:pos><gml:radius uom=\"KM\">0.2</gml:radius>"
                        + "</gml:CircleByCenterPoint></gml:segments></gml:Curve></gml:curveMember></gml:Ring>"
                        + "</gml:exterior></gml:PolygonPatch></gml:patches></aixm:ElevatedSurface>"
                        + "</aixm:horizontalProjection_surfaceExtent>";

        MapFeature area =
                readWhole(message(structure(slice(part(extent("9", "M") + circle)))))
                        .features()
                        .get(0);

        LocalFrame frame = LocalFrame.of(new GeoPoint(46.25, 11.5));
        assertThat(area.shape()).isEqualTo(Shape.AREA);
        for (int i = 0; i < area.outline().size(); i++) {
            PlanePoint one = frame.toPlane(area.outline().get(i));
            PlanePoint next = frame.toPlane(area.outline().get((i + 1) % area.outline().size()));
            double middleM =
                    Math.hypot(one.eastM() + next.eastM(), one.northM() + next.northM()) / 2;
            assertThat(middleM).isCloseTo(200, within(1e-3));
        }
        Contents curved =
                read(
                        message(
                                structure(
                                        slice(
                                                part(
                                                        extent("9", "M")
                                                                + circle.replace(
                                                                        "CircleByCenterPoint",
                                                                        "Arc"))))));
        assertThat(curved.faults()).hasSize(1);
        assertThat(curved.faults().get(0).toString()).contains("is a curve that is not read");
    }

    @Test
    void ids_are_words_and_no_two_are_alike() throws Exception {
        String name =
                "<aixm:designator>Tower &amp; mast, north of the old upper lake house</aixm:designator>";
        String one = structure(slice(part(name + extent("9", "M") + HERE)));

        Contents contents = readWhole(message(one, one, one));

        assertThat(contents.features())
                .extracting(MapFeature::id)
                .containsExactly(
                        "Tower-mast-north-of-the-old-upper-lake-h",
                        "Tower-mast-north-of-the-old-upper-lake-2",
                        "Tower-mast-north-of-the-old-upper-lake-3");
    }

    @Test
    void other_files_are_refused() throws Exception {
        assertThat(read("<kml/>").faults().get(0).toString()).contains("is no AIXM message");
        assertThat(
                        read(message(structure(slice(ANTENNA)))
                                        .replace("schema/5.1.1/message", "schema/4.5"))
                                .faults())
                .hasSize(1);
        assertThat(
                        read(message(structure(slice(ANTENNA))).substring(0, 900))
                                .faults()
                                .get(0)
                                .toString())
                .contains("no well-formed XML");
        assertThat(
                        read(message(structure(slice(ANTENNA)))
                                        .replace(
                                                "?>",
                                                "?><!DOCTYPE x SYSTEM \"http://127.0.0.1:9/\">"))
                                .faults()
                                .get(0)
                                .toString())
                .contains("has a document type");
        assertThat(read(message()).faults()).isEmpty();
        assertThat(new AixmReader().reads("A.XML")).isTrue();
        assertThat(new AixmReader().reads("a.aixm")).isTrue();
        assertThat(new AixmReader().reads("a.gml")).isFalse();
    }
}
