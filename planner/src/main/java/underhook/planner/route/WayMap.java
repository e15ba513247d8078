package underhook.planner.route;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import underhook.core.geo.PlanePoint;

/**
 * Shortest ways in plan around obstacles and over wires that may be crossed.
 *
 * <p>A visibility graph over the corners of the obstacles and over gates beside the wires. Away from
 * wires the shortest way is exact for the polygons given (round buffers are polygons outside the
 * circle). Wires are crossed where a piece of the way meets them within the allowed angle of square;
 * gates stand every {@value #GATE_SPACING_M} m, so that the way over a wire may be longer than the
 * shortest by some ten metres, never shorter than allowed.
 *
 * <p>Safe for threads after construction.
 */
final class WayMap {
    private static final double GATE_SPACING_M = 60;

    /** Corners stand this far off their obstacle, so that a way along it does not touch it. */
    private static final double CORNER_OFFSET_M = 0.25;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<PreparedGeometry> blocks = new ArrayList<>();
    private final STRtree blockIndex = new STRtree();
    private final List<WirePlan> wires;
    private final double wireClearanceM;
    private final List<PlanePoint> nodes = new ArrayList<>();
    private final int[][] neighbours;
    private final double[][] lengthsM;

    WayMap(List<Obstacle> obstacles, List<WirePlan> wires, double wireClearanceM) {
        this.wires = List.copyOf(wires);
        this.wireClearanceM = wireClearanceM;
        List<Geometry> areas = new ArrayList<>();
        obstacles.forEach(obstacle -> areas.add(obstacle.area()));
        for (WirePlan wire : wires) {
            if (!wire.isCrossable()) {
                areas.add(corridor(wire));
            }
        }
        addBlocks(areas);
        for (WirePlan wire : wires) {
            if (wire.isCrossable()) {
                addGates(wire);
            }
        }
        nodes.removeIf(node -> isInsideBlock(node) || isInCorridor(node));
        neighbours = new int[nodes.size()][];
        lengthsM = new double[nodes.size()][];
        connect();
    }

    private Geometry corridor(WirePlan wire) {
        Coordinate[] points =
                wire.supports().stream()
                        .map(point -> new Coordinate(point.eastM(), point.northM()))
                        .toArray(Coordinate[]::new);
        return Obstacles.widen(FACTORY.createLineString(points), wire.corridorM(wireClearanceM));
    }

    private void addBlocks(List<Geometry> areas) {
        if (areas.isEmpty()) {
            blockIndex.build();
            return;
        }
        Geometry union = UnaryUnionOp.union(areas);
        Geometry outside = union.buffer(CORNER_OFFSET_M, 2);
        for (Coordinate corner : outside.getCoordinates()) {
            nodes.add(new PlanePoint(corner.x, corner.y));
        }
        for (int i = 0; i < union.getNumGeometries(); i++) {
            PreparedGeometry block = PreparedGeometryFactory.prepare(union.getGeometryN(i));
            blocks.add(block);
            blockIndex.insert(block.getGeometry().getEnvelopeInternal(), block);
        }
        blockIndex.build();
    }

    /** Pairs of points on both sides of a wire, square to it, and the corners of its corridor's ends. */
    private void addGates(WirePlan wire) {
        double offM = wire.corridorM(wireClearanceM) + 1;
        List<PlanePoint> supports = wire.supports();
        for (int i = 0; i + 1 < supports.size(); i++) {
            PlanePoint a = supports.get(i);
            PlanePoint b = supports.get(i + 1);
            double lengthM = a.distanceToM(b);
            double alongRad = a.bearingToGridRad(b);
            int count = Math.max(1, (int) Math.floor(lengthM / GATE_SPACING_M));
            for (int k = 0; k < count; k++) {
                PlanePoint foot = Plane.between(a, b, (k + 0.5) / count);
                nodes.add(foot.towards(alongRad + Math.PI / 2, offM));
                nodes.add(foot.towards(alongRad - Math.PI / 2, offM));
            }
        }
        for (Coordinate corner : corridor(wire).buffer(1, 2).getCoordinates()) {
            nodes.add(new PlanePoint(corner.x, corner.y));
        }
    }

    private void connect() {
        int n = nodes.size();
        boolean[][] open = new boolean[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean free = isFree(nodes.get(i), nodes.get(j));
                open[i][j] = free;
                open[j][i] = free;
            }
        }
        for (int i = 0; i < n; i++) {
            int[] near = new int[n];
            double[] far = new double[n];
            int count = 0;
            for (int j = 0; j < n; j++) {
                if (i != j && open[i][j]) {
                    near[count] = j;
                    far[count] = nodes.get(i).distanceToM(nodes.get(j));
                    count++;
                }
            }
            neighbours[i] = Arrays.copyOf(near, count);
            lengthsM[i] = Arrays.copyOf(far, count);
        }
    }

    /** Whether a point lies on ground that may not be entered. */
    boolean isInsideBlock(PlanePoint point) {
        var jts = FACTORY.createPoint(new Coordinate(point.eastM(), point.northM()));
        for (Object found : blockIndex.query(jts.getEnvelopeInternal())) {
            PreparedGeometry block = (PreparedGeometry) found;
            if (block.contains(jts)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a point lies in the corridor of a wire that may only be crossed. */
    boolean isInCorridor(PlanePoint point) {
        for (WirePlan wire : wires) {
            if (wire.isCrossable() && distanceM(wire, point) < wire.corridorM(wireClearanceM)) {
                return true;
            }
        }
        return false;
    }

    private static double distanceM(WirePlan wire, PlanePoint point) {
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < wire.supports().size(); i++) {
            best =
                    Math.min(
                            best,
                            Plane.distanceToPieceM(
                                    wire.supports().get(i), wire.supports().get(i + 1), point));
        }
        return best;
    }

    /** Whether the straight piece between two points may be flown. */
    boolean isFree(PlanePoint a, PlanePoint b) {
        Envelope envelope = new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM());
        List<?> near = blockIndex.query(envelope);
        if (!near.isEmpty()) {
            LineString piece =
                    FACTORY.createLineString(
                            new Coordinate[] {
                                new Coordinate(a.eastM(), a.northM()),
                                new Coordinate(b.eastM(), b.northM())
                            });
            for (Object found : near) {
                if (((PreparedGeometry) found).intersects(piece)) {
                    return false;
                }
            }
        }
        for (WirePlan wire : wires) {
            if (wire.isCrossable() && !passesWire(wire, a, b)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether the piece keeps its rules with a wire: clear of the corridor, or across it at the allowed
     * angle with both ends outside the corridor.
     */
    private boolean passesWire(WirePlan wire, PlanePoint a, PlanePoint b) {
        List<PlanePoint> supports = wire.supports();
        double corridorM = wire.corridorM(wireClearanceM);
        double reachM = corridorM;
        double west = Math.min(a.eastM(), b.eastM()) - reachM;
        double east = Math.max(a.eastM(), b.eastM()) + reachM;
        double south = Math.min(a.northM(), b.northM()) - reachM;
        double north = Math.max(a.northM(), b.northM()) + reachM;
        boolean crosses = false;
        boolean grazes = false;
        double least = Math.cos(Math.PI / 2 - wire.wire().crossingOffSquareRad());
        for (int i = 0; i + 1 < supports.size(); i++) {
            PlanePoint c = supports.get(i);
            PlanePoint d = supports.get(i + 1);
            boolean away =
                    Math.max(c.eastM(), d.eastM()) < west
                            || Math.min(c.eastM(), d.eastM()) > east
                            || Math.max(c.northM(), d.northM()) < south
                            || Math.min(c.northM(), d.northM()) > north;
            if (away) {
                continue;
            }
            if (Plane.crossingFraction(a, b, c, d) >= 0) {
                crosses = true;
                double cos = Math.abs(Math.cos(a.bearingToGridRad(b) - c.bearingToGridRad(d)));
                // |cos| of the angle between piece and wire is 0 when square.
                if (cos > least + 1e-9) {
                    return false;
                }
            } else if (pieceDistanceM(a, b, c, d) < corridorM) {
                grazes = true;
            }
        }
        if (crosses) {
            return distanceM(wire, a) >= corridorM && distanceM(wire, b) >= corridorM;
        }
        return !grazes;
    }

    /** Distance of two pieces that do not cross. */
    private static double pieceDistanceM(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
        return Math.min(
                Math.min(Plane.distanceToPieceM(a, b, c), Plane.distanceToPieceM(a, b, d)),
                Math.min(Plane.distanceToPieceM(c, d, a), Plane.distanceToPieceM(c, d, b)));
    }

    /** The shortest way between two points, both included; empty when there is none. */
    Optional<List<PlanePoint>> findWay(PlanePoint from, PlanePoint to) {
        if (isFree(from, to)) {
            return Optional.of(from.equals(to) ? List.of(from) : List.of(from, to));
        }
        int n = nodes.size();
        boolean[] seesEnd = new boolean[n];
        for (int i = 0; i < n; i++) {
            seesEnd[i] = isFree(nodes.get(i), to);
        }
        double[] bestM = new double[n];
        Arrays.fill(bestM, Double.POSITIVE_INFINITY);
        int[] before = new int[n];
        Arrays.fill(before, -1);
        PriorityQueue<double[]> queue =
                new PriorityQueue<>(
                        (one, other) -> {
                            int byCost = Double.compare(one[0], other[0]);
                            return byCost != 0 ? byCost : Double.compare(one[1], other[1]);
                        });
        for (int i = 0; i < n; i++) {
            if (isFree(from, nodes.get(i))) {
                bestM[i] = from.distanceToM(nodes.get(i));
                queue.add(new double[] {bestM[i] + nodes.get(i).distanceToM(to), i});
            }
        }
        double endM = Double.POSITIVE_INFINITY;
        int last = -1;
        boolean[] done = new boolean[n];
        while (!queue.isEmpty()) {
            double[] head = queue.poll();
            int i = (int) head[1];
            if (head[0] >= endM) {
                break;
            }
            if (done[i]) {
                continue;
            }
            done[i] = true;
            if (seesEnd[i] && bestM[i] + nodes.get(i).distanceToM(to) < endM) {
                endM = bestM[i] + nodes.get(i).distanceToM(to);
                last = i;
            }
            for (int k = 0; k < neighbours[i].length; k++) {
                int j = neighbours[i][k];
                double nowM = bestM[i] + lengthsM[i][k];
                if (nowM < bestM[j] - 1e-9) {
                    bestM[j] = nowM;
                    before[j] = i;
                    queue.add(new double[] {nowM + nodes.get(j).distanceToM(to), j});
                }
            }
        }
        if (last < 0) {
            return Optional.empty();
        }
        List<PlanePoint> way = new ArrayList<>();
        way.add(to);
        for (int i = last; i >= 0; i = before[i]) {
            way.add(nodes.get(i));
        }
        way.add(from);
        Collections.reverse(way);
        return Optional.of(way);
    }
}
