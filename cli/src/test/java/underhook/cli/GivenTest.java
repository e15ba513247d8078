package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GivenTest {
    @TempDir Path folder;

    @Test
    void refuses_a_file_as_the_folder_for_the_outputs_before_any_work() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "x");

        Said plan = say("plan", folder.toString(), "--out", file.toString());
        Said demo = say("demo", "--no-serve", "--out", file.toString());

        assertThat(plan.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(plan.err()).contains("is a file, not a folder.").doesNotContain("reading");
        assertThat(demo.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(file).hasContent("x");
    }

    /** Root may write everywhere but into what is no folder, and into a file system of the kernel's own. */
    @Test
    void refuses_a_folder_that_cannot_be_made_before_any_work() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "x");
        Path kernels = Path.of("/proc");
        Path nowhere = Files.isDirectory(kernels.resolve("self")) ? kernels : file;
        for (Path out : List.of(file.resolve("x"), nowhere.resolve("x"))) {
            Said plan = say("plan", folder.toString(), "--out", out.toString());

            assertThat(plan.exit()).as(plan.err()).isEqualTo(Exit.INPUT_REFUSED);
            assertThat(plan.err())
                    .contains("--out (" + out + "): nothing can be written there")
                    .doesNotContain("reading");
        }
        assertThat(file).hasContent("x");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.filter(one -> one.getFileName().toString().contains("probe")))
                    .isEmpty();
        }
    }

    /** File systems take names of 255 bytes at most; an empty one would be the folder that one stands in. */
    @Test
    void refuses_a_name_that_no_folder_can_have_before_any_work() {
        Path tooLong = folder.resolve("n".repeat(300)).resolve("out");

        Said plan = say("plan", folder.toString(), "--out", tooLong.toString());
        Said none = say("plan", folder.toString(), "--out", "");

        assertThat(plan.exit()).as(plan.err()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(plan.err()).contains("nothing can be written there");
        assertThat(none.exit()).as(none.err()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(none.err()).contains("--out names no folder.");
    }

    /** No file is named with a NUL in it, nor with what is not ASCII where no locale is set. */
    @Test
    void says_plainly_that_a_name_cannot_be_read() {
        Said check = say("check", "a\0b");

        assertThat(check.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(check.err()).contains("LC_ALL=C.UTF-8").doesNotContain("Exception");
    }

    @Test
    void writes_nothing_into_a_job_folder_whose_loads_it_would_replace() throws IOException {
        Files.writeString(folder.resolve("job.yaml"), "version: 1\n");
        Path loads = Files.writeString(folder.resolve("loads.csv"), "id\n");
        String job = folder.toString();

        Said plan = say("plan", job, "--out", job);
        Said close = say("close", job, "plan.json", "--out", job);

        assertThat(plan.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(plan.err())
                .contains("is a job folder")
                .contains(folder.resolve("out").toString());
        assertThat(close.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(loads).hasContent("id\n");
    }

    /** The customer's own list lies in a folder of its own, beside no job.yaml. */
    @Test
    void writes_nothing_over_a_load_list_that_no_run_wrote() throws IOException {
        Path loads = Files.writeString(folder.resolve("loads.csv"), "id\n");

        Said plan = say("plan", "nowhere", "--out", folder.toString());

        assertThat(plan.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(plan.err()).contains("a loads.csv that no run wrote");
        assertThat(loads).hasContent("id\n");

        Files.writeString(folder.resolve("findings.csv"), "code\n");
        assertThat(say("plan", "nowhere", "--out", folder.toString()).err())
                .doesNotContain("that no run wrote");
    }

    @Test
    void refuses_a_port_that_no_machine_has() {
        Path out = folder.resolve("demo");

        Said serve = say("serve", "--port", "65536");
        Said demo = say("demo", "--port", "-1", "--out", out.toString());

        assertThat(serve.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(serve.err()).contains("--port (65536) must lie between 0 and 65535.");
        assertThat(demo.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(out).doesNotExist();
    }

    @Test
    void names_every_topic_and_its_flags_in_the_help() {
        assertThat(say("calc", "--help").out())
                .contains("wind track-deg from-deg speed-kt [tas-kt]")
                .contains("report text");
    }

    private Said say(String... words) {
        return Said.of(folder.resolve("data"), words);
    }
}
