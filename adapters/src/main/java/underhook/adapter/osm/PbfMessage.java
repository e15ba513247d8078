package underhook.adapter.osm;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * One message of a protocol buffer, read field by field; also a packed list of numbers. Mutable: it moves
 * along.
 *
 * <p>No length is believed before it is known to lie inside the message.
 *
 * @source PROTOBUF-WIRE varints, records and their wire types, packed fields
 */
final class PbfMessage {
    private static final int VARINT = 0;
    private static final int FIXED_64 = 1;
    private static final int BYTES = 2;
    private static final int FIXED_32 = 5;

    /** No fields. */
    static final PbfMessage EMPTY = new PbfMessage(new byte[0], 0, 0);

    private final byte[] bytes;
    private final int start;
    private final int end;
    private int at;
    private int wireType;

    PbfMessage(byte[] bytes, int start, int end) {
        this.bytes = bytes;
        this.start = start;
        this.end = end;
        at = start;
    }

    /** The same from its beginning. */
    PbfMessage again() {
        return new PbfMessage(bytes, start, end);
    }

    boolean hasMore() {
        return at < end;
    }

    int length() {
        return end - start;
    }

    /** Number of the next field, or 0 at the end. The field must then be taken or skipped. */
    int next() throws OsmFault {
        if (at == end) {
            return 0;
        }
        long key = varint();
        wireType = (int) (key & 7);
        long field = key >>> 3;
        if (field == 0 || field > Integer.MAX_VALUE) {
            throw broken();
        }
        return (int) field;
    }

    long takeNumber() throws OsmFault {
        if (wireType != VARINT) {
            throw broken();
        }
        return varint();
    }

    /** A field of bytes: text, a message or a packed list. */
    PbfMessage takeMessage() throws OsmFault {
        if (wireType != BYTES) {
            throw broken();
        }
        long length = varint();
        skipBytes(length);
        return new PbfMessage(bytes, at - (int) length, at);
    }

    String takeText() throws OsmFault {
        return takeMessage().text(Integer.MAX_VALUE);
    }

    byte[] copy() {
        return Arrays.copyOfRange(bytes, start, end);
    }

    /** Text of at most so many bytes. */
    String text(int most) {
        return new String(bytes, start, Math.min(most, end - start), StandardCharsets.UTF_8);
    }

    void skip() throws OsmFault {
        switch (wireType) {
            case VARINT -> varint();
            case FIXED_64 -> skipBytes(8);
            case BYTES -> skipBytes(varint());
            case FIXED_32 -> skipBytes(4);
            default -> throw broken();
        }
    }

    long varint() throws OsmFault {
        long value = 0;
        for (int shift = 0; shift < 64; shift += 7) {
            if (at == end) {
                throw broken();
            }
            byte next = bytes[at++];
            value |= (long) (next & 0x7f) << shift;
            if (next >= 0) {
                return value;
            }
        }
        throw broken();
    }

    /** A number whose sign is in its lowest bit. */
    long signed() throws OsmFault {
        long value = varint();
        return (value >>> 1) ^ -(value & 1);
    }

    long takeSigned() throws OsmFault {
        if (wireType != VARINT) {
            throw broken();
        }
        return signed();
    }

    private void skipBytes(long count) throws OsmFault {
        if (count < 0 || count > end - at) {
            throw broken();
        }
        at += (int) count;
    }

    static OsmFault broken() {
        return OsmFault.unreadable("is damaged: a field is cut off or of the wrong type", "", "");
    }
}
