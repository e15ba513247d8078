package underhook.adapter.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.app.port.Archive;
import underhook.app.port.Archive.Entry;
import underhook.app.port.Archive.Kind;
import underhook.app.port.Content;

/**
 * Seals on revisions and plans: each is a hash over what it seals and the seal before, so that nothing can
 * be changed, taken out or put between later without breaking all that follow.
 */
final class Seals {
    private static final String NO_HASH = "0".repeat(64);

    private Seals() {}

    /** A row of the table. */
    record Seal(long number, Kind kind, String subject, String who, Instant at, String hash) {}

    /** What a seal is put on, as one text. */
    private record Sealed(String what, String text) {}

    /** Seals what is not sealed yet, revisions before the plans made from them. */
    static void sealMissing(Sql sql, String who, Instant at) throws SQLException {
        List<String> revisions =
                sql.list(
                        row -> row.getString(1),
                        "SELECT CAST(id AS TEXT) FROM revision WHERE CAST(id AS TEXT) NOT IN (SELECT"
                                + " subject FROM seal WHERE kind = 'REVISION') ORDER BY id");
        for (String revision : revisions) {
            put(sql, Kind.REVISION, revision, new By(who, at));
        }
        List<String> plans =
                sql.list(
                        row -> row.getString(1),
                        "SELECT id FROM plan WHERE id NOT IN (SELECT subject FROM seal WHERE kind ="
                                + " 'PLAN') ORDER BY number");
        for (String plan : plans) {
            put(sql, Kind.PLAN, plan, new By(who, at));
        }
    }

    /** Who put a seal, and when. */
    record By(String who, Instant at) {}

    /** Seals one, within the transaction that writes it. */
    static void put(Sql sql, Kind kind, String subject, By by) throws SQLException {
        List<Seal> last = sql.list(Seals::read, "SELECT * FROM seal ORDER BY number DESC LIMIT 1");
        String before = last.isEmpty() ? NO_HASH : last.get(0).hash();
        long number = last.isEmpty() ? 1 : last.get(0).number() + 1;
        Seal unsealed = new Seal(number, kind, subject, by.who(), by.at(), "");
        insert(
                sql,
                new Seal(
                        number,
                        kind,
                        subject,
                        by.who(),
                        by.at(),
                        hash(before, unsealed, sealed(sql, kind, subject).orElseThrow())));
    }

    /** Adds a row as it is. */
    static void insert(Sql sql, Seal seal) throws SQLException {
        sql.update(
                "INSERT INTO seal (number, kind, subject, who, at, hash) VALUES (?, ?, ?, ?, ?, ?)",
                seal.number(),
                seal.kind().name(),
                seal.subject(),
                seal.who(),
                seal.at().toString(),
                seal.hash());
    }

    static List<Seal> list(Sql sql) throws SQLException {
        return sql.list(Seals::read, "SELECT * FROM seal ORDER BY number");
    }

    private static Seal read(ResultSet row) throws SQLException {
        return new Seal(
                row.getLong("number"),
                Kind.valueOf(row.getString("kind")),
                row.getString("subject"),
                row.getString("who"),
                Instant.parse(row.getString("at")),
                row.getString("hash"));
    }

    /** Everything that is sealed, looked at again. */
    static Archive archive(Sql sql) throws SQLException {
        List<Entry> entries = new ArrayList<>();
        Optional<String> broken = Optional.empty();
        String before = NO_HASH;
        for (Seal seal : list(sql)) {
            Optional<Sealed> sealed = sealed(sql, seal.kind(), seal.subject());
            boolean whole =
                    seal.number() == entries.size() + 1
                            && sealed.isPresent()
                            && seal.hash().equals(hash(before, seal, sealed.get()));
            if (!whole && broken.isEmpty()) {
                broken =
                        Optional.of(
                                name(seal.kind(), seal.subject())
                                        + " is not what was sealed on "
                                        + seal.at()
                                        + ".");
            }
            before = seal.hash();
            entries.add(
                    new Entry(
                            seal.number(),
                            seal.kind(),
                            seal.subject(),
                            seal.who(),
                            seal.at(),
                            sealed.map(Sealed::what).orElse("is gone"),
                            seal.hash()));
        }
        return new Archive(
                sql.list(row -> row.getString(1), "SELECT name FROM job").get(0),
                entries,
                broken.or(() -> contents(sql)).or(() -> unsealed(sql)));
    }

    private static String name(Kind kind, String subject) {
        return (kind == Kind.REVISION ? "Revision " : "Plan ") + subject;
    }

    /** A file whose bytes are not those that its hash stands for. */
    private static Optional<String> contents(Sql sql) {
        return first(
                sql,
                "SELECT hash, bytes FROM content",
                row -> !Content.of(row.getBytes(2)).hash().equals(row.getString(1)),
                "A file of the job was changed: ");
    }

    private static Optional<String> unsealed(Sql sql) {
        return first(
                sql,
                "SELECT 'revision ' || id FROM revision WHERE CAST(id AS TEXT) NOT IN (SELECT subject"
                        + " FROM seal WHERE kind = 'REVISION') UNION ALL SELECT 'plan ' || id FROM"
                        + " plan WHERE id NOT IN (SELECT subject FROM seal WHERE kind = 'PLAN')",
                row -> true,
                "Something was put in without a seal: ");
    }

    /** Whether a row is meant. */
    private interface Meant {
        boolean test(ResultSet row) throws SQLException;
    }

    private static Optional<String> first(Sql sql, String query, Meant meant, String words) {
        try {
            return sql.list(row -> meant.test(row) ? words + row.getString(1) : "", query).stream()
                    .filter(one -> !one.isEmpty())
                    .findFirst();
        } catch (SQLException failed) {
            return Optional.of("The file cannot be read: " + failed.getMessage());
        }
    }

    private static Optional<Sealed> sealed(Sql sql, Kind kind, String subject) throws SQLException {
        boolean isRevision = kind == Kind.REVISION;
        List<String> files =
                sql.list(
                        row -> field(row.getString(1)) + field(row.getString(2)),
                        isRevision
                                ? "SELECT path, hash FROM revision_file WHERE revision = CAST(? AS"
                                        + " INTEGER) ORDER BY path"
                                : "SELECT name, hash FROM plan_file WHERE plan = ? ORDER BY name",
                        subject);
        return sql
                .list(
                        row ->
                                new Sealed(
                                        row.getString("what"),
                                        field(row.getString("parent"))
                                                + field(row.getString("at"))
                                                + field(row.getString("what"))
                                                + String.join("", files)),
                        isRevision
                                ? "SELECT CAST(parent AS TEXT) AS parent, at, what FROM revision"
                                        + " WHERE id = CAST(? AS INTEGER)"
                                : "SELECT CAST(revision AS TEXT) AS parent, at, 'made from revision '"
                                        + " || revision AS what FROM plan WHERE id = ?",
                        subject)
                .stream()
                .findFirst();
    }

    private static String hash(String before, Seal seal, Sealed sealed) {
        String text =
                field(before)
                        + field(Long.toString(seal.number()))
                        + field(seal.kind().name())
                        + field(seal.subject())
                        + field(seal.who())
                        + field(seal.at().toString())
                        + sealed.text();
        return Content.of(text.getBytes(StandardCharsets.UTF_8)).hash();
    }

    /** With its length before it no field can pass for two. */
    private static String field(String value) {
        return value.length() + ":" + value + ",";
    }
}
