package underhook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.FindingsWriter;
import underhook.app.port.OutputWriter;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.plan.Plan;
import underhook.core.plan.Summary;
import underhook.core.plan.VerifierReport;

class OutputFolderTest {
    private static final InstantSource CLOCK =
            InstantSource.fixed(Instant.parse("2026-06-01T05:06:07Z"));
    private static final List<OutputWriter> WRITERS =
            List.of(new IdWriter("cards.pdf"), new IdWriter("plan.json"));
    private static final FindingsWriter FINDINGS = new FindingsIdWriter();

    @TempDir Path folder;

    @Test
    void writes_every_file_of_a_run_and_leaves_nothing_else() throws IOException {
        write("one");

        assertThat(files())
                .isEqualTo(Map.of("cards.pdf", "one", "findings.csv", "one", "plan.json", "one"));
    }

    @Test
    void replaces_the_files_of_an_earlier_run_and_keeps_what_is_not_its_own() throws IOException {
        Files.writeString(folder.resolve("notes.txt"), "mine", StandardCharsets.UTF_8);
        write("one");

        write("two");

        assertThat(files())
                .isEqualTo(
                        Map.of(
                                "cards.pdf",
                                "two",
                                "findings.csv",
                                "two",
                                "plan.json",
                                "two",
                                "notes.txt",
                                "mine"));
    }

    @Test
    void a_refusal_moves_the_earlier_run_away_and_leaves_findings_alone() throws IOException {
        write("one");

        try (OutputFolder output = OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK)) {
            output.writeRefusal(refusal("two"));
            output.writeRefusal(refusal("three"));
        }

        assertThat(files())
                .isEqualTo(
                        Map.of(
                                "findings.csv", "three",
                                "superseded-20260601T050607Z/cards.pdf", "one",
                                "superseded-20260601T050607Z/findings.csv", "one",
                                "superseded-20260601T050607Z/plan.json", "one",
                                "superseded-20260601T050607Z-2/findings.csv", "two"));
    }

    @Test
    void a_writer_that_fails_midway_leaves_the_old_files_as_they_were() throws IOException {
        write("one");
        for (OutputWriter failing :
                List.of(
                        new FailingWriter(new IOException("disk full")),
                        new FailingWriter(new IllegalArgumentException("not finite")))) {
            List<OutputWriter> writers = List.of(new IdWriter("cards.pdf"), failing);

            try (OutputFolder output = OutputFolder.open(folder, writers, FINDINGS, CLOCK)) {
                assertThatThrownBy(() -> output.write(output("two")))
                        .hasMessageMatching(
                                "not finite|\\Q"
                                        + folder.toRealPath()
                                        + "\\E: nothing was written, what lay there is as it was:"
                                        + " disk full");
            }

            assertThat(files())
                    .isEqualTo(
                            Map.of("cards.pdf", "one", "findings.csv", "one", "plan.json", "one"));
        }
    }

    @Test
    void a_run_cut_while_writing_is_cleared_away() throws IOException {
        write("one");
        put(".underhook-writing/plan.json", "ha");

        OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK).close();

        assertThat(files())
                .isEqualTo(Map.of("cards.pdf", "one", "findings.csv", "one", "plan.json", "one"));
    }

    @Test
    void a_run_cut_between_two_renamings_is_completed() throws IOException {
        write("one");
        // As it lies after the first of three renamings.
        put("cards.pdf", "two");
        put(".underhook-ready/findings.csv", "two");
        put(".underhook-ready/plan.json", "two");

        OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK).close();

        assertThat(files())
                .isEqualTo(Map.of("cards.pdf", "two", "findings.csv", "two", "plan.json", "two"));
    }

    @Test
    void a_refusal_cut_before_its_findings_came_in_is_completed() throws IOException {
        write("one");
        put(".underhook-refused/findings.csv", "two");

        OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK).close();

        assertThat(files())
                .containsEntry("findings.csv", "two")
                .containsEntry("superseded-20260601T050607Z/plan.json", "one")
                .doesNotContainKey("plan.json");
    }

    @Test
    void a_refusal_cut_after_its_findings_came_in_keeps_them() throws IOException {
        put("findings.csv", "two");
        Files.createDirectory(folder.resolve(".underhook-refused"));

        OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK).close();

        assertThat(files()).isEqualTo(Map.of("findings.csv", "two"));
    }

    @Test
    void is_held_against_the_same_process_until_closed() throws IOException {
        try (OutputFolder held = OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK)) {
            assertThatThrownBy(() -> OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK))
                    .isInstanceOf(FolderBusyException.class);
            held.write(output("one"));
        }
        write("two");

        assertThat(files()).containsEntry("plan.json", "two");
    }

    @Test
    void is_held_against_a_second_process() throws Exception {
        Process other =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                LockHolder.class.getName(),
                                folder.toString())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
        try {
            assertThat((char) other.getInputStream().read()).isEqualTo('L');

            assertThatThrownBy(() -> OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK))
                    .isInstanceOf(FolderBusyException.class)
                    .hasMessageContaining(folder.toString());
        } finally {
            other.getOutputStream().close();
            if (!other.waitFor(30, TimeUnit.SECONDS)) {
                other.destroyForcibly();
            }
        }
        write("one");
        assertThat(files()).containsEntry("plan.json", "one");
    }

    @Test
    void publishing_locks_writes_and_refuses() throws IOException {
        FolderPublishing publishing = new FolderPublishing(WRITERS, FINDINGS, CLOCK);

        List<Path> written = publishing.publish(output("one"), folder);
        assertThat(written)
                .extracting(file -> file.getFileName().toString())
                .containsExactly("cards.pdf", "plan.json", "findings.csv");
        publishing.refuse(refusal("two"), folder);

        assertThat(files())
                .containsEntry("findings.csv", "two")
                .containsEntry("superseded-20260601T050607Z/plan.json", "one")
                .doesNotContainKey("plan.json");
    }

    /** Nobody waits for a plan that can be written nowhere. */
    @Test
    void what_cannot_be_written_is_known_before_the_work() throws IOException {
        FolderPublishing publishing = new FolderPublishing(WRITERS, FINDINGS, CLOCK);
        Path fresh = folder.resolve("not/yet");
        Path file = Files.writeString(folder.resolve("file"), "mine");

        publishing.tryOpen(fresh);
        assertThat(fresh.getParent()).doesNotExist();
        assertThatThrownBy(() -> publishing.tryOpen(file.resolve("below")))
                .isInstanceOf(IOException.class);
        FolderLock held = FolderLock.hold(folder, ".underhook.lock");
        assertThatThrownBy(() -> publishing.tryOpen(folder))
                .isInstanceOf(FolderBusyException.class);
        held.close();
        publishing.tryOpen(folder);
    }

    /** Faulty input leaves no old card beside its faults; what is no earlier run's is left alone. */
    @Test
    void an_earlier_run_is_moved_away_and_nothing_else() throws IOException {
        FolderPublishing publishing = new FolderPublishing(WRITERS, FINDINGS, CLOCK);
        publishing.publish(output("one"), folder);

        publishing.withdraw(folder);

        assertThat(files())
                .containsEntry("superseded-20260601T050607Z/plan.json", "one")
                .doesNotContainKeys("plan.json", "cards.pdf", "findings.csv");
        Files.writeString(folder.resolve("cards.pdf"), "mine");
        publishing.withdraw(folder);
        assertThat(files()).containsEntry("cards.pdf", "mine");
    }

    /** Holds a folder until its input ends. */
    static final class LockHolder {
        private LockHolder() {}

        public static void main(String[] args) throws IOException {
            OutputFolder held = OutputFolder.open(Path.of(args[0]), WRITERS, FINDINGS, CLOCK);
            System.out.write('L');
            System.out.flush();
            while (System.in.read() >= 0) {
                // wait for the end
            }
            held.close();
        }
    }

    private void write(String planId) throws IOException {
        try (OutputFolder output = OutputFolder.open(folder, WRITERS, FINDINGS, CLOCK)) {
            output.write(output(planId));
        }
    }

    private void put(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    /** All files but the lock, with what they hold. */
    private Map<String, String> files() throws IOException {
        Map<String, String> found = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.filter(Files::isRegularFile).toList()) {
                String name = folder.relativize(path).toString().replace('\\', '/');
                if (!name.equals(".underhook.lock")) {
                    found.put(name, Files.readString(path, StandardCharsets.UTF_8));
                }
            }
        }
        return found;
    }

    // The writers here look at the plan's id only, so there is no job.
    @SuppressWarnings("NullAway")
    private static OutputWriter.Output output(String planId) {
        Plan plan =
                new Plan(
                        planId,
                        "job",
                        new Plan.Made(CLOCK.instant(), 1, 10, "Underhook"),
                        new Summary(
                                0,
                                CLOCK.instant(),
                                new Summary.Counts(0, 0, 0),
                                Summary.Bounds.NONE,
                                false,
                                Optional.empty(),
                                List.of(),
                                Optional.empty()),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty());
        return new OutputWriter.Output(null, plan, new VerifierReport(0, List.of()));
    }

    private record IdWriter(String fileName) implements OutputWriter {
        @Override
        public void write(Output output, Path file) throws IOException {
            Files.writeString(file, output.plan().id(), StandardCharsets.UTF_8);
        }
    }

    private static final class FindingsIdWriter implements FindingsWriter {
        @Override
        public String fileName() {
            return "findings.csv";
        }

        @Override
        public void write(Output output, Path file) throws IOException {
            Files.writeString(file, output.plan().id(), StandardCharsets.UTF_8);
        }

        @Override
        public void writeRefusal(List<Finding> findings, Path file) throws IOException {
            Files.writeString(file, findings.get(0).subject(), StandardCharsets.UTF_8);
        }
    }

    private static List<Finding> refusal(String subject) {
        return List.of(Finding.of(FindingCode.NO_ROOM_IN_DAY, Severity.STOP, subject, "", "no"));
    }

    private static final class FailingWriter implements OutputWriter {
        private final Exception failure;

        FailingWriter(Exception failure) {
            this.failure = failure;
        }

        @Override
        public String fileName() {
            return "plan.json";
        }

        @Override
        public void write(Output output, Path file) throws IOException {
            Files.writeString(file, "hal", StandardCharsets.UTF_8);
            if (failure instanceof IOException world) {
                throw world;
            }
            throw (RuntimeException) failure;
        }
    }
}
