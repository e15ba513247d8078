package underhook.planner.route;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import underhook.core.geo.PlanePoint;

/** Things by where they lie, found again in the order in which they were given. */
final class ByPlace<T> {
    private final List<T> things;
    private final STRtree tree = new STRtree();

    ByPlace(List<T> things, Function<T, Envelope> extent) {
        this.things = List.copyOf(things);
        for (int i = 0; i < things.size(); i++) {
            tree.insert(extent.apply(things.get(i)), i);
        }
        tree.build();
    }

    /** All whose extent meets another, and perhaps some more. */
    List<T> near(Envelope extent) {
        List<?> query = tree.query(extent);
        int[] found = query.stream().mapToInt(at -> (Integer) at).toArray();
        Arrays.sort(found);
        return IntStream.of(found).mapToObj(things::get).toList();
    }

    /** All whose extent meets that of two points widened by so much to all sides. */
    List<T> near(PlanePoint a, PlanePoint b, double widthM) {
        Envelope extent = new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM());
        extent.expandBy(widthM);
        return near(extent);
    }

    static Envelope extent(List<PlanePoint> points) {
        Envelope extent = new Envelope();
        points.forEach(point -> extent.expandToInclude(point.eastM(), point.northM()));
        return extent;
    }
}
