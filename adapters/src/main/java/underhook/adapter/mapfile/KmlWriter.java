package underhook.adapter.mapfile;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.mapfile.MapItem.Kind;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.app.port.Attribution;
import underhook.app.port.OutputWriter;
import underhook.app.port.Surroundings;
import underhook.app.port.Written;

/**
 * Writes plan.kml, KML 2.2: a folder for each kind. What has a height stands at it, above mean sea
 * level; the rest lies on the ground.
 */
public final class KmlWriter implements OutputWriter {
    @Override
    public String fileName() {
        return "plan.kml";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        Surroundings near = Surroundings.of(output);
        List<MapItem> items = MapItems.of(output, near);
        XmlText.write(
                file,
                xml -> {
                    xml.open("kml", "xmlns", "http://www.opengis.net/kml/2.2");
                    xml.open("Document");
                    xml.leaf("name", output.plan().job());
                    xml.leaf(
                            "description",
                            "Plan "
                                    + output.plan().id()
                                    + ". "
                                    + String.join(" ", Attribution.notice(output.readJob().job()))
                                    + near.note().map(note -> " " + note).orElse(""));
                    style(xml, "LEG", "ffb05a1e", 3);
                    style(xml, "ZONE", "ff2020d0", 2);
                    style(xml, "WIRE", "ff000000", 2);
                    for (Kind kind : Kind.values()) {
                        folder(xml, kind, items);
                    }
                    xml.close();
                    xml.close();
                });
    }

    /** Colour is alpha, blue, green, red. */
    private static void style(XmlText xml, String id, String colour, int width)
            throws XMLStreamException {
        xml.open("Style", "id", id);
        xml.open("LineStyle");
        xml.leaf("color", colour);
        xml.leaf("width", Integer.toString(width));
        xml.close();
        xml.open("PolyStyle");
        xml.leaf("color", "40" + colour.substring(2));
        xml.close();
        xml.close();
    }

    private static void folder(XmlText xml, Kind kind, List<MapItem> items)
            throws XMLStreamException {
        List<MapItem> members = items.stream().filter(item -> item.kind() == kind).toList();
        if (members.isEmpty()) {
            return;
        }
        xml.open("Folder");
        xml.leaf("name", kind.heading);
        for (MapItem item : members) {
            placemark(xml, item);
        }
        xml.close();
    }

    private static void placemark(XmlText xml, MapItem item) throws XMLStreamException {
        xml.open("Placemark");
        xml.leaf("name", item.id());
        if (item.kind() == Kind.LEG || item.kind() == Kind.ZONE || item.kind() == Kind.WIRE) {
            xml.leaf("styleUrl", "#" + item.kind().name());
        }
        if (!item.properties().isEmpty()) {
            xml.open("ExtendedData");
            for (String name : item.properties().keySet()) {
                String value = item.text(name);
                if (!value.isEmpty()) {
                    xml.open("Data", "name", name);
                    xml.leaf("value", value);
                    xml.close();
                }
            }
            xml.close();
        }
        geometry(xml, item);
        xml.close();
    }

    private static void geometry(XmlText xml, MapItem item) throws XMLStreamException {
        String mode = item.hasHeights() ? "absolute" : "clampToGround";
        String coordinates =
                item.vertices().stream()
                        .map(vertex -> coordinate(vertex, item.hasHeights()))
                        .collect(Collectors.joining(" "));
        switch (item.shape()) {
            case POINT -> {
                xml.open("Point");
                xml.leaf("altitudeMode", mode);
                xml.leaf("coordinates", coordinates);
                xml.close();
            }
            case LINE -> {
                xml.open("LineString");
                if (!item.hasHeights()) {
                    xml.leaf("tessellate", "1");
                }
                xml.leaf("altitudeMode", mode);
                xml.leaf("coordinates", coordinates);
                xml.close();
            }
            case AREA -> {
                xml.open("Polygon");
                xml.leaf("tessellate", "1");
                xml.leaf("altitudeMode", mode);
                xml.open("outerBoundaryIs");
                xml.open("LinearRing");
                xml.leaf("coordinates", coordinates);
                xml.close();
                xml.close();
                xml.close();
            }
        }
    }

    private static String coordinate(Vertex vertex, boolean hasHeight) {
        String lonLat =
                Written.nearest(vertex.position().lonDeg(), 7).toPlainString()
                        + ","
                        + Written.nearest(vertex.position().latDeg(), 7).toPlainString();
        return hasHeight
                ? lonLat + "," + Written.nearest(vertex.altitudeAmslM(), 1).toPlainString()
                : lonLat;
    }
}
