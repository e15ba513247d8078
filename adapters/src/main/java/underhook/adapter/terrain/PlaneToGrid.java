package underhook.adapter.terrain;

import underhook.app.port.ReferenceSystem;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/**
 * Column and row of a raster for a point of the local plane: exact at the nodes of a lattice, bilinear
 * between them, so close that the difference stays below 5 mm.
 */
final class PlaneToGrid {
    private static final double WIDEST_M = 250;
    private static final double FINEST_M = 15;
    private static final double ALLOWED_M = 0.005;

    private final double half;
    private final double spacing;
    private final int nodes;
    private final double[] column;
    private final double[] row;

    private PlaneToGrid(Exact exact, double halfWidthM, double spacingM) {
        int steps = (int) Math.ceil(2 * halfWidthM / spacingM);
        spacing = spacingM;
        nodes = steps + 1;
        half = steps * spacingM / 2;
        column = new double[nodes * nodes];
        row = new double[nodes * nodes];
        for (int j = 0; j < nodes; j++) {
            for (int i = 0; i < nodes; i++) {
                double[] at = exact.at(i * spacing - half, j * spacing - half);
                column[j * nodes + i] = at[0];
                row[j * nodes + i] = at[1];
            }
        }
    }

    /** Lays a lattice that reaches at least so far from the origin each way. */
    static PlaneToGrid of(Exact exact, double halfWidthM) {
        double spacing = Math.min(WIDEST_M, halfWidthM);
        PlaneToGrid lattice = new PlaneToGrid(exact, halfWidthM, spacing);
        while (lattice.worstErrorM(exact) > ALLOWED_M && spacing / 2 >= FINEST_M) {
            spacing /= 2;
            lattice = new PlaneToGrid(exact, halfWidthM, spacing);
        }
        return lattice;
    }

    /** Error in the middle of the lattice's cells, where it is largest, on a 9 by 9 choice of them. */
    private double worstErrorM(Exact exact) {
        double worst = 0;
        for (int j = 0; j <= 8; j++) {
            for (int i = 0; i <= 8; i++) {
                double east = (Math.min(nodes - 2, i * (nodes - 1) / 8) + 0.5) * spacing - half;
                double north = (Math.min(nodes - 2, j * (nodes - 1) / 8) + 0.5) * spacing - half;
                double[] there = exact.at(east, north);
                double[] jacobian = jacobian(east, north);
                double dc = there[0] - column(east, north);
                double dr = there[1] - row(east, north);
                double det = jacobian[0] * jacobian[3] - jacobian[1] * jacobian[2];
                double de = (jacobian[3] * dc - jacobian[1] * dr) / det;
                double dn = (jacobian[0] * dr - jacobian[2] * dc) / det;
                worst = Math.max(worst, Math.hypot(de, dn));
            }
        }
        return worst;
    }

    boolean isWithin(double eastM, double northM) {
        return Math.abs(eastM) <= half && Math.abs(northM) <= half;
    }

    /** Columns from the raster's west edge. */
    double column(double eastM, double northM) {
        return between(column, eastM, northM);
    }

    /** Rows from the raster's north edge. */
    double row(double eastM, double northM) {
        return between(row, eastM, northM);
    }

    private double between(double[] values, double eastM, double northM) {
        double x = (eastM + half) / spacing;
        double y = (northM + half) / spacing;
        int i = Math.min(nodes - 2, (int) x);
        int j = Math.min(nodes - 2, (int) y);
        double fx = x - i;
        double fy = y - j;
        int at = j * nodes + i;
        double south = values[at] + (values[at + 1] - values[at]) * fx;
        double north = values[at + nodes] + (values[at + nodes + 1] - values[at + nodes]) * fx;
        return south + (north - south) * fy;
    }

    /** Columns per metre east and north, rows per metre east and north. */
    double[] jacobian(double eastM, double northM) {
        double step = spacing / 4;
        double e0 = Math.max(-half, eastM - step);
        double e1 = Math.min(half, eastM + step);
        double n0 = Math.max(-half, northM - step);
        double n1 = Math.min(half, northM + step);
        return new double[] {
            (column(e1, northM) - column(e0, northM)) / (e1 - e0),
            (column(eastM, n1) - column(eastM, n0)) / (n1 - n0),
            (row(e1, northM) - row(e0, northM)) / (e1 - e0),
            (row(eastM, n1) - row(eastM, n0)) / (n1 - n0)
        };
    }

    /** Smallest and largest column, smallest and largest row at the nodes. */
    double[] bounds() {
        double[] out = {
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY
        };
        for (int i = 0; i < column.length; i++) {
            out[0] = Math.min(out[0], column[i]);
            out[1] = Math.max(out[1], column[i]);
            out[2] = Math.min(out[2], row[i]);
            out[3] = Math.max(out[3], row[i]);
        }
        return out;
    }

    /** The exact way, through WGS 84. */
    record Exact(LocalFrame frame, ReferenceSystem system, RasterGrid grid) {
        /** Column and row from the raster's north-west corner. */
        double[] at(double eastM, double northM) {
            GeoPoint point = frame.toGeo(new PlanePoint(eastM, northM));
            ReferenceSystem.Xy xy = system.fromGeo(point);
            double x = xy.x();
            if (system.isGeographic()) {
                // A raster may count longitudes from 0 to 360, or reach over the date line.
                double middle = grid.west() + grid.columns() * grid.cellWidth() / 2;
                x = middle + Math.IEEEremainder(x - middle, 360);
            }
            return new double[] {grid.columnOf(x), grid.rowOf(xy.y())};
        }
    }
}
