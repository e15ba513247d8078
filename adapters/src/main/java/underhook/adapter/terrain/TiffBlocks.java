package underhook.adapter.terrain;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.Set;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;

/**
 * Unpacks the strips or tiles of a TIFF image, only those that a window needs, row by row.
 *
 * @source TIFF-6 sections 3, 13 to 15; ADOBE-TIFF-TN3 for the predictor of floats
 */
final class TiffBlocks {
    private static final Set<Integer> COMPRESSIONS = Set.of(1, 5, 8, 32946);
    private static final long LONGEST_ROW_BYTES = 64L << 20;

    private final TiffDirectory tags;
    private final int columns;
    private final int rows;
    private final boolean tiled;
    private final int blockColumns;
    private final int blockRows;
    private final int bands;
    private final boolean planar;
    private final int bytes;
    private final int format;
    private final int compression;
    private final int predictor;

    TiffBlocks(TiffDirectory tags) throws IOException, RasterFault {
        this.tags = tags;
        columns = positive(256, tags.wholeOr(256, 0), "width");
        rows = positive(257, tags.wholeOr(257, 0), "height");
        tiled = tags.count(322) > 0;
        blockColumns = tiled ? positive(322, tags.whole(322, 0), "tile width") : columns;
        long stripRows = Math.min(rows, tags.wholeOr(278, rows));
        blockRows =
                tiled
                        ? positive(323, tags.whole(323, 0), "tile height")
                        : positive(278, stripRows, "strip height");
        bands = positive(277, tags.wholeOr(277, 1), "number of bands");
        planar = tags.wholeOr(284, 1) == 2;
        long bits = tags.wholeOr(258, 1);
        format = (int) tags.wholeOr(339, 1);
        boolean isKnown =
                format == 3 ? bits == 32 || bits == 64 : bits == 8 || bits == 16 || bits == 32;
        if (!isKnown || format < 1 || format > 3) {
            throw RasterFault.unreadable(
                    "holds a kind of number that is not read",
                    bits + " bits, format " + format,
                    "whole numbers of 8, 16 or 32 bits, floats of 32 or 64");
        }
        for (long i = 1; i < Math.min(bands, tags.count(258)); i++) {
            if (tags.whole(258, i) != bits) {
                throw RasterFault.unreadable("its bands differ in kind", "", "");
            }
        }
        bytes = (int) bits / 8;
        compression = (int) tags.wholeOr(259, 1);
        if (!COMPRESSIONS.contains(compression)) {
            throw RasterFault.unreadable(
                    "its compression is not read",
                    "compression " + compression,
                    "none, LZW or deflate; gdal_translate -co COMPRESS=DEFLATE makes such a file");
        }
        predictor = (int) tags.wholeOr(317, 1);
        if (predictor < 1 || predictor > 3 || (predictor == 3 && format != 3)) {
            throw RasterFault.unreadable("its predictor is not known", "" + predictor, "1, 2 or 3");
        }
        long rowBytes = (long) blockColumns * samples() * bytes;
        if (rowBytes > LONGEST_ROW_BYTES) {
            throw RasterFault.tooLarge(
                    "claims rows that are too long",
                    rowBytes + " bytes",
                    "at most " + LONGEST_ROW_BYTES + " bytes");
        }
        long needed = blocksAcross() * ((rows + blockRows - 1L) / blockRows) * (planar ? bands : 1);
        if (tags.count(offsetsTag()) < needed || tags.count(tiled ? 325 : 279) < needed) {
            throw RasterFault.unreadable(
                    "has fewer strips or tiles than its size needs",
                    "" + tags.count(offsetsTag()),
                    "" + needed);
        }
    }

    private int positive(int tag, long value, String what) throws RasterFault {
        if (value < 1 || value > Integer.MAX_VALUE) {
            throw RasterFault.unreadable(
                    "its " + what + " makes no sense", "" + value, "tag " + tag);
        }
        return (int) value;
    }

    int columns() {
        return columns;
    }

    int rows() {
        return rows;
    }

    int bands() {
        return bands;
    }

    /** Whether values may need more than the 24 bits of a float. */
    boolean needsDoubles() {
        return format == 3 ? bytes == 8 : bytes == 4;
    }

    /** Puts every value of a band (from 0) in the window into the cells. */
    void read(int band, Cells cells, Values values) throws IOException, RasterFault {
        RasterGrid.Window w = cells.window();
        for (int r = w.firstRow() / blockRows; r <= w.lastRow() / blockRows; r++) {
            for (int c = w.firstColumn() / blockColumns; c <= w.lastColumn() / blockColumns; c++) {
                readBlock(new Block(band, c, r), cells, values);
            }
        }
    }

    private void readBlock(Block block, Cells cells, Values values)
            throws IOException, RasterFault {
        RasterGrid.Window w = cells.window();
        int left = block.column() * blockColumns;
        int top = block.row() * blockRows;
        int firstColumn = Math.max(left, w.firstColumn());
        int lastColumn = (int) Math.min((long) left + blockColumns - 1, w.lastColumn());
        int firstRow = Math.max(top, w.firstRow());
        int lastRow = (int) Math.min((long) top + blockRows - 1, w.lastRow());
        long perBand = blocksAcross() * ((rows + blockRows - 1L) / blockRows);
        long index =
                (planar ? block.band() * perBand : 0)
                        + (long) block.row() * blocksAcross()
                        + block.column();
        long offset = tags.whole(offsetsTag(), index);
        long count = tags.whole(tiled ? 325 : 279, index);
        if (offset == 0 && count == 0) {
            // A block that was never written has no values.
            for (int y = firstRow; y <= lastRow; y++) {
                for (int x = firstColumn; x <= lastColumn; x++) {
                    cells.set(x - w.firstColumn(), y - w.firstRow(), Double.NaN);
                }
            }
            return;
        }
        if (offset < 0 || count < 0 || offset > tags.length() - count) {
            throw RasterFault.unreadable(
                    "a strip or tile lies outside the file. Perhaps it is truncated",
                    offset + " + " + count,
                    "at most " + tags.length());
        }
        int rowBytes = blockColumns * samples() * bytes;
        byte[] row = new byte[rowBytes];
        byte[] spare = new byte[predictor == 3 ? rowBytes : 0];
        // Stored plainly, the rows before the window need not be passed through.
        long skipped = compression == 1 ? (long) (firstRow - top) * rowBytes : 0;
        Inflater inflater = new Inflater();
        try (InputStream in = unpacked(offset + skipped, count - skipped, inflater)) {
            for (int y = compression == 1 ? firstRow : top; y <= lastRow; y++) {
                if (in.readNBytes(row, 0, rowBytes) < rowBytes) {
                    throw RasterFault.unreadable(
                            "a strip or tile ends early. Perhaps the file is truncated",
                            "row " + y,
                            "");
                }
                if (y < firstRow) {
                    continue;
                }
                ByteBuffer decoded = undoPredictor(row, spare);
                for (int x = firstColumn; x <= lastColumn; x++) {
                    int sample = (x - left) * samples() + (planar ? 0 : block.band());
                    cells.set(
                            x - w.firstColumn(),
                            y - w.firstRow(),
                            values.of(value(decoded, sample)));
                }
            }
        } finally {
            inflater.end();
        }
    }

    private record Block(int band, int column, int row) {}

    /** What a stored number means; not a number for none. */
    interface Values {
        double of(double stored);
    }

    private InputStream unpacked(long offset, long count, Inflater inflater) {
        InputStream raw =
                new BufferedInputStream(
                        new Slice(tags.channel(), offset, Math.max(0, count)), 1 << 16);
        return switch (compression) {
            case 5 -> new LzwStream(raw);
            case 8, 32946 -> new InflaterInputStream(raw, inflater, 1 << 14);
            default -> raw;
        };
    }

    private ByteBuffer undoPredictor(byte[] row, byte[] spare) {
        int samples = samples();
        if (predictor == 3) {
            for (int i = samples; i < row.length; i++) {
                row[i] += row[i - samples];
            }
            // Bytes are stored by rank, the highest of all samples first.
            int count = row.length / bytes;
            for (int i = 0; i < count; i++) {
                for (int b = 0; b < bytes; b++) {
                    spare[i * bytes + b] = row[b * count + i];
                }
            }
            return ByteBuffer.wrap(spare).order(ByteOrder.BIG_ENDIAN);
        }
        ByteBuffer out = ByteBuffer.wrap(row).order(tags.order());
        if (predictor == 2) {
            int count = row.length / bytes;
            for (int i = samples; i < count; i++) {
                int at = i * bytes;
                int before = (i - samples) * bytes;
                switch (bytes) {
                    case 1 -> row[at] += row[before];
                    case 2 -> out.putShort(at, (short) (out.getShort(at) + out.getShort(before)));
                    case 4 -> out.putInt(at, out.getInt(at) + out.getInt(before));
                    default -> out.putLong(at, out.getLong(at) + out.getLong(before));
                }
            }
        }
        return out;
    }

    private double value(ByteBuffer row, int sample) {
        int at = sample * bytes;
        if (format == 3) {
            return bytes == 4 ? row.getFloat(at) : row.getDouble(at);
        }
        boolean signed = format == 2;
        return switch (bytes) {
            case 1 -> signed ? row.get(at) : Byte.toUnsignedInt(row.get(at));
            case 2 -> signed ? row.getShort(at) : Short.toUnsignedInt(row.getShort(at));
            default -> signed ? row.getInt(at) : Integer.toUnsignedLong(row.getInt(at));
        };
    }

    private int samples() {
        return planar ? 1 : bands;
    }

    private long blocksAcross() {
        return (columns + blockColumns - 1L) / blockColumns;
    }

    private int offsetsTag() {
        return tiled ? 324 : 273;
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
