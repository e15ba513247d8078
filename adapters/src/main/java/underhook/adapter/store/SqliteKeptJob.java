package underhook.adapter.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import underhook.app.port.Archive;
import underhook.app.port.Content;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptTap;

/** A job in its SQLite file; one connection, used by one thread at a time. */
final class SqliteKeptJob implements KeptJob {
    private final String id;
    private final Sql sql;
    private final String who;

    /**
     * @param who account that changes are sealed with
     */
    SqliteKeptJob(String id, Sql sql, String who) {
        this.id = id;
        this.sql = sql;
        this.who = who;
    }

    /** What may fail at the disk. */
    private interface Access<T> {
        T run() throws SQLException, IOException;
    }

    private synchronized <T> T access(Access<T> access) throws IOException {
        try {
            return access.run();
        } catch (SQLException failed) {
            throw new IOException("Job " + id + " cannot be read or written.", failed);
        }
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public String name() throws IOException {
        return access(() -> sql.list(row -> row.getString(1), "SELECT name FROM job").get(0));
    }

    private static Revision revision(ResultSet row) throws SQLException {
        return new Revision(
                row.getLong("id"),
                row.getLong("parent"),
                Instant.parse(row.getString("at")),
                row.getString("what"));
    }

    private Optional<Revision> find(long revision) throws SQLException {
        return sql
                .list(SqliteKeptJob::revision, "SELECT * FROM revision WHERE id = ?", revision)
                .stream()
                .findFirst();
    }

    private long headNumber() throws SQLException {
        return sql.number("SELECT head FROM job");
    }

    @Override
    public Optional<Revision> findHead() throws IOException {
        return access(() -> find(headNumber()));
    }

    @Override
    public Optional<Revision> findBack() throws IOException {
        return access(
                () -> {
                    Optional<Revision> head = find(headNumber());
                    return head.isPresent() ? find(head.get().parent()) : Optional.empty();
                });
    }

    @Override
    public Optional<Revision> findAhead() throws IOException {
        return access(this::ahead);
    }

    /** On the way from the head to what was made last. */
    private Optional<Revision> ahead() throws SQLException {
        long head = headNumber();
        Optional<Revision> next = find(sql.number("SELECT tip FROM job"));
        while (next.isPresent() && next.get().parent() != head) {
            next = find(next.get().parent());
        }
        return next.filter(one -> one.id() != head);
    }

    @Override
    public List<Revision> listRevisions() throws IOException {
        return access(
                () -> sql.list(SqliteKeptJob::revision, "SELECT * FROM revision ORDER BY id"));
    }

    @Override
    public Map<String, String> listFiles(long revision) throws IOException {
        return access(() -> files(revision));
    }

    private Map<String, String> files(long revision) throws SQLException {
        Map<String, String> files = new TreeMap<>();
        sql.list(
                row -> files.put(row.getString(1), row.getString(2)),
                "SELECT path, hash FROM revision_file WHERE revision = ?",
                revision);
        return files;
    }

    @Override
    public Content getContent(String hash) throws IOException {
        return access(
                () -> {
                    List<Content> found =
                            sql.list(
                                    row -> Content.of(row.getBytes(1)),
                                    "SELECT bytes FROM content WHERE hash = ?",
                                    hash);
                    if (found.isEmpty() || !found.get(0).hash().equals(hash)) {
                        throw new IOException("A file of job " + id + " is damaged.");
                    }
                    return found.get(0);
                });
    }

    @Override
    public Revision add(Change change) throws IOException {
        return access(
                () ->
                        sql.inOne(
                                () -> {
                                    checkHead(change.on());
                                    return insert(change);
                                }));
    }

    private void checkHead(long seen) throws SQLException, MovedException {
        long head = headNumber();
        if (head != seen) {
            throw new MovedException(head);
        }
    }

    private Revision insert(Change change) throws SQLException {
        Map<String, String> files = files(change.on());
        change.removed().forEach(files::remove);
        for (Map.Entry<String, Content> file : change.written().entrySet()) {
            keep(file.getValue());
            files.put(file.getKey(), file.getValue().hash());
        }
        long next = sql.number("SELECT coalesce(max(id), 0) + 1 FROM revision");
        sql.update(
                "INSERT INTO revision (id, parent, at, what) VALUES (?, ?, ?, ?)",
                next,
                change.on(),
                change.at().toString(),
                change.what());
        for (Map.Entry<String, String> file : files.entrySet()) {
            sql.update(
                    "INSERT INTO revision_file (revision, path, hash) VALUES (?, ?, ?)",
                    next,
                    file.getKey(),
                    file.getValue());
        }
        Seals.put(sql, Archive.Kind.REVISION, Long.toString(next), new Seals.By(who, change.at()));
        sql.update("UPDATE job SET head = ?, tip = ?", next, next);
        return new Revision(next, change.on(), change.at(), change.what());
    }

    private void keep(Content content) throws SQLException {
        sql.update(
                "INSERT OR IGNORE INTO content (hash, bytes) VALUES (?, ?)",
                content.hash(),
                content.toBytes());
    }

    @Override
    public Revision undo(long on) throws IOException {
        return access(
                () ->
                        sql.inOne(
                                () -> {
                                    checkHead(on);
                                    return moveTo(find(find(on).orElseThrow().parent()));
                                }));
    }

    @Override
    public Revision redo(long on) throws IOException {
        return access(
                () ->
                        sql.inOne(
                                () -> {
                                    checkHead(on);
                                    return moveTo(ahead());
                                }));
    }

    private Revision moveTo(Optional<Revision> to) throws SQLException, IOException {
        if (to.isEmpty()) {
            throw new IOException("There is nothing to go to.");
        }
        sql.update("UPDATE job SET head = ?", to.get().id());
        return to.get();
    }

    @Override
    public void keepPlan(KeptPlan plan, Map<String, Content> files) throws IOException {
        access(
                () ->
                        sql.inOne(
                                () -> {
                                    sql.update(
                                            "INSERT INTO plan (id, revision, at) VALUES (?, ?, ?)",
                                            plan.id(),
                                            plan.revision(),
                                            plan.at().toString());
                                    for (Map.Entry<String, Content> file : files.entrySet()) {
                                        keep(file.getValue());
                                        sql.update(
                                                "INSERT INTO plan_file (plan, name, hash) VALUES"
                                                        + " (?, ?, ?)",
                                                plan.id(),
                                                file.getKey(),
                                                file.getValue().hash());
                                    }
                                    Seals.put(
                                            sql,
                                            Archive.Kind.PLAN,
                                            plan.id(),
                                            new Seals.By(who, plan.at()));
                                    return plan;
                                }));
    }

    @Override
    public List<KeptPlan> listPlans() throws IOException {
        return access(
                () ->
                        sql.list(
                                row ->
                                        new KeptPlan(
                                                row.getString("id"),
                                                row.getLong("revision"),
                                                Instant.parse(row.getString("at"))),
                                "SELECT * FROM plan ORDER BY number"));
    }

    @Override
    public List<String> listPlanFiles(String plan) throws IOException {
        return access(
                () ->
                        sql.list(
                                row -> row.getString(1),
                                "SELECT name FROM plan_file WHERE plan = ? ORDER BY name",
                                plan));
    }

    @Override
    public Optional<Content> findPlanFile(String plan, String name) throws IOException {
        List<String> hashes =
                access(
                        () ->
                                sql.list(
                                        row -> row.getString(1),
                                        "SELECT hash FROM plan_file WHERE plan = ? AND name = ?",
                                        plan,
                                        name));
        return hashes.isEmpty() ? Optional.empty() : Optional.of(getContent(hashes.get(0)));
    }

    @Override
    public List<KeptTap> addTaps(List<KeptTap.Given> taps) throws IOException {
        return access(() -> sql.inOne(() -> TapTable.add(sql, taps)));
    }

    @Override
    public List<KeptTap> listTaps() throws IOException {
        return access(() -> TapTable.list(sql));
    }

    @Override
    public Archive readArchive() throws IOException {
        return access(() -> Seals.archive(sql));
    }

    @Override
    public void writeTo(Path file) throws IOException {
        Files.deleteIfExists(file);
        access(() -> sql.update("VACUUM INTO ?", file.toAbsolutePath().toString()));
    }

    /** Everything of another job's file, each value looked at. */
    void takeFrom(Foreign foreign) throws IOException {
        access(
                () ->
                        sql.inOne(
                                () -> {
                                    for (Content content : foreign.contents()) {
                                        keep(content);
                                    }
                                    takeRevisions(foreign);
                                    takePlans(foreign);
                                    for (KeptTap row : foreign.taps()) {
                                        TapTable.insert(sql, row);
                                    }
                                    for (Seals.Seal seal : foreign.seals()) {
                                        Seals.insert(sql, seal);
                                    }
                                    Seals.sealMissing(sql, "", Instant.EPOCH);
                                    sql.update(
                                            "UPDATE job SET head = ?, tip = ?",
                                            foreign.head(),
                                            foreign.tip());
                                    return foreign;
                                }));
    }

    private void takeRevisions(Foreign foreign) throws SQLException {
        for (Revision one : foreign.revisions()) {
            sql.update(
                    "INSERT INTO revision (id, parent, at, what) VALUES (?, ?, ?, ?)",
                    one.id(),
                    one.parent(),
                    one.at().toString(),
                    one.what());
        }
        for (Foreign.Row row : foreign.revisionFiles()) {
            sql.update(
                    "INSERT INTO revision_file (revision, path, hash) VALUES (?, ?, ?)",
                    Long.valueOf(row.owner()),
                    row.name(),
                    row.hash());
        }
    }

    private void takePlans(Foreign foreign) throws SQLException {
        for (KeptPlan plan : foreign.plans()) {
            sql.update(
                    "INSERT INTO plan (id, revision, at) VALUES (?, ?, ?)",
                    plan.id(),
                    plan.revision(),
                    plan.at().toString());
        }
        for (Foreign.Row row : foreign.planFiles()) {
            sql.update(
                    "INSERT INTO plan_file (plan, name, hash) VALUES (?, ?, ?)",
                    row.owner(),
                    row.name(),
                    row.hash());
        }
    }

    @Override
    public void close() throws IOException {
        access(
                () -> {
                    sql.close();
                    return this;
                });
    }
}
