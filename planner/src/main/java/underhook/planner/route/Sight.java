package underhook.planner.route;

import java.util.Arrays;
import underhook.planner.route.CrossableWires.Span;

/**
 * Looks round from one spot for the spots that a straight piece may end at.
 *
 * <p>Cells are looked through from near to far. The directions are parted into {@value #SECTORS}
 * sectors, and each keeps the distance at which one edge, or one wire met too aslant, closes all of it;
 * what lies behind is not looked at. This only leaves out what is surely hidden: what remains is tested
 * piece by piece. From a corner only the sectors tangent to it are looked at.
 *
 * <p>Not safe for threads.
 */
final class Sight {
    private static final int SECTORS = 2048;

    /** Sectors count as closed, and cells as open, this share of a sector wider than computed. */
    private static final double SLACK_SECTORS_RATIO = 1e-6;

    private static final double NEARER_RATIO = 1 - 1e-9;
    private static final double[] BOUND_EAST_FRACTION = new double[SECTORS + 1];
    private static final double[] BOUND_NORTH_FRACTION = new double[SECTORS + 1];

    static {
        for (int i = 0; i <= SECTORS; i++) {
            double t = 4.0 * (i % SECTORS) / SECTORS;
            double east = t < 2 ? 1 - t : t - 3;
            double north = t < 1 ? t : t < 3 ? 2 - t : t - 4;
            BOUND_EAST_FRACTION[i] = east / Math.hypot(east, north);
            BOUND_NORTH_FRACTION[i] = north / Math.hypot(east, north);
        }
    }

    private final ClosedGround ground;
    private final CrossableWires wires;
    private final Spots spots;

    /** Square of the distance up to which a sector may be open. */
    private final double[] openM2 = new double[SECTORS];

    private final int[] edgeSeenFrom;
    private final int[] spanSeenFrom;
    private int looks;
    private int[] found = new int[64];
    private int count;

    Sight(ClosedGround ground, CrossableWires wires, Spots spots) {
        this.ground = ground;
        this.wires = wires;
        this.spots = spots;
        this.edgeSeenFrom = new int[ground.size()];
        this.spanSeenFrom = new int[wires.size()];
    }

    /** Numbers of the spots to which a straight piece may be flown, in rising order. */
    int[] look(Spot from) {
        looks++;
        count = 0;
        openSectors(from);
        CellGrid grid = ground.grid;
        int column = grid.column(from.eastM());
        int row = grid.row(from.northM());
        boolean within = column >= 0 && column < grid.columns && row >= 0 && row < grid.rows;
        int nearest = Math.max(beyond(column, grid.columns), beyond(row, grid.rows));
        int farthest =
                Math.max(
                        Math.max(column, grid.columns - 1 - column),
                        Math.max(row, grid.rows - 1 - row));
        boolean open = true;
        for (int ring = nearest; ring <= farthest && (open || !within); ring++) {
            open = lookThroughRing(from, column, row, ring);
        }
        return keepOpen(from);
    }

    private static int beyond(int at, int size) {
        return Math.max(0, Math.max(-at, at - size + 1));
    }

    private void openSectors(Spot from) {
        if (!from.isCorner()) {
            Arrays.fill(openM2, Double.POSITIVE_INFINITY);
            return;
        }
        Arrays.fill(openM2, -1);
        int at = from.corner();
        double in = cornerRatio(at, ground.previous[at]);
        double out = cornerRatio(ground.next[at], at);
        // Along both edges and what lies between, and the same backwards.
        openBetween(in + SECTORS / 2.0, out + SECTORS / 2.0);
        openBetween(in, out);
    }

    /** Direction of a corner from another, counted in sectors. */
    private double cornerRatio(int corner, int from) {
        return directionRatio(
                ground.eastM[corner] - ground.eastM[from],
                ground.northM[corner] - ground.northM[from]);
    }

    private void openBetween(double firstRatio, double lastRatio) {
        int first = (int) Math.floor(firstRatio - 1e-3);
        double last = lastRatio < firstRatio ? lastRatio + SECTORS : lastRatio;
        for (int i = first; i <= Math.floor(last + 1e-3); i++) {
            openM2[Math.floorMod(i, SECTORS)] = Double.POSITIVE_INFINITY;
        }
    }

    /** Direction counted in sectors from east over north: 0 to {@value #SECTORS}. */
    private static double directionRatio(double eastM, double northM) {
        double sum = Math.abs(eastM) + Math.abs(northM);
        if (!(sum > 0)) {
            return 0;
        }
        double share = northM / sum;
        double t = eastM < 0 ? 2 - share : northM < 0 ? 4 + share : share;
        return t * (SECTORS / 4.0);
    }

    /** Whether any cell of the ring may hold something open. */
    private boolean lookThroughRing(Spot from, int column, int row, int ring) {
        boolean open = false;
        CellGrid grid = ground.grid;
        int south = Math.max(0, row - ring);
        int north = Math.min(grid.rows - 1, row + ring);
        for (int r = south; r <= north; r++) {
            int step = Math.abs(r - row) == ring ? 1 : Math.max(1, 2 * ring);
            for (int c = column - ring; c <= column + ring; c += step) {
                if (c >= 0 && c < grid.columns && (ring < 2 || isCellOpen(from, c, r))) {
                    open = true;
                    lookThroughCell(from, r * grid.columns + c);
                }
            }
        }
        return open;
    }

    private boolean isCellOpen(Spot from, int column, int row) {
        double size = ground.grid.cellM;
        double west = ground.grid.westM + column * size - from.eastM();
        double south = ground.grid.southM + row * size - from.northM();
        double nearEast = Math.max(0, Math.max(west, -west - size));
        double nearNorth = Math.max(0, Math.max(south, -south - size));
        double nearM2 = (nearEast * nearEast + nearNorth * nearNorth) * NEARER_RATIO;
        double middle = directionRatio(west + size / 2, south + size / 2);
        double low = 0;
        double high = 0;
        for (int k = 0; k < 4; k++) {
            double off = directionRatio(west + (k & 1) * size, south + (k >> 1) * size) - middle;
            off -= SECTORS * Math.rint(off / SECTORS);
            low = Math.min(low, off);
            high = Math.max(high, off);
        }
        int first = (int) Math.floor(middle + low - SLACK_SECTORS_RATIO);
        int last = (int) Math.floor(middle + high + SLACK_SECTORS_RATIO);
        for (int i = first; i <= last; i++) {
            if (openM2[i & (SECTORS - 1)] >= nearM2) {
                return true;
            }
        }
        return false;
    }

    private void lookThroughCell(Spot from, int cell) {
        CellLists edges = ground.edges;
        for (int k = edges.start(cell); k < edges.end(cell); k++) {
            int edge = edges.thing(k);
            if (edgeSeenFrom[edge] != looks) {
                edgeSeenFrom[edge] = looks;
                closeBehind(from, edge);
                add(from, spots.ofCorner(edge));
            }
        }
        CellLists spans = wires.byCell();
        for (int k = spans.start(cell); k < spans.end(cell); k++) {
            int span = spans.thing(k);
            if (spanSeenFrom[span] != looks) {
                spanSeenFrom[span] = looks;
                closeBehind(from, wires.span(span));
            }
        }
        CellLists others = spots.others();
        for (int k = others.start(cell); k < others.end(cell); k++) {
            add(from, spots.firstOther() + others.thing(k));
        }
    }

    private void add(Spot from, int spot) {
        if (spot < 0 || !isPerhapsOpen(from, spots.get(spot))) {
            return;
        }
        if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = spot;
    }

    private boolean isPerhapsOpen(Spot from, Spot to) {
        double east = to.eastM() - from.eastM();
        double north = to.northM() - from.northM();
        int sector = (int) directionRatio(east, north) & (SECTORS - 1);
        return openM2[sector] >= (east * east + north * north) * NEARER_RATIO;
    }

    private void closeBehind(Spot from, int edge) {
        int end = ground.next[edge];
        double east = ground.eastM[edge] - from.eastM();
        double north = ground.northM[edge] - from.northM();
        double endEast = ground.eastM[end] - from.eastM();
        double endNorth = ground.northM[end] - from.northM();
        double cross = east * endNorth - north * endEast;
        boolean own = from.isCorner() && (from.corner() == edge || from.corner() == end);
        // Seen from outside, an edge runs from left to right.
        if (cross < 0 && !own) {
            Line line = new Line(endNorth - north, east - endEast, cross);
            close(directionRatio(endEast, endNorth), directionRatio(east, north), line);
        }
    }

    /** A wire hides what would be reached across it too far off square. */
    private void closeBehind(Spot from, Span span) {
        double east = span.a().eastM() - from.eastM();
        double north = span.a().northM() - from.northM();
        double endEast = span.b().eastM() - from.eastM();
        double endNorth = span.b().northM() - from.northM();
        double cross = east * endNorth - north * endEast;
        Line line = new Line(endNorth - north, east - endEast, cross);
        double low = directionRatio(cross < 0 ? endEast : east, cross < 0 ? endNorth : north);
        double high = directionRatio(cross < 0 ? east : endEast, cross < 0 ? north : endNorth);
        double last = Math.floor(untilRatio(low, high) - SLACK_SECTORS_RATIO);
        for (int i = (int) Math.ceil(low + SLACK_SECTORS_RATIO); i < last; i++) {
            if (isAslant(span, i) && isAslant(span, i + 1)) {
                line.close(openM2, i & (SECTORS - 1));
            }
        }
    }

    private static boolean isAslant(Span span, int bound) {
        int at = bound & (SECTORS - 1);
        double alongFraction =
                span.alongFraction(BOUND_EAST_FRACTION[at], BOUND_NORTH_FRACTION[at]);
        return alongFraction > span.leastFraction() + 1e-6;
    }

    private void close(double lowRatio, double highRatio, Line line) {
        double last = Math.floor(untilRatio(lowRatio, highRatio) - SLACK_SECTORS_RATIO);
        for (int i = (int) Math.ceil(lowRatio + SLACK_SECTORS_RATIO); i < last; i++) {
            line.close(openM2, i & (SECTORS - 1));
        }
    }

    private static double untilRatio(double lowRatio, double highRatio) {
        return highRatio < lowRatio ? highRatio + SECTORS : highRatio;
    }

    /** The points p with normal · p = cross, seen from the spot. */
    private record Line(double normalEastM, double normalNorthM, double crossM2) {
        void close(double[] openM2, int sector) {
            double far = Math.max(distanceM(sector), distanceM(sector + 1));
            openM2[sector] = Math.min(openM2[sector], far * far);
        }

        private double distanceM(int bound) {
            return crossM2
                    / (normalEastM * BOUND_EAST_FRACTION[bound]
                            + normalNorthM * BOUND_NORTH_FRACTION[bound]);
        }
    }

    private int[] keepOpen(Spot from) {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            Spot to = spots.get(found[i]);
            if (!to.equals(from)
                    && isPerhapsOpen(from, to)
                    && ground.isTangentAtCorners(from, to)
                    && ground.isOpen(from, to)
                    && wires.passes(from.toPoint(), to.toPoint())) {
                found[kept++] = found[i];
            }
        }
        int[] open = Arrays.copyOf(found, kept);
        Arrays.sort(open);
        return open;
    }
}
