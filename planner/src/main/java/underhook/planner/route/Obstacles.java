package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Rules;
import underhook.core.job.Zone;

/** Turns a job's map into ground that a track may not enter. */
final class Obstacles {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Arc pieces for each quarter circle; buffers are widened so that chords stay outside. */
    private static final int QUARTER_PIECES = 8;

    /** Masts above this may be held by guys, m. @source PRACTICE */
    private static final double GUYED_FROM_M = 30;

    /** Anchors of a guyed mast stand so far out, over its height. @source PRACTICE 0.6 to 0.8 */
    private static final double GUY_REACH_FRACTION = 0.8;

    /** Ways may run along the edge of an obstacle, so it stands this much further out. */
    static final double MARGIN_M = 0.25;

    private Obstacles() {}

    /** Features that are never passed over, whatever hangs on the hook. */
    static List<Obstacle> features(Job job, Ground ground) {
        List<Obstacle> all = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            if (feature.crossing() == CrossingRule.NEVER) {
                double widthM =
                        Math.max(Math.max(feature.bufferM(), 1), mastM(feature, job.rules()));
                Geometry shape = shape(feature.shape(), feature.outline(), ground);
                all.add(new Obstacle(feature.id(), widen(shape, widthM)));
            }
        }
        return all;
    }

    /** Zones closed to a flight that carries these kinds; an empty list for the empty line. */
    static List<Obstacle> zones(Job job, Ground ground, List<String> kinds) {
        List<Obstacle> all = new ArrayList<>();
        for (Zone zone : job.zones()) {
            boolean about =
                    zone.kinds().isEmpty() || zone.kinds().stream().anyMatch(kinds::contains);
            boolean keepsOff =
                    zone.rule() == Zone.Rule.NO_OVERFLIGHT || zone.rule() == Zone.Rule.MIN_HEIGHT;
            if (about && keepsOff && zone.isActiveOn(job.date())) {
                double widthM = job.rules().distances().stripHalfWidthM();
                all.add(new Obstacle(zone.id(), zoneArea(zone, ground, widthM)));
            }
        }
        return all;
    }

    /**
     * How far the track keeps off a mast, besides its own buffer, m; 0 for anything else. A mast stands up
     * into the strip that the track is checked over and into the distance that load and line keep, at any
     * height, so both are added. A tall one may be held by guys.
     */
    private static double mastM(MapFeature feature, Rules rules) {
        if (feature.kind() != MapFeature.Kind.MAST) {
            return 0;
        }
        double heightM = feature.heightM().orElse(0);
        double guysM = heightM > GUYED_FROM_M ? GUY_REACH_FRACTION * heightM : 0;
        return rules.distances().clearanceM() + rules.distances().stripHalfWidthM() + guysM;
    }

    /** The zone's area widened by so much. */
    static Geometry zoneArea(Zone zone, Ground ground, double widthM) {
        if (zone.outline().size() == 1) {
            return widen(
                    shape(MapFeature.Shape.POINT, zone.outline(), ground), zone.radiusM() + widthM);
        }
        return widen(shape(MapFeature.Shape.AREA, zone.outline(), ground), widthM);
    }

    /** Widened by more than so much everywhere. */
    static Geometry widen(Geometry geometry, double widthM) {
        double outside = 1 / Math.cos(Math.PI / (4 * QUARTER_PIECES));
        return geometry.buffer(Math.max(0, widthM) * outside + MARGIN_M, QUARTER_PIECES);
    }

    static Geometry shape(MapFeature.Shape shape, List<GeoPoint> outline, Ground ground) {
        Coordinate[] points =
                outline.stream()
                        .map(point -> ground.frame().toPlane(point))
                        .map(point -> new Coordinate(point.eastM(), point.northM()))
                        .toArray(Coordinate[]::new);
        return switch (shape) {
            case POINT -> FACTORY.createPoint(points[0]);
            case LINE -> FACTORY.createLineString(points);
            case AREA -> polygon(points);
        };
    }

    private static Polygon polygon(Coordinate[] ring) {
        Coordinate[] closed = java.util.Arrays.copyOf(ring, ring.length + 1);
        closed[ring.length] = ring[0];
        return FACTORY.createPolygon(closed);
    }
}
