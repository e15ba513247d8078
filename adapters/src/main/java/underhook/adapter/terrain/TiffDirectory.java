package underhook.adapter.terrain;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The first image of a TIFF or BigTIFF file: its tags, read from the file when asked for.
 *
 * @source TIFF-6 section 2; BIGTIFF
 */
final class TiffDirectory {
    private static final int[] BYTES_OF_TYPE = {
        0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8
    };
    private static final int MOST_TAG_BYTES = 4 << 20;

    private final FileChannel channel;
    private final long length;
    private final ByteOrder order;
    private final Map<Integer, Entry> entries = new HashMap<>();

    private record Entry(int type, long count, long offset) {}

    private TiffDirectory(FileChannel channel, ByteOrder order) throws IOException {
        this.channel = channel;
        this.length = channel.size();
        this.order = order;
    }

    static TiffDirectory open(FileChannel channel) throws IOException, RasterFault {
        ByteBuffer head = ByteBuffer.allocate(16);
        channel.read(head, 0);
        head.flip();
        if (head.limit() < 8) {
            throw RasterFault.unreadable("the file ends within its header", "", "");
        }
        ByteOrder order = head.get(0) == 'M' ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        head.order(order);
        TiffDirectory directory = new TiffDirectory(channel, order);
        int version = head.getShort(2);
        if (version == 43 && head.limit() == 16) {
            directory.readEntries(head.getLong(8), true);
        } else if (version == 42) {
            directory.readEntries(Integer.toUnsignedLong(head.getInt(4)), false);
        } else {
            throw RasterFault.unreadable("is not a TIFF file", "version " + version, "42 or 43");
        }
        return directory;
    }

    private void readEntries(long at, boolean big) throws IOException, RasterFault {
        int countBytes = big ? 8 : 2;
        ByteBuffer counter = bytes(at, countBytes);
        long count = big ? counter.getLong(0) : Short.toUnsignedInt(counter.getShort(0));
        int size = big ? 20 : 12;
        if (count < 1 || count > 4096) {
            throw RasterFault.unreadable("has no sensible number of tags", "" + count, "");
        }
        ByteBuffer table = bytes(at + countBytes, (int) count * size);
        for (int i = 0; i < count; i++) {
            int start = i * size;
            int tag = Short.toUnsignedInt(table.getShort(start));
            int type = Short.toUnsignedInt(table.getShort(start + 2));
            long values =
                    big
                            ? table.getLong(start + 4)
                            : Integer.toUnsignedLong(table.getInt(start + 4));
            int inline = start + (big ? 12 : 8);
            int width = type < BYTES_OF_TYPE.length ? BYTES_OF_TYPE[type] : 0;
            if (width == 0 || values < 0 || values > length) {
                continue;
            }
            boolean fits = values * width <= (big ? 8 : 4);
            long offset =
                    fits
                            ? at + countBytes + inline
                            : big
                                    ? table.getLong(inline)
                                    : Integer.toUnsignedLong(table.getInt(inline));
            entries.put(tag, new Entry(type, values, offset));
        }
    }

    ByteOrder order() {
        return order;
    }

    FileChannel channel() {
        return channel;
    }

    long length() {
        return length;
    }

    /** Number of values of a tag; 0 when it is absent. */
    long count(int tag) {
        Entry entry = entries.get(tag);
        return entry == null ? 0 : entry.count();
    }

    /** A whole number at an index of a tag. */
    long whole(int tag, long index) throws IOException, RasterFault {
        return Math.round(number(tag, index));
    }

    long wholeOr(int tag, long other) throws IOException, RasterFault {
        return count(tag) == 0 ? other : whole(tag, 0);
    }

    double number(int tag, long index) throws IOException, RasterFault {
        Entry entry = entry(tag);
        if (index < 0 || index >= entry.count()) {
            throw RasterFault.unreadable(
                    "tag " + tag + " has too few values", "" + entry.count(), "");
        }
        int width = BYTES_OF_TYPE[entry.type()];
        ByteBuffer value = bytes(entry.offset() + index * width, width);
        return switch (entry.type()) {
            case 1, 2, 7 -> Byte.toUnsignedInt(value.get(0));
            case 6 -> value.get(0);
            case 3 -> Short.toUnsignedInt(value.getShort(0));
            case 8 -> value.getShort(0);
            case 4, 13 -> Integer.toUnsignedLong(value.getInt(0));
            case 9 -> value.getInt(0);
            case 11 -> value.getFloat(0);
            case 12 -> value.getDouble(0);
            case 16, 17, 18 -> value.getLong(0);
            default -> throw RasterFault.unreadable("tag " + tag + " is no number", "", "");
        };
    }

    double[] numbers(int tag) throws IOException, RasterFault {
        long count = count(tag);
        if (count > 4096) {
            throw RasterFault.unreadable("tag " + tag + " has too many values", "" + count, "");
        }
        double[] values = new double[(int) count];
        for (int i = 0; i < values.length; i++) {
            values[i] = number(tag, i);
        }
        return values;
    }

    Optional<String> text(int tag) throws IOException, RasterFault {
        @Nullable Entry entry = entries.get(tag);
        if (entry == null) {
            return Optional.empty();
        }
        if (entry.count() > MOST_TAG_BYTES || BYTES_OF_TYPE[entry.type()] != 1) {
            throw RasterFault.unreadable("tag " + tag + " is not a text", "", "");
        }
        byte[] raw = bytes(entry.offset(), (int) entry.count()).array();
        String text = new String(raw, StandardCharsets.UTF_8);
        int end = text.indexOf('\0');
        return Optional.of(end < 0 ? text : text.substring(0, end));
    }

    private Entry entry(int tag) throws RasterFault {
        Entry entry = entries.get(tag);
        if (entry == null) {
            throw RasterFault.unreadable("lacks a tag that an image needs", "tag " + tag, "");
        }
        return entry;
    }

    private ByteBuffer bytes(long at, int count) throws IOException, RasterFault {
        if (at < 0 || at > length - count) {
            throw RasterFault.unreadable(
                    "points outside itself. Perhaps it is truncated",
                    "byte " + at,
                    "below " + length);
        }
        ByteBuffer out = ByteBuffer.allocate(count).order(order);
        while (out.hasRemaining()) {
            if (channel.read(out, at + out.position()) < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
        }
        return out;
    }
}
