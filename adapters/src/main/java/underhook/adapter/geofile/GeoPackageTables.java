package underhook.adapter.geofile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteLimits;
import underhook.adapter.geofile.source.Unreadable;
import underhook.core.finding.FindingCode;

/**
 * An open GeoPackage, read only.
 *
 * <p>SQLite opens it as a file that nobody changes, so it writes nothing, beside it neither. Only what is
 * stored in tables is read: a view or a virtual table would run what the file's maker wrote, and is refused.
 * Functions in generated columns are held to those that SQLite calls innocuous; steps and sizes are bounded.
 *
 * @source OGC-12-128R17 clauses 1.1.1 (file), 1.1.2 (reference systems), 1.1.3 (contents), 2.1.5 (geometry
 *     columns), 2.4 (attributes)
 */
final class GeoPackageTables implements AutoCloseable {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final int LONGEST_CELL = 64 << 20;
    private static final int STEPS_BETWEEN = 1_000_000;
    private static final int MOST_ROUNDS = 1000;
    private static final int MOST_NAMES = 20;

    private final Connection connection;

    private GeoPackageTables(Connection connection) {
        this.connection = connection;
    }

    /**
     * A table with features or attributes.
     *
     * @param geometryColumn empty when it has no geometry
     * @param systemId of the geometry, as the file counts its systems
     */
    record Layer(String table, String geometryColumn, int systemId) {}

    /**
     * A system as the file states it.
     *
     * @param texts what may be looked up, best first
     */
    record StatedSystem(String name, List<String> texts) {}

    static GeoPackageTables open(Path file) throws SQLException, Unreadable {
        requireWhole(file);
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        // As an address, so that no character of the path is taken for an option.
        Connection connection =
                config.createConnection(
                        "jdbc:sqlite:" + file.toAbsolutePath().toUri() + "?immutable=1");
        boolean ready = false;
        try {
            ((SQLiteConnection) connection)
                    .setLimit(SQLiteLimits.SQLITE_LIMIT_LENGTH, LONGEST_CELL);
            ProgressHandler.setHandler(connection, STEPS_BETWEEN, new Rounds());
            try (Statement statement = connection.createStatement()) {
                statement.execute("PRAGMA trusted_schema = OFF");
                statement.execute("PRAGMA query_only = ON");
                statement.execute("PRAGMA cell_size_check = ON");
                // A file that shrinks under a memory map would end the whole program.
                statement.execute("PRAGMA mmap_size = 0");
            }
            ready = true;
            return new GeoPackageTables(connection);
        } finally {
            if (!ready) {
                connection.close();
            }
        }
    }

    /** Stops SQLite after a fixed amount of work, whatever the file makes it do. */
    private static final class Rounds extends ProgressHandler {
        private int rounds;

        @Override
        protected int progress() {
            rounds++;
            return rounds > MOST_ROUNDS ? 1 : 0;
        }
    }

    private static void requireWhole(Path file) throws Unreadable {
        try (InputStream in = Files.newInputStream(file)) {
            if (!Arrays.equals(in.readNBytes(MAGIC.length), MAGIC)) {
                throw Unreadable.file("is no GeoPackage");
            }
            for (String ending : List.of("-wal", "-journal")) {
                Path beside = file.resolveSibling(file.getFileName() + ending);
                if (Files.exists(beside) && Files.size(beside) > 0) {
                    throw Unreadable.file("is open in another program, or was not closed by it")
                            .found(beside.getFileName().toString())
                            .allowing("the file closed there, so that nothing lies beside it");
                }
            }
        } catch (IOException e) {
            throw Unreadable.file("cannot be read").allowing("a readable file");
        }
    }

    /**
     * The layer of a name, or the only one. GDAL registers an empty table beside tables without geometry,
     * which is none of them.
     */
    Layer find(String name) throws SQLException, Unreadable {
        requireTable("gpkg_contents");
        List<String> layers = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery(
                                "SELECT table_name FROM gpkg_contents WHERE data_type NOT IN"
                                        + " ('tiles', '2d-gridded-coverage') AND table_name <>"
                                        + " 'ogr_empty_table' ORDER BY table_name")) {
            while (rows.next()) {
                layers.add(text(rows, 1));
            }
        }
        String wanted = name;
        if (name.isEmpty()) {
            if (layers.size() != 1) {
                throw Unreadable.of(
                                FindingCode.FIELD_MISSING,
                                layers.isEmpty()
                                        ? "is missing, for the file lists no table"
                                        : "is missing, for the file has several")
                        .in("layer")
                        .allowing(listed(layers));
            }
            wanted = layers.get(0);
        }
        String table = wanted;
        if (!layers.contains(table) && (isOfTheStandard(table) || kind(table).isEmpty())) {
            throw Unreadable.field("layer", "is not there").found(name).allowing(listed(layers));
        }
        requireTable(table);
        return geometryOf(table);
    }

    private static String listed(List<String> layers) {
        return layers.isEmpty()
                ? "the name of a table"
                : String.join(", ", layers.subList(0, Math.min(MOST_NAMES, layers.size())));
    }

    private static boolean isOfTheStandard(String table) {
        String small = table.toLowerCase(Locale.ROOT);
        return small.startsWith("gpkg_")
                || small.startsWith("sqlite_")
                || small.startsWith("rtree_");
    }

    /** "table", "view" or "virtual"; empty when there is nothing of that name. */
    private Optional<String> kind(String name) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement(
                        "SELECT type, upper(sql) LIKE 'CREATE VIRTUAL%' FROM sqlite_schema WHERE"
                                + " lower(name) = lower(?) AND type IN ('table', 'view')")) {
            statement.setString(1, name);
            try (ResultSet rows = statement.executeQuery()) {
                if (!rows.next()) {
                    return Optional.empty();
                }
                return Optional.of(rows.getInt(2) == 1 ? "virtual" : text(rows, 1));
            }
        }
    }

    private void requireTable(String name) throws SQLException, Unreadable {
        String kind = kind(name).orElse("");
        if (kind.isEmpty()) {
            throw Unreadable.file("is no GeoPackage, for a table is missing").found(name);
        }
        if (!kind.equals("table")) {
            throw Unreadable.field("layer", "is no plain table, and what it would run is not run")
                    .found(name)
                    .allowing("its rows saved as a table");
        }
    }

    private Layer geometryOf(String table) throws SQLException, Unreadable {
        if (kind("gpkg_geometry_columns").isEmpty()) {
            return new Layer(table, "", 0);
        }
        requireTable("gpkg_geometry_columns");
        try (PreparedStatement statement =
                connection.prepareStatement(
                        "SELECT column_name, srs_id FROM gpkg_geometry_columns WHERE"
                                + " lower(table_name) = lower(?)")) {
            statement.setString(1, table);
            try (ResultSet rows = statement.executeQuery()) {
                return rows.next()
                        ? new Layer(table, text(rows, 1), rows.getInt(2))
                        : new Layer(table, "", 0);
            }
        }
    }

    /** What the file says of a system; empty when it leaves it open. */
    Optional<StatedSystem> system(int id) throws SQLException, Unreadable {
        requireTable("gpkg_spatial_ref_sys");
        try (PreparedStatement statement =
                connection.prepareStatement(
                        "SELECT * FROM gpkg_spatial_ref_sys WHERE srs_id = ? AND srs_id > 0")) {
            statement.setInt(1, id);
            try (ResultSet rows = statement.executeQuery()) {
                if (!rows.next()) {
                    return Optional.empty();
                }
                List<String> texts = new ArrayList<>();
                String organization = text(rows, "organization");
                if (organization.equalsIgnoreCase("EPSG")) {
                    texts.add("EPSG:" + text(rows, "organization_coordsys_id"));
                }
                texts.add(text(rows, "definition"));
                if (columns("gpkg_spatial_ref_sys").containsKey("definition_12_063")) {
                    texts.add(text(rows, "definition_12_063"));
                }
                texts.removeIf(text -> text.isBlank() || text.equalsIgnoreCase("undefined"));
                return Optional.of(new StatedSystem(text(rows, "srs_name"), texts));
            }
        }
    }

    /** Names of the columns with their declared types, in order. */
    Map<String, String> columns(String table) throws SQLException {
        Map<String, String> columns = new LinkedHashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("PRAGMA table_xinfo(" + quoted(table) + ")")) {
            while (rows.next()) {
                columns.put(text(rows, "name"), text(rows, "type"));
            }
        }
        return columns;
    }

    /** What is done with a row. */
    interface RowStep {
        /** Whether to go on. */
        boolean read(ResultSet row) throws SQLException;
    }

    /** Goes through the rows of a table in the order of the file. */
    void eachRow(String table, RowStep step) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery(
                                "SELECT * FROM main." + quoted(table) + " NOT INDEXED")) {
            boolean goOn = true;
            while (goOn && rows.next()) {
                goOn = step.read(rows);
            }
        }
    }

    private static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }

    private static String text(ResultSet rows, int column) throws SQLException {
        String text = rows.getString(column);
        return text == null ? "" : text;
    }

    private static String text(ResultSet rows, String column) throws SQLException {
        String text = rows.getString(column);
        return text == null ? "" : text;
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
