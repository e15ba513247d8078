package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import underhook.core.geo.Ground;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.ReleaseLook.Use;

/**
 * Something on the ground that a load may hit.
 *
 * @param keptOff whether no leg may be flown from which a load can hit it
 * @param area in the local plane
 */
record Under(String id, Use use, boolean keptOff, Geometry area) {
    /** A house or people drawn as a point are at most this large, m. @source PRACTICE */
    private static final double POINT_RADIUS_M = 10;

    /** Outlines are drawn so well at least, m. @source PRACTICE */
    private static final double OUTLINE_SPREAD_M = 2;

    /** A road, trail or railway is so wide to each side of its line, m. @source PRACTICE */
    private static final double WAY_HALF_WIDTH_M = 5;

    /** All that a load with these kinds on the hook may hit. */
    static List<Under> of(Job job, Ground ground, List<String> kinds) {
        List<Under> all = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            if (feature.kind() == MapFeature.Kind.MAST) {
                continue;
            }
            if (feature.crossing() == CrossingRule.NEVER) {
                boolean point = feature.shape() == MapFeature.Shape.POINT;
                double radiusM = point ? POINT_RADIUS_M : OUTLINE_SPREAD_M;
                all.add(new Under(feature.id(), Use.CLOSED, true, area(feature, ground, radiusM)));
            } else if (feature.crossing() == CrossingRule.GUARDED) {
                Geometry area = area(feature, ground, WAY_HALF_WIDTH_M);
                all.add(new Under(feature.id(), Use.GUARDED, false, area));
            }
        }
        for (Zone zone : job.zones()) {
            boolean about =
                    zone.kinds().isEmpty() || zone.kinds().stream().anyMatch(kinds::contains);
            if (about && zone.rule() == Zone.Rule.NO_OVERFLIGHT && zone.isActiveOn(job.date())) {
                Geometry area = Obstacles.zoneArea(zone, ground, 0);
                all.add(new Under(zone.id(), Use.CLOSED, true, area));
            }
        }
        for (Wire wire : job.wires()) {
            if (wire.live()) {
                Geometry line = Obstacles.shape(MapFeature.Shape.LINE, wire.supports(), ground);
                Geometry area = Obstacles.widen(line, wire.lateralM() + OUTLINE_SPREAD_M);
                all.add(new Under(wire.id(), Use.CLOSED, false, area));
            }
        }
        for (ReleaseArea area : job.releaseAreas()) {
            if (area.agreed()) {
                all.add(new Under(area.id(), Use.NAMED, false, area(area, ground)));
            }
        }
        return all;
    }

    static Geometry area(ReleaseArea area, Ground ground) {
        return Obstacles.shape(MapFeature.Shape.AREA, area.outline(), ground);
    }

    private static Geometry area(MapFeature feature, Ground ground, double widthM) {
        Geometry shape = Obstacles.shape(feature.shape(), feature.outline(), ground);
        return Obstacles.widen(shape, widthM);
    }
}
