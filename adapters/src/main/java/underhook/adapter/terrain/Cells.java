package underhook.adapter.terrain;

import org.jspecify.annotations.Nullable;

/**
 * Values of a window, rows from the north. Not a number inside stands for a cell without a value, and
 * never leaves this package. Whole numbers of up to 24 bits and floats are kept in four bytes each.
 *
 * <p>Filled by one reader, then only read.
 */
final class Cells {
    private final RasterGrid.Window window;
    private final float @Nullable [] floats;
    private final double @Nullable [] doubles;

    Cells(RasterGrid.Window window, boolean needsDoubles) throws RasterFault {
        window.checkSize();
        this.window = window;
        int count = window.columns() * window.rows();
        floats = needsDoubles ? null : new float[count];
        doubles = needsDoubles ? new double[count] : null;
    }

    RasterGrid.Window window() {
        return window;
    }

    /** By column and row of the window. */
    double at(int column, int row) {
        int index = row * window.columns() + column;
        if (floats != null) {
            return floats[index];
        }
        return doubles == null ? Double.NaN : doubles[index];
    }

    void set(int column, int row, double value) {
        int index = row * window.columns() + column;
        if (floats != null) {
            floats[index] = (float) value;
        } else if (doubles != null) {
            doubles[index] = value;
        }
    }
}
