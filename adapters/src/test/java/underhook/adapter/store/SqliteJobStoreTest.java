package underhook.adapter.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Content;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptJob.Change;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.KeptJob.MovedException;
import underhook.app.port.KeptJob.Revision;

class SqliteJobStoreTest {
    private static final Instant NOON = Instant.parse("2026-09-08T12:00:00Z");

    @TempDir private Path folder;
    private SqliteJobStore store;

    @BeforeEach
    void open() {
        store = new SqliteJobStore(folder.resolve("jobs"), "somebody");
    }

    private static Change write(long on, String path, String text) {
        return new Change(on, NOON, path, Map.of(path, Content.of(text)), Set.of());
    }

    @Test
    void keeps_every_state_of_the_files() throws IOException {
        try (KeptJob job = store.create("day", "A day")) {
            job.add(write(0, "loads.csv", "one"));
            job.add(write(1, "loads.csv", "two"));
            job.add(new Change(2, NOON, "gone", Map.of(), Set.of("loads.csv")));
        }

        try (KeptJob job = store.open("day")) {
            assertThat(job.name()).isEqualTo("A day");
            assertThat(job.listRevisions()).hasSize(3);
            assertThat(text(job, 1)).isEqualTo("one");
            assertThat(text(job, 2)).isEqualTo("two");
            assertThat(job.listFiles(3)).isEmpty();
        }
    }

    private static String text(KeptJob job, long revision) throws IOException {
        String hash = job.listFiles(revision).getOrDefault("loads.csv", "");
        return job.getContent(hash).toText();
    }

    @Test
    void goes_back_and_ahead_and_keeps_what_was_left() throws IOException {
        try (KeptJob job = store.create("day", "day")) {
            job.add(write(0, "a.csv", "1"));
            job.add(write(1, "a.csv", "2"));
            job.add(write(2, "a.csv", "3"));

            assertThat(job.undo(3).id()).isEqualTo(2);
            assertThat(job.undo(2).id()).isEqualTo(1);
            assertThat(job.findBack()).isEmpty();
            assertThat(job.redo(1).id()).isEqualTo(2);
            job.add(write(2, "a.csv", "other"));

            assertThat(job.findAhead()).isEmpty();
            assertThat(job.findBack().map(Revision::id)).contains(2L);
            assertThat(job.listRevisions()).hasSize(4);
        }
    }

    @Test
    void adds_nothing_to_what_has_moved_on() throws IOException {
        try (KeptJob job = store.create("day", "day")) {
            job.add(write(0, "a.csv", "1"));

            assertThatThrownBy(() -> job.add(write(0, "a.csv", "2")))
                    .isInstanceOf(MovedException.class);
            assertThatThrownBy(() -> job.undo(7)).isInstanceOf(MovedException.class);
            assertThat(job.listRevisions()).hasSize(1);
        }
    }

    @Test
    void keeps_plans_with_the_revision_they_are_from() throws IOException {
        try (KeptJob job = store.create("day", "day")) {
            job.add(write(0, "a.csv", "1"));
            job.keepPlan(new KeptPlan("plan-1", 1, NOON), Map.of("plan.json", Content.of("{}")));

            assertThat(job.listPlans()).containsExactly(new KeptPlan("plan-1", 1, NOON));
            assertThat(job.listPlanFiles("plan-1")).containsExactly("plan.json");
            assertThat(job.findPlanFile("plan-1", "plan.json").orElseThrow().toText())
                    .isEqualTo("{}");
            assertThat(job.findPlanFile("plan-1", "cards.pdf")).isEmpty();
        }
    }

    @Test
    void lists_only_its_own_files() throws IOException {
        store.create("b", "b").close();
        store.create("a", "a").close();
        Files.writeString(folder.resolve("jobs/notes.txt"), "x");
        Files.writeString(folder.resolve("jobs/UPPER.underhook"), "x");

        assertThat(store.list()).containsExactly("a", "b");
    }

    @Test
    void takes_no_id_that_leads_out() {
        for (String id : new String[] {"", "../a", "a/b", "a.b", "A", "-a"}) {
            assertThatThrownBy(() -> store.create(id, "x"))
                    .as(id)
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void refuses_a_newer_format_with_a_sentence() throws Exception {
        store.create("day", "day").close();
        run("day", "PRAGMA user_version = 99");

        assertThatThrownBy(() -> store.open("day"))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("newer program");
    }

    @Test
    void refuses_a_database_of_somebody_else() throws Exception {
        store.create("day", "day").close();
        run("day", "PRAGMA application_id = 1");

        assertThatThrownBy(() -> store.open("day")).hasMessageContaining("no job of this program");
    }

    private void run(String id, String sql) throws Exception {
        Path file = folder.resolve("jobs").resolve(id + ".underhook");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void hands_over_and_takes_over_the_whole_of_it() throws IOException {
        Path file = folder.resolve("handed");
        try (KeptJob job = store.create("day", "A day")) {
            job.add(write(0, "loads.csv", "one"));
            job.add(write(1, "loads.csv", "two"));
            job.undo(2);
            job.keepPlan(new KeptPlan("plan-1", 1, NOON), Map.of("plan.json", Content.of("{}")));
            job.writeTo(file);
        }

        try (KeptJob taken = store.take(file, "other")) {
            assertThat(taken.name()).isEqualTo("A day");
            assertThat(taken.findHead().map(Revision::id)).contains(1L);
            assertThat(taken.findAhead().map(Revision::id)).contains(2L);
            assertThat(text(taken, 2)).isEqualTo("two");
            assertThat(taken.listPlans()).hasSize(1);
        }
    }

    @Test
    void takes_nothing_over_whose_paths_lead_out() throws Exception {
        Path file = folder.resolve("handed");
        try (KeptJob job = store.create("day", "day")) {
            job.add(write(0, "loads.csv", "one"));
        }
        run("day", "UPDATE revision_file SET path = '../../loads.csv'");
        try (KeptJob job = store.open("day")) {
            job.writeTo(file);
        }

        assertThatThrownBy(() -> store.take(file, "other")).isInstanceOf(IOException.class);
        assertThat(store.list()).containsExactly("day");
    }

    @Test
    void says_when_a_kept_file_is_damaged() throws Exception {
        try (KeptJob job = store.create("day", "day")) {
            job.add(write(0, "loads.csv", "one"));
        }
        run("day", "UPDATE content SET bytes = x'00'");

        try (KeptJob job = store.open("day")) {
            assertThatThrownBy(() -> text(job, 1)).hasMessageContaining("damaged");
        }
    }
}
