package underhook.adapter.demo;

/** Values on the demo day's 5 m cells, rows from north to south; each holds at its cell's centre. */
final class DemoGrid {
    static final double WEST_M = -1000;
    static final double NORTH_M = 2900;
    static final double CELL_M = 5;
    static final int COLUMNS = 1640;
    static final int ROWS = 760;

    private final float[] values;

    private DemoGrid(float[] values) {
        this.values = values;
    }

    /** A value, m, for a point of the local grid. */
    interface Surface {
        double valueM(double eastM, double northM);
    }

    /** Asks the surface once for each cell, row by row from the north-west. */
    static DemoGrid of(Surface surface) {
        float[] values = new float[COLUMNS * ROWS];
        for (int row = 0; row < ROWS; row++) {
            double northM = NORTH_M - (row + 0.5) * CELL_M;
            for (int column = 0; column < COLUMNS; column++) {
                double eastM = WEST_M + (column + 0.5) * CELL_M;
                values[row * COLUMNS + column] = (float) surface.valueM(eastM, northM);
            }
        }
        return new DemoGrid(values);
    }

    /** The value of the cell that holds a point, m. */
    double valueM(double eastM, double northM) {
        int column = (int) Math.floor((eastM - WEST_M) / CELL_M);
        int row = (int) Math.floor((NORTH_M - northM) / CELL_M);
        return values[row * COLUMNS + column];
    }

    /** All values, row by row from the north-west. */
    float[] values() {
        return values;
    }
}
