package underhook.adapter.terrain;

import underhook.core.finding.FindingCode;

/**
 * Where the cells of a north-up raster lie, in the units of its reference system.
 *
 * @param columns number of columns, west to east
 * @param rows number of rows, north to south
 * @param west x of the outer west edge
 * @param north y of the outer north edge
 * @param cellWidth width of a cell, above 0
 * @param cellHeight height of a cell, above 0
 */
record RasterGrid(
        int columns, int rows, double west, double north, double cellWidth, double cellHeight) {
    static RasterGrid of(int columns, int rows, double[] westNorthWidthHeight) throws RasterFault {
        if (columns < 1 || rows < 1) {
            throw RasterFault.unreadable("has no cells", columns + " x " + rows, "");
        }
        double[] w = westNorthWidthHeight;
        if (!(Double.isFinite(w[0]) && Double.isFinite(w[1]))) {
            throw RasterFault.unreadable("its corner is not a number", w[0] + ", " + w[1], "");
        }
        if (!(w[2] > 0 && w[3] > 0 && Double.isFinite(w[2]) && Double.isFinite(w[3]))) {
            throw RasterFault.unreadable(
                    "its cells have no size, or rows do not run from north to south",
                    w[2] + " x " + w[3],
                    "above 0");
        }
        return new RasterGrid(columns, rows, w[0], w[1], w[2], w[3]);
    }

    double columnOf(double x) {
        return (x - west) / cellWidth;
    }

    double rowOf(double y) {
        return (north - y) / cellHeight;
    }

    /** A rectangle of cells. */
    record Window(int firstColumn, int firstRow, int columns, int rows) {
        static final long MOST_CELLS = 64L << 20;

        int lastColumn() {
            return firstColumn + columns - 1;
        }

        int lastRow() {
            return firstRow + rows - 1;
        }

        void checkSize() throws RasterFault {
            if ((long) columns * rows > MOST_CELLS) {
                throw new RasterFault(
                        FindingCode.TOO_LARGE,
                        0,
                        "the part that the job needs has too many cells",
                        new String[] {
                            columns + " x " + rows,
                            "at most " + MOST_CELLS + " cells; a coarser raster will do"
                        });
            }
        }
    }
}
