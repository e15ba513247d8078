package underhook.adapter.demo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays a {@link DemoGrid} out as a GeoTIFF: little-endian, 32-bit floats, strips without compression
 * (compressed bytes would differ between builds of the compressor).
 *
 * <p>The reference system is spelt out in GeoKeys, for no EPSG code fits it.
 *
 * @source TIFF-6 sections 2, 8 and 19; OGC-19-008 section 7 and annex B
 */
final class DemoGeoTiff {
    private static final int ROWS_PER_STRIP = 76;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int ASCII = 2;
    private static final int DOUBLE = 12;
    private static final int USER_DEFINED = 32767;
    private static final int IN_DOUBLES = 34736;
    private static final int IN_TEXT = 34737;
    private static final String CITATION = "Vessenholt local grid (invented)|";

    /** One field of the directory; small values stand in the directory, others behind it. */
    private record Field(int tag, int type, int count, ByteBuffer content) {
        int length() {
            return content.capacity();
        }
    }

    private final List<Field> fields = new ArrayList<>();

    private DemoGeoTiff() {}

    /** The whole file. */
    static byte[] encode(DemoGrid grid) {
        return new DemoGeoTiff().lay(grid);
    }

    private byte[] lay(DemoGrid grid) {
        int strips = (DemoGrid.ROWS + ROWS_PER_STRIP - 1) / ROWS_PER_STRIP;
        int rowBytes = DemoGrid.COLUMNS * Float.BYTES;
        int[] offsets = new int[strips];
        int[] counts = new int[strips];
        // Lengths do not depend on the offsets' values, so the first pass tells where the data
        // begin.
        describe(offsets, counts);
        int dataAt = 8 + 2 + 12 * fields.size() + 4 + contentBehindDirectory();
        for (int strip = 0; strip < strips; strip++) {
            int firstRow = strip * ROWS_PER_STRIP;
            offsets[strip] = dataAt + firstRow * rowBytes;
            counts[strip] = Math.min(ROWS_PER_STRIP, DemoGrid.ROWS - firstRow) * rowBytes;
        }
        describe(offsets, counts);

        byte[] file = new byte[dataAt + DemoGrid.ROWS * rowBytes];
        ByteBuffer out = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8);
        writeDirectory(out);
        out.position(dataAt);
        for (float value : grid.values()) {
            out.putFloat(value);
        }
        return file;
    }

    private void describe(int[] stripOffsets, int[] stripCounts) {
        fields.clear();
        shorts(256, DemoGrid.COLUMNS);
        shorts(257, DemoGrid.ROWS);
        shorts(258, Float.SIZE);
        shorts(259, 1); // no compression
        shorts(262, 1); // black is zero
        longs(273, stripOffsets);
        shorts(277, 1); // one sample for each cell
        shorts(278, ROWS_PER_STRIP);
        longs(279, stripCounts);
        shorts(284, 1); // contiguous
        shorts(339, 3); // floating point
        doubles(33550, DemoGrid.CELL_M, DemoGrid.CELL_M, 0);
        doubles(33922, 0, 0, 0, DemoGrid.WEST_M, DemoGrid.NORTH_M, 0);
        shorts(34735, geoKeys());
        doubles(IN_DOUBLES, DemoDay.ORIGIN.lonDeg(), DemoDay.ORIGIN.latDeg(), 0, 0, 1);
        text(IN_TEXT, CITATION);
        text(42113, "-9999");
    }

    private static int[] geoKeys() {
        int[][] keys = {
            {1024, 0, 1, 1}, // projected
            {1025, 0, 1, 1}, // a value stands for its cell's area
            {1026, IN_TEXT, CITATION.length(), 0},
            {2048, 0, 1, 4326}, // WGS 84
            {2054, 0, 1, 9102}, // degrees
            {3072, 0, 1, USER_DEFINED},
            {3073, IN_TEXT, CITATION.length(), 0},
            {3074, 0, 1, USER_DEFINED},
            {3075, 0, 1, 1}, // transverse Mercator
            {3076, 0, 1, 9001}, // metres
            {3080, IN_DOUBLES, 1, 0}, // natural origin, longitude
            {3081, IN_DOUBLES, 1, 1}, // natural origin, latitude
            {3082, IN_DOUBLES, 1, 2}, // false easting
            {3083, IN_DOUBLES, 1, 3}, // false northing
            {3092, IN_DOUBLES, 1, 4}, // scale at the natural origin
        };
        int[] flat = new int[4 + 4 * keys.length];
        flat[0] = 1;
        flat[1] = 1;
        flat[3] = keys.length;
        for (int i = 0; i < keys.length; i++) {
            System.arraycopy(keys[i], 0, flat, 4 + 4 * i, 4);
        }
        return flat;
    }

    private void writeDirectory(ByteBuffer out) {
        out.putShort((short) fields.size());
        int behind = out.position() + 12 * fields.size() + 4;
        for (Field field : fields) {
            out.putShort((short) field.tag).putShort((short) field.type).putInt(field.count);
            if (field.length() <= 4) {
                int next = out.position() + 4;
                out.put(field.content.rewind()).position(next);
            } else {
                out.putInt(behind);
                int next = out.position();
                out.position(behind).put(field.content.rewind()).position(next);
                behind += even(field.length());
            }
        }
        out.putInt(0);
    }

    private int contentBehindDirectory() {
        return fields.stream()
                .mapToInt(Field::length)
                .filter(length -> length > 4)
                .map(DemoGeoTiff::even)
                .sum();
    }

    private static int even(int length) {
        return length + length % 2;
    }

    private void shorts(int tag, int... values) {
        ByteBuffer content = littleEndian(values.length * Short.BYTES);
        for (int value : values) {
            content.putShort((short) value);
        }
        fields.add(new Field(tag, SHORT, values.length, content));
    }

    private void longs(int tag, int... values) {
        ByteBuffer content = littleEndian(values.length * Integer.BYTES);
        for (int value : values) {
            content.putInt(value);
        }
        fields.add(new Field(tag, LONG, values.length, content));
    }

    private void doubles(int tag, double... values) {
        ByteBuffer content = littleEndian(values.length * Double.BYTES);
        for (double value : values) {
            content.putDouble(value);
        }
        fields.add(new Field(tag, DOUBLE, values.length, content));
    }

    private void text(int tag, String value) {
        byte[] content = (value + "\0").getBytes(StandardCharsets.US_ASCII);
        fields.add(new Field(tag, ASCII, content.length, ByteBuffer.wrap(content)));
    }

    private static ByteBuffer littleEndian(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }
}
