package underhook.adapter.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import underhook.app.port.Archive;
import underhook.app.port.Content;
import underhook.app.port.KeptJob;

class SealsTest {
    private static final Instant NOON = Instant.parse("2026-09-08T12:00:00Z");

    @TempDir Path folder;
    private SqliteJobStore store;
    private Path file;

    @BeforeEach
    void keepTwoRevisionsAndAPlan() throws IOException {
        store = new SqliteJobStore(folder.resolve("jobs"), "planner");
        file = folder.resolve("jobs/day.underhook");
        try (KeptJob job = store.create("day", "A day")) {
            change(job, 0, "first");
            change(job, 1, "second");
            job.keepPlan(
                    new KeptJob.KeptPlan("plan-1", 2, NOON), Map.of("plan.json", Content.of("{}")));
        }
    }

    private static void change(KeptJob job, long on, String what) throws IOException {
        job.add(
                new KeptJob.Change(
                        on, NOON, what, Map.of("loads.csv", Content.of(what)), Set.of()));
    }

    private void alter(String statement) throws SQLException {
        try (Connection raw = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement made = raw.createStatement()) {
            made.execute(statement);
        }
    }

    @Test
    void tells_every_version_with_who_made_it() throws IOException {
        Archive archive = store.read(file);

        assertThat(archive.broken()).isEmpty();
        assertThat(archive.entries())
                .extracting(entry -> entry.kind() + " " + entry.subject() + " " + entry.who())
                .containsExactly("REVISION 1 planner", "REVISION 2 planner", "PLAN plan-1 planner");
        assertThat(archive.entries().get(1).what()).isEqualTo("second");
    }

    /** The first seal, written out by hand and hashed by the platform's own SHA-256. */
    @Test
    void seals_as_written_down() throws IOException, NoSuchAlgorithmException {
        String content = sha256("first");
        String text =
                "64:"
                        + "0".repeat(64)
                        + ",1:1,8:REVISION,1:1,7:planner,20:2026-09-08T12:00:00Z,1:0,"
                        + "20:2026-09-08T12:00:00Z,5:first,9:loads.csv,64:"
                        + content
                        + ",";

        assertThat(store.read(file).entries().get(0).hash()).isEqualTo(sha256(text));
    }

    private static String sha256(String text) throws NoSuchAlgorithmException {
        return HexFormat.of()
                .formatHex(
                        MessageDigest.getInstance("SHA-256")
                                .digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE revision SET what = 'other' WHERE id = 1",
                "UPDATE revision SET at = '2026-09-08T11:00:00Z' WHERE id = 2",
                "UPDATE content SET bytes = CAST('other' AS BLOB) WHERE bytes = CAST('first' AS BLOB)",
                "UPDATE seal SET who = 'somebody else' WHERE number = 2",
                "DELETE FROM seal WHERE number = 2",
                "DELETE FROM seal WHERE number = 3",
                "UPDATE plan SET revision = 1",
                "DELETE FROM plan_file",
                "INSERT INTO revision (id, parent, at, what) VALUES (3, 2, '2026-09-08T12:00:00Z', 'x')",
            })
    void tells_what_was_altered_later(String statement) throws SQLException, IOException {
        alter(statement);

        assertThat(store.read(file).broken()).isPresent();
    }

    @Test
    void takes_over_no_file_that_was_altered() throws SQLException, IOException {
        alter("UPDATE revision SET what = 'other' WHERE id = 1");

        assertThatThrownBy(() -> store.take(file, "copy").close())
                .isInstanceOf(IOException.class)
                .hasMessageContaining("Revision 1 is not what was sealed");
    }

    @Test
    void keeps_the_seals_of_a_job_taken_over() throws IOException {
        Path handed = folder.resolve("handed.underhook");
        try (KeptJob job = store.open("day")) {
            job.writeTo(handed);
        }
        SqliteJobStore other = new SqliteJobStore(folder.resolve("other"), "pilot");
        try (KeptJob job = other.take(handed, "day")) {
            change(job, 2, "third");
            Archive archive = job.readArchive();
            assertThat(archive.broken()).isEmpty();
            assertThat(archive.entries())
                    .extracting(Archive.Entry::who)
                    .containsExactly("planner", "planner", "planner", "pilot");
        }
    }

    @Test
    void seals_a_job_from_before_the_seals_as_it_is_found() throws SQLException, IOException {
        alter("DROP TABLE seal");
        alter("PRAGMA user_version = 2");

        try (KeptJob job = store.open("day")) {
            Archive archive = job.readArchive();
            assertThat(archive.broken()).isEmpty();
            assertThat(archive.entries()).hasSize(3).allMatch(entry -> entry.who().isEmpty());
        }
    }
}
