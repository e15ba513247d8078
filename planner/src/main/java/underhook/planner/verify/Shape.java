package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * An outline in the plane: a disc round one point, a line, or an area.
 *
 * @param radiusM radius round a single point, m; 0 otherwise
 * @param area whether the outline is a closed ring whose inside counts
 */
record Shape(List<PlanePoint> outline, double radiusM, boolean area) {
    Shape {
        outline = List.copyOf(outline);
    }

    List<Plane.Stretch> listEdges() {
        List<Plane.Stretch> edges = new ArrayList<>();
        for (int i = 1; i < outline.size(); i++) {
            edges.add(new Plane.Stretch(outline.get(i - 1), outline.get(i)));
        }
        if (area && outline.size() > 2) {
            edges.add(new Plane.Stretch(outline.get(outline.size() - 1), outline.get(0)));
        }
        return edges;
    }

    boolean covers(PlanePoint p) {
        if (outline.size() == 1) {
            return Plane.apartM(p, outline.get(0)) <= radiusM;
        }
        return area && Plane.inside(p, outline);
    }

    /** Least distance of a stretch to the shape, m; 0 where it enters it. */
    double distanceM(Plane.Stretch stretch) {
        if (outline.size() == 1) {
            double centre = Plane.toSegmentM(outline.get(0), stretch.a(), stretch.b());
            return Math.max(0, centre - radiusM);
        }
        if (covers(stretch.a()) || covers(stretch.b())) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        for (Plane.Stretch edge : listEdges()) {
            least = Math.min(least, Plane.stretchesApartM(edge, stretch));
        }
        return least;
    }
}
