package underhook.adapter.geofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** GeoPackages made by hand, table by table as OGC 12-128r17 prints them. */
final class SmallGeoPackage {
    private static final List<String> STANDARD =
            List.of(
                    "CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY,"
                            + " organization TEXT NOT NULL, organization_coordsys_id INTEGER NOT NULL,"
                            + " definition TEXT NOT NULL, description TEXT)",
                    "CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT NOT NULL,"
                            + " identifier TEXT, srs_id INTEGER)",
                    "CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL,"
                            + " geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z TINYINT NOT"
                            + " NULL, m TINYINT NOT NULL)",
                    "INSERT INTO gpkg_spatial_ref_sys VALUES ('open', -1, 'NONE', -1, 'undefined', ''),"
                            + " ('open', 0, 'NONE', 0, 'undefined', ''), ('WGS 84', 4326, 'EPSG', 4326,"
                            + " 'undefined', '')");

    private SmallGeoPackage() {}

    /** A file with the standard's tables and what the statements add. */
    static Path make(Path file, String... statements) throws IOException, SQLException {
        Files.deleteIfExists(file);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String sql : STANDARD) {
                statement.execute(sql);
            }
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
        return file;
    }

    /** Statements that make and register a table {@code things (id, geom)} in a system. */
    static String[] things(int systemId) {
        return new String[] {
            "CREATE TABLE things (id TEXT, geom BLOB)",
            "INSERT INTO gpkg_contents VALUES ('things', 'features', 'things', " + systemId + ")",
            "INSERT INTO gpkg_geometry_columns VALUES ('things', 'geom', 'GEOMETRY', "
                    + systemId
                    + ", 2, 2)"
        };
    }

    static void insert(Path file, String id, byte[] blob) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement insert =
                        connection.prepareStatement("INSERT INTO things VALUES (?, ?)")) {
            insert.setString(1, id);
            insert.setBytes(2, blob);
            insert.executeUpdate();
        }
    }

    /**
     * A geometry blob.
     *
     * @param flags of the header, without the byte order
     * @param geometry what stands behind the header: Integer, Double or Byte
     */
    static byte[] blob(ByteOrder order, int flags, int systemId, Object... geometry) {
        ByteBuffer blob = ByteBuffer.allocate(4096).order(order);
        int endian = order == ByteOrder.LITTLE_ENDIAN ? 1 : 0;
        blob.put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) (flags | endian));
        blob.putInt(systemId);
        for (Object each : geometry) {
            if (each instanceof Integer number) {
                blob.putInt(number);
            } else if (each instanceof Byte number) {
                blob.put(number);
            } else {
                blob.putDouble((Double) each);
            }
        }
        byte[] bytes = new byte[blob.position()];
        blob.flip().get(bytes);
        return bytes;
    }
}
