package underhook.core.geo;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Lines of equal height on a sampled grid, by marching squares. Where a saddle could be read both
 * ways, the mean of its four corners decides. Cells with an unknown corner carry no line.
 */
public final class Contours {
    /**
     * Samples.
     *
     * @param heightM row by row, m; NaN where the height is not known
     */
    public record Grid(int columns, int rows, List<Double> heightM) {
        public Grid {
            heightM = List.copyOf(heightM);
        }

        double sampleM(int column, int row) {
            return heightM.get(row * columns + column);
        }
    }

    /** A point in steps of the grid, from its first sample. */
    public record Node(double columnRatio, double rowRatio) {}

    private final Grid grid;
    private final double levelM;
    private final Map<Long, Node> nodes = new HashMap<>();
    private final Map<Long, List<Long>> neighbours = new HashMap<>();
    private final List<Long> order = new ArrayList<>();

    private Contours(Grid grid, double levelM) {
        this.grid = grid;
        this.levelM = levelM;
    }

    /** Connected lines of one height; a closed one ends where it began. */
    public static List<List<Node>> trace(Grid grid, double levelM) {
        Contours contours = new Contours(grid, levelM);
        for (int row = 0; row + 1 < grid.rows(); row++) {
            for (int column = 0; column + 1 < grid.columns(); column++) {
                contours.march(column, row);
            }
        }
        return contours.join();
    }

    private void march(int column, int row) {
        double a = grid.sampleM(column, row) - levelM;
        double b = grid.sampleM(column + 1, row) - levelM;
        double c = grid.sampleM(column + 1, row + 1) - levelM;
        double d = grid.sampleM(column, row + 1) - levelM;
        if (Double.isNaN(a + b + c + d)) {
            return;
        }
        // Edges in turn round the cell: a-b, b-c, d-c, a-d.
        List<Long> cut = new ArrayList<>(4);
        addCut(cut, a, b, key(column, row, 0));
        addCut(cut, b, c, key(column + 1, row, 1));
        addCut(cut, d, c, key(column, row + 1, 0));
        addCut(cut, a, d, key(column, row, 1));
        if (cut.size() == 2) {
            connect(cut.get(0), cut.get(1));
        } else if (cut.size() == 4) {
            boolean middleAsA = (a + b + c + d >= 0) == (a >= 0);
            connect(cut.get(0), cut.get(middleAsA ? 1 : 3));
            connect(cut.get(2), cut.get(middleAsA ? 3 : 1));
        }
    }

    private long key(int column, int row, int direction) {
        return ((long) row * grid.columns() + column) * 2 + direction;
    }

    private void addCut(List<Long> cut, double fromM, double toM, long key) {
        if ((fromM >= 0) != (toM >= 0)) {
            long sample = key / 2;
            double share = fromM / (fromM - toM);
            double column = Math.floorMod(sample, (long) grid.columns());
            double row = Math.floorDiv(sample, (long) grid.columns());
            nodes.putIfAbsent(
                    key,
                    key % 2 == 0 ? new Node(column + share, row) : new Node(column, row + share));
            cut.add(key);
        }
    }

    private void connect(long one, long other) {
        for (long key : new long[] {one, other}) {
            if (!neighbours.containsKey(key)) {
                neighbours.put(key, new ArrayList<>(2));
                order.add(key);
            }
        }
        neighbours.getOrDefault(one, List.of()).add(other);
        neighbours.getOrDefault(other, List.of()).add(one);
    }

    private List<List<Node>> join() {
        List<List<Node>> lines = new ArrayList<>();
        Set<Long> used = new HashSet<>();
        for (long start : order) {
            if (!used.add(start)) {
                continue;
            }
            Deque<Long> line = new ArrayDeque<>();
            line.add(start);
            List<Long> ways = neighbours.getOrDefault(start, List.of());
            extend(line, ways.get(0), true, used);
            if (ways.size() > 1) {
                if (used.contains(ways.get(1))) {
                    line.addLast(start);
                } else {
                    extend(line, ways.get(1), false, used);
                }
            }
            lines.add(line.stream().map(key -> nodes.getOrDefault(key, new Node(0, 0))).toList());
        }
        return lines;
    }

    private void extend(Deque<Long> line, long first, boolean atEnd, Set<Long> used) {
        long next = first;
        while (used.add(next)) {
            if (atEnd) {
                line.addLast(next);
            } else {
                line.addFirst(next);
            }
            for (long candidate : neighbours.getOrDefault(next, List.of())) {
                if (!used.contains(candidate)) {
                    next = candidate;
                    break;
                }
            }
        }
    }
}
