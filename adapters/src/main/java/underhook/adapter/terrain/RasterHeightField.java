package underhook.adapter.terrain;

import java.util.OptionalDouble;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/** Heights from a raster kept in its own grid. */
final class RasterHeightField implements HeightField {
    /** Share of a cell within which a point counts as lying on a line of centres. */
    private static final double SNAP = 1e-6;

    private final PlaneToGrid mapping;
    private final Cells cells;
    private final int columns;
    private final int rows;
    private final double cellSizeM;

    RasterHeightField(PlaneToGrid mapping, Cells cells) {
        this.mapping = mapping;
        this.cells = cells;
        columns = cells.window().columns();
        rows = cells.window().rows();
        double[] j = mapping.jacobian(0, 0);
        double det = Math.abs(j[0] * j[3] - j[1] * j[2]);
        cellSizeM = Math.max(Math.hypot(j[3], j[2]), Math.hypot(j[1], j[0])) / det;
    }

    @Override
    public boolean covers(double eastM, double northM) {
        return mapping.isWithin(eastM, northM) && !Double.isNaN(sample(eastM, northM));
    }

    @Override
    public double heightM(double eastM, double northM) {
        double height = mapping.isWithin(eastM, northM) ? sample(eastM, northM) : Double.NaN;
        if (Double.isNaN(height)) {
            throw new IllegalArgumentException(
                    "east " + eastM + " m, north " + northM + " m has no height.");
        }
        return height;
    }

    @Override
    public OptionalDouble findHeightM(double eastM, double northM) {
        return known(mapping.isWithin(eastM, northM) ? sample(eastM, northM) : Double.NaN);
    }

    private static OptionalDouble known(double heightM) {
        return Double.isNaN(heightM) ? OptionalDouble.empty() : OptionalDouble.of(heightM);
    }

    /** Not a number where a needed cell is unknown or outside. */
    private double sample(double eastM, double northM) {
        double x = snapped(mapping.column(eastM, northM) - cells.window().firstColumn() - 0.5);
        double y = snapped(mapping.row(eastM, northM) - cells.window().firstRow() - 0.5);
        if (!(x >= 0 && x <= columns - 1 && y >= 0 && y <= rows - 1)) {
            return Double.NaN;
        }
        int column = (int) x;
        int row = (int) y;
        double fx = x - column;
        double fy = y - row;
        int nextColumn = fx > 0 ? column + 1 : column;
        int nextRow = fy > 0 ? row + 1 : row;
        double upper = cells.at(column, row) * (1 - fx) + cells.at(nextColumn, row) * fx;
        double lower = cells.at(column, nextRow) * (1 - fx) + cells.at(nextColumn, nextRow) * fx;
        return upper * (1 - fy) + lower * fy;
    }

    private static double snapped(double cells) {
        double whole = Math.rint(cells);
        return Math.abs(cells - whole) < SNAP ? whole : cells;
    }

    @Override
    public double highestWithinM(PlanePoint centre, double radiusM) {
        double highest = highestOrNaN(centre, radiusM, false);
        if (Double.isNaN(highest)) {
            throw new IllegalArgumentException(
                    "the disc of " + radiusM + " m around " + centre + " is not known throughout.");
        }
        return highest;
    }

    @Override
    public OptionalDouble findHighestWithinM(PlanePoint centre, double radiusM) {
        return known(highestOrNaN(centre, radiusM, false));
    }

    /** Cell by cell where the plane is near enough to be laid over the grid, else by trying many points. */
    @Override
    public OptionalDouble findHighestKnownWithinM(PlanePoint centre, double radiusM) {
        double highest = highestOrNaN(centre, radiusM, true);
        if (Double.isNaN(highest)) {
            return HeightField.super.findHighestKnownWithinM(centre, radiusM);
        }
        return highest > Double.NEGATIVE_INFINITY
                ? OptionalDouble.of(highest)
                : OptionalDouble.empty();
    }

    @Override
    public boolean coversDisc(PlanePoint centre, double radiusM) {
        return !Double.isNaN(highestOrNaN(centre, radiusM, false));
    }

    @Override
    public double cellSizeM() {
        return cellSizeM;
    }

    /**
     * In the raster's grid the disc is an ellipse; its reach in each row of cells follows from the
     * ellipse alone. The radius is widened by more than the grid bends against the plane within it.
     *
     * @param some whether the known cells alone count: minus infinity when there are none
     * @return not a number where not all are known, or the disc is too far off
     */
    private double highestOrNaN(PlanePoint centre, double radiusM, boolean some) {
        if (!(radiusM >= 0 && radiusM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("radiusM (" + radiusM + ") must not be negative.");
        }
        if (!mapping.isWithin(centre.eastM() - radiusM, centre.northM() - radiusM)
                || !mapping.isWithin(centre.eastM() + radiusM, centre.northM() + radiusM)) {
            return Double.NaN;
        }
        double x = mapping.column(centre.eastM(), centre.northM()) - cells.window().firstColumn();
        double y = mapping.row(centre.eastM(), centre.northM()) - cells.window().firstRow();
        double[] j = mapping.jacobian(centre.eastM(), centre.northM());
        double r = radiusM + 1e-6 * radiusM * radiusM + 1e-6;
        double xReach = r * Math.hypot(j[0], j[1]);
        double yReach = r * Math.hypot(j[2], j[3]);
        double both = r * r * (j[0] * j[2] + j[1] * j[3]);
        double slant = both / (yReach * yReach);
        double width = r * r * Math.abs(j[0] * j[3] - j[1] * j[2]) / yReach;
        double yOfEastmost = both / xReach;
        boolean beyond =
                x - xReach < 0 || x + xReach > columns || y - yReach < 0 || y + yReach > rows;
        if (beyond && !some) {
            return Double.NaN;
        }
        double highest = Double.NEGATIVE_INFINITY;
        int lastRow = Math.min(rows - 1, (int) Math.floor(y + yReach));
        for (int row = Math.max(0, (int) (y - yReach)); row <= lastRow; row++) {
            double from = Math.max(-yReach, row - y);
            double to = Math.min(yReach, row + 1 - y);
            double atEast = Math.max(from, Math.min(to, yOfEastmost));
            double atWest = Math.max(from, Math.min(to, -yOfEastmost));
            double east = slant * atEast + width * chord(atEast / yReach);
            double west = slant * atWest - width * chord(atWest / yReach);
            int last = Math.min(columns - 1, (int) Math.floor(x + east));
            for (int column = Math.max(0, (int) (x + west)); column <= last; column++) {
                double value = cells.at(column, row);
                if (Double.isNaN(value)) {
                    if (some) {
                        continue;
                    }
                    return Double.NaN;
                }
                highest = Math.max(highest, value);
            }
        }
        return highest;
    }

    private static double chord(double ratio) {
        return Math.sqrt(Math.max(0, 1 - ratio * ratio));
    }
}
