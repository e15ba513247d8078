package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Zone;

/** What closes ways in plan, and what would open them. */
public final class ClosedWays {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Job job;
    private final Ground ground;
    private final List<WirePlan> wires;
    private final WayMaps maps;
    private final ByPlace<WirePlan> wiresByPlace;

    ClosedWays(Job job, Ground ground, List<WirePlan> wires, WayMaps maps) {
        this.job = job;
        this.ground = ground;
        this.wires = wires;
        this.maps = maps;
        this.wiresByPlace = new ByPlace<>(wires, wire -> ByPlace.extent(wire.supports()));
    }

    /** What closes every way between two points with these kinds on the hook. */
    public Blocked.Found findBlock(PlanePoint from, PlanePoint to, List<String> kinds) {
        List<Blocked.Thing> things = new ArrayList<>();
        for (Obstacle feature : maps.closedFeatures()) {
            things.add(
                    new Blocked.Thing(feature.id(), feature.area(), featureOpener(feature.id())));
        }
        for (Obstacle zone : Obstacles.zones(job, ground, kinds)) {
            things.add(new Blocked.Thing(zone.id(), zone.area(), zoneOpener(zone.id())));
        }
        for (WirePlan wire : wires) {
            if (!wire.isCrossable()) {
                things.add(
                        new Blocked.Thing(
                                wire.wire().id(),
                                wire.corridor(job.rules().distances().wireClearanceM()),
                                "an agreement to cross " + wire.wire().id()));
            }
        }
        return Blocked.between(from, to, things);
    }

    /** Whether somebody's word can open the ground round a thing, also below a last part: no wire's. */
    public boolean canOpen(String id) {
        return job.zones().stream().anyMatch(zone -> zone.id().equals(id))
                || job.features().stream().anyMatch(feature -> feature.id().equals(id));
    }

    /** What would open the ground round things by their ids, in words. */
    public List<String> openers(List<String> ids) {
        return ids.stream()
                .map(
                        id ->
                                job.zones().stream().anyMatch(zone -> zone.id().equals(id))
                                        ? zoneOpener(id)
                                        : featureOpener(id))
                .distinct()
                .toList();
    }

    private String featureOpener(String id) {
        MapFeature feature =
                job.features().stream()
                        .filter(one -> one.id().equals(id))
                        .findFirst()
                        .orElseThrow();
        return switch (feature.kind()) {
            case ROAD, TRACK, TRAIL, RAILWAY -> "a guard at " + id;
            case HOUSE, PEOPLE -> "nobody at " + id + " and its owner's word";
            case MAST -> "a survey that shows " + id + " to be lower or elsewhere";
            case WATER, FOREST, PROTECTED -> "a permission for " + id;
        };
    }

    private String zoneOpener(String id) {
        Zone zone =
                job.zones().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
        return zone.closedUntil()
                .map(last -> "a day after " + last + ", when " + id + " is open again")
                .orElse("a permission for zone " + id);
    }

    /** Whether any way joins two points with these kinds on the hook. */
    public boolean isJoined(PlanePoint from, PlanePoint to, List<String> kinds) {
        return maps.of(kinds).findWay(from, to).isPresent();
    }

    /** Ids of what a straight piece may not pass with these kinds on the hook. */
    public List<String> blockers(PlanePoint a, PlanePoint b, List<String> kinds) {
        List<String> ids = new ArrayList<>();
        LineString piece = line(a, b);
        for (Obstacle obstacle : maps.obstacles(kinds).near(a, b, 0)) {
            if (obstacle.area().intersects(piece)) {
                ids.add(obstacle.id());
            }
        }
        for (WirePlan wire : wiresByPlace.near(a, b, widestCorridorM())) {
            if (crossesWire(wire, a, b) || isNearWire(wire, a, b)) {
                ids.add(wire.wire().id());
            }
        }
        return ids;
    }

    private double widestCorridorM() {
        double clearanceM = job.rules().distances().wireClearanceM();
        return wires.stream().mapToDouble(wire -> wire.corridorM(clearanceM)).max().orElse(0);
    }

    /** Whether an end of a straight piece lies in a wire's corridor. */
    private boolean isNearWire(WirePlan wire, PlanePoint a, PlanePoint b) {
        double corridorM = wire.corridorM(job.rules().distances().wireClearanceM());
        for (int i = 0; i + 1 < wire.supports().size(); i++) {
            PlanePoint c = wire.supports().get(i);
            PlanePoint d = wire.supports().get(i + 1);
            if (Math.min(Plane.distanceToPieceM(c, d, a), Plane.distanceToPieceM(c, d, b))
                    < corridorM) {
                return true;
            }
        }
        return false;
    }

    private static boolean crossesWire(WirePlan wire, PlanePoint a, PlanePoint b) {
        for (int i = 0; i + 1 < wire.supports().size(); i++) {
            if (Plane.crossingFraction(a, b, wire.supports().get(i), wire.supports().get(i + 1))
                    >= 0) {
                return true;
            }
        }
        return false;
    }

    /** Whether a place itself lies where nothing may be flown. */
    public boolean isClosed(PlanePoint point, List<String> kinds) {
        return maps.of(kinds).isInsideBlock(point);
    }

    private static LineString line(PlanePoint a, PlanePoint b) {
        return FACTORY.createLineString(
                new Coordinate[] {
                    new Coordinate(a.eastM(), a.northM()), new Coordinate(b.eastM(), b.northM())
                });
    }
}
