package underhook.adapter.geofile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Runs GDAL's ogr2ogr, and reads the GeoJSON that it makes. Needs Debian's gdal-bin. */
record Gdal(Path folder) {
    /** Converts; the options come before the names. */
    Path convert(String format, Path from, String name, String... options)
            throws IOException, InterruptedException {
        Path to = folder.resolve(name);
        Files.deleteIfExists(to);
        List<String> command = new ArrayList<>(List.of("ogr2ogr", "-f", format));
        command.addAll(List.of(options));
        command.addAll(List.of(to.toString(), from.toString()));
        run(command);
        return to;
    }

    String run(List<String> command) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(command));
        builder.environment().put("LC_ALL", "C.UTF-8");
        Process process = builder.redirectErrorStream(true).redirectOutput(said.toFile()).start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        String text = Files.readString(said, StandardCharsets.UTF_8);
        assertThat(process.exitValue()).as(text).isZero();
        return text;
    }

    /** What GDAL finds in a file: coordinates in the file's own system, to 15 decimals. */
    List<JsonNode> features(Path file, String... options) throws IOException, InterruptedException {
        List<String> all =
                new ArrayList<>(List.of("-lco", "COORDINATE_PRECISION=15", "-lco", "RFC7946=NO"));
        all.addAll(List.of(options));
        Path json = convert("GeoJSON", file, "told.geojson", all.toArray(String[]::new));
        List<JsonNode> features = new ArrayList<>();
        new ObjectMapper().readTree(json.toFile()).get("features").forEach(features::add);
        return features;
    }

    /** Outer outlines of a geometry, in order; each corner x, y and, where it has one, z. */
    static List<List<double[]>> outlines(JsonNode geometry) {
        List<List<double[]>> outlines = new ArrayList<>();
        if (!geometry.isNull()) {
            String type = geometry.get("type").asString();
            if (type.equals("GeometryCollection")) {
                geometry.get("geometries").forEach(each -> outlines.addAll(outlines(each)));
            } else if (type.startsWith("Multi")) {
                geometry.get("coordinates")
                        .forEach(each -> outlines.add(outline(type.substring(5), each)));
            } else {
                outlines.add(outline(type, geometry.get("coordinates")));
            }
        }
        return outlines;
    }

    private static List<double[]> outline(String type, JsonNode coordinates) {
        List<double[]> outline = new ArrayList<>();
        switch (type) {
            case "Point" -> outline.add(numbers(coordinates));
            case "LineString" -> coordinates.forEach(each -> outline.add(numbers(each)));
            default -> {
                coordinates.get(0).forEach(each -> outline.add(numbers(each)));
                outline.remove(outline.size() - 1);
            }
        }
        return outline;
    }

    private static double[] numbers(JsonNode position) {
        double[] numbers = new double[position.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = position.get(i).asDouble();
        }
        return numbers;
    }
}
