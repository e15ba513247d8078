package underhook.planner.route;

/** The cells within some distance of a straight piece, row by row from its start. Not safe for threads. */
final class CellRows {
    private final CellGrid grid;
    private final Spot a;
    private final Spot b;
    private final double slackM;
    private final int step;
    private int row;
    private int left;
    private int firstCell;
    private int lastCell;

    CellRows(CellGrid grid, Spot a, Spot b, double slackM) {
        this.grid = grid;
        this.a = a;
        this.b = b;
        this.slackM = slackM;
        boolean up = b.northM() >= a.northM();
        int south = grid.row(Math.min(a.northM(), b.northM()) - slackM);
        int north = grid.row(Math.max(a.northM(), b.northM()) + slackM);
        south = Math.max(0, south);
        north = Math.min(grid.rows - 1, north);
        this.step = up ? 1 : -1;
        this.row = (up ? south : north) - step;
        this.left = north - south + 1;
    }

    /** Goes to the next row; false when there is none. */
    boolean next() {
        if (left <= 0) {
            return false;
        }
        left--;
        row += step;
        double low = grid.southM + row * grid.cellM - slackM;
        double high = low + grid.cellM + 2 * slackM;
        double rise = b.northM() - a.northM();
        double t0 = 0;
        double t1 = 1;
        if (rise > 0 || rise < 0) {
            double one = withinFraction((low - a.northM()) / rise);
            double other = withinFraction((high - a.northM()) / rise);
            t0 = Math.min(one, other);
            t1 = Math.max(one, other);
        }
        double x0 = a.eastM() + t0 * (b.eastM() - a.eastM());
        double x1 = a.eastM() + t1 * (b.eastM() - a.eastM());
        int first = grid.column(Math.min(x0, x1) - slackM);
        int last = grid.column(Math.max(x0, x1) + slackM);
        firstCell = row * grid.columns + Math.max(0, first);
        lastCell = row * grid.columns + Math.min(grid.columns - 1, last);
        return true;
    }

    private static double withinFraction(double alongFraction) {
        return Math.max(0, Math.min(1, alongFraction));
    }

    int firstCell() {
        return firstCell;
    }

    /** Below the first when the row has none. */
    int lastCell() {
        return lastCell;
    }
}
