package underhook.adapter.terrain;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;

/**
 * Unpacks one block after the other into the cells, a few rows at a time, with room for no more than that.
 *
 * <p>Mutable; each thread has its own.
 *
 * @source TIFF-6 sections 13 and 14; ADOBE-TIFF-TN3 for the predictor of floats
 */
final class BlockReader implements AutoCloseable {
    /** Rows are unpacked in one go up to this size, so that they stay in a processor's cache. */
    private static final int GO_BYTES = 1 << 17;

    private final TiffBlocks blocks;
    private final Cells cells;
    private final TiffBlocks.Values values;
    private final RasterGrid.Window window;
    private final int samples;
    private final int bytes;
    private final int rowBytes;
    private final byte[] rows;
    private final ByteBuffer numbers;
    private final Inflater inflater = new Inflater();

    BlockReader(TiffBlocks blocks, Cells cells, TiffBlocks.Values values) {
        this.blocks = blocks;
        this.cells = cells;
        this.values = values;
        window = cells.window();
        samples = blocks.samples();
        bytes = blocks.bytes();
        rowBytes = blocks.blockColumns() * samples * bytes;
        rows = new byte[Math.max(1, Math.min(blocks.blockRows(), GO_BYTES / rowBytes)) * rowBytes];
        numbers = ByteBuffer.wrap(rows).order(blocks.tags().order());
    }

    void read(TiffBlocks.Block block) throws IOException, RasterFault {
        int left = block.column() * blocks.blockColumns();
        int top = block.row() * blocks.blockRows();
        Part part =
                new Part(
                        left,
                        Math.max(left, window.firstColumn()),
                        (int)
                                Math.min(
                                        (long) left + blocks.blockColumns() - 1,
                                        window.lastColumn()),
                        blocks.isPlanar() ? 0 : block.band());
        int first = Math.max(top, window.firstRow());
        int last = (int) Math.min((long) top + blocks.blockRows() - 1, window.lastRow());
        TiffBlocks.Span span = blocks.span(block);
        if (span.offset() == 0 && span.count() == 0) {
            for (int y = first; y <= last; y++) {
                putNothing(part, y);
            }
            return;
        }
        // Stored plainly, the rows before the window need not be passed through.
        int start = blocks.compression() == 1 ? first : top;
        long skipped = (long) (start - top) * rowBytes;
        try (InputStream in = unpacked(span.offset() + skipped, span.count() - skipped)) {
            int atOnce = rows.length / rowBytes;
            for (int y = start; y <= last; y += atOnce) {
                int count = Math.min(atOnce, last - y + 1);
                int got = in.readNBytes(rows, 0, count * rowBytes);
                if (got < count * rowBytes) {
                    throw RasterFault.unreadable(
                            "a strip or tile ends early. Perhaps the file is truncated",
                            "row " + (y + got / rowBytes),
                            "");
                }
                for (int i = Math.max(0, first - y); i < count; i++) {
                    put(part, y + i, i * rowBytes);
                }
            }
        }
    }

    /** The columns of a block that are wanted, and which of the samples side by side. */
    private record Part(int left, int firstColumn, int lastColumn, int sample) {}

    private InputStream unpacked(long offset, long count) {
        InputStream raw = new Slice(blocks.tags().channel(), offset, Math.max(0, count));
        return switch (blocks.compression()) {
            case 5 -> new LzwStream(raw);
            case 8, 32946 -> {
                inflater.reset();
                yield new InflaterInputStream(raw, inflater, 1 << 16);
            }
            default -> raw;
        };
    }

    private void putNothing(Part part, int y) {
        for (int x = part.firstColumn; x <= part.lastColumn; x++) {
            cells.set(x - window.firstColumn(), y - window.firstRow(), Double.NaN);
        }
    }

    /** Puts the row that starts at an index of the unpacked bytes. */
    private void put(Part part, int y, int start) {
        if (blocks.predictor() == 3) {
            addBytes(start);
            putRanked(part, y, start);
            return;
        }
        if (blocks.predictor() == 2) {
            addNumbers(start);
        }
        int step = samples * bytes;
        int at = start + (part.firstColumn - part.left) * step + part.sample * bytes;
        for (int x = part.firstColumn; x <= part.lastColumn; x++) {
            cells.set(x - window.firstColumn(), y - window.firstRow(), values.of(value(at)));
            at += step;
        }
    }

    private double value(int at) {
        if (blocks.format() == 3) {
            return bytes == 4 ? numbers.getFloat(at) : numbers.getDouble(at);
        }
        boolean signed = blocks.format() == 2;
        return switch (bytes) {
            case 1 -> signed ? rows[at] : Byte.toUnsignedInt(rows[at]);
            case 2 -> signed ? numbers.getShort(at) : Short.toUnsignedInt(numbers.getShort(at));
            default -> signed ? numbers.getInt(at) : Integer.toUnsignedLong(numbers.getInt(at));
        };
    }

    private void addBytes(int start) {
        int end = start + rowBytes;
        for (int sample = 0; sample < samples; sample++) {
            // A sum kept at hand: what was just written would be slow to read again.
            byte sum = 0;
            for (int i = start + sample; i < end; i += samples) {
                sum += rows[i];
                rows[i] = sum;
            }
        }
    }

    /** Floats whose bytes are stored by rank, the highest of all samples first. */
    private void putRanked(Part part, int y, int start) {
        int count = rowBytes / bytes;
        int at = start + (part.firstColumn - part.left) * samples + part.sample;
        int column = part.firstColumn - window.firstColumn();
        int row = y - window.firstRow();
        int last = column + part.lastColumn - part.firstColumn;
        if (bytes == 4) {
            for (; column <= last; column++, at += samples) {
                cells.set(column, row, values.of(ranked4(at, count)));
            }
        } else {
            for (; column <= last; column++, at += samples) {
                cells.set(column, row, values.of(ranked8(at, count)));
            }
        }
    }

    private float ranked4(int at, int count) {
        return Float.intBitsToFloat(
                rows[at] << 24
                        | (rows[at + count] & 0xff) << 16
                        | (rows[at + 2 * count] & 0xff) << 8
                        | (rows[at + 3 * count] & 0xff));
    }

    private double ranked8(int at, int count) {
        long bits = 0;
        for (int rank = 0; rank < 8; rank++) {
            bits = bits << 8 | (rows[at + rank * count] & 0xff);
        }
        return Double.longBitsToDouble(bits);
    }

    /** Undoes the differences between neighbours; each sample has its own sum, kept at hand. */
    private void addNumbers(int start) {
        int end = start + rowBytes;
        int step = samples * bytes;
        for (int first = start; first < start + step; first += bytes) {
            long sum = 0;
            for (int at = first; at < end; at += step) {
                switch (bytes) {
                    case 1 -> {
                        sum += rows[at];
                        rows[at] = (byte) sum;
                    }
                    case 2 -> {
                        sum += numbers.getShort(at);
                        numbers.putShort(at, (short) sum);
                    }
                    case 4 -> {
                        sum += numbers.getInt(at);
                        numbers.putInt(at, (int) sum);
                    }
                    default -> {
                        sum += numbers.getLong(at);
                        numbers.putLong(at, sum);
                    }
                }
            }
        }
    }

    @Override
    public void close() {
        inflater.end();
    }

    /** Bytes of a part of the file. */
    private static final class Slice extends InputStream {
        private final FileChannel channel;
        private long at;
        private long left;

        Slice(FileChannel channel, long at, long left) {
            this.channel = channel;
            this.at = at;
            this.left = left;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] out, int offset, int length) throws IOException {
            int wanted = (int) Math.min(length, left);
            if (wanted == 0) {
                return length == 0 ? 0 : -1;
            }
            int got = channel.read(ByteBuffer.wrap(out, offset, wanted), at);
            if (got > 0) {
                at += got;
                left -= got;
            }
            return got;
        }
    }
}
