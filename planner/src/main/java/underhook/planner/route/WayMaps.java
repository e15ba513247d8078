package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import underhook.core.geo.Ground;
import underhook.core.job.Job;

/**
 * The closed ground of a job by what hangs on the hook.
 *
 * <p>A map once made is kept, and of those with things widened the last ones.
 */
final class WayMaps {
    /** Each holds the edges of the whole map. */
    private static final int WIDENED_KEPT = 64;

    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final List<Obstacle> closedFeatures;
    private final Memo<String, WayMap> maps = Memo.of();
    private final Memo<String, WayMap> boundMaps = Memo.of();
    private final Memo<String, Map<String, Under>> unders = Memo.of();
    private final Memo<String, ByPlace<Obstacle>> obstacles = Memo.of();
    private final Memo<String, WayMap> widened = Memo.ofLast(WIDENED_KEPT);
    private final Memo<List<String>, String> keys = Memo.of();

    WayMaps(Job job, Ground ground, List<WirePlan> wires) {
        this.job = job;
        this.ground = ground;
        this.wires = wires;
        this.closedFeatures = Obstacles.features(job, ground);
    }

    /** The map for a leg with these kinds on the hook. */
    WayMap of(List<String> kinds) {
        return maps.get(key(kinds), unused -> make(kinds, wires));
    }

    /**
     * The map that keeps further off some things.
     *
     * @param keepM how far from houses, people or zones by their ids, m
     */
    WayMap of(List<String> kinds, Map<String, Double> keepM) {
        return keepM.isEmpty()
                ? of(kinds)
                : widened.get(key(kinds) + keepM, unused -> of(kinds).with(wide(kinds, keepM)));
    }

    private List<Geometry> wide(List<String> kinds, Map<String, Double> keepM) {
        Map<String, Under> byId =
                unders.get(
                        key(kinds),
                        unused -> {
                            Map<String, Under> all = new HashMap<>();
                            Under.of(job, ground, kinds).forEach(one -> all.put(one.id(), one));
                            return all;
                        });
        List<Geometry> all = new ArrayList<>();
        keepM.forEach(
                (id, widthM) -> {
                    Under under = byId.get(id);
                    if (under != null) {
                        all.add(Obstacles.widen(under.area(), widthM));
                    }
                });
        return all;
    }

    /**
     * A map with more closed.
     *
     * @param key names the map and what is closed
     */
    WayMap closing(String key, WayMap map, List<Geometry> closed) {
        return closed.isEmpty() ? map : widened.get(key, unused -> map.with(closed));
    }

    /** Wires that may be crossed are left out: gates make ways longer than they have to be. */
    WayMap ofBound(List<String> kinds) {
        List<WirePlan> never = wires.stream().filter(wire -> !wire.isCrossable()).toList();
        return never.size() == wires.size()
                ? of(kinds)
                : boundMaps.get(key(kinds), unused -> make(kinds, never));
    }

    private WayMap make(List<String> kinds, List<WirePlan> crossed) {
        List<Geometry> closed = new ArrayList<>();
        closedFeatures.forEach(feature -> closed.add(feature.area()));
        Obstacles.zones(job, ground, kinds).forEach(zone -> closed.add(zone.area()));
        return new WayMap(closed, crossed, job.rules().distances().wireClearanceM());
    }

    /** What closes the map for a leg with these kinds, wires left out. */
    ByPlace<Obstacle> obstacles(List<String> kinds) {
        return obstacles.get(
                key(kinds),
                unused -> {
                    List<Obstacle> all = new ArrayList<>(closedFeatures);
                    all.addAll(Obstacles.zones(job, ground, kinds));
                    return new ByPlace<>(all, obstacle -> obstacle.area().getEnvelopeInternal());
                });
    }

    List<Obstacle> closedFeatures() {
        return closedFeatures;
    }

    /** Kinds that no zone speaks of share one map. */
    String key(List<String> kinds) {
        return keys.get(kinds, this::findKey);
    }

    private String findKey(List<String> kinds) {
        TreeSet<String> spoken = new TreeSet<>();
        for (String kind : kinds) {
            if (job.zones().stream().anyMatch(zone -> zone.kinds().contains(kind))) {
                spoken.add(kind);
            }
        }
        return String.join("|", spoken);
    }
}
