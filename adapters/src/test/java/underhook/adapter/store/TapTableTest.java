package underhook.adapter.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptTap;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

class TapTableTest {
    private static final Instant EIGHT = Instant.parse("2026-09-08T08:00:00Z");

    private static final KeptTap.Given HOOKED =
            new KeptTap.Given(
                    new Tap(
                            "a-1",
                            EIGHT,
                            "loader2",
                            "phone 1",
                            TapKind.HOOKED,
                            List.of(new LoadId("L07"), new LoadId("L36")),
                            Optional.of(new PlaceId("B")),
                            Tap.Amount.ofMass(197.5),
                            Optional.empty(),
                            "na\u00DF; \"schwer\""),
                    new KeptTap.Arrival(
                            "loader",
                            EIGHT.plusSeconds(1),
                            EIGHT.plusMillis(2500),
                            false,
                            "plan-1"));

    private static final KeptTap.Given UNDONE =
            new KeptTap.Given(
                    new Tap(
                            "a-2",
                            EIGHT.plusSeconds(60),
                            "loader2",
                            "phone 1",
                            TapKind.UNDONE,
                            List.of(),
                            Optional.empty(),
                            Tap.Amount.NONE,
                            Optional.of("a-1"),
                            ""),
                    new KeptTap.Arrival(
                            "loader",
                            EIGHT.plusSeconds(61),
                            EIGHT.plusSeconds(62),
                            true,
                            "plan-1"));

    @TempDir private Path folder;
    private SqliteJobStore store;

    @BeforeEach
    void open() {
        store = new SqliteJobStore(folder.resolve("jobs"), "somebody");
    }

    @Test
    void ties_each_row_to_the_one_before() throws IOException {
        try (KeptJob job = store.create("day", "A day")) {
            job.addTaps(List.of(HOOKED));
            job.addTaps(List.of(UNDONE));
        }

        try (KeptJob job = store.open("day")) {
            List<KeptTap> rows = job.listTaps();
            // Worked out apart from this program, with hashlib of Python 3.11, from
            // docs/formats.md.
            assertThat(rows.get(0).hash())
                    .isEqualTo("5b4bc3024b542423aacef8eca2e8757b25fc96751036d32e764e58b56a079dbc");
            assertThat(rows.get(1).hash())
                    .isEqualTo("86338e1b88bf2d112d5fb003c46153e7341e42979164e29b160053c9dc721db2");
            assertThat(rows.get(0).tap()).isEqualTo(HOOKED.tap());
            assertThat(rows.get(1).arrival()).isEqualTo(UNDONE.arrival());
            assertThat(KeptTap.findBroken(rows)).isEmpty();
        }
    }

    @Test
    void keeps_a_tap_that_comes_again_as_it_was_first_told() throws IOException {
        try (KeptJob job = store.create("day", "A day")) {
            List<KeptTap> rows = job.addTaps(List.of(HOOKED, UNDONE, HOOKED));
            List<KeptTap> again = job.addTaps(List.of(UNDONE));

            assertThat(rows).extracting(KeptTap::number).containsExactly(1L, 2L, 1L);
            assertThat(again.get(0)).isEqualTo(rows.get(1));
            assertThat(job.listTaps()).hasSize(2);
        }
    }

    @Test
    void shows_which_row_was_altered_or_taken_out() throws Exception {
        try (KeptJob job = store.create("day", "A day")) {
            job.addTaps(List.of(HOOKED, UNDONE));
        }

        run("UPDATE tap SET mass_kg = 250.0 WHERE number = 1");
        assertThat(broken()).isEqualTo(1);

        run("UPDATE tap SET mass_kg = 197.5 WHERE number = 1");
        assertThat(broken()).isZero();

        run("DELETE FROM tap WHERE number = 1");
        assertThat(broken()).isEqualTo(2);
    }

    private long broken() throws IOException {
        try (KeptJob job = store.open("day")) {
            return KeptTap.findBroken(job.listTaps()).map(KeptTap::number).orElse(0L);
        }
    }

    @Test
    void brings_a_file_without_a_log_up_and_keeps_a_copy_beside() throws Exception {
        Path file = folder.resolve("jobs/day.underhook");
        Files.createDirectories(folder.resolve("jobs"));
        try (InputStream script =
                Objects.requireNonNull(TapTable.class.getResourceAsStream("V001__job.sql"))) {
            for (String one :
                    new String(script.readAllBytes(), StandardCharsets.UTF_8).split(";")) {
                if (!one.isBlank()) {
                    run(one);
                }
            }
        }
        run("PRAGMA application_id = " + Migrations.APPLICATION_ID);
        run("PRAGMA user_version = 1");
        run("INSERT INTO job (only, name, head, tip) VALUES (1, 'An old day', 0, 0)");

        try (KeptJob job = store.open("day")) {
            assertThat(job.name()).isEqualTo("An old day");
            assertThat(job.addTaps(List.of(HOOKED))).hasSize(1);
        }

        assertThat(file.resolveSibling("day.underhook.before-v" + Migrations.newest())).exists();
    }

    @Test
    void hands_the_log_over_and_takes_none_that_was_altered() throws Exception {
        Path file = folder.resolve("handed");
        try (KeptJob job = store.create("day", "A day")) {
            job.addTaps(List.of(HOOKED, UNDONE));
            job.writeTo(file);
        }
        try (KeptJob taken = store.take(file, "taken")) {
            assertThat(taken.listTaps()).hasSize(2);
            assertThat(KeptTap.findBroken(taken.listTaps())).isEmpty();
        }

        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement change = connection.createStatement()) {
            change.execute("UPDATE tap SET who = 'somebody' WHERE number = 2");
        }

        assertThatThrownBy(() -> store.take(file, "forged")).hasMessageContaining("log of taps");
        assertThat(store.list()).doesNotContain("forged");
    }

    private void run(String sql) throws Exception {
        Path file = folder.resolve("jobs/day.underhook");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
