package underhook.adapter.geofile;

import static java.nio.ByteOrder.LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.FeatureReader.Shape;
import underhook.app.port.FeatureReader.StatedFeature;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.FindingCode;

class GeoPackageReaderTest {
    private static final byte LITTLE = 1;
    private static final GeoPackageReader READER =
            new GeoPackageReader(new Proj4jReferenceSystems());

    @TempDir Path folder;
    private final List<StatedFeature> read = new ArrayList<>();

    private List<Fault> read(Path file, String layer, Optional<ReferenceSystem> system) {
        read.clear();
        return READER.read(new Request(file, "a.gpkg", system, layer), read::add);
    }

    private String faults(Path file, String layer) {
        return read(file, layer, Optional.empty()).stream()
                .map(Fault::toString)
                .reduce("", (a, b) -> a + b + "\n");
    }

    private Path file() {
        return folder.resolve("a.gpkg");
    }

    private static byte[] point(int systemId) {
        return SmallGeoPackage.blob(LITTLE_ENDIAN, 0, systemId, LITTLE, 1001, 11.0, 46.0, 300.0);
    }

    @Test
    void every_kind_of_value_as_somebody_would_type_it() throws Exception {
        Path file =
                SmallGeoPackage.make(
                        file(),
                        "CREATE TABLE rows (a INTEGER, b REAL, c BOOLEAN, d TEXT, e DATE, f BLOB, g, h"
                                + " INTEGER GENERATED ALWAYS AS (a + 1) VIRTUAL)",
                        "INSERT INTO gpkg_contents VALUES ('rows', 'attributes', 'rows', NULL)",
                        "INSERT INTO rows VALUES (9007199254740993, 12.0, 1, ' x ', '2026-06-01', x'00',"
                                + " 'free')",
                        "INSERT INTO rows VALUES (-3, 1e-300, 0, '', NULL, NULL, 2.5)",
                        "INSERT INTO rows VALUES ('word', -0.0, 2, NULL, 20260601, 'text', NULL)");

        assertThat(faults(file, "")).isEmpty();

        assertThat(read).extracting(StatedFeature::shape).containsOnly(Shape.NONE);
        assertThat(read).extracting(StatedFeature::line).containsExactly(1, 2, 3);
        assertThat(read.get(0).values().toString())
                .isEqualTo(
                        "{a=9007199254740993, b=12, c=yes, d= x , e=2026-06-01, g=free,"
                                + " h=9007199254740994}");
        assertThat(read.get(1).values().toString())
                .isEqualTo("{a=-3, b=1.0E-300, c=no, d=, e=, f=, g=2.5, h=-2}");
        assertThat(read.get(2).values().toString())
                .isEqualTo("{a=word, b=0, c=2, d=, e=20260601, f=text, g=, h=1}");
    }

    @Test
    void a_layer_is_asked_for_by_name_where_there_are_several() throws Exception {
        Path file =
                SmallGeoPackage.make(
                        file(),
                        "CREATE TABLE \"a b\"\"c\" (id TEXT)",
                        "INSERT INTO \"a b\"\"c\" VALUES ('1')",
                        "CREATE TABLE other (id TEXT)",
                        "CREATE TABLE quiet (id TEXT)",
                        "INSERT INTO quiet VALUES ('q')",
                        "CREATE TABLE pictures (id TEXT)",
                        "INSERT INTO gpkg_contents VALUES ('a b\"c', 'attributes', '', NULL), ('other',"
                                + " 'attributes', '', NULL), ('pictures', 'tiles', '', NULL)");

        assertThat(faults(file, ""))
                .contains("layer")
                .contains("several")
                .contains("a b\"c, other");
        assertThat(faults(file, "a b\"c")).isEmpty();
        assertThat(read).hasSize(1);
        assertThat(faults(file, "quiet")).isEmpty();
        assertThat(read).hasSize(1);
        assertThat(faults(file, "gone")).contains("is not there").contains("a b\"c, other");
        assertThat(faults(file, "gpkg_contents")).contains("is not there");
    }

    @Test
    void the_empty_table_that_gdal_registers_is_no_layer() throws Exception {
        Path file =
                SmallGeoPackage.make(
                        file(),
                        "CREATE TABLE ogr_empty_table (ogc_fid INTEGER, geom BLOB)",
                        "CREATE TABLE rows (id TEXT)",
                        "INSERT INTO rows VALUES ('1')",
                        "INSERT INTO gpkg_contents VALUES ('ogr_empty_table', 'features', '', 0), ('rows',"
                                + " 'aspatial', '', 0)");

        assertThat(faults(file, "")).isEmpty();
        assertThat(read).hasSize(1);
    }

    @Test
    void a_system_that_is_left_open_must_be_stated() throws Exception {
        for (int open : List.of(0, -1, 99)) {
            Path file = SmallGeoPackage.make(file(), SmallGeoPackage.things(open));
            SmallGeoPackage.insert(file, "1", point(open));

            assertThat(read(file, "", Optional.empty()))
                    .extracting(Fault::code)
                    .containsExactly(FindingCode.REFERENCE_SYSTEM_MISSING);
            assertThat(read).isEmpty();

            ReferenceSystem stated = new Proj4jReferenceSystems().find("EPSG:32632").getValue();
            assertThat(read(file, "", Optional.of(stated))).isEmpty();
            assertThat(read.get(0).system()).isSameAs(stated);
        }
    }

    @Test
    void a_system_without_a_code_is_read_from_its_text() throws Exception {
        String wkt =
                "PROJCS[\"own grid\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS"
                        + " 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\","
                        + "0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER["
                        + "\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",11],PARAMETER["
                        + "\"scale_factor\",1],PARAMETER[\"false_easting\",0],PARAMETER["
                        + "\"false_northing\",0],UNIT[\"metre\",1]]";
        List<String> statements = new ArrayList<>(List.of(SmallGeoPackage.things(100001)));
        statements.add(
                "INSERT INTO gpkg_spatial_ref_sys VALUES ('own grid', 100001, 'somebody', 5, '"
                        + wkt
                        + "', '')");
        Path file = SmallGeoPackage.make(file(), statements.toArray(String[]::new));
        SmallGeoPackage.insert(
                file, "1", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 100001, LITTLE, 1, 0.0, 0.0));

        assertThat(faults(file, "")).isEmpty();
        assertThat(read.get(0).system().toGeo(0, 0).lonDeg()).isCloseTo(11, within(1e-9));

        SmallGeoPackage.make(
                file,
                statements.stream()
                        .map(sql -> sql.replace(wkt, "no text of a system"))
                        .toArray(String[]::new));
        assertThat(read(file, "", Optional.empty()))
                .extracting(Fault::code)
                .containsExactly(FindingCode.REFERENCE_SYSTEM_UNKNOWN);
    }

    @Test
    void a_geometry_of_another_system_than_its_table_is_a_fault() throws Exception {
        Path file = SmallGeoPackage.make(file(), SmallGeoPackage.things(4326));
        SmallGeoPackage.insert(file, "1", point(32632));
        SmallGeoPackage.insert(file, "2", point(4326));

        assertThat(faults(file, "")).contains("a.gpkg:1: geometry: states another");
        assertThat(read).hasSize(1);
    }

    @Test
    void heights_of_a_grid_in_feet_are_left_out() throws Exception {
        List<String> statements = new ArrayList<>(List.of(SmallGeoPackage.things(2227)));
        statements.add(
                "INSERT INTO gpkg_spatial_ref_sys VALUES ('in feet', 2227, 'EPSG', 2227, 'undefined', '')");
        Path file = SmallGeoPackage.make(file(), statements.toArray(String[]::new));
        SmallGeoPackage.insert(
                file,
                "1",
                SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 2227, LITTLE, 1001, 6e6, 2e6, 900.0));

        assertThat(faults(file, "")).isEmpty();
        assertThat(read.get(0).outline().get(0).elevationM()).isEmpty();
    }

    @Test
    void what_a_file_would_run_is_not_run() throws Exception {
        Path file =
                SmallGeoPackage.make(
                        file(),
                        "CREATE TABLE rows (id TEXT)",
                        "CREATE VIEW endless AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1"
                                + " FROM n) SELECT i FROM n",
                        "CREATE VIRTUAL TABLE boxes USING rtree(id, a, b)",
                        "CREATE TABLE sly (id TEXT, x TEXT GENERATED ALWAYS AS"
                                + " (hex(zeroblob(60000000))) VIRTUAL)",
                        "INSERT INTO sly(id) VALUES ('1')",
                        "INSERT INTO gpkg_contents VALUES ('endless', 'attributes', '', NULL), ('boxes',"
                                + " 'attributes', '', NULL), ('sly', 'attributes', '', NULL)");

        assertThat(faults(file, "endless")).contains("what it would run is not run");
        assertThat(faults(file, "boxes")).contains("what it would run is not run");
        assertThat(faults(file, "sly")).contains("is damaged, or asks for too much work");
        assertThat(read).isEmpty();
    }

    @Test
    void a_listing_that_is_a_view_is_refused() throws Exception {
        Path file =
                SmallGeoPackage.make(
                        file(),
                        "DROP TABLE gpkg_contents",
                        "CREATE VIEW gpkg_contents AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i +"
                                + " 1 FROM n) SELECT i AS table_name, 'features' AS data_type FROM n");

        assertThat(faults(file, "")).contains("what it would run is not run");
    }

    @Test
    void reading_changes_nothing_and_leaves_nothing_beside() throws Exception {
        Path odd = Files.createDirectory(folder.resolve("a b?mode=rw#ü%41"));
        Path made = SmallGeoPackage.make(file(), SmallGeoPackage.things(4326));
        SmallGeoPackage.insert(made, "1", point(4326));
        Path file = Files.copy(made, odd.resolve("a.gpkg"));
        byte[] before = Files.readAllBytes(file);

        assertThat(faults(file, "")).isEmpty();

        assertThat(read).hasSize(1);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        try (var files = Files.list(odd)) {
            assertThat(files).containsExactly(file);
        }
    }

    @Test
    void a_file_that_another_program_holds_open_is_refused() throws Exception {
        Path file = SmallGeoPackage.make(file(), SmallGeoPackage.things(4326));
        for (String ending : List.of("-wal", "-journal")) {
            Path beside = Files.writeString(folder.resolve("a.gpkg" + ending), "x");

            assertThat(faults(file, "")).contains("open in another program").contains(ending);
            assertThat(Files.readString(beside)).isEqualTo("x");
            Files.writeString(beside, "");
            assertThat(faults(file, "")).isEmpty();
            Files.delete(beside);
        }
    }

    @Test
    void what_is_no_geopackage_is_refused() throws Exception {
        assertThat(faults(folder.resolve("gone.gpkg"), "")).contains("cannot be read");
        assertThat(faults(Files.writeString(file(), "hello"), "")).contains("is no GeoPackage");
        assertThat(faults(Files.write(file(), new byte[0]), "")).contains("is no GeoPackage");
        Path bare = SmallGeoPackage.make(file(), "DROP TABLE gpkg_contents");
        assertThat(faults(bare, "")).contains("is no GeoPackage").contains("gpkg_contents");
    }
}
