package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.CGAlgorithmsDD;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import underhook.core.geo.PlanePoint;

/**
 * Ground that may not be entered: the union of its pieces as edges in flat arrays under a grid.
 *
 * <p>Edge {@code i} goes from corner {@code i} to corner {@code next[i]} with the closed ground on its
 * left. Which side of a line a point lies on is decided beyond the rounding of doubles, and a piece that
 * touches an edge counts as blocked, unless it ends in that edge's own corner: doubt errs to blocked.
 * A piece past a corner that it touches is not lost, being two pieces that end there.
 */
final class ClosedGround {
    /** Share of a cell by which edges count as in the next one, so that rounding hides none. */
    private static final double CELL_SLACK_RATIO = 1e-6;

    /** Measured: fewer take longer to look through cells, more to look through edges. */
    private static final int EDGES_PER_CELL = 16;

    /** What is known of the middle of a cell. */
    private static final byte NOT_ASKED = 0;

    private static final byte OPEN = 1;
    private static final byte CLOSED = 2;
    private static final byte ON_EDGE = 3;

    final double[] eastM;
    final double[] northM;
    final int[] next;
    final int[] previous;
    final CellGrid grid;
    final CellLists edges;

    /** By cell; whoever asks first writes what all others would. */
    private final byte[] middles;

    /**
     * @param extent what the grid must cover besides
     */
    ClosedGround(UnitedGround united, Envelope extent) {
        List<Coordinate[]> rings = rings(united.pieces());
        int count = rings.stream().mapToInt(ring -> ring.length - 1).sum();
        this.eastM = new double[count];
        this.northM = new double[count];
        this.next = new int[count];
        this.previous = new int[count];
        int start = 0;
        for (Coordinate[] ring : rings) {
            int length = ring.length - 1;
            for (int i = 0; i < length; i++) {
                eastM[start + i] = ring[i].x;
                northM[start + i] = ring[i].y;
                next[start + i] = start + (i + 1) % length;
                previous[start + i] = start + (i + length - 1) % length;
            }
            start += length;
        }
        Envelope whole = united.extent();
        whole.expandToInclude(extent);
        if (whole.isNull()) {
            whole.init(0, 1, 0, 1);
        }
        this.grid = CellGrid.over(whole, count / EDGES_PER_CELL);
        this.edges = CellLists.of(grid, count, this::cellsOfEdge);
        this.middles = new byte[grid.size()];
    }

    private CellRows cellsOfEdge(int edge) {
        return new CellRows(grid, corner(edge), corner(next[edge]), grid.cellM * CELL_SLACK_RATIO);
    }

    /** Shells and holes with the ground inside on the left. */
    private static List<Coordinate[]> rings(List<Polygon> polygons) {
        List<Coordinate[]> rings = new ArrayList<>();
        for (Polygon polygon : polygons) {
            rings.add(turned(polygon.getExteriorRing().getCoordinates(), true));
            for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
                rings.add(turned(polygon.getInteriorRingN(k).getCoordinates(), false));
            }
        }
        return rings;
    }

    private static Coordinate[] turned(Coordinate[] ring, boolean left) {
        if (Orientation.isCCW(ring) == left) {
            return ring;
        }
        Coordinate[] other = new Coordinate[ring.length];
        for (int i = 0; i < ring.length; i++) {
            other[i] = ring[ring.length - 1 - i];
        }
        return other;
    }

    int size() {
        return next.length;
    }

    Spot corner(int at) {
        return new Spot(eastM[at], northM[at], at);
    }

    /** Whether a shortest way may turn at a corner: the ground bulges there. */
    boolean isBulge(int at) {
        int before = previous[at];
        return side(eastM[before], northM[before], corner(at), next[at]) >= 0;
    }

    /** Whether a point lies on closed ground or on its edge. */
    boolean isClosed(PlanePoint point) {
        int column = grid.column(point.eastM());
        int row = grid.row(point.northM());
        if (column < 0 || column >= grid.columns || row < 0 || row >= grid.rows) {
            return false;
        }
        int cell = row * grid.columns + column;
        Spot spot = Spot.of(point);
        if (isOnEdge(spot, cell)) {
            return true;
        }
        byte middle = middles[cell];
        if (middle == NOT_ASKED) {
            middle = askMiddle(cell);
            middles[cell] = middle;
        }
        return middle == ON_EDGE
                ? crossedWestOf(spot, cell) % 2 == 1
                : (middle == CLOSED) ^ (crossedFromMiddle(spot, cell) % 2 == 1);
    }

    /** Every edge that a point lies on is in its cell. */
    private boolean isOnEdge(Spot spot, int cell) {
        for (int k = edges.start(cell); k < edges.end(cell); k++) {
            if (meets(spot, spot, edges.thing(k))) {
                return true;
            }
        }
        return false;
    }

    private byte askMiddle(int cell) {
        Spot middle = middle(cell);
        if (isOnEdge(middle, cell)) {
            return ON_EDGE;
        }
        return crossedWestOf(middle, cell) % 2 == 1 ? CLOSED : OPEN;
    }

    private Spot middle(int cell) {
        int row = cell / grid.columns;
        return Spot.of(
                new PlanePoint(
                        grid.westM + (cell - row * grid.columns + 0.5) * grid.cellM,
                        grid.southM + (row + 0.5) * grid.cellM));
    }

    /**
     * Edges between the middle of a cell and a spot in it; neither lies on one. A corner on the line
     * between them counts as right of it, so that each crossing is counted once.
     */
    private int crossedFromMiddle(Spot spot, int cell) {
        Spot middle = middle(cell);
        int crossed = 0;
        for (int k = edges.start(cell); k < edges.end(cell); k++) {
            int edge = edges.thing(k);
            int end = next[edge];
            boolean near =
                    !isOutside(middle.eastM(), spot.eastM(), eastM[edge], eastM[end])
                            && !isOutside(
                                    middle.northM(), spot.northM(), northM[edge], northM[end]);
            if (near
                    && isLeft(middle, spot, edge) != isLeft(middle, spot, end)
                    && sideOf(edge, middle) != sideOf(edge, spot)) {
                crossed++;
            }
        }
        return crossed;
    }

    private boolean isLeft(Spot from, Spot to, int corner) {
        return side(from.eastM(), from.northM(), to, corner) > 0;
    }

    /** Edges that pass a spot's northing west of it. */
    private int crossedWestOf(Spot spot, int ownCell) {
        int crossed = 0;
        int first = ownCell / grid.columns * grid.columns;
        for (int cell = ownCell; cell >= first; cell--) {
            for (int k = edges.start(cell); k < edges.end(cell); k++) {
                int edge = edges.thing(k);
                if (isWestOf(spot, edge) && (cell == ownCell || !edges.has(cell + 1, edge))) {
                    crossed++;
                }
            }
        }
        return crossed;
    }

    /** Whether an edge passes a spot's northing west of it. */
    private boolean isWestOf(Spot spot, int edge) {
        boolean up = northM[edge] <= spot.northM() && northM[next[edge]] > spot.northM();
        boolean down = northM[edge] > spot.northM() && northM[next[edge]] <= spot.northM();
        return (up && sideOf(edge, spot) < 0) || (down && sideOf(edge, spot) > 0);
    }

    /** Whether a piece leaves the ground on one side at each of its ends that is a corner. */
    boolean isTangentAtCorners(Spot a, Spot b) {
        return (!a.isCorner() || isTangent(a, b)) && (!b.isCorner() || isTangent(b, a));
    }

    private boolean isTangent(Spot corner, Spot other) {
        int at = corner.corner();
        return side(corner.eastM(), corner.northM(), other, previous[at])
                        * side(corner.eastM(), corner.northM(), other, next[at])
                >= 0;
    }

    /** Side of the line from a point to a spot on which a corner lies: 1 left, -1 right, 0 on it. */
    private int side(double fromEastM, double fromNorthM, Spot to, int corner) {
        return CGAlgorithmsDD.orientationIndex(
                fromEastM, fromNorthM, to.eastM(), to.northM(), eastM[corner], northM[corner]);
    }

    /** Whether nothing is touched between two spots; both must lie outside or be corners. */
    boolean isOpen(Spot a, Spot b) {
        for (CellRows rows = new CellRows(grid, a, b, 0); rows.next(); ) {
            for (int cell = rows.firstCell(); cell <= rows.lastCell(); cell++) {
                for (int k = edges.start(cell); k < edges.end(cell); k++) {
                    if (meets(a, b, edges.thing(k))) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private boolean meets(Spot a, Spot b, int edge) {
        int end = next[edge];
        if (isOutside(a.eastM(), b.eastM(), eastM[edge], eastM[end])
                || isOutside(a.northM(), b.northM(), northM[edge], northM[end])
                || ends(a, edge)
                || ends(b, edge)) {
            return false;
        }
        if (side(a.eastM(), a.northM(), b, edge) * side(a.eastM(), a.northM(), b, end) > 0) {
            return false;
        }
        return sideOf(edge, a) * sideOf(edge, b) <= 0;
    }

    private boolean ends(Spot spot, int edge) {
        return spot.corner() == edge || (spot.isCorner() && spot.corner() == next[edge]);
    }

    private int sideOf(int edge, Spot spot) {
        int end = next[edge];
        return CGAlgorithmsDD.orientationIndex(
                eastM[edge], northM[edge], eastM[end], northM[end], spot.eastM(), spot.northM());
    }

    private static boolean isOutside(double oneM, double otherM, double fromM, double toM) {
        return Math.max(oneM, otherM) < Math.min(fromM, toM)
                || Math.min(oneM, otherM) > Math.max(fromM, toM);
    }
}
