package underhook.adapter.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Plain SQL on one connection. Not safe for threads. */
final class Sql implements AutoCloseable {
    private final Connection connection;

    private Sql(Connection connection) {
        this.connection = connection;
    }

    /** Reads a row. */
    interface Reading<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Work that is done as a whole or not at all. */
    interface Work<T> {
        T run() throws SQLException, IOException;
    }

    /** Opens for reading and writing; made when it is not there. */
    static Sql open(Path file) throws SQLException {
        Sql sql = new Sql(connect(file));
        sql.run("PRAGMA journal_mode = WAL");
        sql.run("PRAGMA synchronous = FULL");
        sql.run("PRAGMA foreign_keys = ON");
        return sql;
    }

    /** Opens a file that nobody vouches for: nothing in it is run, nothing is written. */
    static Sql openForeign(Path file) throws SQLException {
        Sql sql = new Sql(connect(file));
        sql.run("PRAGMA trusted_schema = OFF");
        sql.run("PRAGMA cell_size_check = ON");
        sql.run("PRAGMA mmap_size = 0");
        sql.run("PRAGMA query_only = ON");
        return sql;
    }

    private static Connection connect(Path file) throws SQLException {
        // As an address, so that no character of the path is taken for an option.
        return DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath().toUri());
    }

    void run(String statement) throws SQLException {
        try (Statement made = connection.createStatement()) {
            made.execute(statement);
        }
    }

    int update(String statement, Object... values) throws SQLException {
        try (PreparedStatement made = prepare(statement, values)) {
            return made.executeUpdate();
        }
    }

    <T> List<T> list(Reading<T> reading, String query, Object... values) throws SQLException {
        List<T> all = new ArrayList<>();
        try (PreparedStatement made = prepare(query, values);
                ResultSet rows = made.executeQuery()) {
            while (rows.next()) {
                all.add(reading.read(rows));
            }
        }
        return all;
    }

    long number(String query, Object... values) throws SQLException {
        return list(row -> row.getLong(1), query, values).get(0);
    }

    private PreparedStatement prepare(String statement, Object... values) throws SQLException {
        PreparedStatement made = connection.prepareStatement(statement);
        for (int i = 0; i < values.length; i++) {
            made.setObject(i + 1, values[i]);
        }
        return made;
    }

    /** Runs in one transaction that is on the disk when this returns. */
    <T> T inOne(Work<T> work) throws SQLException, IOException {
        run("BEGIN IMMEDIATE");
        boolean done = false;
        try {
            T result = work.run();
            run("COMMIT");
            done = true;
            return result;
        } finally {
            if (!done) {
                run("ROLLBACK");
            }
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
