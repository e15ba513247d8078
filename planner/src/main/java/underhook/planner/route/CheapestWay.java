package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import underhook.core.geo.PlanePoint;

/**
 * Ways that take least in time and prices together, and what no way goes below.
 *
 * <p>The quickest way pays for nothing yet. What it passes over at a price splits all ways into those that
 * pay that price and those that keep off it; of each of the two the quickest way is found again, and so on
 * with the cheapest so far. Every way belongs to one of the parts that are left, and none costs less than
 * the quickest of its part with what that part has paid. So the least of these is proven, wherever the search
 * stops; where nothing is left to split it is what a line crossed at right angles and an area left by the
 * shortest way come to. What a line costs more at other angles, and an area more than twice its depth, is not
 * in the bound.
 */
final class CheapestWay {
    /** Where the quickest way passes over more than this, too many parts would have to be looked at. */
    static final int MOST_OPEN = 8;

    private final Exposures exposures;
    private final Maps maps;
    private final int mostParts;

    /** Maps with more ground closed. */
    @FunctionalInterface
    interface Maps {
        /**
         * @param key names what is closed
         */
        WayMap closing(String key, List<Geometry> closed);
    }

    /**
     * The answer.
     *
     * @param ways the quickest of each part that was looked at, cheapest first; none where there is no way
     * @param boundS no way takes less in time and prices together, s
     */
    record Found(List<List<PlanePoint>> ways, double boundS) {
        Found {
            ways = List.copyOf(ways);
        }
    }

    /** Ways that pay some levels and keep off others. */
    private record Part(
            List<PlanePoint> way,
            double timeS,
            double paidS,
            Set<String> paid,
            Set<String> kept,
            List<Geometry> closed) {
        double boundS() {
            return timeS + paidS;
        }
    }

    /** A level that a way passes over and that its part has neither paid nor keeps off. */
    private record Open(String key, Exposed thing, int level) {}

    /**
     * @param mostParts so often the ways are split at most
     */
    CheapestWay(Exposures exposures, Maps maps, int mostParts) {
        this.exposures = exposures;
        this.maps = maps;
        this.mostParts = mostParts;
    }

    Found find(PlanePoint from, PlanePoint to, WayMap.Wind wind) {
        return find(from, to, wind, 0);
    }

    /**
     * @param leastS no way takes less time, whatever it passes over, s
     */
    Found find(PlanePoint from, PlanePoint to, WayMap.Wind wind, double leastS) {
        return new Search(from, to, wind, leastS).find();
    }

    private final class Search {
        private final PlanePoint from;
        private final PlanePoint to;
        private final WayMap.Wind wind;
        private final double leastS;
        private final List<Part> seen = new ArrayList<>();
        private final PriorityQueue<Part> queue =
                new PriorityQueue<>(
                        Comparator.comparingDouble(Part::boundS)
                                .thenComparing(part -> part.kept().toString()));
        private double cheapestS = Double.POSITIVE_INFINITY;

        Search(PlanePoint from, PlanePoint to, WayMap.Wind wind, double leastS) {
            this.from = from;
            this.to = to;
            this.wind = wind;
            this.leastS = leastS;
        }

        Found find() {
            add(new TreeSet<>(), exposures.anyhowS(from, to), new TreeSet<>(), List.of());
            double boundS = 0;
            int splits = 0;
            while (!queue.isEmpty()) {
                Part part = queue.poll();
                boundS = Math.min(cheapestS, part.boundS());
                if (boundS >= cheapestS || splits == mostParts) {
                    break;
                }
                List<Open> open = open(part);
                long things = open.stream().map(Open::thing).distinct().count();
                if (open.isEmpty() || (splits == 0 && things > MOST_OPEN)) {
                    break;
                }
                splits++;
                split(part, open.get(0));
            }
            List<List<PlanePoint>> ways =
                    seen.stream()
                            .sorted(Comparator.comparingDouble(this::costS))
                            .map(Part::way)
                            .distinct()
                            .toList();
            return new Found(ways, boundS);
        }

        private void split(Part part, Open on) {
            TreeSet<String> paid = new TreeSet<>(part.paid());
            paid.add(on.key());
            double priceS = on.thing().levelPriceS(on.level(), from, to);
            queue.add(
                    new Part(
                            part.way(),
                            part.timeS(),
                            part.paidS() + priceS,
                            paid,
                            part.kept(),
                            part.closed()));
            Geometry closed = on.thing().closed(on.level());
            if (closed.covers(Exposed.point(from)) || closed.covers(Exposed.point(to))) {
                return;
            }
            TreeSet<String> kept = new TreeSet<>(part.kept());
            kept.add(on.key());
            List<Geometry> all = new ArrayList<>(part.closed());
            all.add(closed);
            add(part.paid(), part.paidS(), kept, all);
        }

        private void add(Set<String> paid, double paidS, Set<String> kept, List<Geometry> closed) {
            WayMap map = maps.closing(String.join("|", kept), closed);
            map.findWay(from, to, wind)
                    .ifPresent(
                            way -> {
                                Part part =
                                        new Part(
                                                way,
                                                Math.max(leastS, timeS(way, wind)),
                                                paidS,
                                                paid,
                                                kept,
                                                closed);
                                seen.add(part);
                                queue.add(part);
                                cheapestS = Math.min(cheapestS, costS(part));
                            });
        }

        private double costS(Part part) {
            return part.timeS() + exposures.priceS(part.way());
        }

        /** Dearest first. */
        private List<Open> open(Part part) {
            LineString line = Exposures.line(part.way());
            List<Open> all = new ArrayList<>();
            for (Exposed thing : exposures.near(part.way())) {
                for (int level = 0; level < thing.levels(); level++) {
                    String key = thing.id() + "#" + level;
                    boolean decided = part.paid().contains(key) || part.kept().contains(key);
                    if (!decided && thing.closed(level).intersects(line)) {
                        all.add(new Open(key, thing, level));
                    }
                }
            }
            all.sort(
                    Comparator.comparingDouble(
                                    (Open one) -> -one.thing().levelPriceS(one.level(), from, to))
                            .thenComparing(Open::key));
            return all;
        }
    }

    static double timeS(List<PlanePoint> way, WayMap.Wind wind) {
        double sumS = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumS +=
                    wind.durationS(
                            way.get(i + 1).eastM() - way.get(i).eastM(),
                            way.get(i + 1).northM() - way.get(i).northM());
        }
        return sumS;
    }
}
