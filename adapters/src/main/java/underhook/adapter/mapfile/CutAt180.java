package underhook.adapter.mapfile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.core.geo.GeoPoint;

/**
 * Cuts what crosses the 180th meridian into parts that do not. What goes from one point to the next
 * takes the shorter way round. RFC 7946, section 3.1.9.
 */
final class CutAt180 {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private CutAt180() {}

    /** Parts of a line, in its order; heights where it is cut lie evenly between its vertices'. */
    static List<List<Vertex>> line(List<Vertex> line) {
        List<Coordinate> whole = unrolled(line);
        List<List<Vertex>> parts = new ArrayList<>();
        List<Vertex> part = new ArrayList<>();
        for (int i = 0; i < whole.size(); i++) {
            Coordinate here = whole.get(i);
            int turns = turns(here.x);
            if (i > 0 && turns != turns(whole.get(i - 1).x)) {
                Coordinate before = whole.get(i - 1);
                int turnsBefore = turns(before.x);
                double cutDeg = 360.0 * Math.max(turns, turnsBefore) - 180;
                double share = (cutDeg - before.x) / (here.x - before.x);
                Coordinate cut =
                        new Coordinate(
                                cutDeg,
                                before.y + share * (here.y - before.y),
                                before.z + share * (here.z - before.z));
                part.add(vertex(cut, turnsBefore));
                parts.add(part);
                part = new ArrayList<>();
                part.add(vertex(cut, turns));
            }
            part.add(vertex(here, turns));
        }
        parts.add(part);
        // A line that only begins or ends there has nothing on the other side.
        parts.removeIf(cut -> cut.size() == 2 && cut.get(0).equals(cut.get(1)));
        return parts;
    }

    /** Closed anticlockwise rings of the parts of an area, itself a closed anticlockwise ring. */
    static List<List<Vertex>> area(List<Vertex> ring) {
        List<Coordinate> whole = unrolled(ring);
        if (whole.stream().allMatch(corner -> turns(corner.x) == 0)) {
            return List.of(ring);
        }
        Geometry area = GeometryFixer.fix(SHAPES.createPolygon(whole.toArray(new Coordinate[0])));
        List<List<Vertex>> parts = new ArrayList<>();
        for (int turns = -1; turns <= 1; turns++) {
            Envelope once = new Envelope(360.0 * turns - 180, 360.0 * turns + 180, -90, 90);
            Geometry part = area.intersection(SHAPES.toGeometry(once));
            for (int i = 0; i < part.getNumGeometries(); i++) {
                if (part.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                    parts.add(ring(polygon, turns));
                }
            }
        }
        return parts;
    }

    private static List<Vertex> ring(Polygon polygon, int turns) {
        Coordinate[] corners = polygon.getExteriorRing().getCoordinates();
        List<Vertex> ring = new ArrayList<>();
        for (Coordinate corner : corners) {
            ring.add(vertex(corner, turns));
        }
        if (!Orientation.isCCW(corners)) {
            Collections.reverse(ring);
        }
        return ring;
    }

    /** Longitudes that go on beyond 180 degrees instead of jumping; x and y in degrees, z in m. */
    private static List<Coordinate> unrolled(List<Vertex> vertices) {
        List<Coordinate> whole = new ArrayList<>();
        double lonDeg = vertices.get(0).position().lonDeg();
        for (Vertex vertex : vertices) {
            lonDeg += Math.IEEEremainder(vertex.position().lonDeg() - lonDeg, 360);
            whole.add(new Coordinate(lonDeg, vertex.position().latDeg(), vertex.altitudeAmslM()));
        }
        return whole;
    }

    /** How often round the Earth: 0 from -180 to 180 degrees, both included. */
    private static int turns(double lonDeg) {
        if (lonDeg > 180) {
            return 1;
        }
        return lonDeg < -180 ? -1 : 0;
    }

    private static Vertex vertex(Coordinate at, int turns) {
        double z = Double.isNaN(at.z) ? 0 : at.z;
        return new Vertex(new GeoPoint(at.y, at.x - 360.0 * turns), z);
    }
}
