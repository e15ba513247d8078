package underhook.adapter.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import underhook.app.port.Archive;
import underhook.app.port.Content;
import underhook.app.port.JobPath;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptJob.Revision;
import underhook.app.port.KeptTap;

/** What a job's file from elsewhere holds; nothing of it is believed before it was looked at. */
record Foreign(
        String name,
        long head,
        long tip,
        List<Content> contents,
        List<Revision> revisions,
        List<Row> revisionFiles,
        List<KeptPlan> plans,
        List<Row> planFiles,
        List<KeptTap> taps,
        List<Seals.Seal> seals) {
    private static final int MOST_TEXT = 10_000;

    /** The first version that has a log of taps. */
    private static final int WITH_TAPS = 2;

    /** The first version that is sealed. */
    private static final int WITH_SEALS = 3;

    /** A file of a revision or plan. */
    record Row(String owner, String name, String hash) {}

    /** A job and its file, to be looked at. */
    private interface Looking<T> {
        T look(Sql sql, int version) throws SQLException, IOException;
    }

    static Foreign read(Path file) throws IOException {
        return look(file, Foreign::read);
    }

    /** The archive of a file, whether it is whole or not. */
    static Archive readArchive(Path file) throws IOException {
        return look(
                file,
                (sql, version) -> {
                    if (version < WITH_SEALS) {
                        throw new IOException(
                                "The job is older than its seals. Open it once with this program.");
                    }
                    return Seals.archive(sql);
                });
    }

    private static <T> T look(Path file, Looking<T> looking) throws IOException {
        try (Sql sql = Sql.openForeign(file)) {
            int version = Migrations.version(sql);
            if (version < 1
                    || version > Migrations.newest()
                    || sql.number("PRAGMA application_id") != Migrations.APPLICATION_ID) {
                throw new IOException(
                        "The file holds no job of this program, or one of another version.");
            }
            if (!sql.list(row -> row.getString(1), "PRAGMA integrity_check")
                    .equals(List.of("ok"))) {
                throw new IOException("The file is damaged.");
            }
            return looking.look(sql, version);
        } catch (SQLException | DateTimeException | IllegalArgumentException wrong) {
            throw new IOException("The file holds no job of this program.", wrong);
        }
    }

    private static Foreign read(Sql sql, int version) throws SQLException, IOException {
        Foreign read =
                new Foreign(
                        text(sql.list(row -> row.getString(1), "SELECT name FROM job").get(0)),
                        sql.number("SELECT head FROM job"),
                        sql.number("SELECT tip FROM job"),
                        sql.list(row -> Content.of(row.getBytes(1)), "SELECT bytes FROM content"),
                        sql.list(Foreign::revision, "SELECT * FROM revision ORDER BY id"),
                        sql.list(
                                Foreign::row,
                                "SELECT CAST(revision AS TEXT), path, hash FROM revision_file"),
                        sql.list(Foreign::plan, "SELECT * FROM plan ORDER BY number"),
                        sql.list(Foreign::row, "SELECT plan, name, hash FROM plan_file"),
                        version < WITH_TAPS ? List.of() : TapTable.list(sql),
                        version < WITH_SEALS ? List.of() : Seals.list(sql));
        for (Row row : read.revisionFiles()) {
            JobPath.check(row.name());
        }
        for (Row row : read.planFiles()) {
            JobPath.check(row.name());
        }
        if (KeptTap.findBroken(read.taps()).isPresent()) {
            throw new IOException("The file's log of taps was changed after it was written.");
        }
        Optional<String> broken =
                version < WITH_SEALS ? Optional.empty() : Seals.archive(sql).broken();
        if (broken.isPresent()) {
            throw new IOException("The file was changed after it was written. " + broken.get());
        }
        for (Revision revision : read.revisions()) {
            if (!(revision.id() > 0
                    && revision.parent() >= 0
                    && revision.parent() < revision.id())) {
                throw new IOException("The file's revisions run in a circle.");
            }
        }
        return read;
    }

    private static Revision revision(ResultSet row) throws SQLException {
        return new Revision(
                row.getLong("id"),
                row.getLong("parent"),
                Instant.parse(row.getString("at")),
                text(row.getString("what")));
    }

    private static KeptPlan plan(ResultSet row) throws SQLException {
        return new KeptPlan(
                text(row.getString("id")),
                row.getLong("revision"),
                Instant.parse(row.getString("at")));
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(text(row.getString(1)), text(row.getString(2)), text(row.getString(3)));
    }

    private static String text(String value) {
        return value.length() <= MOST_TEXT ? value : value.substring(0, MOST_TEXT);
    }
}
