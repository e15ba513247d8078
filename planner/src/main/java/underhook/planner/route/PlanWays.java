package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;

/**
 * Ways in plan: the quickest round what is closed, the cheapest over what has a price, with corners flown as arcs.
 * Those once found are kept.
 */
final class PlanWays {
    /** So often ways are split by what they pay when one is looked for, in open country. */
    private static final int SEARCH_PARTS = 10;

    /** Each split makes a map: with so many spots or more in it there is time for none. */
    private static final int TOWN_SPOTS = 4000;

    /** So many of the cheapest ways in plan are rounded; turns may change their order. */
    private static final int ROUNDED_WAYS = 2;

    private final Job job;
    private final LegRules rules;
    private final WayMaps maps;
    private final Passed passed;
    private final LegPrices prices;
    private final Memo<Flown, List<List<PlanePoint>>> ways = Memo.of();
    private final Memo<Flown, Optional<RoundedWay>> roundedWays = Memo.of();
    private final Memo<Between, Double> pricesAnyhowS = Memo.of();

    /** An end of a way with its direction there. */
    private record Pose(PlanePoint point, double bearingGridRad) {}

    private record Flown(
            List<String> kinds,
            Pose from,
            Pose to,
            boolean finals,
            Map<String, Double> keepM,
            double speedMPerS) {
        Flown {
            // Who asks goes on adding to it.
            keepM = Map.copyOf(keepM);
        }
    }

    private record Between(String mapKey, PlanePoint from, PlanePoint to, double speedMPerS) {}

    PlanWays(Job job, WayMaps maps, Passed passed, LegPrices prices) {
        this.job = job;
        this.rules = new LegRules(job);
        this.maps = maps;
        this.passed = passed;
        this.prices = prices;
    }

    /** The way with its corners flown as arcs; what must stay straight stays so. */
    Optional<RoundedWay> rounded(LegFinder.Request request, Map<String, Double> keepM) {
        return roundedWays.get(
                flown(request, keepM, request.speedMPerS()),
                unused -> {
                    Corners corners = new Corners(request, maps.of(request.kinds(), keepM));
                    return ways(request, keepM).stream()
                            .flatMap(way -> Stream.of(way, corners.bent(way)).distinct())
                            .map(corners::flown)
                            .min(Comparator.comparingDouble(corners::costS));
                });
    }

    /** How the corners of one leg's ways are flown. */
    private final class Corners {
        private final LegFinder.Request request;
        private final WayMap map;
        private final Exposures priced;

        Corners(LegFinder.Request request, WayMap map) {
            this.request = request;
            this.map = map;
            this.priced = prices.flown(request.kinds());
        }

        RoundedWay flown(List<PlanePoint> way) {
            return RoundedWay.of(way, straight(way), rules.turning(request), over());
        }

        double costS(RoundedWay rounded) {
            return rounded.timeS(request.speedMPerS()) + priced.priceS(rounded.points());
        }

        /** The way bent elsewhere beside wires; the same where its turns cost little, or nothing is gained. */
        List<PlanePoint> bent(List<PlanePoint> way) {
            double straightS = RoundedWay.lengthM(way) / request.speedMPerS() + priced.priceS(way);
            if (!crossesWires(way) || roughS(way) - straightS < WireBends.LITTLE_S) {
                return way;
            }
            return new WireBends(map, this::crossesWire, this::roughS)
                    .bend(way, rules.hasFinals(request) ? 1 : 0);
        }

        private double roughS(List<PlanePoint> way) {
            return costS(RoundedWay.roughly(way, straight(way), rules.turning(request), over()));
        }

        private RoundedWay.Over over() {
            return new RoundedWay.Over(map.walk()::isFree, priced::priceS);
        }

        /** Numbers of the pieces that stay straight. */
        private Set<Integer> straight(List<PlanePoint> way) {
            Set<Integer> straight = new TreeSet<>();
            if (rules.hasFinals(request)) {
                straight.add(0);
                straight.add(way.size() - 2);
            }
            for (int i = 0; i + 1 < way.size(); i++) {
                if (crossesWire(way.get(i), way.get(i + 1))) {
                    straight.add(i);
                }
            }
            return straight;
        }

        private boolean crossesWires(List<PlanePoint> way) {
            return IntStream.range(1, way.size())
                    .anyMatch(i -> crossesWire(way.get(i - 1), way.get(i)));
        }

        private boolean crossesWire(PlanePoint a, PlanePoint b) {
            return !passed.crossesNoWire(a, b);
        }
    }

    /**
     * What the cheapest way in plan between the ends of a request pays, whatever its directions there, s.
     * Other directions make a leg no cheaper than that by much.
     */
    double priceAnyhowS(LegFinder.Request request) {
        Between between =
                new Between(
                        maps.key(request.kinds()),
                        request.from().point(),
                        request.to().point(),
                        request.speedMPerS());
        return pricesAnyhowS.get(between, unused -> findPriceAnyhowS(request));
    }

    private double findPriceAnyhowS(LegFinder.Request request) {
        Exposures things = prices.flown(request.kinds());
        WayMap.Wind still = new WayMap.Wind(0, 0, request.speedMPerS());
        double leastS = Double.POSITIVE_INFINITY;
        double priceS = 0;
        for (List<PlanePoint> way :
                between(request.from().point(), request.to().point(), request, Map.of())) {
            double ownS = things.priceS(way);
            double costS = ownS + CheapestWay.timeS(way, still);
            if (costS < leastS) {
                leastS = costS;
                priceS = ownS;
            }
        }
        return priceS;
    }

    /** Ways in plan that are worth rounding, cheapest first; none where there is no way. */
    private List<List<PlanePoint>> ways(LegFinder.Request request, Map<String, Double> keepM) {
        return ways.get(
                flown(request, keepM, isPriced(request) ? request.speedMPerS() : 0),
                unused -> findWays(request, keepM));
    }

    private boolean isPriced(LegFinder.Request request) {
        return !prices.flown(request.kinds()).isEmpty();
    }

    private List<List<PlanePoint>> findWays(LegFinder.Request request, Map<String, Double> keepM) {
        PlanePoint a = request.from().point();
        PlanePoint b = request.to().point();
        if (!rules.hasFinals(request)) {
            return between(a, b, request, keepM);
        }
        PlanePoint out = a.towards(request.from().bearingGridRad(), job.rules().flying().finalM());
        PlanePoint in = b.towards(request.to().bearingGridRad(), job.rules().flying().finalM());
        WayMap ends = maps.of(request.kinds());
        if (!ends.isFree(a, out) || !ends.isFree(in, b)) {
            return List.of();
        }
        return between(out, in, request, keepM).stream()
                .map(
                        middle -> {
                            List<PlanePoint> whole = new ArrayList<>();
                            whole.add(a);
                            whole.addAll(middle);
                            whole.add(b);
                            return List.copyOf(whole);
                        })
                .toList();
    }

    /** Fewer in a map of many corners, none in a town. */
    static int parts(WayMap map, int most) {
        return Math.max(0, most * (TOWN_SPOTS - map.spotCount()) / TOWN_SPOTS);
    }

    /** The quickest way, and where it passes over something at a price the cheapest. */
    private List<List<PlanePoint>> between(
            PlanePoint from, PlanePoint to, LegFinder.Request request, Map<String, Double> keepM) {
        WayMap map = maps.of(request.kinds(), keepM);
        Optional<List<PlanePoint>> quickest = map.findWay(from, to);
        Exposures things = prices.flown(request.kinds());
        if (quickest.isEmpty()
                || !(things.priceS(quickest.get()) > 0)
                || things.near(quickest.get()).size() > CheapestWay.MOST_OPEN) {
            return quickest.stream().toList();
        }
        WayMap.Wind still = new WayMap.Wind(0, 0, request.speedMPerS());
        CheapestWay.Found found =
                new CheapestWay(
                                things,
                                (key, closed) ->
                                        maps.closing(
                                                maps.key(request.kinds()) + keepM + "off" + key,
                                                map,
                                                closed),
                                parts(map, SEARCH_PARTS))
                        .find(from, to, still);
        CrossingBends bends = new CrossingBends(things, map, still);
        List<List<PlanePoint>> ways = new ArrayList<>(List.of(quickest.get()));
        found.ways().stream()
                .limit(ROUNDED_WAYS)
                .forEach(
                        way -> {
                            ways.add(bends.bend(way));
                            ways.add(way);
                        });
        return ways.stream().distinct().toList();
    }

    /** What a way in plan hangs on; where it is the same at every speed with none. */
    private Flown flown(LegFinder.Request request, Map<String, Double> keepM, double speedMPerS) {
        boolean finals = rules.hasFinals(request);
        return new Flown(
                request.kinds(),
                new Pose(request.from().point(), finals ? request.from().bearingGridRad() : 0),
                new Pose(request.to().point(), finals ? request.to().bearingGridRad() : 0),
                finals,
                keepM,
                speedMPerS);
    }
}
