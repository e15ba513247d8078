package underhook.planner.route;

import java.util.Arrays;
import java.util.function.IntFunction;

/** Which of some numbered things lie in each cell, in two flat arrays. */
final class CellLists {
    private final int[] starts;
    private final int[] things;

    private CellLists(int[] starts, int[] things) {
        this.starts = starts;
        this.things = things;
    }

    static CellLists of(CellGrid grid, int count, IntFunction<CellRows> cellsOf) {
        int[] starts = new int[grid.size() + 1];
        for (int i = 0; i < count; i++) {
            for (CellRows rows = cellsOf.apply(i); rows.next(); ) {
                for (int cell = rows.firstCell(); cell <= rows.lastCell(); cell++) {
                    starts[cell + 1]++;
                }
            }
        }
        Arrays.parallelPrefix(starts, Integer::sum);
        int[] free = Arrays.copyOf(starts, grid.size());
        int[] things = new int[starts[grid.size()]];
        for (int i = 0; i < count; i++) {
            for (CellRows rows = cellsOf.apply(i); rows.next(); ) {
                for (int cell = rows.firstCell(); cell <= rows.lastCell(); cell++) {
                    things[free[cell]++] = i;
                }
            }
        }
        return new CellLists(starts, things);
    }

    int start(int cell) {
        return starts[cell];
    }

    /** One behind the last. */
    int end(int cell) {
        return starts[cell + 1];
    }

    int thing(int at) {
        return things[at];
    }

    /** Whether a thing lies in a cell. */
    boolean has(int cell, int thing) {
        for (int k = starts[cell]; k < starts[cell + 1]; k++) {
            if (things[k] == thing) {
                return true;
            }
        }
        return false;
    }
}
