package underhook.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.PlanePoint;
import underhook.planner.route.WayMap;

/**
 * Ways in plan over an invented map of 20 by 20 km, against a search at any angle over cells of 10 m.
 *
 * <p>Houses are polygons of 12 corners, 60 to 150 m round; roads are strips of 40 m to each side with
 * gaps. Queries are 8 km or longer. Each side answers them once to warm up and once measured; the map's
 * own preparation is stated apart, and after how many queries it has paid. Times are processor time of
 * the asking thread.
 */
final class WaysMeasured implements Measured {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double SIDE_M = 20_000;
    private static final double LEAST_M = 8_000;
    private static final int QUERIES = 200;
    private static final int BASELINE_QUERIES = 20;
    private static final int[] PIECES = {350, 1000, 1800, 3000};
    private static final List<WayMap.Wind> WINDS =
            List.of(new WayMap.Wind(0, 0, 25), new WayMap.Wind(6, -8, 25));

    private record Query(PlanePoint from, PlanePoint to) {}

    @Override
    public String name() {
        return "ways";
    }

    @Override
    public String measure() {
        StringBuilder told = new StringBuilder();
        measure(PIECES[0], new StringBuilder());
        for (int pieces : PIECES) {
            measure(pieces, told);
        }
        return told.toString().stripTrailing();
    }

    private static void measure(int pieces, StringBuilder told) {
        Random random = new Random(7);
        List<Geometry> areas = areas(random, pieces);
        GridSearch grid = new GridSearch(areas);
        long start = nowNs();
        WayMap map = WayMap.around(areas);
        long indexed = nowNs();
        List<Query> queries = queries(random, grid);
        double[] coldS = new double[BASELINE_QUERIES];
        for (int i = 0; i < coldS.length; i++) {
            coldS[i] = timeS(map, queries.get(i), WINDS.get(0));
        }
        long asked = nowNs();
        map.prepared();
        double preparedS = (nowNs() - asked) / 1e9;
        double indexS = (indexed - start) / 1e9;
        told.append(
                String.format(
                        Locale.ROOT,
                        "ways: %d pieces (%.1f %% closed), %d spots, %d straight pieces; index %.2f s,"
                                + " all pieces %.2f s; unprepared %s%n",
                        pieces,
                        100 * grid.closedFraction(),
                        map.spotCount(),
                        map.pieceCount() / 2,
                        indexS,
                        preparedS,
                        spread(coldS)));
        for (WayMap.Wind wind : WINDS) {
            compare(map, grid, queries, wind, indexS + preparedS, told);
        }
    }

    private static void compare(
            WayMap map,
            GridSearch grid,
            List<Query> queries,
            WayMap.Wind wind,
            double buildS,
            StringBuilder told) {
        double[] waysS = new double[QUERIES];
        double[] gridS = new double[BASELINE_QUERIES];
        double worst = 0;
        double sum = 0;
        for (int pass = 0; pass < 2; pass++) {
            for (int i = 0; i < QUERIES; i++) {
                waysS[i] = timeS(map, queries.get(i), wind);
            }
            sum = 0;
            for (int i = 0; i < BASELINE_QUERIES; i++) {
                Query query = queries.get(i);
                long start = nowNs();
                double found = grid.durationS(query.from(), query.to(), wind);
                gridS[i] = (nowNs() - start) / 1e9;
                double least = durationS(map.findWay(query.from(), query.to(), wind).get(), wind);
                double gap = found / least - 1;
                if (gap < -1e-9) {
                    throw new IllegalStateException("the search over cells found a better way.");
                }
                sum += Double.isInfinite(gap) ? 0 : gap;
                worst = Math.max(worst, Double.isInfinite(gap) ? 0 : gap);
            }
        }
        double gainS = GridSearch.medianOf(gridS) - GridSearch.medianOf(waysS);
        told.append(
                String.format(
                        Locale.ROOT,
                        "  wind %.0f m/s: ways %s; cells %s, longer by %.2f %% (most %.2f %%);"
                                + " %.0f times as fast, preparation paid after %.0f queries%n",
                        Math.hypot(wind.towardsEastMPerS(), wind.towardsNorthMPerS()),
                        spread(waysS),
                        spread(gridS),
                        100 * sum / BASELINE_QUERIES,
                        100 * worst,
                        GridSearch.medianOf(gridS) / GridSearch.medianOf(waysS),
                        Math.ceil(buildS / gainS)));
    }

    /** Processor time of this thread: what else the machine does stays out of it. */
    private static long nowNs() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static double timeS(WayMap map, Query query, WayMap.Wind wind) {
        long start = nowNs();
        if (map.findWay(query.from(), query.to(), wind).isEmpty()) {
            throw new IllegalStateException("no way from " + query.from() + " to " + query.to());
        }
        return (nowNs() - start) / 1e9;
    }

    private static double durationS(List<PlanePoint> way, WayMap.Wind wind) {
        double sumS = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            PlanePoint a = way.get(i);
            PlanePoint b = way.get(i + 1);
            sumS += wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
        }
        return sumS;
    }

    private static String spread(double[] timesS) {
        double[] sorted = timesS.clone();
        Arrays.sort(sorted);
        return String.format(
                Locale.ROOT,
                "median %.2f, 99th of 100 %.2f, most %.2f ms",
                1e3 * sorted[sorted.length / 2],
                1e3 * sorted[Math.min(sorted.length - 1, (int) (0.99 * sorted.length))],
                1e3 * sorted[sorted.length - 1]);
    }

    private static List<Geometry> areas(Random random, int pieces) {
        List<Geometry> areas = new ArrayList<>();
        while (areas.size() < pieces) {
            if (random.nextInt(10) < 7) {
                areas.add(house(random));
            } else {
                addRoad(random, areas);
            }
        }
        return areas.subList(0, pieces);
    }

    private static Geometry house(Random random) {
        PlanePoint centre = point(random);
        double radiusM = 60 + 90 * random.nextDouble();
        Coordinate[] ring = new Coordinate[13];
        for (int i = 0; i < 12; i++) {
            ring[i] = coordinate(centre.towards(i * Math.PI / 6, radiusM));
        }
        ring[12] = ring[0];
        return FACTORY.createPolygon(ring);
    }

    private static void addRoad(Random random, List<Geometry> areas) {
        PlanePoint at = point(random);
        double bearing = 2 * Math.PI * random.nextDouble();
        int strips = 1 + random.nextInt(8);
        for (int i = 0; i < strips; i++) {
            PlanePoint end = at.towards(bearing, 200 + 300 * random.nextDouble());
            Coordinate[] line = {coordinate(at), coordinate(end)};
            areas.add(FACTORY.createLineString(line).buffer(40, 3));
            bearing += random.nextDouble() - 0.5;
            at = end.towards(bearing, 120 + 200 * random.nextDouble());
        }
    }

    private static List<Query> queries(Random random, GridSearch grid) {
        List<Query> queries = new ArrayList<>();
        while (queries.size() < QUERIES) {
            PlanePoint from = GridSearch.middleOf(point(random));
            PlanePoint to = GridSearch.middleOf(point(random));
            if (from.distanceToM(to) >= LEAST_M && !grid.isClosed(from) && !grid.isClosed(to)) {
                queries.add(new Query(from, to));
            }
        }
        return queries;
    }

    private static PlanePoint point(Random random) {
        return new PlanePoint(SIDE_M * random.nextDouble(), SIDE_M * random.nextDouble());
    }

    private static Coordinate coordinate(PlanePoint point) {
        return new Coordinate(point.eastM(), point.northM());
    }
}
