package underhook.web;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DeskChanges;
import underhook.app.desk.DeskJob;
import underhook.app.desk.DeskJob.FileInfo;
import underhook.app.desk.TableEdit;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Sheets.Row;
import underhook.app.port.Sheets.Sheet;
import underhook.app.port.Wgs84;
import underhook.app.port.Written;
import underhook.core.geo.GeoPoint;

/** A change of one thing on the map, written into the file of the job that holds it. */
final class FeatureChange {
    /** Which role the things of a layer come from. */
    private static final Map<String, String> ROLES =
            Map.ofEntries(
                    Map.entry("places", "places"),
                    Map.entry("zones", "zones"),
                    Map.entry("wires", "wires"),
                    Map.entry("releaseAreas", "release_areas"),
                    Map.entry("roads", "map"),
                    Map.entry("houses", "map"),
                    Map.entry("people", "map"),
                    Map.entry("water", "map"),
                    Map.entry("hazards", "map"),
                    Map.entry("ground", "map"));

    private static final Set<String> OPERATIONS = Set.of("add", "move", "delete");
    private static final JsonMapper EXACT =
            JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();
    private static final int DEGREE_DECIMALS = 7;

    private final DeskJob job;
    private final ObjectNode asked;
    private final String operation;
    private final String id;
    private final String role;

    FeatureChange(DeskJob job, ObjectNode asked) throws Refused {
        this.job = job;
        this.asked = asked;
        this.operation = Asked.text(asked, "op");
        this.id = Asked.text(asked, "id", 40);
        this.role = ROLES.getOrDefault(Asked.text(asked, "layer"), "");
        if (!OPERATIONS.contains(operation) || role.isEmpty()) {
            throw new Refused(
                    400,
                    "op must be add, move or delete, layer one of "
                            + String.join(", ", new TreeSet<>(ROLES.keySet()))
                            + ".");
        }
    }

    /** Makes it: one revision. */
    void make() throws IOException {
        List<String> files =
                job.listFiles().stream()
                        .filter(file -> file.role().equals(role))
                        .map(FileInfo::path)
                        .toList();
        if (files.isEmpty()) {
            begin();
            return;
        }
        List<String> refused = new ArrayList<>();
        for (String file : files) {
            String lower = file.toLowerCase(Locale.ROOT);
            boolean isShapes = lower.endsWith(".geojson") || lower.endsWith(".json");
            boolean isTable = lower.endsWith(".csv") || lower.endsWith(".xlsx");
            if (!isShapes && !isTable) {
                refused.add(file);
            } else if (isShapes ? inShapes(file) : inTable(file)) {
                return;
            }
        }
        throw new Refused(
                400,
                refused.isEmpty()
                        ? "There is no " + id + " in " + String.join(", ", files) + "."
                        : String.join(", ", refused)
                                + " cannot be changed on the map. Perhaps bring it as GeoJSON.");
    }

    private String what() {
        String done =
                switch (operation) {
                    case "add" -> " added";
                    case "move" -> " moved";
                    default -> " removed";
                };
        return id + done + " on the map";
    }

    private DeskChanges changes() throws Refused {
        return new DeskChanges(job, Asked.revision(asked));
    }

    /** The job has no file of the role yet: one is begun. */
    private void begin() throws IOException {
        if (!operation.equals("add") || role.equals("places")) {
            throw new Refused(400, "The job has no file of " + role + " yet.");
        }
        String name = role.replace('_', '-');
        ObjectNode collection = Json.object().put("type", "FeatureCollection");
        collection.putArray("features").add(feature());
        changes().begin(name + ".geojson", text(collection), name, what());
    }

    private ObjectNode feature() throws Refused {
        ObjectNode properties = Json.object().put("id", id);
        asked.path("properties")
                .properties()
                .forEach(one -> properties.set(one.getKey(), one.getValue()));
        ObjectNode feature = Json.object().put("type", "Feature");
        feature.set("properties", properties);
        return feature.set("geometry", geometry());
    }

    private JsonNode geometry() throws Refused {
        JsonNode geometry = asked.path("geometry");
        if (!geometry.path("type").isString() || !geometry.path("coordinates").isArray()) {
            throw new Refused(400, "geometry must be GeoJSON.");
        }
        return geometry;
    }

    private static String text(ObjectNode collection) {
        StringBuilder out = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[");
        String between = "\n";
        for (JsonNode feature : collection.path("features")) {
            out.append(between).append(EXACT.writeValueAsString(feature));
            between = ",\n";
        }
        return out.append("\n]}\n").toString();
    }

    private boolean inShapes(String file) throws IOException {
        ObjectNode collection = collection(file);
        ArrayNode features = (ArrayNode) collection.required("features");
        int at = -1;
        for (int i = 0; i < features.size(); i++) {
            if (features.path(i).path("properties").path("id").asString("").equals(id)) {
                at = i;
            }
        }
        if (operation.equals("add")) {
            if (at >= 0) {
                throw new Refused(400, "There is a " + id + " already.");
            }
            features.add(feature());
        } else if (at < 0) {
            return false;
        } else if (operation.equals("delete")) {
            features.remove(at);
        } else {
            ((ObjectNode) features.get(at)).set("geometry", geometry());
        }
        changes().writeText(file, text(collection), what());
        return true;
    }

    private ObjectNode collection(String file) throws IOException {
        boolean isDegrees = job.findSystem(file).map(ReferenceSystem::isGeographic).orElse(true);
        String text = job.findFile(file).orElseThrow(Refused::unknown).toText();
        try {
            if (isDegrees
                    && EXACT.readTree(text) instanceof ObjectNode node
                    && node.path("features").isArray()
                    && node.size() == 2) {
                return node;
            }
        } catch (JacksonException wrong) {
            throw new Refused(400, file + " cannot be read.");
        }
        throw new Refused(
                400, file + " is no plain GeoJSON in degrees; it cannot be changed on the map.");
    }

    private boolean inTable(String file) throws IOException {
        Sheet sheet = job.findSheet(file).orElseThrow(Refused::unknown);
        int idColumn = column(sheet, "id");
        int row = -1;
        List<Row> rows = sheet.rows();
        for (int i = 0; i < rows.size() && idColumn >= 0; i++) {
            row = rows.get(i).cells().get(idColumn).strip().equals(id) ? i : row;
        }
        boolean isAdding = operation.equals("add");
        if (isAdding && row >= 0) {
            throw new Refused(400, "There is a " + id + " already.");
        }
        if (!isAdding && row < 0) {
            return false;
        }
        changes().editTable(file, edit(file, sheet, row), what());
        return true;
    }

    private TableEdit edit(String file, Sheet sheet, int row) throws IOException {
        if (operation.equals("delete")) {
            return new TableEdit(List.of(), Map.of(), Set.of(row));
        }
        boolean isPlane = column(sheet, "x_m") >= 0;
        ReferenceSystem system =
                isPlane
                        ? job.findSystem(file)
                                .orElseThrow(() -> new Refused(400, file + " has no crs."))
                        : Wgs84.SYSTEM;
        ReferenceSystem.Xy xy = system.fromGeo(point());
        int decimals = system.isGeographic() ? DEGREE_DECIMALS : 1;
        int x = column(sheet, isPlane ? "x_m" : "lon_deg");
        int y = column(sheet, isPlane ? "y_m" : "lat_deg");
        if (x < 0 || y < 0) {
            throw new Refused(400, file + " has no columns for a position.");
        }
        String xText = number(sheet, Written.nearest(xy.x(), decimals));
        String yText = number(sheet, Written.nearest(xy.y(), decimals));
        if (operation.equals("move")) {
            return new TableEdit(
                    List.of(new TableEdit.Cell(row, x, xText), new TableEdit.Cell(row, y, yText)),
                    Map.of(),
                    Set.of());
        }
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < sheet.columns().size(); i++) {
            String name = sheet.columns().get(i).strip().toLowerCase(Locale.ROOT);
            String said = name.equals("id") ? id : asked.path("properties").path(name).asString("");
            cells.add(i == x ? xText : i == y ? yText : said);
        }
        return new TableEdit(List.of(), Map.of(sheet.rows().size(), List.of(cells)), Set.of());
    }

    /** With a comma where the file separates by semicolons and its numbers have commas. */
    private static String number(Sheet sheet, BigDecimal value) {
        boolean hasCommas =
                sheet.separator() == ';'
                        && sheet.rows().stream()
                                .flatMap(row -> row.cells().stream())
                                .anyMatch(cell -> cell.matches("-?[0-9]+,[0-9]+"));
        return hasCommas ? value.toPlainString().replace('.', ',') : value.toPlainString();
    }

    private GeoPoint point() throws Refused {
        JsonNode coordinates = geometry().path("coordinates");
        if (!geometry().path("type").asString("").equals("Point")
                || !coordinates.path(0).isNumber()
                || !coordinates.path(1).isNumber()) {
            throw new Refused(400, "A place is a Point.");
        }
        return new GeoPoint(coordinates.path(1).asDouble(), coordinates.path(0).asDouble());
    }

    private static int column(Sheet sheet, String name) {
        for (int i = 0; i < sheet.columns().size(); i++) {
            if (sheet.columns().get(i).strip().equalsIgnoreCase(name)) {
                return i;
            }
        }
        return -1;
    }
}
