package underhook.app.evening;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import underhook.app.port.ClosedDay.ZoneLine;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Zone;
import underhook.core.track.TrackPoint;

/** How long the machine was over each zone, by its track. */
final class OverZones {
    /** A longer time without a point is not counted: nobody knows where the machine was. */
    private static final double HOLE_S = 10;

    private OverZones() {}

    /** One line for each zone of the job; the time between two points counts when either lies inside. */
    static List<ZoneLine> of(Job job, List<TrackPoint> points) {
        LocalFrame frame = LocalFrame.of(job.origin());
        List<TrackPoint> ordered = new ArrayList<>(points);
        ordered.sort(Comparator.comparing(TrackPoint::at));
        List<ZoneLine> lines = new ArrayList<>();
        for (Zone zone : job.zones()) {
            List<PlanePoint> ring = zone.outline().stream().map(frame::toPlane).toList();
            lines.add(line(zone, ring, ordered));
        }
        return lines;
    }

    private static ZoneLine line(Zone zone, List<PlanePoint> ring, List<TrackPoint> points) {
        double insideS = 0;
        int passes = 0;
        boolean wasInside = false;
        for (int i = 0; i < points.size(); i++) {
            boolean inside = isInside(zone, ring, points.get(i).point());
            passes += inside && !wasInside ? 1 : 0;
            if (i > 0 && (inside || wasInside)) {
                double s =
                        Duration.between(points.get(i - 1).at(), points.get(i).at()).toMillis()
                                / 1000.0;
                insideS += s <= HOLE_S ? s : 0;
            }
            wasInside = inside;
        }
        return new ZoneLine(zone.id(), zone.name(), passes, insideS);
    }

    private static boolean isInside(Zone zone, List<PlanePoint> ring, PlanePoint point) {
        return ring.size() == 1
                ? ring.get(0).distanceToM(point) <= zone.radiusM()
                : PlaneLine.isInside(point, ring);
    }
}
