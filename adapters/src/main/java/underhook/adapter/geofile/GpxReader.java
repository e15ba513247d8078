package underhook.adapter.geofile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Decimals;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.Wgs84;

/**
 * Reads waypoints, routes and tracks of GPX 1.0 and 1.1.
 *
 * <p>A waypoint is a point; a route and each segment of a track is a line. Extensions are passed over.
 *
 * @source TOPOGRAFIX-GPX-1.1 wptType, rteType, trkType; TOPOGRAFIX-GPX-1.0
 */
public final class GpxReader implements FeatureReader {
    private static final long MOST_BYTES = 64L << 20;
    private static final Set<String> NAMESPACES =
            Set.of("http://www.topografix.com/GPX/1/0", "http://www.topografix.com/GPX/1/1");

    /** Names of the layers and of the elements in them. */
    private static final Map<String, String> LAYERS =
            Map.of("wpt", "waypoints", "rte", "routes", "trk", "tracks");

    private static final Set<String> VALUES =
            Set.of("name", "cmt", "desc", "src", "sym", "type", "time", "ele", "number");

    static boolean isGpx(String namespace) {
        return NAMESPACES.contains(namespace);
    }

    @Override
    public boolean reads(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".gpx");
    }

    @Override
    public Set<String> usualNames() {
        return Set.of("name", "cmt", "desc", "src", "sym", "type", "time", "ele", "number");
    }

    @Override
    public List<Fault> read(Request request, Consumer<StatedFeature> sink) {
        Faults faults = new Faults(request.statedName());
        XmlCursor.read(
                request.file(),
                MOST_BYTES,
                faults,
                cursor -> new GpxFile(cursor, faults, sink).read(request));
        return faults.list();
    }

    /** A file that is being read. */
    private record GpxFile(XmlCursor cursor, Faults faults, Consumer<StatedFeature> sink) {
        void read(Request request) throws XMLStreamException, Unreadable {
            if (!cursor.name().equals("gpx") || !isOwn()) {
                throw Unreadable.file("is no GPX 1.0 or 1.1").found(cursor.name());
            }
            FixedSystem.require("GPX", request.referenceSystem());
            if (!request.layer().isEmpty() && !LAYERS.containsValue(request.layer())) {
                throw Unreadable.field("layer", "is not there")
                        .found(request.layer())
                        .allowing("waypoints, routes or tracks");
            }
            cursor.eachChild(
                    () -> {
                        String layer = isOwn() ? LAYERS.getOrDefault(cursor.name(), "") : "";
                        boolean isWanted =
                                request.layer().isEmpty() || request.layer().equals(layer);
                        if (!layer.isEmpty() && isWanted) {
                            readFeature(cursor.line());
                        }
                    });
        }

        private boolean isOwn() {
            return NAMESPACES.contains(cursor.namespace());
        }

        private void readFeature(int line) throws XMLStreamException {
            try {
                Map<String, String> values = new LinkedHashMap<>();
                List<Part> parts =
                        switch (cursor.name()) {
                            case "wpt" -> List.of(Part.point(readPoint(values)));
                            case "rte" -> List.of(Part.line(readLine("rtept", values)));
                            default -> readTrack(values);
                        };
                if (values.containsKey("name")) {
                    values.put("id", values.get("name"));
                }
                if (!parts.isEmpty()) {
                    new Row(line, values, Wgs84.SYSTEM).hand(parts, sink);
                }
            } catch (Unreadable e) {
                faults.add(line, e);
            }
        }

        private Corner readPoint(Map<String, String> values) throws XMLStreamException, Unreadable {
            String lon = cursor.attribute("lon");
            String lat = cursor.attribute("lat");
            cursor.eachChild(() -> readValue(values));
            OptionalDouble elevationM =
                    values.containsKey("ele")
                            ? OptionalDouble.of(Decimals.read("ele", values.get("ele")))
                            : OptionalDouble.empty();
            return Part.wgs84(lon, lat, elevationM);
        }

        private void readValue(Map<String, String> values) throws XMLStreamException {
            if (isOwn() && VALUES.contains(cursor.name())) {
                values.put(cursor.name(), cursor.text());
            }
        }

        private List<Corner> readLine(String pointName, Map<String, String> values)
                throws XMLStreamException, Unreadable {
            List<Corner> corners = new ArrayList<>();
            cursor.eachChild(
                    () -> {
                        if (isOwn() && cursor.name().equals(pointName)) {
                            corners.add(readPoint(new LinkedHashMap<>()));
                        } else {
                            readValue(values);
                        }
                    });
            return corners;
        }

        /** A track without segments says nothing of where it is, and is no feature. */
        private List<Part> readTrack(Map<String, String> values)
                throws XMLStreamException, Unreadable {
            List<Part> parts = new ArrayList<>();
            cursor.eachChild(
                    () -> {
                        if (isOwn() && cursor.name().equals("trkseg")) {
                            List<Corner> corners = readLine("trkpt", new LinkedHashMap<>());
                            if (!corners.isEmpty()) {
                                parts.add(Part.line(corners));
                            }
                        } else {
                            readValue(values);
                        }
                    });
            return parts;
        }
    }
}
