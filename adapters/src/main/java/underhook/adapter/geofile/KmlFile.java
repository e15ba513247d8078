package underhook.adapter.geofile;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Consumer;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.app.port.Wgs84;

/**
 * A KML file that is being read: its folders, and the placemarks of the one that is asked for. Mutable.
 *
 * @source OGC-07-147R2 clauses 7 (kml), 9 (features and containers), 9.2 to 9.5 (extended data)
 */
final class KmlFile {
    private static final int MOST_NAMES = 20;

    private final XmlCursor cursor;
    private final Faults faults;
    private final Consumer<StatedFeature> sink;
    private final TreeSet<String> names = new TreeSet<>();
    private String layer = "";
    private boolean isFound;

    KmlFile(XmlCursor cursor, Faults faults, Consumer<StatedFeature> sink) {
        this.cursor = cursor;
        this.faults = faults;
        this.sink = sink;
    }

    void read(Request request) throws XMLStreamException, Unreadable {
        if (!cursor.name().equals("kml") || !isKml(cursor.namespace())) {
            throw Unreadable.file("is no KML").found(cursor.name());
        }
        FixedSystem.require("KML", request.referenceSystem());
        layer = request.layer();
        isFound = layer.isEmpty();
        readFolder(new Folder(isFound));
        if (!isFound) {
            throw Unreadable.field("layer", "is not there")
                    .found(layer)
                    .allowing(
                            names.isEmpty()
                                    ? "no layer, for the file has no folders"
                                    : String.join(", ", names));
        }
    }

    private static boolean isKml(String namespace) {
        return namespace.isEmpty()
                || namespace.startsWith("http://www.opengis.net/kml/2.")
                || namespace.startsWith("http://earth.google.com/kml/2.")
                || namespace.equals("http://www.google.com/kml/ext/2.2");
    }

    /** Whether the placemarks of a folder are asked for, which its name may say. */
    private static final class Folder {
        private boolean isWanted;

        Folder(boolean isWanted) {
            this.isWanted = isWanted;
        }
    }

    private void readFolder(Folder folder) throws XMLStreamException, Unreadable {
        cursor.eachChild(
                () -> {
                    if (isKml(cursor.namespace())) {
                        readFeature(folder);
                    }
                });
    }

    private void readFeature(Folder folder) throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "Folder", "Document" -> {
                Folder inner = new Folder(folder.isWanted);
                name(inner, cursor.attribute("id"));
                readFolder(inner);
            }
            case "name" -> {
                String name = cursor.text();
                if (names.size() < MOST_NAMES) {
                    names.add(name);
                }
                name(folder, name);
            }
            case "Placemark" -> {
                if (folder.isWanted) {
                    readPlacemark(cursor.line());
                }
            }
            case "NetworkLink" -> {
                if (folder.isWanted) {
                    faults.add(
                            cursor.line(),
                            Unreadable.field("NetworkLink", "is not followed")
                                    .allowing("the placemarks themselves in this file"));
                }
            }
            default -> {
                // Styles, pictures and views.
            }
        }
    }

    private void name(Folder folder, String name) {
        if (!layer.isEmpty() && layer.equals(name)) {
            folder.isWanted = true;
            isFound = true;
        }
    }

    private void readPlacemark(int line) throws XMLStreamException {
        Map<String, String> values = new LinkedHashMap<>();
        String id = cursor.attribute("id");
        if (!id.isEmpty()) {
            values.put("id", id);
        }
        KmlGeometry geometry = new KmlGeometry(cursor);
        try {
            cursor.eachChild(
                    () -> {
                        if (KmlGeometry.isGeometry(cursor.name()) && isKml(cursor.namespace())) {
                            geometry.read();
                        } else if (isKml(cursor.namespace())) {
                            readValue(values);
                        }
                    });
            if (!values.containsKey("id") && values.containsKey("name")) {
                values.put("id", values.get("name"));
            }
            new Row(line, values, Wgs84.SYSTEM).hand(geometry.parts(), sink);
        } catch (Unreadable e) {
            faults.add(line, e);
        }
    }

    private void readValue(Map<String, String> values) throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "name", "description" -> values.putIfAbsent(cursor.name(), cursor.text());
            case "ExtendedData", "SchemaData" -> cursor.eachChild(() -> readValue(values));
            case "SimpleData" -> put(values, cursor.attribute("name"), cursor.text());
            case "Data" -> {
                String name = cursor.attribute("name");
                cursor.eachChild(
                        () -> {
                            if (cursor.name().equals("value")) {
                                put(values, name, cursor.text());
                            }
                        });
            }
            default -> {
                // How and when it is shown.
            }
        }
    }

    /** A value of the data counts over an element of the same name, unless it is empty. */
    private static void put(Map<String, String> values, String name, String text) {
        if (!name.isEmpty() && !(text.isEmpty() && values.containsKey(name))) {
            values.put(name, text);
        }
    }
}
