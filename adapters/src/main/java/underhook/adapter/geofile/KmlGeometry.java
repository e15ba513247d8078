package underhook.adapter.geofile;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.FeatureReader.Corner;

/**
 * Reads the geometry of one placemark into parts. Mutable.
 *
 * <p>An altitude counts only where the mode is absolute: clamped to the ground it is to be ignored, and
 * relative to the ground it is no elevation.
 *
 * @source OGC-07-147R2 clauses 9.20 (altitude modes), 10 (geometry), 16.10 (coordinates)
 */
final class KmlGeometry {
    private static final Set<String> NAMES =
            Set.of(
                    "Point",
                    "LineString",
                    "LinearRing",
                    "Polygon",
                    "MultiGeometry",
                    "Track",
                    "MultiTrack",
                    "Model");

    private final XmlCursor cursor;
    private final List<Part> parts = new ArrayList<>();

    KmlGeometry(XmlCursor cursor) {
        this.cursor = cursor;
    }

    List<Part> parts() {
        return parts;
    }

    /** Whether the current element is a geometry, for {@link #read}. */
    static boolean isGeometry(String name) {
        return NAMES.contains(name);
    }

    void read() throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "Point" -> {
                List<Corner> corners = readString(new Ring());
                if (corners.size() != 1) {
                    throw Unreadable.field("coordinates", "is no point")
                            .allowing("one point, with commas and without blanks in it");
                }
                parts.add(Part.point(corners.get(0)));
            }
            case "LineString", "Track" -> parts.add(Part.line(readString(new Ring())));
            case "LinearRing" -> parts.add(closedLine(readString(new Ring())));
            case "Polygon" -> parts.add(readPolygon());
            case "MultiGeometry", "MultiTrack" ->
                    cursor.eachChild(
                            () -> {
                                if (isGeometry(cursor.name())) {
                                    read();
                                }
                            });
            default ->
                    throw Unreadable.field("geometry", "has no outline")
                            .found(cursor.name())
                            .allowing("Point, LineString, LinearRing, Polygon or MultiGeometry");
        }
    }

    /** A ring by itself is a line that ends where it began. */
    private static Part closedLine(List<Corner> ring) throws Unreadable {
        Part.area(ring, false);
        return Part.line(ring);
    }

    private Part readPolygon() throws XMLStreamException, Unreadable {
        Ring outer = new Ring();
        cursor.eachChild(
                () -> {
                    switch (cursor.name()) {
                        case "altitudeMode" -> outer.isAbsolute = isAbsolute();
                        case "outerBoundaryIs" -> cursor.eachChild(() -> readString(outer));
                        case "innerBoundaryIs" -> outer.hasHoles = true;
                        default -> {
                            // How it is drawn says nothing of where it is.
                        }
                    }
                });
        return Part.area(outer.corners(), outer.hasHoles);
    }

    /** A list of positions while its altitude mode may still come. */
    private static final class Ring {
        private final List<Corner> stated = new ArrayList<>();
        private boolean isAbsolute;
        private boolean hasHoles;

        List<Corner> corners() {
            if (isAbsolute) {
                return stated;
            }
            return stated.stream()
                    .map(corner -> new Corner(corner.x(), corner.y(), OptionalDouble.empty()))
                    .toList();
        }
    }

    private List<Corner> readString(Ring ring) throws XMLStreamException, Unreadable {
        cursor.eachChild(
                () -> {
                    switch (cursor.name()) {
                        case "altitudeMode" -> ring.isAbsolute = isAbsolute();
                        case "coordinates" -> readTuples(cursor.text(), ring);
                        case "coord" -> ring.stated.add(corner(cursor.text().split("\\s+", -1)));
                        default -> {
                            // Times, angles and drawing.
                        }
                    }
                });
        return ring.corners();
    }

    private boolean isAbsolute() throws XMLStreamException {
        return cursor.text().equals("absolute");
    }

    private static void readTuples(String text, Ring ring) throws Unreadable {
        if (text.isEmpty()) {
            return;
        }
        for (String tuple : text.split("\\s+", -1)) {
            ring.stated.add(corner(tuple.split(",", -1)));
        }
    }

    private static Corner corner(String[] numbers) throws Unreadable {
        if (numbers.length < 2 || numbers.length > 3) {
            throw Unreadable.field("coordinates", "is no position")
                    .found(String.join(",", numbers))
                    .allowing("longitude,latitude or longitude,latitude,altitude");
        }
        OptionalDouble altitudeM =
                numbers.length == 3
                        ? OptionalDouble.of(Decimals.read("coordinates", numbers[2]))
                        : OptionalDouble.empty();
        return Part.wgs84(numbers[0], numbers[1], altitudeM);
    }
}
