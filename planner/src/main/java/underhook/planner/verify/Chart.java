package underhook.planner.verify;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.job.HoverTable;

/** Look-up in the manual's hover table: straight between its lines, nothing beyond its edges. */
final class Chart {
    private final HoverTable table;
    private final double capKg;

    /** A table whose cells are cut at a mass before anything is read between them. */
    Chart(HoverTable table, double capKg) {
        this.table = table;
        this.capKg = capKg;
    }

    /** Hover mass, kg; empty outside the table. */
    OptionalDouble findMassKg(double pressureAltitudeM, double temperatureK) {
        int col = cell(table.pressureAltitudeM(), pressureAltitudeM);
        int row = cell(table.temperatureK(), temperatureK);
        if (col < 0 || row < 0) {
            return OptionalDouble.empty();
        }
        double x = shareFraction(table.pressureAltitudeM(), col, pressureAltitudeM);
        double y = shareFraction(table.temperatureK(), row, temperatureK);
        double cooler = (1 - x) * cutKg(row, col) + x * cutKg(row, col + 1);
        double warmer = (1 - x) * cutKg(row + 1, col) + x * cutKg(row + 1, col + 1);
        return OptionalDouble.of((1 - y) * cooler + y * warmer);
    }

    private double cutKg(int row, int col) {
        return Math.min(capKg, table.massKg().get(row).get(col));
    }

    private static int cell(List<Double> axis, Number value) {
        double at = value.doubleValue();
        if (!(at >= axis.get(0) && at <= axis.get(axis.size() - 1))) {
            return -1;
        }
        int i = 0;
        while (i + 2 < axis.size() && axis.get(i + 1) <= at) {
            i++;
        }
        return i;
    }

    private static double shareFraction(List<Double> axis, int cell, Number value) {
        double low = axis.get(cell);
        return (value.doubleValue() - low) / (axis.get(cell + 1) - low);
    }
}
