package underhook.adapter.terrain;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;
import java.util.zip.DeflaterOutputStream;

/**
 * A small TIFF of one band and one block, written tag by tag, so that a test can have any tag it likes.
 * Mutable.
 *
 * @source TIFF-6 sections 2, 8, 13 and 14
 */
final class TiffBytes {
    static final int COLUMNS = 12;
    static final int ROWS = 10;

    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int DOUBLE = 12;

    private final ByteOrder order;
    private final TreeMap<Integer, Tag> tags = new TreeMap<>();
    private byte[] block = new byte[0];

    private record Tag(int type, int count, ByteBuffer content) {
        int length() {
            return content.capacity();
        }
    }

    private TiffBytes(ByteOrder order) {
        this.order = order;
    }

    /** Floats that rise by 10 m a column and fall by 1 m a row from 1000 m; UTM 32 north. */
    static TiffBytes floats(ByteOrder order) {
        TiffBytes out = new TiffBytes(order);
        ByteBuffer data = ByteBuffer.allocate(4 * COLUMNS * ROWS).order(order);
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            data.putFloat(1000 + 10 * (i % COLUMNS) - Math.floorDiv(i, COLUMNS));
        }
        return out.common(32, 3).stored(data.array(), 1).scaleAndTie();
    }

    /** The same as words of 16 bits. */
    static TiffBytes words(ByteOrder order) {
        TiffBytes out = new TiffBytes(order);
        ByteBuffer data = ByteBuffer.allocate(2 * COLUMNS * ROWS).order(order);
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            data.putShort((short) (1000 + 10 * (i % COLUMNS) - Math.floorDiv(i, COLUMNS)));
        }
        return out.common(16, 2).stored(data.array(), 1).scaleAndTie();
    }

    private TiffBytes common(int bits, int format) {
        shorts(256, COLUMNS).shorts(257, ROWS).shorts(258, bits).shorts(262, 1);
        shorts(277, 1).shorts(278, ROWS).shorts(284, 1).shorts(339, format);
        return shorts(34735, 1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 25832);
    }

    private TiffBytes stored(byte[] bytes, int compression) {
        block = bytes;
        return shorts(259, compression);
    }

    TiffBytes scaleAndTie() {
        return doubles(33550, 10, 10, 0).doubles(33922, 0, 0, 0, 500_000, 5_200_100, 0);
    }

    TiffBytes without(int tag) {
        tags.remove(tag);
        return this;
    }

    TiffBytes deflated() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream to = new DeflaterOutputStream(out)) {
            to.write(block);
        }
        return stored(out.toByteArray(), 8);
    }

    /** LZW without any repeated string: each byte as it is, cleared before codes grow beyond 9 bits. */
    TiffBytes lzw() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int bits = 0;
        int count = 0;
        for (int i = 0; i <= block.length; i++) {
            int[] codes =
                    i == block.length
                            ? new int[] {257}
                            : i % 200 == 0
                                    ? new int[] {256, Byte.toUnsignedInt(block[i])}
                                    : new int[] {Byte.toUnsignedInt(block[i])};
            for (int code : codes) {
                bits = (bits << 9) | code;
                count += 9;
                while (count >= 8) {
                    count -= 8;
                    out.write(bits >> count);
                    bits &= (1 << count) - 1;
                }
            }
        }
        out.write(bits << (8 - count));
        return stored(out.toByteArray(), 5);
    }

    TiffBytes predicted(int predictor) {
        return shorts(317, predictor);
    }

    /** One tile as large as the image. */
    TiffBytes tiled() {
        return without(278).shorts(322, COLUMNS).shorts(323, ROWS);
    }

    TiffBytes shorts(int tag, int... values) {
        ByteBuffer out = ByteBuffer.allocate(2 * values.length).order(order);
        for (int value : values) {
            out.putShort((short) value);
        }
        tags.put(tag, new Tag(SHORT, values.length, out.rewind()));
        return this;
    }

    TiffBytes doubles(int tag, double... values) {
        ByteBuffer out = ByteBuffer.allocate(8 * values.length).order(order);
        for (double value : values) {
            out.putDouble(value);
        }
        tags.put(tag, new Tag(DOUBLE, values.length, out.rewind()));
        return this;
    }

    TiffBytes text(int tag, String value) {
        byte[] content = (value + "\0").getBytes(StandardCharsets.US_ASCII);
        tags.put(tag, new Tag(ASCII, content.length, ByteBuffer.wrap(content)));
        return this;
    }

    private TiffBytes longs(int tag, int value) {
        tags.put(tag, new Tag(LONG, 1, ByteBuffer.allocate(4).order(order).putInt(value).rewind()));
        return this;
    }

    byte[] encode() {
        boolean tiled = tags.containsKey(322);
        longs(tiled ? 324 : 273, 0).longs(tiled ? 325 : 279, block.length);
        int behind = 8 + 2 + 12 * tags.size() + 4;
        int length =
                tags.values().stream()
                        .mapToInt(Tag::length)
                        .filter(bytes -> bytes > 4)
                        .map(TiffBytes::even)
                        .sum();
        longs(tiled ? 324 : 273, behind + length);
        ByteBuffer out =
                ByteBuffer.allocate(behind + length + block.length + block.length % 2).order(order);
        byte mark = (byte) (order == ByteOrder.BIG_ENDIAN ? 'M' : 'I');
        out.put(mark).put(mark).putShort((short) 42).putInt(8).putShort((short) tags.size());
        for (var entry : tags.entrySet()) {
            Tag tag = entry.getValue();
            int next = out.position() + 12;
            out.putShort((short) (int) entry.getKey()).putShort((short) tag.type);
            out.putInt(tag.count);
            if (tag.length() > 4) {
                out.putInt(behind).position(behind).put(tag.content.rewind());
                behind += even(tag.length());
            } else {
                out.put(tag.content.rewind());
            }
            out.position(next);
        }
        out.position(behind).put(block);
        return out.array();
    }

    private static int even(int length) {
        return length + length % 2;
    }
}
