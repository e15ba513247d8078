package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import underhook.core.geo.PlanePoint;

/**
 * Wires that may be crossed, and where beside them a way may turn.
 *
 * @param spans their straight pieces
 * @param points pairs of points on both sides of a wire, square to it, and the corners of its corridor's
 *     ends
 */
record Gates(List<CrossableWires.Span> spans, List<PlanePoint> points) {
    static final double SPACING_M = 60;

    Gates {
        spans = List.copyOf(spans);
        points = List.copyOf(points);
    }

    static Gates of(List<WirePlan> crossable, double wireClearanceM) {
        List<PlanePoint> points = new ArrayList<>();
        for (WirePlan wire : crossable) {
            addPairs(wire, wireClearanceM, points);
            for (Coordinate corner : wire.corridor(wireClearanceM).buffer(1, 2).getCoordinates()) {
                points.add(new PlanePoint(corner.x, corner.y));
            }
        }
        return new Gates(CrossableWires.spans(crossable, wireClearanceM), points);
    }

    private static void addPairs(WirePlan wire, double wireClearanceM, List<PlanePoint> points) {
        double offM = wire.corridorM(wireClearanceM) + 1;
        List<PlanePoint> supports = wire.supports();
        for (int i = 0; i + 1 < supports.size(); i++) {
            PlanePoint a = supports.get(i);
            PlanePoint b = supports.get(i + 1);
            double alongRad = a.bearingToGridRad(b);
            int count = Math.max(1, (int) Math.floor(a.distanceToM(b) / SPACING_M));
            for (int k = 0; k < count; k++) {
                PlanePoint foot = Plane.between(a, b, (k + 0.5) / count);
                points.add(foot.towards(alongRad + Math.PI / 2, offM));
                points.add(foot.towards(alongRad - Math.PI / 2, offM));
            }
        }
    }

    Envelope extent() {
        Envelope extent = CrossableWires.extent(spans);
        points.forEach(point -> extent.expandToInclude(point.eastM(), point.northM()));
        return extent;
    }
}
