package underhook.core.geo;

import java.util.BitSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;

/** Heights on a regular grid in the local plane. */
public final class GridHeightField implements HeightField {
    /** Share of a cell within which a point counts as lying on a line of centres. */
    private static final double SNAP_RATIO = 1e-9;

    private final GridShape shape;
    private final double[] heightM;
    private final BitSet unknown;

    private GridHeightField(GridShape shape, double[] heightM, BitSet unknown) {
        this.shape = shape;
        this.heightM = heightM;
        this.unknown = unknown;
    }

    /**
     * From a function of east and north (m in the local plane), taken at the middle of each cell.
     *
     * @throws IllegalArgumentException if it gives a height that is not finite
     */
    public static GridHeightField of(GridShape shape, DoubleBinaryOperator heightsM) {
        double[] values = new double[shape.columns() * shape.rows()];
        for (int row = 0; row < shape.rows(); row++) {
            for (int column = 0; column < shape.columns(); column++) {
                PlanePoint middle = shape.centreOf(column, row);
                values[shape.indexOf(column, row)] =
                        checkedM(heightsM.applyAsDouble(middle.eastM(), middle.northM()));
            }
        }
        return new GridHeightField(shape, values, new BitSet());
    }

    /**
     * From heights, m, row by row from south to north, each row from west to east.
     *
     * @throws IllegalArgumentException if their number is not that of the cells, or one is not finite
     */
    public static GridHeightField of(GridShape shape, List<Double> heightsM) {
        if (heightsM.size() != shape.columns() * shape.rows()) {
            throw new IllegalArgumentException(
                    "heightsM ("
                            + heightsM.size()
                            + ") must be "
                            + shape.columns()
                            + " times "
                            + shape.rows()
                            + " heights.");
        }
        double[] values = new double[heightsM.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = checkedM(heightsM.get(i));
        }
        return new GridHeightField(shape, values, new BitSet());
    }

    private static double checkedM(double valueM) {
        if (!Double.isFinite(valueM)) {
            throw new IllegalArgumentException("a height (" + valueM + ") must be finite.");
        }
        return valueM;
    }

    /** The same with one more cell without a height; column from the west, row from the south. */
    public GridHeightField withUnknown(int column, int row) {
        BitSet more = (BitSet) unknown.clone();
        more.set(shape.indexOf(column, row));
        return new GridHeightField(shape, heightM, more);
    }

    /** Where the cells lie. */
    public GridShape shape() {
        return shape;
    }

    @Override
    public boolean covers(double eastM, double northM) {
        double x = toCentres(eastM - shape.westM());
        double y = toCentres(northM - shape.southM());
        if (!(x >= 0 && x <= shape.columns() - 1 && y >= 0 && y <= shape.rows() - 1)) {
            return false;
        }
        int column = (int) x;
        int row = (int) y;
        int lastColumn = x > column ? column + 1 : column;
        int lastRow = y > row ? row + 1 : row;
        return isKnown(column, row)
                && isKnown(lastColumn, row)
                && isKnown(column, lastRow)
                && isKnown(lastColumn, lastRow);
    }

    @Override
    public double heightM(double eastM, double northM) {
        if (!covers(eastM, northM)) {
            throw new IllegalArgumentException(
                    "east " + eastM + " m, north " + northM + " m has no height.");
        }
        double x = toCentres(eastM - shape.westM());
        double y = toCentres(northM - shape.southM());
        int column = (int) x;
        int row = (int) y;
        int lastColumn = x > column ? column + 1 : column;
        int lastRow = y > row ? row + 1 : row;
        double fx = x - column;
        double fy = y - row;
        double south =
                heightM[shape.indexOf(column, row)] * (1 - fx)
                        + heightM[shape.indexOf(lastColumn, row)] * fx;
        double north =
                heightM[shape.indexOf(column, lastRow)] * (1 - fx)
                        + heightM[shape.indexOf(lastColumn, lastRow)] * fx;
        return south * (1 - fy) + north * fy;
    }

    @Override
    public double highestWithinM(PlanePoint centre, double radiusM) {
        if (!coversDisc(centre, radiusM)) {
            throw new IllegalArgumentException(
                    "the disc of " + radiusM + " m around " + centre + " is not known throughout.");
        }
        return highestOrNaN(centre, radiusM, false);
    }

    @Override
    public OptionalDouble findHighestKnownWithinM(PlanePoint centre, double radiusM) {
        double highest = highestOrNaN(centre, radiusM, true);
        return highest > Double.NEGATIVE_INFINITY
                ? OptionalDouble.of(highest)
                : OptionalDouble.empty();
    }

    @Override
    public boolean coversDisc(PlanePoint centre, double radiusM) {
        if (!(radiusM >= 0 && radiusM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("radiusM (" + radiusM + ") must not be negative.");
        }
        double eastEdge = shape.westM() + shape.columns() * shape.cellSizeM();
        double northEdge = shape.southM() + shape.rows() * shape.cellSizeM();
        return centre.eastM() - radiusM >= shape.westM()
                && centre.eastM() + radiusM <= eastEdge
                && centre.northM() - radiusM >= shape.southM()
                && centre.northM() + radiusM <= northEdge
                && !Double.isNaN(highestOrNaN(centre, radiusM, false));
    }

    @Override
    public double cellSizeM() {
        return shape.cellSizeM();
    }

    /**
     * Not a number when a cell of the disc is unknown; or, where the known ones alone count, minus infinity when all
     * are.
     */
    private double highestOrNaN(PlanePoint centre, double radiusM, boolean known) {
        double size = shape.cellSizeM();
        double x = (centre.eastM() - shape.westM()) / size;
        double y = (centre.northM() - shape.southM()) / size;
        double reach = radiusM / size + SNAP_RATIO;
        int firstRow = Math.max(0, (int) Math.floor(y - reach));
        int lastRow = Math.min(shape.rows() - 1, (int) Math.floor(y + reach));
        double highest = Double.NEGATIVE_INFINITY;
        for (int row = firstRow; row <= lastRow; row++) {
            double dy = Math.max(0, Math.max(row - y, y - row - 1));
            double half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
            int first = Math.max(0, (int) Math.floor(x - half - SNAP_RATIO));
            int last = Math.min(shape.columns() - 1, (int) Math.floor(x + half + SNAP_RATIO));
            for (int column = first; column <= last; column++) {
                if (!isKnown(column, row)) {
                    if (known) {
                        continue;
                    }
                    return Double.NaN;
                }
                highest = Math.max(highest, heightM[shape.indexOf(column, row)]);
            }
        }
        return highest;
    }

    private boolean isKnown(int column, int row) {
        return !unknown.get(shape.indexOf(column, row));
    }

    /** Cells from the first centre, snapped to a line of centres where it is one but for rounding. */
    private double toCentres(double fromEdgeM) {
        double cells = fromEdgeM / shape.cellSizeM() - 0.5;
        double whole = Math.rint(cells);
        return Math.abs(cells - whole) < SNAP_RATIO ? whole : cells;
    }
}
