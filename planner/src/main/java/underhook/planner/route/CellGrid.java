package underhook.planner.route;

import org.locationtech.jts.geom.Envelope;

/** Square cells over a stretch of the plane, numbered row by row from the south west. */
final class CellGrid {
    private static final int MOST_CELLS = 4_000_000;

    final double westM;
    final double southM;
    final double cellM;
    final int columns;
    final int rows;

    private CellGrid(Envelope extent, double cellM) {
        this.westM = extent.getMinX();
        this.southM = extent.getMinY();
        this.cellM = cellM;
        this.columns = 1 + (int) (extent.getWidth() / cellM);
        this.rows = 1 + (int) (extent.getHeight() / cellM);
    }

    /** As many cells as things, about. */
    static CellGrid over(Envelope extent, int things) {
        double cells = Math.max(1, Math.min(things, MOST_CELLS / 4));
        double squareM = Math.sqrt(extent.getWidth() * extent.getHeight() / cells);
        double longM = Math.max(extent.getWidth(), extent.getHeight()) / cells;
        return new CellGrid(extent, Math.max(1, Math.max(squareM, longM)));
    }

    /** Column of an easting, outside the grid too. */
    int column(double eastM) {
        return (int) Math.floor((eastM - westM) / cellM);
    }

    /** Row of a northing, outside the grid too. */
    int row(double northM) {
        return (int) Math.floor((northM - southM) / cellM);
    }

    int size() {
        return columns * rows;
    }
}
