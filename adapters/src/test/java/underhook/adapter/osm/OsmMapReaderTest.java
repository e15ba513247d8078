package underhook.adapter.osm;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.adapter.osm.OsmText.ids;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.MapBox;
import underhook.app.port.MapReader.Contents;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.MapFeature.Shape;
import underhook.core.job.Wire;

class OsmMapReaderTest {
    @TempDir Path folder;

    private static List<String> ids2(Contents contents) {
        return contents.features().stream().map(MapFeature::id).toList();
    }

    @Test
    void knows_its_files_by_their_names() {
        OsmMapReader reader = new OsmMapReader();

        assertThat(List.of("a.osm.pbf", "A.PBF", "a.osm", "a.osm.xml", "a.osm.gz", "a.osm.bz2"))
                .allMatch(reader::reads);
        assertThat(List.of("a.xml", "a.gz", "a.osc", "osm", "a.osm.zip")).noneMatch(reader::reads);
        assertThat(reader.usualLicence()).isEqualTo("ODbL 1.0");
        assertThat(reader.usualAttribution()).contains("OpenStreetMap contributors");
    }

    @Test
    void a_line_that_passes_through_with_all_its_nodes_outside_is_not_lost() throws Exception {
        Contents contents =
                new OsmText()
                        .node(1, 46.805, 11.5)
                        .node(2, 46.805, 12.5)
                        .node(3, 46.85, 11.99)
                        .node(4, 46.805, 11.99)
                        .way(1, ids(1, 2), "power=line", "voltage=110000")
                        .way(2, ids(3, 4), "highway=path")
                        .read(folder);

        assertThat(contents.features()).isEmpty();
        Wire wire = contents.wires().get(0);
        assertThat(wire.id()).isEqualTo("w1");
        assertThat(wire.supports())
                .containsExactly(new GeoPoint(46.805, 11.5), new GeoPoint(46.805, 12.5));
        assertThat(wire.voltageV()).isEqualTo(110_000);
        assertThat(wire.live()).isTrue();
        assertThat(wire.crossing()).isEqualTo(CrossingRule.NEVER);
        assertThat(wire.hanging().heightEstimated()).isTrue();
        assertThat(wire.hanging().supportTopsM()).isEmpty();
        assertThat(wire.source()).isEqualTo("map.osm");
    }

    @Test
    void a_long_line_is_cut_to_the_pieces_that_touch_the_box() throws Exception {
        Contents contents =
                new OsmText()
                        .node(1, 46.805, 11.8)
                        .node(2, 46.805, 11.9)
                        .node(3, 46.805, 12.005)
                        .node(4, 46.9, 12.005)
                        .node(5, 46.9, 12.007)
                        .node(6, 46.805, 12.007)
                        .way(7, ids(1, 2, 3, 4, 5, 6), "highway=track")
                        .read(folder);

        assertThat(ids2(contents)).containsExactly("w7-1", "w7-2");
        assertThat(contents.features().get(0).outline())
                .containsExactly(
                        new GeoPoint(46.805, 11.9),
                        new GeoPoint(46.805, 12.005),
                        new GeoPoint(46.9, 12.005));
        assertThat(contents.features().get(1).outline()).hasSize(2);
    }

    @Test
    void an_area_around_the_whole_box_is_taken_from_a_way_and_from_a_relation() throws Exception {
        OsmText text =
                new OsmText()
                        .node(1, 46.7, 11.9)
                        .node(2, 46.7, 12.1)
                        .node(3, 46.9, 12.1)
                        .node(4, 46.9, 11.9)
                        .way(1, ids(1, 2, 3, 4, 1), "landuse=forest")
                        .way(2, ids(1, 2, 3))
                        .way(3, ids(1, 4, 3))
                        .relation(9, "outer:2 outer:3", "type=boundary", "boundary=national_park");

        Contents contents = text.read(folder);

        assertThat(ids2(contents)).containsExactly("w1", "r9-1");
        assertThat(contents.features()).allMatch(f -> f.shape() == Shape.AREA);
        assertThat(contents.features()).allMatch(f -> f.outline().size() == 4);
        assertThat(contents.features().get(0).heightM()).hasValue(50);
        assertThat(contents.features().get(0).heightEstimated()).isTrue();
        assertThat(contents.passedOver()).isZero();
    }

    @Test
    void inner_rings_are_not_looked_at_and_each_outer_ring_counts() throws Exception {
        Contents contents =
                square(square(square(new OsmText(), 10, 46.801), 20, 46.802), 30, 46.805)
                        .way(1, ids(10, 11, 12, 13, 10))
                        .way(2, ids(20, 21, 22, 23, 20))
                        .way(3, ids(30, 31, 32, 33, 30))
                        .relation(5, "outer:1 inner:2 outer:3", "type=multipolygon", "building=yes")
                        .read(folder);

        assertThat(ids2(contents)).containsExactly("r5-1", "r5-2");
        assertThat(contents.features()).allMatch(f -> f.kind() == MapFeature.Kind.HOUSE);
    }

    private static OsmText square(OsmText text, long first, double lat) {
        return text.node(first, lat, 12.002)
                .node(first + 1, lat, 12.003)
                .node(first + 2, lat + 0.0005, 12.003)
                .node(first + 3, lat + 0.0005, 12.002);
    }

    @Test
    void what_was_cut_off_at_the_edge_of_the_file_keeps_its_known_pieces() throws Exception {
        Contents contents =
                square(new OsmText(), 10, 46.801)
                        .way(1, ids(10, 11, 99, 12, 13, 10), "natural=wood")
                        .way(2, ids(10, 11, 98, 97), "highway=path")
                        .way(3, ids(96, 95), "highway=path")
                        .way(4, ids(10), "highway=path")
                        .way(5, ids(10, 11, 12))
                        .relation(
                                6,
                                "outer:5 outer:77",
                                "type=multipolygon",
                                "leisure=nature_reserve")
                        .read(folder);

        assertThat(ids2(contents)).containsExactly("w1-1", "w1-2", "w2", "r6-1");
        assertThat(contents.features()).allMatch(f -> f.shape() == Shape.LINE);
        assertThat(contents.passedOver()).isEqualTo(3);
        assertThat(contents.faults()).isEmpty();
    }

    @Test
    void a_tower_on_a_wire_gives_it_its_height_and_one_alone_is_a_mast() throws Exception {
        Contents contents =
                new OsmText()
                        .node(1, 46.802, 12.002, "power=tower", "height=31")
                        .node(2, 46.804, 12.004, "power=tower")
                        .node(3, 46.806, 12.006, "power=tower", "height=28")
                        .node(4, 46.808, 12.008, "power=tower")
                        .way(1, ids(1, 2), "power=line", "voltage=110000")
                        .way(2, ids(1, 3), "power=line", "voltage=110000")
                        .read(folder);

        Wire half = contents.wires().get(0);
        assertThat(half.hanging().supportTopsM()).containsExactly(31.0, 60.0);
        assertThat(half.highestM()).isEqualTo(60);
        assertThat(half.hanging().heightEstimated()).isTrue();
        Wire whole = contents.wires().get(1);
        assertThat(whole.hanging().supportTopsM()).containsExactly(31.0, 28.0);
        assertThat(whole.highestM()).isEqualTo(31);
        assertThat(whole.hanging().heightEstimated()).isFalse();
        assertThat(ids2(contents)).containsExactly("n4");
        assertThat(contents.features().get(0).heightM()).hasValue(90);
    }

    @Test
    void what_means_two_things_is_two_things_with_two_ids() throws Exception {
        Contents contents =
                square(new OsmText(), 10, 46.801)
                        .node(1, 46.805, 12.001)
                        .node(2, 46.805, 12.009)
                        .way(1, ids(10, 11, 12, 13, 10), "building=yes", "amenity=school")
                        .way(2, ids(1, 2), "railway=rail", "electrified=contact_line")
                        .read(folder);

        assertThat(contents.features()).extracting(MapFeature::id).contains("w1", "w1.2");
        assertThat(contents.wires()).hasSize(1);
        assertThat(contents.wires().get(0).id()).isEqualTo("w2");
        assertThat(ids2(contents)).contains("w2.2");
    }

    @Test
    void a_round_path_is_a_line_and_a_square_is_an_area() throws Exception {
        Contents contents =
                square(new OsmText(), 10, 46.801)
                        .way(1, ids(10, 11, 12, 13, 10), "highway=path")
                        .way(2, ids(10, 11, 12, 13, 10), "highway=pedestrian", "area=yes")
                        .read(folder);

        assertThat(contents.features())
                .extracting(MapFeature::shape)
                .containsExactly(Shape.LINE, Shape.AREA);
        assertThat(contents.features()).allMatch(f -> f.crossing() == CrossingRule.GUARDED);
    }

    @Test
    void the_order_in_the_file_does_not_matter() throws Exception {
        Contents contents =
                new OsmText()
                        .relation(9, "outer:2 outer:3", "type=multipolygon", "natural=water")
                        .way(2, ids(1, 2, 3))
                        .way(3, ids(3, 4, 1))
                        .way(4, ids(5, 6), "aerialway=goods")
                        .node(1, 46.7, 11.9)
                        .node(2, 46.7, 12.1)
                        .node(3, 46.9, 12.1)
                        .node(4, 46.9, 11.9)
                        .node(5, 46.8, 11.9)
                        .node(6, 46.81, 12.1)
                        .read(folder);

        assertThat(ids2(contents)).containsExactly("r9-1");
        assertThat(contents.wires()).extracting(Wire::id).containsExactly("w4");
    }

    @Test
    void what_does_not_matter_is_counted() throws Exception {
        Contents contents =
                new OsmText()
                        .node(1, 46.805, 12.005, "amenity=bench")
                        .node(2, 46.806, 12.005)
                        .node(3, 46.9, 12.005, "amenity=bench")
                        .way(1, ids(1, 2), "barrier=fence")
                        .way(2, ids(1, 3))
                        .read(folder);

        assertThat(contents.passedOver()).isEqualTo(2);
        assertThat(contents.features()).isEmpty();
    }

    @Test
    void a_long_outline_is_cut_to_the_box() throws Exception {
        OsmText text = new OsmText();
        long[] ring = new long[601];
        for (int i = 0; i < 600; i++) {
            double turn = 2 * Math.PI * i / 600;
            // Through the middle of the box, far beyond it to the east.
            text.node(i + 1, 46.805 + 0.3 * Math.sin(turn), 12.305 + 0.3 * Math.cos(turn));
            ring[i] = i + 1L;
        }
        ring[600] = 1;
        Contents contents = text.way(1, ring, "landuse=forest").read(folder);

        MapFeature forest = contents.features().get(0);
        assertThat(forest.shape()).isEqualTo(Shape.AREA);
        assertThat(forest.outline()).hasSizeLessThan(20).allMatch(OsmText.BOX::holds);
    }

    @Test
    void across_the_180th_meridian_a_line_is_found_from_either_side() throws Exception {
        Path file =
                new OsmText()
                        .node(1, -16.5, 179.7)
                        .node(2, -16.5, -179.9)
                        .way(1, ids(1, 2), "power=line")
                        .write(folder);

        for (MapBox box :
                List.of(
                        new MapBox(-16.6, 179.8, -16.4, 179.9),
                        new MapBox(-16.6, -180, -16.4, -179.95),
                        MapBox.EARTH)) {
            assertThat(new OsmMapReader().read(file, "map.osm", box).wires()).hasSize(1);
        }
        MapBox elsewhere = new MapBox(-16.6, 12, -16.4, 13);
        assertThat(new OsmMapReader().read(file, "map.osm", elsewhere).wires()).isEmpty();
    }

    @Test
    void an_editor_s_deleted_things_are_not_there() throws Exception {
        String text =
                new OsmText()
                        .node(1, 46.805, 12.001)
                        .node(2, 46.805, 12.009)
                        .way(-1, ids(1, 2), "highway=path")
                        .way(5, ids(1, 2), "power=line")
                        .toString()
                        .replace("<way id=\"5\"", "<way id=\"5\" action=\"delete\"");
        Path file = Files.writeString(folder.resolve("map.osm"), text);

        Contents contents = new OsmMapReader().read(file, "map.osm", OsmText.BOX);

        assertThat(contents.wires()).isEmpty();
        assertThat(ids2(contents)).containsExactly("w-1");
    }
}
