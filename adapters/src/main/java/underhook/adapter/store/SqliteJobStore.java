package underhook.adapter.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import underhook.app.port.Archive;
import underhook.app.port.JobStore;
import underhook.app.port.KeptJob;

/** Jobs as SQLite files in one folder. */
public final class SqliteJobStore implements JobStore, Archive.Reader {
    private static final String ENDING = ".underhook";
    private static final Pattern ID = Pattern.compile("[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?");

    private final Path folder;
    private final String who;

    /**
     * @param folder made when it is first needed
     * @param who account that changes are sealed with
     */
    public SqliteJobStore(Path folder, String who) {
        this.folder = folder;
        this.who = who;
    }

    @Override
    public Archive read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException("There is no file " + file + ".");
        }
        return Foreign.readArchive(file);
    }

    @Override
    public List<String> list() throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.endsWith(ENDING))
                    .map(name -> name.substring(0, name.length() - ENDING.length()))
                    .filter(id -> ID.matcher(id).matches())
                    .sorted()
                    .toList();
        }
    }

    @Override
    public KeptJob create(String id, String name) throws IOException {
        return make(id, name);
    }

    private SqliteKeptJob make(String id, String name) throws IOException {
        Path file = file(id);
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException("There is a job " + id + " already.");
        }
        Files.createDirectories(folder);
        try {
            Sql sql = bring(file);
            sql.update("INSERT INTO job (only, name, head, tip) VALUES (1, ?, 0, 0)", name);
            return new SqliteKeptJob(id, sql, who);
        } catch (SQLException failed) {
            throw new IOException("Job " + id + " cannot be made.", failed);
        }
    }

    @Override
    public KeptJob open(String id) throws IOException {
        Path file = file(id);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException("There is no job " + id + ".");
        }
        try {
            return new SqliteKeptJob(id, bring(file), who);
        } catch (SQLException failed) {
            throw new IOException("Job " + id + " cannot be read.", failed);
        }
    }

    private static Sql bring(Path file) throws SQLException, IOException {
        Sql sql = Sql.open(file);
        boolean brought = false;
        try {
            Migrations.bring(sql, file);
            // What is older than the seals is sealed as it is found, by nobody.
            sql.inOne(
                    () -> {
                        Seals.sealMissing(sql, "", Instant.EPOCH);
                        return file;
                    });
            brought = true;
            return sql;
        } finally {
            if (!brought) {
                sql.close();
            }
        }
    }

    @Override
    public KeptJob take(Path file, String id) throws IOException {
        Foreign foreign = Foreign.read(file);
        SqliteKeptJob made = make(id, foreign.name());
        boolean taken = false;
        try {
            made.takeFrom(foreign);
            taken = true;
            return made;
        } finally {
            if (!taken) {
                made.close();
                Files.deleteIfExists(file(id));
            }
        }
    }

    private Path file(String id) {
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("id (" + id + ") must be small letters and digits.");
        }
        return folder.resolve(id + ENDING);
    }
}
