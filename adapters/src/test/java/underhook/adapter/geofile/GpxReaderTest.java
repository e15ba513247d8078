package underhook.adapter.geofile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.FeatureReader.StatedFeature;

/** Elements from the GPX 1.0 and 1.1 schemas; the places are invented. */
class GpxReaderTest {
    static final String SAMPLE =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1" xmlns:o="urn:own">
              <metadata><name>not a waypoint</name><bounds minlat="46" minlon="11" maxlat="47" maxlon="12"/></metadata>
              <wpt lat="46.2" lon="11.1"><ele>300.5</ele><time>2026-06-01T10:00:00Z</time><name>W1</name>
                <desc>ledge</desc><sym>Flag</sym><type>site</type><extensions><o:name>no</o:name></extensions></wpt>
              <wpt lat="-46.25" lon="-11.125"/>
              <rte><name>R1</name><rtept lat="46" lon="11"><name>no</name></rtept><rtept lat="46.1" lon="11.1"/></rte>
              <trk><name>T1</name>
                <trkseg><trkpt lat="46" lon="11"><ele>1</ele></trkpt><trkpt lat="46.1" lon="11.1"/></trkseg>
                <trkseg/>
                <trkseg><trkpt lat="46.2" lon="11.2"/><trkpt lat="46.3" lon="11.3"/><trkpt lat="46.4" lon="11.4"/></trkseg>
              </trk>
            </gpx>
            """;

    @TempDir Path folder;
    private final List<StatedFeature> read = new ArrayList<>();

    private String read(String text, String layer) throws IOException {
        read.clear();
        Path file = Files.writeString(folder.resolve("a.gpx"), text);
        return new GpxReader()
                .read(new Request(file, "a.gpx", Optional.empty(), layer), read::add).stream()
                        .map(Fault::toString)
                        .reduce("", (a, b) -> a + b + "\n");
    }

    @Test
    void both_versions_are_read_alike() throws Exception {
        for (String version : List.of("1/1", "1/0")) {
            assertThat(read(SAMPLE.replace("GPX/1/1", "GPX/" + version), "")).isEmpty();

            assertThat(read)
                    .extracting(StatedFeature::shape)
                    .containsExactly(Shape.POINT, Shape.POINT, Shape.LINE, Shape.LINE, Shape.LINE);
            assertThat(read).extracting(StatedFeature::part).containsExactly(0, 0, 0, 1, 2);
            assertThat(read).extracting(StatedFeature::line).containsExactly(4, 6, 7, 8, 8);
            assertThat(read.get(0).values().toString())
                    .isEqualTo(
                            "{ele=300.5, time=2026-06-01T10:00:00Z, name=W1, desc=ledge, sym=Flag,"
                                    + " type=site, id=W1}");
            assertThat(read.get(0).outline())
                    .containsExactly(new Corner(11.1, 46.2, OptionalDouble.of(300.5)));
            assertThat(read.get(1).outline())
                    .containsExactly(new Corner(-11.125, -46.25, OptionalDouble.empty()));
            assertThat(read.get(2).values().toString()).isEqualTo("{name=R1, id=R1}");
            assertThat(read.get(3).outline().get(0).elevationM()).hasValue(1);
            assertThat(read.get(4).outline()).hasSize(3);
        }
    }

    @Test
    void a_layer_is_one_of_three() throws Exception {
        assertThat(read(SAMPLE, "waypoints")).isEmpty();
        assertThat(read).hasSize(2);
        assertThat(read(SAMPLE, "routes")).isEmpty();
        assertThat(read).hasSize(1);
        assertThat(read(SAMPLE, "tracks")).isEmpty();
        assertThat(read).hasSize(2);
        assertThat(read(SAMPLE, "lines")).contains("waypoints, routes or tracks");
    }

    @Test
    void what_cannot_be_meant_is_a_fault() throws Exception {
        assertThat(read(SAMPLE.replace("lat=\"-46.25\"", "lat=\"-96.25\""), ""))
                .contains("a.gpx:6: coordinates: is no latitude");
        assertThat(read).hasSize(4);
        assertThat(read(SAMPLE.replace("lat=\"-46.25\"", ""), "")).contains("is no number");
        assertThat(read(SAMPLE.replace("<ele>300.5", "<ele>300,5"), ""))
                .contains("ele: is no number");
        assertThat(read(SAMPLE.replace("<rtept lat=\"46.1\" lon=\"11.1\"/>", ""), ""))
                .contains("is no line");
        assertThat(read(SAMPLE.replace("GPX/1/1", "GPX/2/0"), "")).contains("is no GPX 1.0 or 1.1");
        assertThat(read(SAMPLE.replace("</gpx>", ""), "")).contains("no well-formed XML");
    }
}
