package underhook.adapter.osm;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.compress.compressors.bzip2.BZip2CompressorOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import underhook.app.port.Fault;
import underhook.app.port.MapReader.Contents;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/** Files that lie about themselves. Layout and limits: OSM-PBF, from memory, checked with osmium. */
class OsmFaultsTest {
    private static final String FEATURE = "OsmSchema-V0.6";

    @TempDir Path folder;

    private Contents read(String name, byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve(name), bytes);
        return new OsmMapReader().read(file, name, OsmText.BOX);
    }

    private Fault fault(String name, byte[] bytes) throws IOException {
        Contents contents = read(name, bytes);
        assertThat(contents.faults()).hasSize(1);
        assertThat(contents.features()).isEmpty();
        return contents.faults().get(0);
    }

    private Fault pbf(PbfBytes bytes) throws IOException {
        return fault("a.pbf", bytes.toBytes());
    }

    private static PbfBytes start() {
        return new PbfBytes().block("OSMHeader", PbfBytes.header(FEATURE, "DenseNodes"));
    }

    @Test
    void offsets_and_granularity_count_and_unknown_blocks_are_passed_over() throws Exception {
        byte[] bytes =
                start().block("Elsewhere", PbfBytes.plain(new byte[9]))
                        .block("OSMData", PbfBytes.plain(PbfBytes.path()))
                        .toBytes();

        Contents contents = read("a.pbf", bytes);

        assertThat(contents.faults()).isEmpty();
        assertThat(contents.features().get(0).outline())
                .containsExactly(new GeoPoint(46.805, 12.002), new GeoPoint(46.806, 12.003));
    }

    @Test
    void a_pbf_file_cut_anywhere_is_a_fault_or_ends_at_a_block() throws Exception {
        byte[] whole = start().block("OSMData", PbfBytes.deflated(PbfBytes.path())).toBytes();
        int header = start().toBytes().length;

        for (int length = 0; length < whole.length; length++) {
            Fault fault = fault("a.pbf", Arrays.copyOf(whole, length));
            assertThat(fault.code()).isEqualTo(FindingCode.FILE_UNREADABLE);
            if (length == header) {
                assertThat(fault.what()).contains("no positions");
            }
        }
    }

    @Test
    void sizes_beyond_the_format_are_refused_before_anything_is_allocated() throws Exception {
        byte[] huge = new PbfBytes().text(1, "OSMData").number(3, 1L << 40).toBytes();
        byte[] length = {0, 0, 0, (byte) huge.length};

        assertThat(pbf(start().raw(length).raw(huge)).code()).isEqualTo(FindingCode.TOO_LARGE);
        assertThat(fault("a.pbf", new byte[] {0x7f, -1, -1, -1, 0, 0}).what())
                .contains("no PBF file");
        assertThat(pbf(start().block("OSMData", PbfBytes.zlibBlob(new byte[9], 1L << 30))).code())
                .isEqualTo(FindingCode.TOO_LARGE);
        assertThat(pbf(start().block("OSMData", PbfBytes.zlibBlob(new byte[9], 30_000_000))).code())
                .isEqualTo(FindingCode.FILE_UNREADABLE);
    }

    @Test
    void a_blob_of_another_length_than_it_says_is_damaged() throws Exception {
        byte[] path = PbfBytes.path();
        for (long claimed : new long[] {0, path.length - 1, path.length + 1}) {
            assertThat(pbf(start().block("OSMData", PbfBytes.zlibBlob(path, claimed))).code())
                    .isEqualTo(FindingCode.FILE_UNREADABLE);
        }
    }

    @Test
    void a_bomb_of_many_blobs_is_stopped() throws Exception {
        PbfBytes bomb = start();
        byte[] blob = PbfBytes.deflated(new PbfBytes().part(99, new byte[20_000_000]).toBytes());
        for (int i = 0; i < 60; i++) {
            bomb.block("OSMData", blob);
        }

        assertThat(pbf(bomb).code()).isEqualTo(FindingCode.TOO_LARGE);
    }

    @Test
    void other_packings_and_unknown_features_are_named() throws Exception {
        byte[] zstd = new PbfBytes().number(2, 10).part(7, new byte[10]).toBytes();
        byte[] lz4 = new PbfBytes().number(2, 10).part(6, new byte[] {-1, 0, 3, 9}).toBytes();

        assertThat(pbf(start().block("OSMData", zstd)).toString()).contains("zstd");
        assertThat(pbf(start().block("OSMData", lz4)).toString()).contains("damaged");
        Fault history =
                pbf(
                        new PbfBytes()
                                .block(
                                        "OSMHeader",
                                        PbfBytes.header(FEATURE, "HistoricalInformation")));
        assertThat(history.code()).isEqualTo(FindingCode.VERSION_UNKNOWN);
        assertThat(history.value()).isEqualTo("HistoricalInformation");
    }

    @Test
    void numbers_that_point_nowhere_are_damage() throws Exception {
        byte[] node = new PbfBytes().number(1, 2).number(8, 1L << 62).number(9, 2).toBytes();
        byte[] way = new PbfBytes().number(1, 7).part(2, PbfBytes.varint(99)).toBytes();
        byte[] texts = new PbfBytes().part(1, new PbfBytes().text(1, "").toBytes()).toBytes();
        byte[] short_ = new PbfBytes().part(1, PbfBytes.signed(1, 1)).toBytes();

        for (byte[] group :
                new byte[][] {
                    new PbfBytes().part(1, node).toBytes(),
                    new PbfBytes().part(2, short_).toBytes(),
                    new PbfBytes()
                            .part(4, new PbfBytes().part(9, new byte[] {2}).toBytes())
                            .toBytes(),
                    new PbfBytes().number(3, 5).toBytes(),
                    new PbfBytes().part(3, way).toBytes(),
                    {(byte) 0x80},
                }) {
            byte[] block = new PbfBytes().raw(texts).part(2, group).toBytes();
            assertThat(pbf(start().block("OSMData", PbfBytes.plain(block))).code())
                    .isEqualTo(FindingCode.FILE_UNREADABLE);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "PK",
                "<osm version='0.6'>",
                "<osm version='0.6'></osm>",
                "<osm version='0.6'><node id='1' lat='91' lon='0'/></osm>",
                "<osm version='0.6'><node id='1' lat='NaN' lon='0'/></osm>",
                "<osm version='0.6'><node id='1' lat='46'/></osm>",
                "<osm version='0.6'><node id='x' lat='46' lon='12'/></osm>",
                "<osm version='0.6'><way id='1'><nd ref='99999999999999999999'/></way></osm>",
                "<osmChange version='0.6'><create/></osmChange>",
                "<osm version='0.6'><modify/></osm>",
                "<gpx/>",
                "<osm version='0.6'><node id='1' lat='46' lon='12'/><remark>runtime error: Query"
                        + " timed out</remark></osm>",
                "<!DOCTYPE osm [<!ENTITY a 'b'>]><osm version='0.6'><node id='1' lat='1'"
                        + " lon='1'/></osm>",
                "<!DOCTYPE osm SYSTEM 'file:///nowhere'><osm version='0.6'><node id='1' lat='1'"
                        + " lon='1'/></osm>",
                "<osm version='0.6'><node id='1' lat='1' lon='1'><tag k='a' v='&b;'/></node></osm>",
                "<osm version='0.6'>&b;<node id='1' lat='1' lon='1'/></osm>",
            })
    void xml_that_is_no_map_is_a_fault(String text) throws Exception {
        assertThat(fault("a.osm", text.getBytes(UTF_8)).code())
                .isEqualTo(FindingCode.FILE_UNREADABLE);
    }

    @Test
    void xml_of_another_version_is_refused_with_its_line() throws Exception {
        Fault fault = fault("a.osm", "<?xml version='1.0'?>\n<osm version='0.5'/>".getBytes(UTF_8));

        assertThat(fault.code()).isEqualTo(FindingCode.VERSION_UNKNOWN);
        assertThat(fault.line()).isEqualTo(2);
        assertThat(fault.value()).isEqualTo("0.5");
    }

    @Test
    void deep_or_endless_xml_is_refused() throws Exception {
        String deep = "<osm version='0.6'>" + "<a>".repeat(100_000);
        String endless = "<osm version='0.6'><node id='" + "1".repeat(5_000_000);
        String comment = "<osm version='0.6'><!--" + "x".repeat(5_000_000);

        assertThat(fault("a.osm", deep.getBytes(UTF_8)).code())
                .isEqualTo(FindingCode.FILE_UNREADABLE);
        assertThat(fault("a.osm", endless.getBytes(UTF_8)).code()).isEqualTo(FindingCode.TOO_LARGE);
        assertThat(fault("a.osm", comment.getBytes(UTF_8)).code()).isEqualTo(FindingCode.TOO_LARGE);
    }

    @Test
    void packed_bombs_are_stopped_and_cut_or_wrong_packs_are_faults() throws Exception {
        byte[] gzip = bomb(true);
        byte[] bzip2 = bomb(false);

        assertThat(fault("a.osm.gz", gzip).code()).isEqualTo(FindingCode.TOO_LARGE);
        assertThat(fault("a.osm.bz2", bzip2).code()).isEqualTo(FindingCode.TOO_LARGE);
        for (String name : new String[] {"a.osm.gz", "a.osm.bz2"}) {
            byte[] bytes = name.endsWith("gz") ? gzip : bzip2;
            assertThat(fault(name, Arrays.copyOf(bytes, 30)).code())
                    .isEqualTo(FindingCode.FILE_UNREADABLE);
            assertThat(fault(name, "<osm/>".getBytes(UTF_8)).code())
                    .isEqualTo(FindingCode.FILE_UNREADABLE);
        }
    }

    /** A single attribute of sixty million blanks. */
    private static byte[] bomb(boolean isGzip) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream out =
                isGzip ? new GZIPOutputStream(bytes) : new BZip2CompressorOutputStream(bytes)) {
            out.write("<osm version='0.6'><node id='".getBytes(UTF_8));
            for (int i = 0; i < 60; i++) {
                out.write(" ".repeat(1_000_000).getBytes(UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void a_missing_or_misnamed_file_is_a_fault() throws Exception {
        Fault missing =
                new OsmMapReader()
                        .read(folder.resolve("no.osm"), "no.osm", OsmText.BOX)
                        .faults()
                        .get(0);

        assertThat(missing.code()).isEqualTo(FindingCode.FILE_MISSING);
        assertThat(fault("a.txt", new byte[9]).code()).isEqualTo(FindingCode.FILE_UNREADABLE);
        assertThat(
                        new OsmMapReader()
                                .read(folder, "folder.osm", OsmText.BOX)
                                .faults()
                                .get(0)
                                .code())
                .isEqualTo(FindingCode.FILE_MISSING);
    }

    @Test
    void a_way_with_more_nodes_than_any_map_has_is_too_large() throws Exception {
        byte[] refs = new byte[OsmFile.MOST_REFERENCES + 1];
        byte[] way = new PbfBytes().number(1, 7).part(8, refs).toBytes();
        byte[] group = new PbfBytes().part(3, way).toBytes();
        byte[] block = new PbfBytes().part(2, group).toBytes();

        assertThat(pbf(start().block("OSMData", PbfBytes.deflated(block))).code())
                .isEqualTo(FindingCode.TOO_LARGE);
    }
}
