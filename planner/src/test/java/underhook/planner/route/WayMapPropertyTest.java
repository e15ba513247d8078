package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.relateng.RelateNG;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.testkit.SeededSamples;

/**
 * Ways against a graph made by brute force: every corner of the union, every pair of them, each piece
 * judged by the geometry library whether its inside meets the inside of closed ground.
 */
class WayMapPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Sums of a few square roots in double arithmetic. */
    private static final double SHARE = 1e-9;

    private static final double WIRE_CLEARANCE_M = 25;
    private static final WayMap.Wind STILL = new WayMap.Wind(0, 0, 1);

    @Test
    void is_as_short_as_by_brute_force() {
        SeededSamples.of(41).forEach(200, samples -> compare(closedAreas(samples), samples));
    }

    @Test
    void is_as_short_as_by_brute_force_where_edges_lie_in_one_line() {
        SeededSamples.of(42).forEach(200, samples -> compare(blocks(samples), samples));
    }

    @Test
    void gets_no_shorter_by_another_obstacle_and_is_as_long_backwards() {
        SeededSamples.of(43)
                .forEach(
                        300,
                        samples -> {
                            List<Geometry> areas = closedAreas(samples);
                            PlanePoint from = point(samples);
                            PlanePoint to = point(samples);
                            double beforeM = costS(WayMap.around(areas).findWay(from, to), STILL);
                            areas.add(star(samples));
                            WayMap more = WayMap.around(areas);
                            double afterM = costS(more.findWay(from, to), STILL);
                            double backM = costS(more.findWay(to, from), STILL);

                            assertThat(afterM).isGreaterThanOrEqualTo(beforeM * (1 - SHARE));
                            assertSame(backM, afterM);
                        });
    }

    @Test
    void knows_closed_ground_as_the_library_does() {
        SeededSamples.of(47)
                .forEach(
                        200,
                        samples -> {
                            List<Geometry> areas =
                                    samples.wholeBetween(0, 1) == 0
                                            ? closedAreas(samples)
                                            : blocks(samples);
                            Geometry union = UnaryUnionOp.union(areas);
                            WayMap map = WayMap.around(areas);
                            for (int i = 0; i < 50; i++) {
                                PlanePoint point =
                                        new PlanePoint(
                                                50 * samples.wholeBetween(-2, 28),
                                                50 * samples.wholeBetween(-2, 28));
                                assertThat(map.isInsideBlock(point))
                                        .isEqualTo(
                                                union.covers(
                                                        FACTORY.createPoint(coordinate(point))));
                            }
                        });
    }

    @Test
    void sees_the_same_from_both_ends() {
        SeededSamples.of(44)
                .forEach(
                        100,
                        samples -> {
                            WayMap map = WayMap.around(closedAreas(samples)).prepared();

                            assertThat(map.isSeenBothWays()).isTrue();
                        });
    }

    @Test
    void crosses_wires_only_as_allowed_and_never_gains_by_one() {
        SeededSamples.of(46)
                .forEach(
                        200,
                        samples -> {
                            List<Geometry> areas = closedAreas(samples);
                            List<WirePlan> wires = new ArrayList<>();
                            int count = samples.wholeBetween(1, 3);
                            for (int i = 0; i < count; i++) {
                                double eastM = samples.between(0, 1000);
                                wires.add(Wires.northSouth(eastM, CrossingRule.ALLOWED, 540));
                            }
                            PlanePoint from = point(samples);
                            PlanePoint to = point(samples);
                            WayMap map = new WayMap(areas, wires, WIRE_CLEARANCE_M);
                            Optional<List<PlanePoint>> way = map.findWay(from, to);

                            way.ifPresent(found -> assertLegal(found, UnaryUnionOp.union(areas)));
                            way.ifPresent(found -> wires.forEach(wire -> assertLegal(found, wire)));
                            assertSame(costS(map.findWay(to, from), STILL), costS(way, STILL));
                            assertThat(costS(way, STILL))
                                    .isGreaterThanOrEqualTo(
                                            costS(WayMap.around(areas).findWay(from, to), STILL)
                                                    * (1 - SHARE));
                        });
    }

    /** Across a wire within 20° of square, else off its corridor. */
    private static void assertLegal(List<PlanePoint> way, WirePlan wire) {
        LineString spans =
                FACTORY.createLineString(
                        wire.supports().stream()
                                .map(WayMapPropertyTest::coordinate)
                                .toArray(Coordinate[]::new));
        for (int i = 0; i + 1 < way.size(); i++) {
            LineString piece = line(coordinate(way.get(i)), coordinate(way.get(i + 1)));
            if (piece.intersects(spans)) {
                double east = Math.abs(way.get(i + 1).eastM() - way.get(i).eastM());
                double north = Math.abs(way.get(i + 1).northM() - way.get(i).northM());
                assertThat(Math.toDegrees(Math.atan2(north, east))).isLessThan(20 + 1e-6);
            } else {
                assertThat(piece.distance(spans))
                        .isGreaterThanOrEqualTo(wire.corridorM(WIRE_CLEARANCE_M) - 1e-6);
            }
        }
    }

    private static void compare(List<Geometry> areas, SeededSamples samples) {
        Geometry union = UnaryUnionOp.union(areas);
        WayMap map = WayMap.around(areas);
        PlanePoint from = point(samples);
        PlanePoint to = point(samples);
        WayMap.Wind wind = new WayMap.Wind(samples.between(-20, 20), samples.between(-20, 20), 25);
        Brute brute = new Brute(union, from, to);
        for (WayMap.Wind each : List.of(STILL, wind)) {
            Optional<List<PlanePoint>> way = map.findWay(from, to, each);

            way.ifPresent(found -> assertLegal(found, union));
            assertSame(costS(way, each), brute.leastS(each));
        }
    }

    private static void assertSame(double found, double expected) {
        if (Double.isInfinite(expected)) {
            assertThat(found).isInfinite();
        } else {
            assertThat(found).isCloseTo(expected, within(expected * SHARE));
        }
    }

    private static void assertLegal(List<PlanePoint> way, Geometry union) {
        for (int i = 0; i + 1 < way.size(); i++) {
            LineString piece = line(coordinate(way.get(i)), coordinate(way.get(i + 1)));
            assertThat(RelateNG.relate(union, piece, "T********")).isFalse();
        }
    }

    /** From pieces of one map: round ones, spiky ones, some of them with a hole. */
    private static List<Geometry> closedAreas(SeededSamples samples) {
        List<Geometry> areas = new ArrayList<>();
        int count = samples.wholeBetween(1, 9);
        for (int i = 0; i < count; i++) {
            Geometry area = star(samples);
            boolean ring = samples.wholeBetween(0, 7) == 0;
            areas.add(ring ? area.difference(area.buffer(-samples.between(10, 60))) : area);
        }
        areas.removeIf(Geometry::isEmpty);
        return areas;
    }

    private static Geometry star(SeededSamples samples) {
        PlanePoint centre = point(samples);
        int corners = samples.wholeBetween(3, 9);
        boolean spiky = samples.wholeBetween(0, 1) == 0;
        double radiusM = samples.between(40, 250);
        Coordinate[] ring = new Coordinate[corners + 1];
        for (int i = 0; i < corners; i++) {
            double outM = spiky ? radiusM * samples.between(0.3, 1) : radiusM;
            PlanePoint corner = centre.towards(2 * Math.PI * (i + 0.1) / corners, outM);
            ring[i] = coordinate(corner);
        }
        ring[corners] = ring[0];
        return FACTORY.createPolygon(ring);
    }

    /** Rectangles on a grid of 100 m, so that edges lie in one line, none of them touching. */
    private static List<Geometry> blocks(SeededSamples samples) {
        List<Geometry> areas = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            int west = samples.wholeBetween(0, 9);
            int south = samples.wholeBetween(0, 9);
            Coordinate low = new Coordinate(100.0 * west, 100.0 * south);
            Coordinate high =
                    new Coordinate(
                            low.x + 100 * samples.wholeBetween(1, 4),
                            low.y + 100 * samples.wholeBetween(1, 4));
            Geometry area = FACTORY.toGeometry(new Envelope(low, high));
            if (areas.stream().noneMatch(other -> other.touches(area)) && !isPinched(areas, area)) {
                areas.add(area);
            }
        }
        return areas;
    }

    /** Whether two parts of the union would meet in a point, between which we do not fly. */
    private static boolean isPinched(List<Geometry> areas, Geometry another) {
        List<Geometry> all = new ArrayList<>(areas);
        all.add(another);
        Geometry union = UnaryUnionOp.union(all);
        Coordinate[] corners = union.getCoordinates();
        long rings = 0;
        for (int i = 0; i < union.getNumGeometries(); i++) {
            rings += 1 + ((Polygon) union.getGeometryN(i)).getNumInteriorRing();
        }
        Set<Coordinate> distinct = new TreeSet<>(Arrays.asList(corners));
        return distinct.size() != corners.length - rings;
    }

    /** Never on the edge of a block: there no way starts, though the library would let one. */
    private static PlanePoint point(SeededSamples samples) {
        return new PlanePoint(samples.between(-99.7, 1099.7), samples.between(-99.7, 1099.7));
    }

    private static Coordinate coordinate(PlanePoint point) {
        return new Coordinate(point.eastM(), point.northM());
    }

    private static LineString line(Coordinate a, Coordinate b) {
        return FACTORY.createLineString(new Coordinate[] {a, b});
    }

    private static double costS(Optional<List<PlanePoint>> way, WayMap.Wind wind) {
        if (way.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double sumS = 0;
        for (int i = 0; i + 1 < way.get().size(); i++) {
            sumS += durationS(coordinate(way.get().get(i)), coordinate(way.get().get(i + 1)), wind);
        }
        return sumS;
    }

    /** The t at which the end, adrift by the wind, is that far off: |d - w t| = v t. */
    private static double durationS(Coordinate a, Coordinate b, WayMap.Wind wind) {
        double east = b.x - a.x;
        double north = b.y - a.y;
        double v = wind.airspeedMPerS();
        double w2 =
                wind.towardsEastMPerS() * wind.towardsEastMPerS()
                        + wind.towardsNorthMPerS() * wind.towardsNorthMPerS();
        double half = east * wind.towardsEastMPerS() + north * wind.towardsNorthMPerS();
        double square = v * v - w2;
        double root = Math.sqrt(half * half + square * (east * east + north * north));
        if (Math.abs(square) < 1e-9) {
            return Double.POSITIVE_INFINITY;
        }
        double one = (-half + root) / square;
        double other = (-half - root) / square;
        double least = Math.min(one > 0 ? one : other, other > 0 ? other : one);
        return least >= 0 ? least : Double.POSITIVE_INFINITY;
    }

    /** All corners and all pieces that keep off the inside of the union. */
    private static final class Brute {
        private final List<Coordinate> corners = new ArrayList<>();
        private final boolean[][] open;

        Brute(Geometry union, PlanePoint from, PlanePoint to) {
            corners.add(coordinate(from));
            corners.add(coordinate(to));
            corners.addAll(new TreeSet<>(Arrays.asList(union.getCoordinates())));
            RelateNG prepared = RelateNG.prepare(union);
            open = new boolean[corners.size()][corners.size()];
            for (int i = 0; i < corners.size(); i++) {
                for (int j = 0; j < i; j++) {
                    LineString piece = line(corners.get(i), corners.get(j));
                    open[i][j] = !prepared.evaluate(piece, "T********");
                    open[j][i] = open[i][j];
                }
            }
        }

        double leastS(WayMap.Wind wind) {
            double[] bestS = new double[corners.size()];
            Arrays.fill(bestS, Double.POSITIVE_INFINITY);
            bestS[0] = 0;
            boolean[] done = new boolean[corners.size()];
            for (int round = 0; round < corners.size(); round++) {
                int at = -1;
                for (int i = 0; i < corners.size(); i++) {
                    if (!done[i] && (at < 0 || bestS[i] < bestS[at])) {
                        at = i;
                    }
                }
                done[at] = true;
                for (int i = 0; i < corners.size(); i++) {
                    if (open[at][i]) {
                        double nowS = bestS[at] + durationS(corners.get(at), corners.get(i), wind);
                        bestS[i] = Math.min(bestS[i], nowS);
                    }
                }
            }
            return bestS[1];
        }
    }
}
