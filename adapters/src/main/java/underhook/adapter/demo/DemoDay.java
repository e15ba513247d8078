package underhook.adapter.demo;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import underhook.adapter.demo.DemoCanopy.Clearing;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/**
 * The demo day as an ordinary job folder.
 *
 * <p>The files beside this class are the day. Most are written as they stand. The GeoJSON ones are kept in
 * metres of the local grid and written as longitude and latitude, as that format wants it. The load
 * list is written the way a spreadsheet with decimal commas saves it.
 */
public final class DemoDay {
    /** Origin of the local grid: open sea, so that nobody takes the valley for a real one. */
    static final GeoPoint ORIGIN = new GeoPoint(46.8, -12.0);

    private static final List<String> PLAIN =
            List.of(
                    "job.yaml",
                    "local.wkt",
                    "machine.yaml",
                    "weather.csv",
                    "crews.yaml",
                    "rules.yaml",
                    "rigging.yaml",
                    "places.csv",
                    "hazards.csv",
                    "emergency.yaml",
                    "notices.txt",
                    "permits.csv",
                    "climate.csv");
    private static final List<String> GEOGRAPHIC =
            List.of("zones.geojson", "wires.geojson", "map.geojson", "release-areas.geojson");
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    /** About a tenth of a millimetre on the ground. */
    private static final int DEGREE_DECIMALS = 9;

    private final LocalFrame frame = LocalFrame.of(ORIGIN);
    private final JsonMapper json = new JsonMapper();

    /**
     * Writes the day; the same bytes every time. Files of the same names are written over.
     *
     * @param folder made when it is not there
     * @throws IOException if a file cannot be written
     */
    public void write(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (String name : PLAIN) {
            writeText(folder.resolve(name), resource(name));
        }
        writeText(
                folder.resolve("loads.csv"),
                BYTE_ORDER_MARK + resource("loads.csv").replace("\n", "\r\n"));
        writeText(folder.resolve("archive.csv"), DemoArchive.csv());
        for (String name : GEOGRAPHIC) {
            writeText(folder.resolve(name), onTheGlobe(resource(name)));
        }
        DemoGrid terrain = DemoGrid.of(DemoTerrain::groundAmslM);
        Files.write(folder.resolve("terrain.tif"), DemoGeoTiff.encode(terrain));
        DemoGrid canopy = DemoCanopy.grow(terrain, clearings());
        Files.write(folder.resolve("canopy.tif"), DemoGeoTiff.encode(canopy));
    }

    /** Clearings of the place list; open places have none, for nothing tall grows there. */
    private static List<Clearing> clearings() throws IOException {
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(resource("places.csv"))) {
            return rows.stream()
                    .filter(row -> !row.getField("clearing_radius_m").equals("open"))
                    .map(
                            row ->
                                    new Clearing(
                                            number(row, "x_m"),
                                            number(row, "y_m"),
                                            number(row, "clearing_radius_m")))
                    .toList();
        }
    }

    private static double number(NamedCsvRecord row, String field) {
        return Double.parseDouble(row.getField(field));
    }

    private String onTheGlobe(String planeGeoJson) {
        ObjectNode collection = (ObjectNode) json.readTree(planeGeoJson);
        StringBuilder out = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[");
        String between = "\n";
        for (JsonNode feature : collection.required("features")) {
            ObjectNode geometry = (ObjectNode) feature.required("geometry");
            geometry.set("coordinates", onTheGlobe(geometry.required("coordinates")));
            out.append(between).append(feature);
            between = ",\n";
        }
        return out.append("\n]}\n").toString();
    }

    private JsonNode onTheGlobe(JsonNode coordinates) {
        ArrayNode turned = JsonNodeFactory.instance.arrayNode();
        if (coordinates.get(0).isNumber()) {
            PlanePoint point =
                    new PlanePoint(coordinates.get(0).asDouble(), coordinates.get(1).asDouble());
            GeoPoint onGlobe = frame.toGeo(point);
            return turned.add(rounded(onGlobe.lonDeg())).add(rounded(onGlobe.latDeg()));
        }
        coordinates.forEach(part -> turned.add(onTheGlobe(part)));
        return turned;
    }

    private static BigDecimal rounded(double degrees) {
        return BigDecimal.valueOf(degrees).setScale(DEGREE_DECIMALS, RoundingMode.HALF_EVEN);
    }

    private static void writeText(Path file, String text) throws IOException {
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = DemoDay.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IOException("The program's own file " + name + " is missing.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        }
    }
}
