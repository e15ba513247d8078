package underhook.adapter.osm;

import static java.nio.charset.StandardCharsets.UTF_8;
import static underhook.adapter.osm.OsmText.ids;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.compress.compressors.bzip2.BZip2CompressorOutputStream;
import org.apache.commons.compress.compressors.lz4.BlockLZ4CompressorOutputStream;

/** Small maps that are right, one in each wrapping; all show something in {@link OsmText#BOX}. */
final class OsmSamples {
    private OsmSamples() {}

    static Map<String, byte[]> all() throws IOException {
        byte[] xml =
                new OsmText()
                        .node(1, 46.802, 12.002, "power=tower", "height=31")
                        .node(2, 46.804, 12.004)
                        .node(3, 46.806, 12.001)
                        .way(1, ids(1, 2, 3, 1), "landuse=forest")
                        .way(2, ids(1, 2), "power=line", "voltage=110000")
                        .relation(9, "outer:1", "type=multipolygon", "building=yes")
                        .toString()
                        .getBytes(UTF_8);
        PbfBytes head = new PbfBytes().block("OSMHeader", PbfBytes.header("OsmSchema-V0.6"));
        Map<String, byte[]> samples = new LinkedHashMap<>();
        samples.put("a.osm", xml);
        samples.put("a.osm.gz", packed(xml, true));
        samples.put("a.osm.bz2", packed(xml, false));
        byte[] start = head.toBytes();
        samples.put("plain.pbf", with(start, PbfBytes.plain(PbfBytes.path())));
        samples.put("zlib.pbf", with(start, PbfBytes.deflated(PbfBytes.path())));
        samples.put("lz4.pbf", with(start, lz4(PbfBytes.path())));
        return samples;
    }

    private static byte[] with(byte[] start, byte[] blob) {
        return new PbfBytes().raw(start).block("OSMData", blob).toBytes();
    }

    private static byte[] lz4(byte[] data) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream out = new BlockLZ4CompressorOutputStream(bytes)) {
            out.write(data);
        }
        return new PbfBytes().number(2, data.length).part(6, bytes.toByteArray()).toBytes();
    }

    private static byte[] packed(byte[] data, boolean isGzip) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream out =
                isGzip ? new GZIPOutputStream(bytes) : new BZip2CompressorOutputStream(bytes)) {
            out.write(data);
        }
        return bytes.toByteArray();
    }
}
