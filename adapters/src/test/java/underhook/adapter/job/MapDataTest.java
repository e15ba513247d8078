package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.geofile.KmlReader;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.JobReading;
import underhook.app.port.MapBox;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Confirmation;
import underhook.core.job.InputFile;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;

/** Map data that were made for somebody else. Everything is invented. */
class MapDataTest {
    @TempDir Path folder;

    private static SampleJob withRole(String role, String named) {
        return new SampleJob().with("job.yaml", role + ": " + role + ".geojson\n", named);
    }

    private static Job job(JobReading reading) {
        assertThat(reading.faults()).isEmpty();
        return reading.job().orElseThrow().job();
    }

    private static List<String> faults(JobReading reading) {
        return reading.faults().stream().map(fault -> fault.code() + " " + fault).toList();
    }

    // Shapes with values

    @Test
    void reads_places_whose_kind_holds_for_the_whole_file() {
        FakeFeatures drawn =
                new FakeFeatures(".gpx")
                        .add(Shape.POINT, List.of("id", "A", "sym", "Flag"), -11.996, 46.799)
                        .add(Shape.POINT, List.of("id", "S01", "name", "foot"), -11.995, 46.801)
                        .add(Shape.POINT, List.of("id", "S02"), -11.99, 46.802)
                        .add(Shape.POINT, List.of("id", "H"), -11.988, 46.803);
        SampleJob sample =
                new SampleJob()
                        .file("places.gpx", "")
                        .with(
                                "job.yaml",
                                "places: places.csv",
                                "places: {file: places.gpx, defaults: {kind: laydown}}");

        Job job = job(sample.readIn(folder, List.of(drawn), List.of()));

        assertThat(job.places())
                .extracting(place -> place.id().value() + "/" + place.name())
                .containsExactly("A/", "S01/foot", "S02/", "H/");
    }

    @Test
    void refuses_values_that_nobody_knows_unless_names_are_stated() {
        FakeFeatures table =
                new FakeFeatures(".gpkg")
                        .add(
                                Shape.LINE,
                                List.of("fid", "7", "id", "R1", "kind", "road", "owner", "x"),
                                -12,
                                46.8,
                                -12,
                                46.81);

        SampleJob sample = withRole("map", "map: roads.gpkg\n").file("roads.gpkg", "");

        assertThat(faults(sample.readIn(folder, List.of(table), List.of())))
                .singleElement()
                .asString()
                .startsWith("FIELD_UNKNOWN roads.gpkg:1: owner: is no known field");
    }

    @Test
    void reads_a_foreign_table_through_stated_names_units_and_values() {
        FakeFeatures table =
                new FakeFeatures(".gpkg")
                        .in(new SampleJob.Plane())
                        .add(
                                Shape.LINE,
                                List.of("line_no", "66-1", "h", "60", "kind", "aerial"),
                                0,
                                300,
                                900,
                                300)
                        .add(
                                Shape.LINE,
                                List.of("line_no", "66-2", "h", "", "kind", "aerial"),
                                0,
                                500,
                                900,
                                500);
        SampleJob sample =
                withRole(
                                "wires",
                                """
                                wires:
                                  file: lines.gpkg
                                  layer: overhead
                                  columns: {id: line_no, highest-ft: H, kind: ~}
                                  defaults: {highest-ft: 100, voltage-v: 66000}
                                """)
                        .file("lines.gpkg", "");

        Job job = job(sample.readIn(folder, List.of(table), List.of()));

        assertThat(table.layerAsked).isEqualTo("overhead");
        assertThat(job.wires()).extracting(Wire::id).containsExactly("66-1", "66-2");
        // One foot is 0.3048 m exactly (international foot).
        assertThat(job.wires().get(0).highestM()).isCloseTo(18.288, within(1e-9));
        assertThat(job.wires().get(1).highestM()).isCloseTo(30.48, within(1e-9));
        assertThat(job.wires()).extracting(Wire::voltageV).containsOnly(66_000.0);
        PlanePoint end =
                LocalFrame.of(new GeoPoint(46.8, -12))
                        .toPlane(job.wires().get(0).supports().get(1));
        assertThat(end.eastM()).isCloseTo(900, within(1e-6));
        assertThat(end.northM()).isCloseTo(300, within(1e-6));
    }

    @Test
    void reports_stated_names_that_the_file_does_not_have_or_nobody_knows() {
        SampleJob sample =
                withRole(
                                "map",
                                """
                                map:
                                  file: roads.csv
                                  columns: {id: nr, heigt-m: h, buffer-m: bufer}
                                  defaults: {knid: road, kind: road}
                                """)
                        .file("roads.csv", "nr,h,buffer,lon_deg,lat_deg\nR1,3,4,-12,46.8\n");

        assertThat(faults(sample.readIn(folder)))
                .satisfiesExactlyInAnyOrder(
                        text ->
                                assertThat(text)
                                        .startsWith("FIELD_UNKNOWN job.yaml:")
                                        .contains("heigt-m", "\"height-m\" is meant"),
                        text -> assertThat(text).contains("knid", "\"kind\" is meant"),
                        text ->
                                assertThat(text)
                                        .contains(
                                                "buffer-m",
                                                "names nothing that the file has",
                                                "\"buffer\" is meant"));
    }

    @Test
    void says_which_column_of_a_foreign_table_is_wrong() {
        SampleJob sample =
                withRole(
                                "map",
                                "map: {file: masts.csv, columns: {id: nr, height-m: tall}, defaults: {kind: mast}}\n")
                        .file("masts.csv", "nr,tall,lon_deg,lat_deg\nM1,very,-12,46.8\n");

        assertThat(faults(sample.readIn(folder)))
                .singleElement()
                .asString()
                .startsWith("FIELD_UNREADABLE masts.csv:2: height_m (tall): ");
    }

    @Test
    void reads_points_of_a_table_in_the_stated_system_or_in_degrees() {
        SampleJob sample =
                withRole("map", "map: [masts.csv, more.csv]\n")
                        .file("masts.csv", "id,kind,height_m,x_m,y_m\nM1,mast,30,100,200\n")
                        .file("more.csv", "id,kind,lon_deg,lat_deg\nM2,mast,-12,46.8\n")
                        .with(
                                "job.yaml",
                                "zones: zones.geojson",
                                "zones: {file: zones.csv, crs: \"EPSG:1\"}")
                        .file("zones.csv", "id,rule,radius_m,x_m,y_m\nZ1,no-fuel,50,400,300\n");

        Job job = job(sample.readIn(folder));

        assertThat(job.features()).extracting(MapFeature::id).containsExactly("M1", "M2");
        LocalFrame frame = LocalFrame.of(new GeoPoint(46.8, -12));
        PlanePoint mast = frame.toPlane(job.features().get(0).outline().get(0));
        assertThat(mast.northM()).isCloseTo(200, within(1e-6));
        assertThat(job.zones().get(0).radiusM()).isEqualTo(50);
    }

    @Test
    void takes_the_system_for_all_files_where_a_table_has_none_of_its_own() {
        FakeFeatures table =
                new FakeFeatures(".gpkg")
                        .add(Shape.POINT, List.of("id", "M1", "kind", "mast"), 100, 200);
        table.hasSystem = false;

        Job job =
                job(
                        withRole("map", "map: masts.gpkg\n")
                                .file("masts.gpkg", "")
                                .readIn(folder, List.of(table), List.of()));

        PlanePoint mast =
                LocalFrame.of(new GeoPoint(46.8, -12))
                        .toPlane(job.features().get(0).outline().get(0));
        assertThat(mast.eastM()).isCloseTo(100, within(1e-6));
    }

    @Test
    void reads_what_somebody_drew_on_a_screen() {
        SampleJob sample =
                withRole(
                                "map",
                                """
                                map:
                                  file: drawn.kml
                                  layer: Roads
                                  columns: {buffer-m: keep}
                                  defaults: {kind: road, buffer-m: 7}
                                """)
                        .file(
                                "drawn.kml",
                                """
                                <kml xmlns="http://www.opengis.net/kml/2.2"><Document>
                                <Folder><name>Roads</name>
                                <Placemark><name>R-1</name><description>gravel</description>
                                <ExtendedData><Data name="keep"><value>12</value></Data></ExtendedData>
                                <LineString><coordinates>-12,46.8 -11.99,46.8</coordinates></LineString>
                                </Placemark>
                                <Placemark><name>R-2</name>
                                <LineString><coordinates>-12,46.81 -11.99,46.81</coordinates></LineString>
                                </Placemark></Folder>
                                <Folder><name>Other</name><Placemark><name>X</name>
                                <Point><coordinates>-12,46.8</coordinates></Point></Placemark></Folder>
                                </Document></kml>
                                """);

        Job job = job(sample.readIn(folder, List.of(new KmlReader()), List.of()));

        assertThat(job.features())
                .extracting(one -> one.id() + " " + one.kind() + " " + one.bufferM())
                .containsExactly("R-1 ROAD 12.0", "R-2 ROAD 7.0");
    }

    @Test
    void refuses_a_layer_for_a_file_that_has_one_table() {
        assertThat(
                        faults(
                                withRole("map", "map: {file: map.geojson, layer: roads}\n")
                                        .readIn(folder)))
                .singleElement()
                .asString()
                .startsWith("FIELD_UNKNOWN map.geojson: layer: ");
    }

    // Maps whose words have a public meaning

    private static SampleJob withMap(String named) {
        return withRole("map", "map: " + named + "\n").file("region.map", "");
    }

    @Test
    void takes_of_a_public_map_what_touches_the_places_widened_by_5_km() {
        // The places lie between 46.7988 and 46.8027 N: 5 km are 0.0450 degrees of latitude.
        FakeMap map = new FakeMap().house("n1", 46.846, -11.99).house("n2", 46.850, -11.99);

        Job job = job(withMap("region.map").readIn(folder, List.of(), List.of(map)));

        assertThat(job.features()).extracting(MapFeature::id).containsExactly("n1");
        assertThat(job.features()).extracting(MapFeature::source).containsExactly("region.map");
        assertThat(map.asked).hasSize(1);
        MapBox box = map.asked.get(0);
        for (Place place : job.places()) {
            LocalFrame around = LocalFrame.of(place.position());
            for (double[] off : new double[][] {{4999, 0}, {-4999, 0}, {0, 4999}, {0, -4999}}) {
                assertThat(box.holds(around.toGeo(new PlanePoint(off[0], off[1])))).isTrue();
            }
        }
        assertThat(job.readingFindings())
                .filteredOn(finding -> finding.code() == FindingCode.MAP_PARTLY_READ)
                .extracting(Finding::value)
                .containsExactly("3");
    }

    /** Wires may stand in the map itself: then nobody is told that no file states any. */
    @Test
    void wires_that_a_map_brings_are_stated() {
        for (boolean brings : new boolean[] {true, false}) {
            FakeMap map = new FakeMap().house("n1", 46.801, -11.99);
            if (brings) {
                map.wire("w6", 46.804, -12, -11.99);
            }
            SampleJob sample = withMap("region.map").with("job.yaml", "wires: wires.geojson\n", "");

            Job job = job(sample.readIn(folder, List.of(), List.of(map)));

            assertThat(job.wires()).hasSize(brings ? 1 : 0);
            assertThat(job.readingFindings())
                    .filteredOn(finding -> finding.code() == FindingCode.FILE_ABSENT)
                    .extracting(Finding::subject)
                    .containsExactlyElementsOf(
                            brings ? List.of("canopy") : List.of("canopy", "wires"));
        }
    }

    @Test
    void keeps_our_ids_and_marks_a_foreign_one_only_where_it_clashes() {
        FakeMap map =
                new FakeMap()
                        .house("RV-9", 46.801, -11.99)
                        .house("A", 46.802, -11.99)
                        .house("w5", 46.803, -11.99)
                        .wire("w6", 46.804, -12, -11.99);
        SampleJob sample = withMap("[region.map, map.geojson]");

        Job job = job(sample.readIn(folder, List.of(), List.of(map)));

        List<String> own =
                job(new SampleJob().readIn(folder)).features().stream()
                        .map(MapFeature::id)
                        .toList();
        assertThat(job.features())
                .extracting(MapFeature::id)
                .startsWith(own.toArray(new String[0]))
                .contains("region:A", "w5");
        assertThat(job.wires()).extracting(Wire::id).contains("w6");
    }

    @Test
    void takes_once_what_two_extracts_have_alike() {
        FakeMap map = new FakeMap().house("n1", 46.801, -11.99).wire("w1", 46.804, -12, -11.99);
        int wires = job(new SampleJob().readIn(folder)).wires().size();

        Job job =
                job(
                        withMap("[region.map, other.map]")
                                .file("other.map", "")
                                .readIn(folder, List.of(), List.of(map)));

        assertThat(job.features()).hasSize(1);
        assertThat(job.wires()).hasSize(wires + 1);
    }

    @Test
    void refuses_names_for_a_map_whose_words_have_a_meaning() {
        assertThat(
                        faults(
                                withMap("{file: region.map, columns: {id: nr}}")
                                        .readIn(folder, List.of(), List.of(new FakeMap()))))
                .singleElement()
                .asString()
                .startsWith("FIELD_UNKNOWN job.yaml:");
    }

    @Test
    void holds_the_usual_licence_where_the_job_states_none() {
        List<FakeMap> maps = List.of(new FakeMap());

        Job silent = job(withMap("region.map").readIn(folder, List.of(), List.copyOf(maps)));
        Job stated =
                job(
                        withMap("{file: region.map, attribution: By the village}")
                                .readIn(folder, List.of(), List.copyOf(maps)));

        InputFile usual =
                new InputFile("region.map", "map", "ODbL 1.0", "© Somebody's contributors");
        assertThat(silent.inputs()).contains(usual);
        assertThat(stated.inputs())
                .contains(new InputFile("region.map", "map", "ODbL 1.0", "By the village"));
    }

    @Test
    void asks_twice_where_the_places_lie_astride_the_date_line() {
        List<MapBox> boxes =
                MapBox.around(List.of(new GeoPoint(10, 179.99), new GeoPoint(10, -179.99)), 5000);

        assertThat(boxes).hasSize(2);
        for (double lonDeg : new double[] {179.95, 179.999, -179.999, -179.95}) {
            assertThat(boxes).anyMatch(box -> box.holds(new GeoPoint(10, lonDeg)));
        }
        assertThat(boxes).noneMatch(box -> box.holds(new GeoPoint(10, 0)));
    }

    @Test
    void reads_20_000_features_in_two_seconds() {
        FakeMap map = new FakeMap();
        for (int i = 0; i < 20_000; i++) {
            map.house("n" + i, 46.77 + (i % 200) * 0.0003, -12.03 + Math.floorDiv(i, 200) * 0.0008);
        }
        SampleJob sample = withMap("region.map");
        sample.readIn(folder, List.of(), List.of(new FakeMap()));

        long startNanos = System.nanoTime();
        Job job = job(sample.readIn(folder, List.of(), List.of(map)));
        double seconds = (System.nanoTime() - startNanos) / 1e9;

        assertThat(job.features()).hasSize(20_000);
        assertThat(seconds).isLessThan(2);
    }

    // Register of hazards

    private static SampleJob withHazards(String rows) {
        return new SampleJob()
                .with("job.yaml", "map: map.geojson", "map: map.geojson\nhazards: hazards.csv")
                .file("hazards.csv", "subject,what,confirmed_by,confirmed_on,remarks\n" + rows);
    }

    @Test
    void reads_the_register_of_hazards() {
        Job job =
                job(
                        withHazards(
                                        """
                                        LL-1,as drawn,AB,2026-09-08,marker balls on
                                        LL-1,as drawn,AB,2026-08-01,
                                        A,no new wires,CD,2026-09-07,
                                        """)
                                .readIn(folder));

        assertThat(job.confirmations())
                .extracting(Confirmation::subject, Confirmation::what, one -> one.on().toString())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(
                                "LL-1", "as drawn; marker balls on", "2026-09-08"),
                        org.assertj.core.groups.Tuple.tuple("LL-1", "as drawn", "2026-08-01"),
                        org.assertj.core.groups.Tuple.tuple("A", "no new wires", "2026-09-07"));
        assertThat(job.findPlace(new PlaceId("A"))).isPresent();
    }

    @Test
    void refuses_a_hazard_that_nothing_has_and_a_look_after_the_day() {
        assertThat(
                        faults(
                                withHazards("LL-2,as drawn,AB,2026-09-08,\nLL-1,x,AB,2026-09-09,\n")
                                        .readIn(folder)))
                .satisfiesExactlyInAnyOrder(
                        text ->
                                assertThat(text)
                                        .startsWith(
                                                "ID_UNKNOWN hazards.csv:2: subject: is no known")
                                        .contains("\"LL-1\" is meant"),
                        text ->
                                assertThat(text)
                                        .startsWith(
                                                "FIELD_OUT_OF_RANGE hazards.csv:3: confirmed_on: is"
                                                        + " after the day of the job"));
    }

    @Test
    void wants_to_know_who_looked_and_when() {
        assertThat(faults(withHazards("LL-1,,,,\n").readIn(folder)))
                .extracting(text -> text.replaceAll(".*hazards.csv:[0-9]: ([a-z_]+):.*", "$1"))
                .containsExactlyInAnyOrder("what", "confirmed_by", "confirmed_on");
    }

    @Test
    void does_not_call_a_hazard_unknown_whose_file_cannot_be_read() {
        assertThat(
                        faults(
                                withHazards("LL-1,as drawn,AB,2026-09-08,\n")
                                        .file("wires.geojson", "{")
                                        .readIn(folder)))
                .noneMatch(text -> text.startsWith("ID_UNKNOWN"));
    }
}
