package underhook.adapter.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;

/** Brings a job's file to the format of this program. */
final class Migrations {
    /** Marks a file as one of ours: "Uhk1". */
    static final int APPLICATION_ID = 0x55686b31;

    private static final List<String> SCRIPTS =
            List.of("V001__job.sql", "V002__tap.sql", "V003__seal.sql");

    private Migrations() {}

    /** Number of this program's format. */
    static int newest() {
        return SCRIPTS.size();
    }

    /** The format of a file; 0 when it is empty. */
    static int version(Sql sql) throws SQLException {
        return Math.toIntExact(sql.number("PRAGMA user_version"));
    }

    /**
     * Migrates; a file that holds something is copied beside first.
     *
     * @throws IOException when the file is newer than this program, or none of ours
     */
    static void bring(Sql sql, Path file) throws SQLException, IOException {
        int version = version(sql);
        check(sql, version);
        if (version > 0 && version < newest()) {
            Path copy = file.resolveSibling(file.getFileName() + ".before-v" + newest());
            Files.deleteIfExists(copy);
            sql.update("VACUUM INTO ?", copy.toAbsolutePath().toString());
        }
        for (int next = version + 1; next <= newest(); next++) {
            String script = script(SCRIPTS.get(next - 1));
            String number = "PRAGMA user_version = " + next;
            sql.inOne(
                    () -> {
                        for (String statement : script.split(";")) {
                            if (!statement.isBlank()) {
                                sql.run(statement);
                            }
                        }
                        sql.run("PRAGMA application_id = " + APPLICATION_ID);
                        sql.run(number);
                        return number;
                    });
        }
    }

    private static void check(Sql sql, int version) throws SQLException, IOException {
        if (version > newest()) {
            throw new IOException(
                    "The job was written by a newer program (format "
                            + version
                            + "; this one reads up to "
                            + newest()
                            + ").");
        }
        if (version > 0 && sql.number("PRAGMA application_id") != APPLICATION_ID) {
            throw new IOException("The file holds no job of this program.");
        }
    }

    private static String script(String name) throws IOException {
        try (InputStream in = Migrations.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IOException("The program's own file " + name + " is missing.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
