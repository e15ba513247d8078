package underhook.adapter.geopackage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import underhook.adapter.geopackage.GeometryBlob.Envelope;
import underhook.core.geo.GeoPoint;

/** A new GeoPackage: the tables that the standard wants, and tables of our own that it registers. */
final class GeoPackageFile implements AutoCloseable {
    /** "GPKG" in ASCII. @source OGC-12-128R17 requirement 2 */
    private static final int APPLICATION_ID = 0x47504B47;

    /** Version 1.3.0. @source OGC-12-128R17 requirement 2 */
    private static final int USER_VERSION = 10300;

    private static final String WGS84_WKT =
            "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,"
                    + "AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],PRIMEM[\"Greenwich\",0,"
                    + "AUTHORITY[\"EPSG\",\"8901\"]],UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\","
                    + "\"9122\"]],AUTHORITY[\"EPSG\",\"4326\"]]";

    private static final List<String> STANDARD_TABLES =
            List.of(
                    "CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL"
                            + " PRIMARY KEY, organization TEXT NOT NULL, organization_coordsys_id"
                            + " INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)",
                    "CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT"
                            + " NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '',"
                            + " last_change DATETIME NOT NULL DEFAULT"
                            + " (strftime('%Y-%m-%dT%H:%M:%fZ','now')), min_x DOUBLE, min_y DOUBLE,"
                            + " max_x DOUBLE, max_y DOUBLE, srs_id INTEGER, CONSTRAINT"
                            + " fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES"
                            + " gpkg_spatial_ref_sys(srs_id))",
                    "CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT"
                            + " NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z"
                            + " TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY"
                            + " KEY (table_name, column_name), CONSTRAINT uk_gc_table_name UNIQUE"
                            + " (table_name), CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES"
                            + " gpkg_contents(table_name), CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id)"
                            + " REFERENCES gpkg_spatial_ref_sys (srs_id))",
                    "CREATE TABLE gpkg_extensions (table_name TEXT, column_name TEXT, extension_name"
                            + " TEXT NOT NULL, definition TEXT NOT NULL, scope TEXT NOT NULL,"
                            + " CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name))",
                    "CREATE TABLE gpkg_metadata (id INTEGER CONSTRAINT m_pk PRIMARY KEY ASC NOT NULL,"
                            + " md_scope TEXT NOT NULL DEFAULT 'dataset', md_standard_uri TEXT NOT"
                            + " NULL, mime_type TEXT NOT NULL DEFAULT 'text/xml', metadata TEXT NOT"
                            + " NULL DEFAULT '')",
                    "CREATE TABLE gpkg_metadata_reference (reference_scope TEXT NOT NULL, table_name"
                            + " TEXT, column_name TEXT, row_id_value INTEGER, timestamp DATETIME NOT"
                            + " NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')), md_file_id"
                            + " INTEGER NOT NULL, md_parent_id INTEGER, CONSTRAINT crmr_mfi_fk FOREIGN"
                            + " KEY (md_file_id) REFERENCES gpkg_metadata(id), CONSTRAINT crmr_mpi_fk"
                            + " FOREIGN KEY (md_parent_id) REFERENCES gpkg_metadata(id))");

    private final Connection connection;
    private final String changedAt;

    private GeoPackageFile(Connection connection, String changedAt) {
        this.connection = connection;
        this.changedAt = changedAt;
    }

    /**
     * Starts a file.
     *
     * @param changedAt UTC with three decimals of a second, for all that the standard wants dated
     */
    static GeoPackageFile create(Path file, String changedAt) throws SQLException {
        // As an address, so that no character of the path is taken for an option.
        Connection connection =
                DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath().toUri());
        GeoPackageFile made = new GeoPackageFile(connection, changedAt);
        boolean ready = false;
        try {
            made.lay();
            ready = true;
        } finally {
            if (!ready) {
                connection.close();
            }
        }
        return made;
    }

    private void lay() throws SQLException {
        // Nobody reads the file before it is whole, so there is nothing to roll back to.
        run("PRAGMA journal_mode = MEMORY");
        run("PRAGMA application_id = " + APPLICATION_ID);
        run("PRAGMA user_version = " + USER_VERSION);
        connection.setAutoCommit(false);
        for (String table : STANDARD_TABLES) {
            run(table);
        }
        String systems =
                "INSERT INTO gpkg_spatial_ref_sys (srs_name, srs_id, organization,"
                        + " organization_coordsys_id, definition, description) VALUES (?,?,?,?,?,?)";
        insert(
                systems,
                List.of(
                        "Undefined cartesian",
                        -1,
                        "NONE",
                        -1,
                        "undefined",
                        "no system on a plane"));
        insert(
                systems,
                List.of(
                        "Undefined geographic",
                        0,
                        "NONE",
                        0,
                        "undefined",
                        "no system on the globe"));
        insert(
                systems,
                List.of("WGS 84", 4326, "EPSG", 4326, WGS84_WKT, "longitude, latitude, degrees"));
    }

    /** Text on the whole file. */
    void addMetadata(String text) throws SQLException {
        String extensions =
                "INSERT INTO gpkg_extensions (table_name, column_name, extension_name, definition,"
                        + " scope) VALUES (?, NULL, 'gpkg_metadata',"
                        + " 'http://www.geopackage.org/spec130/#extension_metadata', 'read-write')";
        insert(extensions, List.of("gpkg_metadata"));
        insert(extensions, List.of("gpkg_metadata_reference"));
        insert(
                "INSERT INTO gpkg_metadata (id, md_scope, md_standard_uri, mime_type, metadata) VALUES"
                        + " (1, 'dataset', 'http://purl.org/dc/terms/', 'text/plain', ?)",
                List.of(text));
        insert(
                "INSERT INTO gpkg_metadata_reference (reference_scope, timestamp, md_file_id) VALUES"
                        + " ('geopackage', ?, 1)",
                List.of(changedAt));
    }

    /** Whether geometries have heights, with the standard's number. */
    enum Heights {
        NONE(0),
        ALL(1),
        SOME(2);

        final int code;

        Heights(int code) {
            this.code = code;
        }
    }

    /** The blob of a geometry. */
    interface Geometry {
        byte[] toBytes();
    }

    /**
     * A table and its rows.
     *
     * @param columns each with its SQL type; with geometry, a first column {@code geom} comes by itself
     * @param geometryType the standard's word, or empty for a table without geometry
     */
    record Table(
            String name,
            String description,
            String geometryType,
            Heights heights,
            List<String> columns,
            List<Row> rows) {}

    /**
     * A row.
     *
     * @param geometry not asked for in a table without
     * @param points what the extent is made from
     * @param values one for each column; an empty text is written as NULL
     */
    record Row(Geometry geometry, List<GeoPoint> points, List<Object> values) {}

    void add(Table table) throws SQLException {
        boolean spatial = !table.geometryType().isEmpty();
        List<String> columns = new ArrayList<>();
        columns.add("fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL");
        if (spatial) {
            columns.add("geom " + table.geometryType());
        }
        columns.addAll(table.columns());
        run("CREATE TABLE " + table.name() + " (" + String.join(", ", columns) + ")");
        List<GeoPoint> all = table.rows().stream().flatMap(r -> r.points().stream()).toList();
        List<Object> contents =
                new ArrayList<>(
                        List.of(
                                table.name(),
                                spatial ? "features" : "attributes",
                                table.name(),
                                table.description(),
                                changedAt));
        if (all.isEmpty()) {
            contents.addAll(List.of("", "", "", ""));
        } else {
            Envelope box = Envelope.of(all);
            contents.addAll(
                    List.of(
                            box.westLonDeg(),
                            box.southLatDeg(),
                            box.eastLonDeg(),
                            box.northLatDeg()));
        }
        contents.add(spatial ? 4326 : "");
        insert(
                "INSERT INTO gpkg_contents (table_name, data_type, identifier, description,"
                        + " last_change, min_x, min_y, max_x, max_y, srs_id) VALUES"
                        + " (?,?,?,?,?,?,?,?,?,?)",
                contents);
        if (spatial) {
            insert(
                    "INSERT INTO gpkg_geometry_columns (table_name, column_name,"
                            + " geometry_type_name, srs_id, z, m) VALUES (?, 'geom', ?, 4326, ?, 0)",
                    List.of(table.name(), table.geometryType(), table.heights().code));
        }
        addRows(table, spatial);
    }

    private void addRows(Table table, boolean spatial) throws SQLException {
        List<String> names = new ArrayList<>();
        if (spatial) {
            names.add("geom");
        }
        table.columns().forEach(column -> names.add(column.substring(0, column.indexOf(' '))));
        String sql =
                "INSERT INTO "
                        + table.name()
                        + names.stream().collect(Collectors.joining(", ", " (", ")"))
                        + " VALUES ("
                        + String.join(",", Collections.nCopies(names.size(), "?"))
                        + ")";
        for (Row row : table.rows()) {
            List<Object> values = new ArrayList<>();
            if (spatial) {
                values.add(row.geometry().toBytes());
            }
            values.addAll(row.values());
            insert(sql, values);
        }
    }

    private void insert(String sql, List<?> values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.size(); i++) {
                Object value = values.get(i);
                statement.setObject(i + 1, "".equals(value) ? null : value);
            }
            statement.executeUpdate();
        }
    }

    private void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Makes what was added last. */
    void finish() throws SQLException {
        connection.commit();
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
