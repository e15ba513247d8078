package underhook.bench;

import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import underhook.core.geo.PlanePoint;
import underhook.planner.route.WayMap;

/**
 * Search at any angle over square cells (Lazy Theta*): the baseline for ways, as used elsewhere on maps
 * of cells.
 *
 * <p>A cell counts as closed when its centre lies nearer to closed ground than half its diagonal, so that
 * a straight piece through open cells is surely open.
 *
 * @source PRACTICE Lazy Theta*, from memory of the published search
 */
final class GridSearch {
    private static final int CELLS = 2000;
    private static final double CELL_M = 10;
    private static final int[] STEP_EAST = {1, 1, 0, -1, -1, -1, 0, 1};
    private static final int[] STEP_NORTH = {0, 1, 1, 1, 0, -1, -1, -1};

    private final boolean[] closed = new boolean[CELLS * CELLS];
    private final double[] costs = new double[CELLS * CELLS];
    private final int[] parents = new int[CELLS * CELLS];
    private final int[] reachedIn = new int[CELLS * CELLS];
    private final int[] doneIn = new int[CELLS * CELLS];
    private int round;

    private record Open(int cell, double whole) {}

    GridSearch(List<Geometry> areas) {
        for (Geometry area : areas) {
            Geometry wide = area.buffer(CELL_M * Math.sqrt(0.5) * 1.01);
            IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(wide);
            Envelope box = wide.getEnvelopeInternal();
            for (int row = Math.max(0, (int) (box.getMinY() / CELL_M));
                    row <= Math.min(CELLS - 1, (int) (box.getMaxY() / CELL_M));
                    row++) {
                for (int column = Math.max(0, (int) (box.getMinX() / CELL_M));
                        column <= Math.min(CELLS - 1, (int) (box.getMaxX() / CELL_M));
                        column++) {
                    Coordinate centre = new Coordinate(middle(column), middle(row));
                    if (locator.locate(centre) != Location.EXTERIOR) {
                        closed[row * CELLS + column] = true;
                    }
                }
            }
        }
    }

    private static double middle(int at) {
        return (at + 0.5) * CELL_M;
    }

    private static int cellOf(PlanePoint point) {
        int row = (int) (point.northM() / CELL_M);
        int column = (int) (point.eastM() / CELL_M);
        return row * CELLS + column;
    }

    /** Middle of the cell that a point lies in, from where and to where is searched. */
    static PlanePoint middleOf(PlanePoint point) {
        int cell = cellOf(point);
        return new PlanePoint(middle(cell % CELLS), middle(cell / CELLS));
    }

    boolean isClosed(PlanePoint point) {
        return closed[cellOf(point)];
    }

    /** Least time found, s; infinite when there is no way. */
    double durationS(PlanePoint from, PlanePoint to, WayMap.Wind wind) {
        round++;
        int start = cellOf(from);
        int end = cellOf(to);
        PriorityQueue<Open> queue =
                new PriorityQueue<>(
                        (one, other) -> {
                            int byCost = Double.compare(one.whole(), other.whole());
                            return byCost != 0 ? byCost : Integer.compare(one.cell(), other.cell());
                        });
        reach(start, start, 0);
        queue.add(new Open(start, between(start, end, wind)));
        while (!queue.isEmpty()) {
            int cell = queue.poll().cell();
            if (doneIn[cell] == round) {
                continue;
            }
            doneIn[cell] = round;
            setVertex(cell, wind);
            if (cell == end) {
                return costs[end];
            }
            int parent = parents[cell];
            for (int k = 0; k < STEP_EAST.length; k++) {
                int next = neighbour(cell, k);
                if (next >= 0 && doneIn[next] != round) {
                    double cost = costs[parent] + between(parent, next, wind);
                    if (reachedIn[next] != round || cost < costs[next]) {
                        reach(next, parent, cost);
                        queue.add(new Open(next, cost + between(next, end, wind)));
                    }
                }
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private void reach(int cell, int parent, double cost) {
        reachedIn[cell] = round;
        parents[cell] = parent;
        costs[cell] = cost;
    }

    /** The parent was taken on trust: where it does not see the cell, the best neighbour steps in. */
    private void setVertex(int cell, WayMap.Wind wind) {
        if (sees(parents[cell], cell)) {
            return;
        }
        costs[cell] = Double.POSITIVE_INFINITY;
        for (int k = 0; k < STEP_EAST.length; k++) {
            int next = neighbour(cell, k);
            if (next >= 0 && doneIn[next] == round) {
                double cost = costs[next] + between(next, cell, wind);
                if (cost < costs[cell]) {
                    reach(cell, next, cost);
                }
            }
        }
    }

    /** An open cell beside another, or -1; slantwise only between two open ones. */
    private int neighbour(int cell, int step) {
        int column = cell % CELLS + STEP_EAST[step];
        int row = cell / CELLS + STEP_NORTH[step];
        if (column < 0 || column >= CELLS || row < 0 || row >= CELLS) {
            return -1;
        }
        int next = row * CELLS + column;
        boolean open =
                !closed[next]
                        && !closed[cell + STEP_EAST[step]]
                        && !closed[cell + STEP_NORTH[step] * CELLS];
        return open ? next : -1;
    }

    private static double between(int from, int to, WayMap.Wind wind) {
        return wind.durationS(
                (to % CELLS - from % CELLS) * CELL_M, (to / CELLS - from / CELLS) * CELL_M);
    }

    /** Whether all cells that the straight piece between two middles passes are open. */
    private boolean sees(int from, int to) {
        int column = from % CELLS;
        int row = from / CELLS;
        int east = Math.abs(to % CELLS - column);
        int north = Math.abs(to / CELLS - row);
        int stepEast = to % CELLS > column ? 1 : -1;
        int stepNorth = to / CELLS > row ? 1 : -1;
        int ahead = east - north;
        int left = east + north;
        while (left > 0) {
            if (ahead == 0) {
                if (closed[row * CELLS + column + stepEast]
                        || closed[(row + stepNorth) * CELLS + column]) {
                    return false;
                }
                column += stepEast;
                row += stepNorth;
                ahead += 2 * east - 2 * north;
                left -= 2;
            } else if (ahead > 0) {
                column += stepEast;
                ahead -= 2 * north;
                left--;
            } else {
                row += stepNorth;
                ahead += 2 * east;
                left--;
            }
            if (closed[row * CELLS + column]) {
                return false;
            }
        }
        return true;
    }

    /** Share of cells that are closed. */
    double closedFraction() {
        int count = 0;
        for (boolean one : closed) {
            count += one ? 1 : 0;
        }
        return (double) count / closed.length;
    }

    static double medianOf(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
