package underhook.adapter.geofile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.core.geo.GeoPoint;

/** Files that GDAL writes are read as GDAL reads them itself. */
@Tag("slow")
class ReadsAsGdalDoesIT {
    /** GDAL prints 15 decimals. */
    private static final Offset<Double> PRINTED = Offset.offset(1e-12);

    private static final GeoPackageReader GEOPACKAGE =
            new GeoPackageReader(new Proj4jReferenceSystems());

    private static final String HEAD = "id,WKT,big,real,flag,day,at,text\n";
    private static final String TYPES =
            "String,WKT,Integer64,Real,Integer(Boolean),Date,DateTime,String";

    /** Invented; every kind of simple geometry, near 11 east, 46 north. */
    private static final String FLAT =
            HEAD
                    + "P,POINT (11.1 46.2),9007199254740993,0.1,1,2026-06-01,2026-06-01T10:20:30Z,\"x, \"\"y\"\"\"\n"
                    + "L,\"LINESTRING (11 46,11.1 46.1,11.2 46.05)\",-5,1234567.875,0,,,grün\n"
                    + "A,\"POLYGON ((11 46,11.1 46,11.1 46.1,11 46),(11.06 46.01,11.08 46.01,11.08 46.03,11.06"
                    + " 46.01))\",0,1e-7,1,,,\n"
                    + "MP,\"MULTIPOINT (11 46,11.01 46.02)\",1,2,0,,,\n"
                    + "ML,\"MULTILINESTRING ((11 46,11.1 46.1),(11.2 46.2,11.3 46.3,11.4 46.2))\",1,2,0,,,\n"
                    + "MA,\"MULTIPOLYGON (((11 46,11.1 46,11.1 46.1,11 46)),((11.2 46,11.3 46,11.3 46.1,11.2"
                    + " 46)))\",1,2,0,,,\n"
                    + "M1,\"MULTIPOLYGON (((11 46,11.1 46,11.1 46.1,11 46)))\",1,2,0,,,\n"
                    + "GC,\"GEOMETRYCOLLECTION (POINT (11 46),LINESTRING (11 46,11.1 46.1))\",1,2,0,,,\n"
                    + "E,POINT EMPTY,1,2,0,,,\n"
                    + "EL,LINESTRING EMPTY,1,2,0,,,\n"
                    + "EM,MULTIPOLYGON EMPTY,1,2,0,,,\n"
                    + "N,,1,2,0,,,\n";

    private static final String HIGH =
            HEAD
                    + "P,POINT Z (11.1 46.2 300.5),1,2,0,,,\n"
                    + "L,\"LINESTRING Z (11 46 1.25,11.1 46.1 -2.5)\",1,2,0,,,\n"
                    + "A,\"POLYGON Z ((11 46 7,11.1 46 8,11.1 46.1 9,11 46 7))\",1,2,0,,,\n"
                    + "ML,\"MULTILINESTRING Z ((11 46 1,11.1 46.1 2),(11.2 46.2 3,11.3 46.3 4))\",1,2,0,,,\n";

    @TempDir Path folder;
    private Gdal gdal = new Gdal(Path.of("."));

    @BeforeEach
    void start() {
        gdal = new Gdal(folder);
    }

    @Test
    void geopackages_in_five_systems() throws Exception {
        for (int code : List.of(4326, 32632, 2056, 3035, 2193)) {
            boolean isFarSouth = code == 2193;
            Path csv = csv(isFarSouth ? FLAT.replaceAll("11(\\.[0-9]+)? 46", "171$1 -43") : FLAT);
            Path file = geopackage(csv, "-s_srs", "EPSG:4326", "-t_srs", "EPSG:" + code);

            List<StatedFeature> read = readWhole(GEOPACKAGE, file, "");

            same(read, gdal.features(file));
            assertThat(read.get(0).system().name()).isEqualTo("EPSG:" + code);
            GeoPoint there =
                    read.get(0)
                            .system()
                            .toGeo(
                                    read.get(0).outline().get(0).x(),
                                    read.get(0).outline().get(0).y());
            // Two sets of datum shifts may differ by a metre or two; swapped axes by thousands of
            // kilometres.
            assertThat(there.latDeg()).isCloseTo(isFarSouth ? -43.2 : 46.2, Offset.offset(3e-5));
            assertThat(there.lonDeg()).isCloseTo(isFarSouth ? 171.1 : 11.1, Offset.offset(3e-5));
        }
    }

    @Test
    void geopackages_with_heights_and_measures() throws Exception {
        for (String dimension : List.of("XY", "XYZ", "XYM", "XYZM")) {
            for (String content : List.of(FLAT, HIGH)) {
                Path file = geopackage(csv(content), "-a_srs", "EPSG:32632", "-dim", dimension);

                List<StatedFeature> read = readWhole(GEOPACKAGE, file, "");

                same(read, gdal.features(file));
                assertThat(read.get(0).outline().get(0).elevationM().isPresent())
                        .as(dimension)
                        .isEqualTo(dimension.contains("Z"));
            }
        }
    }

    @Test
    void numbers_words_and_days_are_read_as_they_were_given() throws Exception {
        Path file = geopackage(csv(FLAT), "-a_srs", "EPSG:32632");

        List<StatedFeature> read = readWhole(GEOPACKAGE, file, "");

        assertThat(read.get(0).values())
                .containsEntry("big", "9007199254740993")
                .containsEntry("real", "0.1")
                .containsEntry("flag", "yes")
                .containsEntry("day", "2026-06-01")
                .containsEntry("text", "x, \"y\"");
        assertThat(read.get(0).values().get("at")).startsWith("2026-06-01T10:20:30");
        assertThat(read.get(1).values())
                .containsEntry("big", "-5")
                .containsEntry("real", "1234567.875")
                .containsEntry("flag", "no")
                .containsEntry("day", "")
                .containsEntry("text", "grün");
        assertThat(read.get(2).values()).containsEntry("real", "0.0000001");
    }

    @Test
    void a_table_without_geometry_has_rows_without_shape() throws Exception {
        Path file = geopackage(csv(FLAT), "-nlt", "NONE");

        List<StatedFeature> read = readWhole(GEOPACKAGE, file, "");

        assertThat(read).hasSize(12).allMatch(each -> each.shape() == Shape.NONE);
        same(read, gdal.features(file));
    }

    @Test
    void kml_of_both_drivers() throws Exception {
        for (String driver : List.of("KML", "LIBKML")) {
            for (String content : List.of(onlyShapes(FLAT), HIGH)) {
                Path file =
                        gdal.convert(
                                driver,
                                csv(content),
                                driver + ".kml",
                                "-oo",
                                "KEEP_GEOM_COLUMNS=NO",
                                "-a_srs",
                                "EPSG:4326",
                                "-nln",
                                "things");

                List<StatedFeature> read = readWhole(new KmlReader(), file, "things");

                sameOutlines(read, gdal.features(file), false);
                // No altitude mode: KML says that altitudes are then to be ignored.
                assertThat(read).allMatch(each -> elevations(each).isEmpty());
            }
        }
    }

    @Test
    void kml_with_absolute_altitudes() throws Exception {
        Path file =
                gdal.convert(
                        "KML",
                        csv(HIGH),
                        "high.kml",
                        "-oo",
                        "KEEP_GEOM_COLUMNS=NO",
                        "-dsco",
                        "AltitudeMode=absolute");

        List<StatedFeature> read = readWhole(new KmlReader(), file, "");

        sameOutlines(read, gdal.features(file), true);
        assertThat(elevations(read.get(0))).containsExactly(300.5);
    }

    @Test
    void gpx_waypoints_routes_and_tracks() throws Exception {
        Path csv =
                csv("name,WKT,ele\nW1,POINT (11.1 46.2),300.5\nW2,POINT (-11.123456789 -46.2),\n");
        Path points = gdal.convert("GPX", csv, "points.gpx", "-nlt", "POINT", "-nln", "waypoints");
        Path lines =
                csv(
                        """
                        name,WKT
                        T1,"MULTILINESTRING ((11 46,11.1 46.1),(11.2 46.2,11.3 46.3,11.4 46.2))"
                        """);
        Path tracks =
                gdal.convert(
                        "GPX", lines, "tracks.gpx", "-nlt", "MULTILINESTRING", "-nln", "tracks");
        Path one = csv("name,WKT\nR1,\"LINESTRING (11 46,11.1 46.1,11.2 46)\"\n");
        Path routes =
                gdal.convert("GPX", one, "routes.gpx", "-nlt", "LINESTRING", "-nln", "routes");

        for (var each :
                Map.of("waypoints", points, "tracks", tracks, "routes", routes).entrySet()) {
            List<StatedFeature> read = readWhole(new GpxReader(), each.getValue(), each.getKey());

            List<JsonNode> expected =
                    gdal.features(
                            each.getValue(), "-nln", "x", "-sql", "SELECT * FROM " + each.getKey());
            sameOutlines(read, expected, false);
            assertThat(readWhole(new GpxReader(), each.getValue(), "")).hasSameSizeAs(read);
        }
        List<StatedFeature> read = readWhole(new GpxReader(), points, "");
        assertThat(read.get(0).values()).containsEntry("id", "W1").containsEntry("name", "W1");
        assertThat(elevations(read.get(0))).containsExactly(300.5);
    }

    private static String onlyShapes(String csv) {
        StringBuilder kept = new StringBuilder();
        csv.lines()
                .filter(line -> !line.contains("EMPTY") && !line.startsWith("N,"))
                .forEach(line -> kept.append(line).append('\n'));
        return kept.toString();
    }

    private Path csv(String text) throws IOException {
        Path csv = Files.writeString(folder.resolve("things.csv"), text);
        if (text.startsWith(HEAD)) {
            Files.writeString(folder.resolve("things.csvt"), TYPES);
        } else {
            Files.deleteIfExists(folder.resolve("things.csvt"));
        }
        return csv;
    }

    private Path geopackage(Path csv, String... options) throws Exception {
        List<String> all =
                new ArrayList<>(
                        List.of(
                                "-oo",
                                "KEEP_GEOM_COLUMNS=NO",
                                "-nlt",
                                "GEOMETRY",
                                "-nln",
                                "things"));
        all.addAll(List.of(options));
        return gdal.convert("GPKG", csv, "things.gpkg", all.toArray(String[]::new));
    }

    private static List<StatedFeature> readWhole(FeatureReader reader, Path file, String layer) {
        List<StatedFeature> read = new ArrayList<>();
        String name = String.valueOf(file.getFileName());
        assertThat(reader.reads(name)).isTrue();
        List<Fault> faults =
                reader.read(new Request(file, name, Optional.empty(), layer), read::add);
        assertThat(faults).isEmpty();
        return read;
    }

    private static List<Double> elevations(StatedFeature feature) {
        return feature.outline().stream()
                .map(Corner::elevationM)
                .filter(OptionalDouble::isPresent)
                .map(OptionalDouble::getAsDouble)
                .toList();
    }

    private static void same(List<StatedFeature> read, List<JsonNode> expected) {
        sameOutlines(read, expected, true);
        Map<Integer, StatedFeature> rows = new LinkedHashMap<>();
        read.forEach(each -> rows.putIfAbsent(each.line(), each));
        assertThat(rows).hasSameSizeAs(expected);
        int row = 0;
        for (StatedFeature each : rows.values()) {
            for (var property : expected.get(row++).get("properties").properties()) {
                sameValue(
                        each.values().getOrDefault(property.getKey(), "(none)"),
                        property.getValue());
            }
        }
    }

    private static void sameValue(String read, JsonNode expected) {
        if (expected.isNull()) {
            assertThat(read).isEmpty();
        } else if (expected.isBoolean()) {
            assertThat(read).isEqualTo(expected.asBoolean() ? "yes" : "no");
        } else if (expected.isIntegralNumber()) {
            assertThat(Long.parseLong(read)).isEqualTo(expected.asLong());
        } else if (expected.isNumber()) {
            assertThat(Double.parseDouble(read)).isEqualTo(expected.asDouble());
        } else {
            assertThat(read.replace(".000Z", "Z")).isEqualTo(expected.asString());
        }
    }

    private static void sameOutlines(
            List<StatedFeature> read, List<JsonNode> expected, boolean withHeights) {
        List<List<double[]>> outlines = new ArrayList<>();
        for (JsonNode each : expected) {
            List<List<double[]>> parts = Gdal.outlines(each.get("geometry"));
            outlines.addAll(parts.isEmpty() ? List.of(List.of()) : parts);
        }
        assertThat(read).hasSameSizeAs(outlines);
        for (int i = 0; i < outlines.size(); i++) {
            List<Corner> corners = read.get(i).outline();
            assertThat(corners).hasSameSizeAs(outlines.get(i));
            for (int k = 0; k < corners.size(); k++) {
                double[] numbers = outlines.get(i).get(k);
                assertThat(corners.get(k).x()).isCloseTo(numbers[0], PRINTED);
                assertThat(corners.get(k).y()).isCloseTo(numbers[1], PRINTED);
                if (withHeights) {
                    assertThat(corners.get(k).elevationM().isPresent())
                            .isEqualTo(numbers.length == 3);
                    corners.get(k)
                            .elevationM()
                            .ifPresent(z -> assertThat(z).isCloseTo(numbers[2], PRINTED));
                }
            }
        }
    }
}
