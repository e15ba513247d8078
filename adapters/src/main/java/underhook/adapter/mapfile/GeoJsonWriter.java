package underhook.adapter.mapfile;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.app.port.Attribution;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter;
import underhook.app.port.Surroundings;
import underhook.app.port.Written;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** Writes plan.geojson: one FeatureCollection, what each feature is stands in its property kind. */
public final class GeoJsonWriter implements OutputWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final ObjectWriter JSON =
            JsonMapper.builder()
                    .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                    .build()
                    .writer()
                    .with(
                            new DefaultPrettyPrinter()
                                    .withObjectIndenter(new DefaultIndenter("  ", "\n")));

    @Override
    public String fileName() {
        return "plan.geojson";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        Job job = output.readJob().job();
        Plan plan = output.plan();
        ObjectNode root = NODES.objectNode();
        root.put("type", "FeatureCollection");
        root.put("caution", Caution.TEXT);
        root.put("planId", plan.id());
        root.put("job", plan.job());
        root.put("plannedAt", Written.time(plan.plannedAt(), job.zone()));
        root.put("program", plan.program());
        root.put(
                "heights",
                "metres above mean sea level; of legs those of the hook under the belly");
        ArrayNode attribution = root.putArray("attribution");
        Attribution.lines(job).forEach(attribution::add);
        Attribution.shareAlike(job).ifPresent(licence -> root.put("licence", licence));
        Surroundings near = Surroundings.of(output);
        near.note().ifPresent(note -> root.put("note", note));
        ArrayNode features = root.putArray("features");
        MapItems.of(output, near).forEach(item -> features.add(feature(item)));
        Files.writeString(file, JSON.writeValueAsString(root) + "\n", StandardCharsets.UTF_8);
    }

    private static ObjectNode feature(MapItem item) {
        ObjectNode node = NODES.objectNode();
        node.put("type", "Feature");
        // Ids are unique within a kind only.
        node.put("id", item.kind().word + ":" + item.id());
        node.set("geometry", geometry(item));
        ObjectNode properties = node.putObject("properties");
        properties.put("kind", item.kind().word);
        properties.put("id", item.id());
        item.properties().forEach((name, value) -> put(properties, name, value));
        return node;
    }

    private static ObjectNode geometry(MapItem item) {
        return switch (item.shape()) {
            case POINT -> shape("Point", positions(item, item.vertices()).get(0));
            case LINE -> {
                ArrayNode parts = NODES.arrayNode();
                CutAt180.line(item.vertices()).forEach(part -> parts.add(positions(item, part)));
                yield either("LineString", parts);
            }
            case AREA -> {
                ArrayNode parts = NODES.arrayNode();
                CutAt180.area(item.vertices())
                        .forEach(ring -> parts.addArray().add(positions(item, ring)));
                yield either("Polygon", parts);
            }
        };
    }

    private static ObjectNode either(String type, ArrayNode parts) {
        return parts.size() == 1 ? shape(type, parts.get(0)) : shape("Multi" + type, parts);
    }

    private static ObjectNode shape(String type, JsonNode coordinates) {
        ObjectNode node = NODES.objectNode();
        node.put("type", type).set("coordinates", coordinates);
        return node;
    }

    private static ArrayNode positions(MapItem item, List<Vertex> vertices) {
        ArrayNode line = NODES.arrayNode();
        vertices.forEach(vertex -> line.add(position(vertex, item.hasHeights())));
        return line;
    }

    private static ArrayNode position(Vertex vertex, boolean hasHeight) {
        ArrayNode node =
                NODES.arrayNode()
                        .add(Written.nearest(vertex.position().lonDeg(), 7))
                        .add(Written.nearest(vertex.position().latDeg(), 7));
        return hasHeight ? node.add(Written.nearest(vertex.altitudeAmslM(), 1)) : node;
    }

    private static void put(ObjectNode node, String name, Object value) {
        if (value instanceof BigDecimal number) {
            node.put(name, number);
        } else if (value instanceof Integer number) {
            node.put(name, number.intValue());
        } else if (value instanceof Boolean flag) {
            node.put(name, flag.booleanValue());
        } else if (value instanceof List<?> list) {
            ArrayNode array = node.putArray(name);
            list.forEach(item -> array.add(String.valueOf(item)));
        } else {
            node.put(name, String.valueOf(value));
        }
    }
}
