package underhook.adapter.terrain;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How the strips or tiles of a TIFF image are laid out; reads those that a window needs.
 *
 * @source TIFF-6 sections 3 and 15
 */
final class TiffBlocks {
    private static final Set<Integer> COMPRESSIONS = Set.of(1, 5, 8, 32946);
    private static final long LONGEST_ROW_BYTES = 64L << 20;

    /** Unpacking is what takes time, and a raster is read beside another program's work. */
    private static final int MOST_READERS = 4;

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
        long stated = tags.wholeOr(317, 1);
        if (stated < 1 || stated > 3 || (stated == 3 && format != 3)) {
            throw RasterFault.unreadable("its predictor is not known", "" + stated, "1, 2 or 3");
        }
        // It belongs to the packing: what is stored plainly is no difference.
        predictor = compression == 1 ? 1 : (int) stated;
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
        List<Block> wanted = new ArrayList<>();
        for (int r = w.firstRow() / blockRows; r <= w.lastRow() / blockRows; r++) {
            for (int c = w.firstColumn() / blockColumns; c <= w.lastColumn() / blockColumns; c++) {
                wanted.add(new Block(band, c, r));
            }
        }
        long rowBytes = (long) blockColumns * samples() * bytes;
        int mostReaders = (int) Math.min(MOST_READERS, Math.max(1, LONGEST_ROW_BYTES / rowBytes));
        new BlockQueue(wanted, () -> new BlockReader(this, cells, values)).read(mostReaders);
    }

    /** One strip or tile. */
    record Block(int band, int column, int row) {}

    /** What a stored number means; not a number for none. Safe for threads. */
    interface Values {
        double of(double stored);
    }

    /** Where a block's bytes lie in the file; both 0 when it was never written. */
    record Span(long offset, long count) {}

    Span span(Block block) throws IOException, RasterFault {
        long perBand = blocksAcross() * ((rows + blockRows - 1L) / blockRows);
        long index =
                (planar ? block.band() * perBand : 0)
                        + (long) block.row() * blocksAcross()
                        + block.column();
        long offset = tags.whole(offsetsTag(), index);
        long count = tags.whole(tiled ? 325 : 279, index);
        if (offset < 0 || count < 0 || offset > tags.length() - count) {
            throw RasterFault.unreadable(
                    "a strip or tile lies outside the file. Perhaps it is truncated",
                    offset + " + " + count,
                    "at most " + tags.length());
        }
        return new Span(offset, count);
    }

    TiffDirectory tags() {
        return tags;
    }

    int blockColumns() {
        return blockColumns;
    }

    int blockRows() {
        return blockRows;
    }

    /** Bytes of one sample. */
    int bytes() {
        return bytes;
    }

    int format() {
        return format;
    }

    int compression() {
        return compression;
    }

    int predictor() {
        return predictor;
    }

    boolean isPlanar() {
        return planar;
    }

    /** Samples that lie side by side for each cell. */
    int samples() {
        return planar ? 1 : bands;
    }

    private long blocksAcross() {
        return (columns + blockColumns - 1L) / blockColumns;
    }

    private int offsetsTag() {
        return tiled ? 324 : 273;
    }
}
