package underhook.planner.route;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Zone;

/** Where a zone forbids handling fuel. */
public final class FuelGround {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private FuelGround() {}

    /** Whether a place lies in a zone where no fuel is handled on the day of the job. */
    public static boolean isForbidden(Job job, Ground ground, PlanePoint place) {
        Point point = FACTORY.createPoint(new Coordinate(place.eastM(), place.northM()));
        return job.zones().stream()
                .filter(zone -> zone.rule() == Zone.Rule.NO_FUEL)
                .filter(zone -> zone.isActiveOn(job.date()))
                .anyMatch(zone -> Obstacles.zoneArea(zone, ground, 0).intersects(point));
    }
}
