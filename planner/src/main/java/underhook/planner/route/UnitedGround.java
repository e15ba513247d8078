package underhook.planner.route;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Closed ground as polygons that do not overlap, to which a little more is added at little cost. */
final class UnitedGround {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<Polygon> pieces;
    private final HPRtree index = new HPRtree();

    private UnitedGround(List<Polygon> pieces) {
        this.pieces = pieces;
        for (Polygon piece : pieces) {
            index.insert(piece.getEnvelopeInternal(), piece);
        }
        index.build();
    }

    /** The union of areas, overlapping or not. */
    static UnitedGround of(List<Geometry> areas) {
        return new UnitedGround(polygons(union(areas)));
    }

    static Geometry union(List<Geometry> areas) {
        return areas.isEmpty()
                ? FACTORY.createPolygon()
                : OverlayNGRobust.union(FACTORY.buildGeometry(areas));
    }

    /** The same with more; only what the new areas touch is united anew. */
    UnitedGround with(List<Geometry> more) {
        Geometry added = union(more);
        Set<Polygon> touched = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Geometry> together = new ArrayList<>(List.of(added));
        for (Polygon polygon : polygons(added)) {
            PreparedGeometry prepared = PreparedGeometryFactory.prepare(polygon);
            for (Object near : index.query(polygon.getEnvelopeInternal())) {
                Polygon piece = (Polygon) near;
                if (!touched.contains(piece) && prepared.intersects(piece)) {
                    touched.add(piece);
                    together.add(piece);
                }
            }
        }
        List<Polygon> all = new ArrayList<>();
        for (Polygon piece : pieces) {
            if (!touched.contains(piece)) {
                all.add(piece);
            }
        }
        all.addAll(polygons(touched.isEmpty() ? added : union(together)));
        return new UnitedGround(all);
    }

    private static List<Polygon> polygons(Geometry union) {
        List<Polygon> all = new ArrayList<>();
        for (int i = 0; i < union.getNumGeometries(); i++) {
            if (union.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                all.add(polygon);
            }
        }
        return all;
    }

    List<Polygon> pieces() {
        return pieces;
    }

    Envelope extent() {
        Envelope extent = new Envelope();
        pieces.forEach(piece -> extent.expandToInclude(piece.getEnvelopeInternal()));
        return extent;
    }
}
