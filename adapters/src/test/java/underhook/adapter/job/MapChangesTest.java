package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.MapChanges;
import underhook.app.port.Fault;

/** Invented. One degree of latitude is 111.2 km here, so 0.00001 degrees are 1.1 m. */
class MapChangesTest {
    @TempDir Path folder;
    @TempDir Path elsewhere;

    private MapChanges.Result compare(
            SampleJob sample, FakeMap map, String newer, String replaces) {
        sample.writeTo(folder);
        return new MapChanges(SampleJob.reader(List.of(), List.of(map)))
                .compare(folder, elsewhere.resolve(newer), replaces);
    }

    private static List<String> said(MapChanges.Result result) {
        assertThat(result.faults()).isEmpty();
        return result.changes().stream()
                .map(
                        change ->
                                change.what()
                                        + " "
                                        + change.kind()
                                        + " "
                                        + change.id()
                                        + " "
                                        + change.detail())
                .toList();
    }

    private static List<String> faults(MapChanges.Result result) {
        return result.faults().stream().map(Fault::toString).toList();
    }

    private static SampleJob withMap(String named) {
        return new SampleJob()
                .with("job.yaml", "map: map.geojson", "map: " + named)
                .file("old.map", "");
    }

    @Test
    void lists_what_appeared_moved_and_vanished_nearest_first() throws IOException {
        Files.createFile(elsewhere.resolve("new.map"));
        FakeMap map =
                new FakeMap()
                        .house("n1", 46.8010, -11.99)
                        .house("n2", 46.8030, -11.99)
                        .house("n3", 46.8040, -11.99)
                        .wire("w1", 46.81, -12, -11.99);
        map.edition(
                "new.map",
                new FakeMap()
                        .house("n1", 46.8010, -11.99)
                        .house("n2", 46.8031, -11.99)
                        .house("n9", 46.8100, -11.99)
                        .wire("w1", 46.81, -12, -11.99));

        MapChanges.Result result = compare(withMap("old.map"), map, "new.map", "");

        assertThat(said(result))
                .containsExactly(
                        "MOVED house n2 moved by 11 m", "VANISHED house n3 ", "APPEARED house n9 ");
        assertThat(result.replaced()).isEqualTo("old.map");
        assertThat(result.compared()).isEqualTo(4);
        // S02 lies 260 m north of 46.8 and n3 445 m; both are 763 m and 820 m east of 12 W.
        assertThat(result.changes().get(1).place()).isEqualTo("S02");
        assertThat(result.changes().get(1).distanceM()).isBetween(180.0, 200.0);
    }

    @Test
    void a_thing_under_another_id_within_5_m_is_the_same_and_one_within_a_metre_has_not_moved()
            throws IOException {
        Files.createFile(elsewhere.resolve("new.map"));
        FakeMap map = new FakeMap().house("n1", 46.80100, -11.99).house("n2", 46.80300, -11.99);
        map.edition(
                "new.map",
                new FakeMap().house("m1", 46.80100, -11.99).house("m2", 46.80303, -11.99));

        assertThat(said(compare(withMap("old.map"), map, "new.map", "")))
                .containsExactly("MOVED house m2 moved by 3 m");
    }

    @Test
    void says_which_value_of_a_wire_changed() throws IOException {
        SampleJob sample = new SampleJob();
        Files.writeString(
                elsewhere.resolve("wires.geojson"),
                sample.files
                        .getOrDefault("wires.geojson", "")
                        .replace("\"highest_m\": 18", "\"live\": false, \"highest_m\": 21.5"));

        MapChanges.Result result = compare(sample, new FakeMap(), "wires.geojson", "");

        assertThat(said(result))
                .containsExactly(
                        "CHANGED wire LL-1 height 18 m before, 21.5 m now; live yes before, no now");
    }

    @Test
    void nothing_changed_when_nothing_did() throws IOException {
        SampleJob sample = new SampleJob();
        Files.writeString(
                elsewhere.resolve("survey.geojson"), sample.files.getOrDefault("map.geojson", ""));

        MapChanges.Result result = compare(sample, new FakeMap(), "survey.geojson", "map.geojson");

        assertThat(said(result)).isEmpty();
        assertThat(result.compared()).isEqualTo(1);
    }

    @Test
    void refuses_a_file_that_may_stand_for_several_or_for_none() throws IOException {
        Files.writeString(elsewhere.resolve("survey.geojson"), "{}");
        SampleJob sample = new SampleJob();

        assertThat(faults(compare(sample, new FakeMap(), "survey.geojson", "")))
                .singleElement()
                .asString()
                .contains("may stand for 2 files of the job", "map.geojson, wires.geojson");
        assertThat(faults(compare(sample, new FakeMap(), "survey.geojson", "mpa.geojson")))
                .singleElement()
                .asString()
                .contains("stands for no map file", "\"map.geojson\" is meant");
        assertThat(faults(compare(sample, new FakeMap(), "absent.geojson", "")))
                .singleElement()
                .asString()
                .contains("is no file");
    }

    @Test
    void reports_the_faults_of_the_newer_file() throws IOException {
        Files.writeString(elsewhere.resolve("map.geojson"), "{");

        assertThat(compare(new SampleJob(), new FakeMap(), "map.geojson", "").faults())
                .isNotEmpty();
    }
}
