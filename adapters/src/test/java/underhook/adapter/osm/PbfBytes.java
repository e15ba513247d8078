package underhook.adapter.osm;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.zip.Deflater;

/** Writes the bytes of PBF files, right and wrong ones. */
final class PbfBytes {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

    PbfBytes number(int field, long value) {
        return raw(varint(field << 3)).raw(varint(value));
    }

    PbfBytes part(int field, byte[] part) {
        return raw(varint((field << 3) | 2)).raw(varint(part.length)).raw(part);
    }

    PbfBytes text(int field, String text) {
        return part(field, text.getBytes(UTF_8));
    }

    PbfBytes raw(byte[] more) {
        bytes.writeBytes(more);
        return this;
    }

    byte[] toBytes() {
        return bytes.toByteArray();
    }

    static byte[] varint(long value) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        long rest = value;
        while ((rest & ~0x7fL) != 0) {
            out.write((int) ((rest & 0x7f) | 0x80));
            rest >>>= 7;
        }
        out.write((int) rest);
        return out.toByteArray();
    }

    /** Numbers with their sign in the lowest bit, one after the other. */
    static byte[] signed(long... values) {
        PbfBytes out = new PbfBytes();
        for (long value : values) {
            out.raw(varint((value << 1) ^ (value >> 63)));
        }
        return out.toBytes();
    }

    /** Length, header and blob. */
    PbfBytes block(String type, byte[] blob) {
        byte[] header = new PbfBytes().text(1, type).number(3, blob.length).toBytes();
        return raw(ByteBuffer.allocate(4).putInt(header.length).array()).raw(header).raw(blob);
    }

    static byte[] deflated(byte[] data) {
        return zlibBlob(data, data.length);
    }

    static byte[] zlibBlob(byte[] data, long claimed) {
        Deflater deflater = new Deflater();
        deflater.setInput(data);
        deflater.finish();
        byte[] packed = new byte[data.length + 100];
        int length = deflater.deflate(packed);
        deflater.end();
        return new PbfBytes().number(2, claimed).part(3, Arrays.copyOf(packed, length)).toBytes();
    }

    static byte[] plain(byte[] data) {
        return new PbfBytes().part(1, data).toBytes();
    }

    static byte[] header(String... features) {
        PbfBytes header = new PbfBytes();
        for (String feature : features) {
            header.text(4, feature);
        }
        return deflated(header.toBytes());
    }

    /** A path of two nodes in the box, dense and with offsets and a granularity of its own. */
    static byte[] path() {
        byte[] texts = new PbfBytes().text(1, "").text(1, "highway").text(1, "path").toBytes();
        byte[] dense =
                new PbfBytes()
                        .part(1, signed(1, 1))
                        .part(8, signed(5_000, 1_000))
                        .part(9, signed(2_000, 1_000))
                        .toBytes();
        byte[] way =
                new PbfBytes()
                        .number(1, 7)
                        .part(2, varint(1))
                        .part(3, varint(2))
                        .part(8, signed(1, 1))
                        .toBytes();
        return new PbfBytes()
                .part(1, texts)
                .part(2, new PbfBytes().part(2, dense).toBytes())
                .part(2, new PbfBytes().part(3, way).toBytes())
                .number(17, 1_000)
                .number(19, 46_800_000_000L)
                .number(20, 12_000_000_000L)
                .toBytes();
    }
}
