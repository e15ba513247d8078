package underhook.adapter.mapfile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import underhook.core.geo.GeoPoint;

/**
 * One thing on the map.
 *
 * @param vertices one for a point; closed and anticlockwise for an area
 * @param hasHeights whether the vertices' altitudes mean anything
 * @param properties text, numbers, flags and lists of text, in the order they are written
 */
record MapItem(
        Kind kind,
        String id,
        Shape shape,
        List<Vertex> vertices,
        boolean hasHeights,
        Map<String, Object> properties) {
    /** Groups, in the order they are written. */
    enum Kind {
        PLACE("place", "Places"),
        LEG("leg", "Legs"),
        DROP("drop", "Drops"),
        ZONE("zone", "Zones"),
        WIRE("wire", "Wires"),
        ROAD("road", "Roads"),
        TRACK("track", "Tracks"),
        TRAIL("trail", "Trails"),
        RAILWAY("railway", "Railways"),
        HOUSE("house", "Houses"),
        PEOPLE("people", "People"),
        MAST("mast", "Masts"),
        WATER("water", "Water"),
        FOREST("forest", "Forest"),
        PROTECTED("protected", "Protected areas"),
        RELEASE_AREA("releaseArea", "Release areas");

        final String word;
        final String heading;

        Kind(String word, String heading) {
            this.word = word;
            this.heading = heading;
        }
    }

    /** What it is drawn as. */
    enum Shape {
        POINT,
        LINE,
        AREA
    }

    /** A position, and its altitude where the item has heights. */
    record Vertex(GeoPoint position, double altitudeAmslM) {}

    MapItem {
        vertices = List.copyOf(vertices);
        properties = new LinkedHashMap<>(properties);
    }

    /** The properties as text, lists with blanks between. */
    String text(String name) {
        Object value = properties.getOrDefault(name, "");
        return value instanceof List<?> list
                ? String.join(" ", list.stream().map(String::valueOf).toList())
                : String.valueOf(value);
    }
}
