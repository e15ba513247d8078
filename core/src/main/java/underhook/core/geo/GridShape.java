package underhook.core.geo;

/**
 * A regular grid in the local plane.
 *
 * @param westM east coordinate of the outer west edge of the first column, m
 * @param southM north coordinate of the outer south edge of the first row, m
 * @param cellSizeM side of a square cell, m, above 0
 * @param columns number of columns, west to east, at least 1
 * @param rows number of rows, south to north, at least 1
 */
public record GridShape(double westM, double southM, double cellSizeM, int columns, int rows) {
    public GridShape {
        if (!Double.isFinite(westM) || !Double.isFinite(southM)) {
            throw new IllegalArgumentException(
                    "westM (" + westM + ") and southM (" + southM + ") must be finite.");
        }
        if (!(cellSizeM > 0 && cellSizeM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("cellSizeM (" + cellSizeM + ") must be above 0.");
        }
        if (columns < 1 || rows < 1 || (long) columns * rows > Integer.MAX_VALUE - 8) {
            throw new IllegalArgumentException(
                    "columns ("
                            + columns
                            + ") and rows ("
                            + rows
                            + ") must be at least 1 and fit.");
        }
    }

    /** A square grid around the plane's origin that reaches at least so far each way. */
    public static GridShape around(double halfWidthM, double cellSizeM) {
        if (!(halfWidthM > 0 && halfWidthM / cellSizeM < 20_000)) {
            throw new IllegalArgumentException(
                    "halfWidthM (" + halfWidthM + ") must be above 0 and below 20000 cells.");
        }
        int half = (int) Math.ceil(halfWidthM / cellSizeM);
        return new GridShape(-half * cellSizeM, -half * cellSizeM, cellSizeM, 2 * half, 2 * half);
    }

    /** Middle of a cell. */
    public PlanePoint centreOf(int column, int row) {
        return new PlanePoint(westM + (column + 0.5) * cellSizeM, southM + (row + 0.5) * cellSizeM);
    }

    int indexOf(int column, int row) {
        if (column < 0 || column >= columns || row < 0 || row >= rows) {
            throw new IllegalArgumentException(
                    "column (" + column + ") and row (" + row + ") must lie in the grid.");
        }
        return row * columns + column;
    }
}
