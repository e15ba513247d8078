package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.relateng.RelateNG;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import underhook.core.geo.PlanePoint;
import underhook.testkit.SeededSamples;

class CheapestWayTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double AIRSPEED = 25;
    private static final WayMap.Wind STILL = new WayMap.Wind(0, 0, AIRSPEED);

    /**
     * At the straight edge between two weights the shortest way is broken by the law of refraction: the
     * products of weight and sine of the angle to the normal are equal on both sides.
     *
     * @source MITCHELL-PAPADIMITRIOU-1991
     */
    @Test
    void a_way_into_dearer_ground_is_broken_as_light_is() {
        for (double priceS : new double[] {1, 4, 12, 40}) {
            Exposures exposures =
                    new Exposures(List.of(Exposed.area("lake", box(-5000, 0, 5000, 4000), priceS)));
            WayMap map = WayMap.around(List.of());
            PlanePoint from = new PlanePoint(0, -300);
            PlanePoint to = new PlanePoint(800, 250);

            List<PlanePoint> way = new CrossingBends(exposures, map, STILL).bend(List.of(from, to));
            double found = CheapestWay.timeS(way, STILL) + exposures.priceS(way);

            double expected = refractedS(1 / AIRSPEED, 1 / AIRSPEED + priceS / 100);
            assertThat(found).as("price " + priceS).isCloseTo(expected, within(1e-5 * expected));
            assertThat(find(exposures, List.of(), from, to).boundS())
                    .isBetween(0.8 * expected, expected * (1 + 1e-9));
        }
    }

    /** From 300 m before the edge to 250 m behind it, 800 m along it; weights in seconds a metre. */
    private static double refractedS(double before, double behind) {
        double low = 0;
        double high = 800;
        for (int i = 0; i < 200; i++) {
            double x = (low + high) / 2;
            double sinBefore = x / Math.hypot(x, 300);
            double sinBehind = (800 - x) / Math.hypot(800 - x, 250);
            if (before * sinBefore < behind * sinBehind) {
                low = x;
            } else {
                high = x;
            }
        }
        return before * Math.hypot(low, 300) + behind * Math.hypot(800 - low, 250);
    }

    @Test
    void a_road_is_flown_round_where_that_takes_less_than_its_price() {
        // By hand: 2 · √(1000² + 300²) = 2088.06 m against 2000 m: 3.52 s more at 25 m/s.
        LineString road = line(1000, -3000, 1000, 300);
        PlanePoint from = new PlanePoint(0, 0);
        PlanePoint to = new PlanePoint(2000, 0);

        CheapestWay.Found dear = find(line("road", road, 5), List.of(), from, to);
        assertThat(dear.boundS()).isCloseTo(2088.061 / AIRSPEED, within(0.01));
        Exposures keptOff =
                new Exposures(List.of(Exposed.line("road", road, road.buffer(1, 1), 5)));
        assertThat(find(keptOff, List.of(), from, to).ways().get(0)).hasSizeGreaterThan(2);

        CheapestWay.Found cheap = find(line("road", road, 3), List.of(), from, to);
        assertThat(cheap.boundS()).isCloseTo(80 + 3, within(1e-9));
        assertThat(cheap.ways().get(0)).containsExactly(from, to);
    }

    @Test
    void a_slanting_crossing_is_made_square_where_that_gains() {
        LineString road = line(-5000, -5000, 5000, 5000);
        PlanePoint from = new PlanePoint(0, -300);
        PlanePoint to = new PlanePoint(700, 1000);
        Exposures exposures = line("road", road, 60);
        List<PlanePoint> straight = List.of(from, to);

        List<PlanePoint> bent =
                new CrossingBends(exposures, WayMap.around(List.of()), STILL).bend(straight);

        // 45° to the road, 61.7° flown: 16.7° off along it, where 60 s / sin 16.7° count at most
        // thrice.
        assertThat(exposures.priceS(straight)).isCloseTo(180, within(1e-6));
        assertThat(exposures.priceS(bent)).isCloseTo(60, within(1e-6));
        assertThat(CheapestWay.timeS(bent, STILL))
                .isLessThan(CheapestWay.timeS(straight, STILL) + 5);
    }

    /** Against every way over all corners of closed ground and all ends of roads, each crossing counted. */
    @Test
    void crossings_are_as_cheap_as_by_brute_force() {
        int[] tight = new int[1];
        SeededSamples.of(71)
                .forEach(
                        150,
                        samples -> {
                            Geometry closed = closed(samples);
                            List<LineString> roads = new ArrayList<>();
                            List<Exposed> things = new ArrayList<>();
                            double priceS = samples.between(0.5, 30);
                            for (int i = 0; i < 3; i++) {
                                LineString road =
                                        line(
                                                samples.between(0, 1000),
                                                samples.between(0, 1000),
                                                samples.between(0, 1000),
                                                samples.between(0, 1000));
                                roads.add(road);
                                things.add(exposed("road" + i, road, priceS));
                            }
                            PlanePoint from = point(samples);
                            PlanePoint to = point(samples);
                            List<Coordinate> corners = new ArrayList<>();
                            for (LineString road : roads) {
                                corners.addAll(beyondEnds(road));
                            }
                            double bruteS =
                                    bruteS(
                                            closed,
                                            corners,
                                            List.of(from, to),
                                            (a, b) ->
                                                    a.distance(b) / AIRSPEED
                                                            + priceS * crossed(roads, a, b));
                            CheapestWay.Found found =
                                    find(new Exposures(things), List.of(closed), from, to);
                            if (Double.isInfinite(bruteS)) {
                                assertThat(found.ways()).isEmpty();
                                return;
                            }
                            assertThat(found.boundS()).isLessThanOrEqualTo(bruteS * (1 + 1e-9));
                            tight[0] += found.boundS() > bruteS - 0.02 ? 1 : 0;
                        });
        // A road that is crossed twice is paid once in the bound.
        assertThat(tight[0]).isGreaterThan(120);
    }

    /** Against ways over points every 20 m along the edges of dearer ground. */
    @Test
    void no_way_over_dearer_ground_goes_below_the_bound() {
        double[] sum = new double[3];
        SeededSamples.of(72)
                .forEach(
                        60,
                        samples -> {
                            Geometry closed = closed(samples);
                            Geometry lake = star(samples, 200, 350);
                            double priceS = samples.between(0.5, 20);
                            Exposures exposures =
                                    new Exposures(List.of(Exposed.area("lake", lake, priceS)));
                            PlanePoint from = point(samples);
                            PlanePoint to = point(samples);
                            double bruteS =
                                    bruteS(
                                            closed,
                                            Arrays.asList(
                                                    org.locationtech.jts.densify.Densifier.densify(
                                                                    lake, 20)
                                                            .getCoordinates()),
                                            List.of(from, to),
                                            (a, b) ->
                                                    a.distance(b) / AIRSPEED
                                                            + priceS
                                                                    / 100
                                                                    * lake.intersection(
                                                                                    FACTORY
                                                                                            .createLineString(
                                                                                                    new Coordinate
                                                                                                            [] {
                                                                                                        a,
                                                                                                        b
                                                                                                    }))
                                                                            .getLength());
                            CheapestWay.Found found = find(exposures, List.of(closed), from, to);
                            if (Double.isInfinite(bruteS)) {
                                return;
                            }
                            assertThat(found.boundS()).isLessThanOrEqualTo(bruteS * (1 + 1e-9));
                            WayMap map = WayMap.around(List.of(closed));
                            double foundS =
                                    found.ways().stream()
                                            .map(new CrossingBends(exposures, map, STILL)::bend)
                                            .mapToDouble(
                                                    way ->
                                                            CheapestWay.timeS(way, STILL)
                                                                    + exposures.priceS(way))
                                            .min()
                                            .orElseThrow();
                            assertThat(foundS).isGreaterThanOrEqualTo(found.boundS() * (1 - 1e-9));
                            sum[0] += found.boundS();
                            sum[1] += bruteS;
                            sum[2] += foundS;
                        });
        // Measured: bound and way together within a few percent of the ways over all points.
        assertThat(sum[0] / sum[1]).isGreaterThan(0.9);
        assertThat(sum[2] / sum[1]).isLessThan(1.03);
    }

    private static int crossed(List<LineString> roads, Coordinate a, Coordinate b) {
        LineString piece = FACTORY.createLineString(new Coordinate[] {a, b});
        return (int)
                roads.stream()
                        .filter(road -> road.isWithinDistance(piece, Exposed.TOUCH_M))
                        .count();
    }

    /** Points just beyond both ends of a road, round which a way may go. */
    private static List<Coordinate> beyondEnds(LineString road) {
        Coordinate a = road.getCoordinateN(0);
        Coordinate b = road.getCoordinateN(1);
        double share = 0.05 / a.distance(b);
        return List.of(
                new Coordinate(a.x - share * (b.x - a.x), a.y - share * (b.y - a.y)),
                new Coordinate(b.x + share * (b.x - a.x), b.y + share * (b.y - a.y)));
    }

    private static double bruteS(
            Geometry closed,
            List<Coordinate> more,
            List<PlanePoint> ends,
            ToDoubleBiFunction<Coordinate, Coordinate> costS) {
        List<Coordinate> spots = new ArrayList<>();
        ends.forEach(end -> spots.add(new Coordinate(end.eastM(), end.northM())));
        spots.addAll(more);
        spots.addAll(Arrays.asList(closed.getCoordinates()));
        RelateNG prepared = RelateNG.prepare(closed);
        double[] bestS = new double[spots.size()];
        boolean[] done = new boolean[spots.size()];
        Arrays.fill(bestS, Double.POSITIVE_INFINITY);
        bestS[0] = 0;
        while (true) {
            int at = -1;
            for (int i = 0; i < bestS.length; i++) {
                at = !done[i] && bestS[i] < (at < 0 ? 1e300 : bestS[at]) ? i : at;
            }
            if (at < 0 || at == 1) {
                return bestS[1];
            }
            done[at] = true;
            for (int i = 0; i < bestS.length; i++) {
                Coordinate a = spots.get(at);
                Coordinate b = spots.get(i);
                if (!done[i]
                        && bestS[at] + a.distance(b) / AIRSPEED < bestS[i]
                        && !a.equals2D(b)
                        && !prepared.evaluate(
                                FACTORY.createLineString(new Coordinate[] {a, b}), "T********")) {
                    bestS[i] = Math.min(bestS[i], bestS[at] + costS.applyAsDouble(a, b));
                }
            }
        }
    }

    private static CheapestWay.Found find(
            Exposures exposures, List<Geometry> closed, PlanePoint from, PlanePoint to) {
        WayMap map = WayMap.around(closed);
        return new CheapestWay(exposures, (key, more) -> map.with(more), 200).find(from, to, STILL);
    }

    private static Exposures line(String id, LineString road, double priceS) {
        return new Exposures(List.of(exposed(id, road, priceS)));
    }

    private static Exposed exposed(String id, LineString road, double priceS) {
        return Exposed.line(id, road, road.buffer(Exposed.TOUCH_M / 2, 1), priceS);
    }

    private static LineString line(double east, double north, double toEast, double toNorth) {
        return FACTORY.createLineString(
                new Coordinate[] {new Coordinate(east, north), new Coordinate(toEast, toNorth)});
    }

    private static Geometry box(double west, double south, double east, double north) {
        return FACTORY.toGeometry(new Envelope(west, east, south, north));
    }

    private static Geometry closed(SeededSamples samples) {
        List<Geometry> areas = new ArrayList<>();
        int count = samples.wholeBetween(1, 4);
        for (int i = 0; i < count; i++) {
            areas.add(star(samples, 40, 160));
        }
        return UnaryUnionOp.union(areas);
    }

    private static Geometry star(SeededSamples samples, double leastM, double mostM) {
        PlanePoint centre = point(samples);
        int corners = samples.wholeBetween(3, 8);
        double radiusM = samples.between(leastM, mostM);
        Coordinate[] ring = new Coordinate[corners + 1];
        for (int i = 0; i < corners; i++) {
            PlanePoint corner =
                    centre.towards(
                            2 * Math.PI * (i + 0.1) / corners, radiusM * samples.between(0.5, 1));
            ring[i] = new Coordinate(corner.eastM(), corner.northM());
        }
        ring[corners] = ring[0];
        return FACTORY.createPolygon(ring);
    }

    private static PlanePoint point(SeededSamples samples) {
        return new PlanePoint(samples.between(-99.7, 1099.7), samples.between(-99.7, 1099.7));
    }

    /** Against every way over points of a grid and the ends: an area may hold both ends, one or none. */
    @Test
    void the_least_that_an_area_takes_holds_wherever_the_ends_lie() {
        SeededSamples.of(73)
                .forEach(
                        200,
                        samples -> {
                            Geometry lake = star(samples, 200, 450);
                            Exposed area = Exposed.area("lake", lake, 100);
                            PlanePoint from = point(samples);
                            PlanePoint to = point(samples);
                            PlanePoint over = point(samples);
                            LineString way = Exposures.line(List.of(from, over, to));
                            double overM = lake.intersection(way).getLength();

                            // One second for each metre: what the levels reached come to.
                            double leastM = area.anyhowS(from, to);
                            for (int level = 0; level < area.levels(); level++) {
                                if (area.closed(level).intersects(way)) {
                                    leastM += area.levelPriceS(level, from, to);
                                }
                            }
                            assertThat(leastM).isLessThanOrEqualTo(overM + 1e-6);
                        });
    }

    /** The quick length over an area of many corners against that by overlay. */
    @Test
    void lengths_over_many_corners_are_those_by_overlay() {
        SeededSamples.of(74)
                .forEach(
                        60,
                        samples -> {
                            List<Geometry> squares = new ArrayList<>();
                            for (int i = 0; i < 150; i++) {
                                double east = 50 * samples.wholeBetween(0, 20);
                                double north = 50 * samples.wholeBetween(0, 20);
                                squares.add(box(east, north, east + 50, north + 50));
                            }
                            Geometry steep = UnaryUnionOp.union(squares);
                            PlanePoint a = point(samples);
                            PlanePoint b = point(samples);
                            // Along an edge too: on the lines of the squares.
                            PlanePoint c =
                                    new PlanePoint(b.eastM(), 50 * samples.wholeBetween(0, 20));
                            PlanePoint d = new PlanePoint(a.eastM(), c.northM());
                            List<PlanePoint> way = List.of(a, b, c, d);

                            assertThat(new OverArea(steep).lengthM(way))
                                    .isCloseTo(
                                            steep.intersection(Exposures.line(way)).getLength(),
                                            within(1e-6));
                        });
    }
}
