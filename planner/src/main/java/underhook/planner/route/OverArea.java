package underhook.planner.route;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.hprtree.HPRtree;
import underhook.core.geo.PlanePoint;

/** How long ways are over an area of many corners: only the edges near a way are looked at. */
final class OverArea {
    private final HPRtree edges = new HPRtree();
    private final IndexedPointInAreaLocator inside;

    private record Edge(PlanePoint a, PlanePoint b) {}

    OverArea(Geometry area) {
        this.inside = new IndexedPointInAreaLocator(area);
        for (Object line : LinearComponentExtracter.getLines(area)) {
            Coordinate[] points = ((LineString) line).getCoordinates();
            for (int i = 0; i + 1 < points.length; i++) {
                PlanePoint a = new PlanePoint(points[i].x, points[i].y);
                PlanePoint b = new PlanePoint(points[i + 1].x, points[i + 1].y);
                edges.insert(new Envelope(points[i], points[i + 1]), new Edge(a, b));
            }
        }
        edges.build();
    }

    /** Length over the area, its edge counted in, m. */
    double lengthM(List<PlanePoint> way) {
        double sumM = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumM += lengthM(way.get(i), way.get(i + 1));
        }
        return sumM;
    }

    private double lengthM(PlanePoint a, PlanePoint b) {
        TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
        Envelope extent = new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM());
        for (Object near : edges.query(extent)) {
            Edge edge = (Edge) near;
            double t = Plane.crossingFraction(a, b, edge.a(), edge.b());
            if (t >= 0) {
                cuts.add(Math.min(1, t));
            }
            // An edge that the way follows cuts it where the edge ends.
            addEnd(cuts, a, b, edge.a());
            addEnd(cuts, a, b, edge.b());
        }
        double lengthM = a.distanceToM(b);
        double sumM = 0;
        double from = 0;
        for (double to : cuts) {
            PlanePoint middle = Plane.between(a, b, (from + to) / 2);
            boolean over =
                    inside.locate(new Coordinate(middle.eastM(), middle.northM()))
                            != Location.EXTERIOR;
            sumM += over ? (to - from) * lengthM : 0;
            from = to;
        }
        return sumM;
    }

    private static void addEnd(Set<Double> cuts, PlanePoint a, PlanePoint b, PlanePoint end) {
        if (Plane.distanceToPieceM(a, b, end) < 1e-6) {
            cuts.add(Plane.nearestFraction(a, b, end));
        }
    }
}
