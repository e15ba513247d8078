package underhook.adapter.geofile;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Unreadable;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.FeatureReader.Shape;

/** One outline of a feature, checked. */
record Part(Shape shape, List<Corner> outline, boolean hasHoles) {
    private static final String FIELD = "coordinates";

    static Part point(Corner corner) {
        return new Part(Shape.POINT, List.of(corner), false);
    }

    static Part line(List<Corner> corners) throws Unreadable {
        if (corners.size() < 2) {
            throw Unreadable.field(FIELD, "is no line").allowing("two points or more");
        }
        return new Part(Shape.LINE, corners, false);
    }

    /** An area from its outer ring, whose last corner repeats the first. */
    static Part area(List<Corner> ring, boolean hasHoles) throws Unreadable {
        Corner first = ring.isEmpty() ? new Corner(0, 0, OptionalDouble.empty()) : ring.get(0);
        Corner last = ring.isEmpty() ? first : ring.get(ring.size() - 1);
        boolean isClosed =
                Double.compare(first.x(), last.x()) == 0
                        && Double.compare(first.y(), last.y()) == 0;
        if (ring.size() < 4 || !isClosed) {
            throw Unreadable.field(FIELD, "is no closed ring")
                    .allowing("four points or more, the last the same as the first");
        }
        return new Part(Shape.AREA, new ArrayList<>(ring.subList(0, ring.size() - 1)), hasHoles);
    }

    /** A corner from longitude and latitude as written. */
    static Corner wgs84(String lon, String lat, OptionalDouble elevationM) throws Unreadable {
        return new Corner(degrees("longitude", lon, 180), degrees("latitude", lat, 90), elevationM);
    }

    private static double degrees(String what, String text, double most) throws Unreadable {
        double value = Decimals.read(FIELD, text);
        if (!(Math.abs(value) <= most)) {
            throw Unreadable.range(FIELD, "is no " + what)
                    .found(text.strip())
                    .allowing("between -" + (int) most + " and " + (int) most);
        }
        return value;
    }
}
