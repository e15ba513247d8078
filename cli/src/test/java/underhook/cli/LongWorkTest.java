package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** What is said of work that somebody stops, by when the signal came. The sentences are ours. */
class LongWorkTest {
    @Test
    void a_stop_after_the_work_last_asked_leaves_nothing_unsaid() throws Exception {
        try (LongWork work = LongWork.begin(new PrintWriter(new StringWriter()))) {
            work.hasDay();
            assertThat(work.mustEnd()).isFalse();
            assertThat(work.stop()).isEqualTo(LongWork.Stop.NONE);

            raise(work);

            assertThat(work.stop()).isEqualTo(LongWork.Stop.AFTER_THE_WORK);
            assertThat(Words.ofNewOrder(work.stop()))
                    .contains("nothing of the new order is missing")
                    .doesNotContain("better");
        }
    }

    @Test
    void a_stop_that_the_work_heard_says_what_may_be_missing() throws Exception {
        try (LongWork work = LongWork.begin(new PrintWriter(new StringWriter()))) {
            work.hasDay();

            raise(work);

            assertThat(work.mustEnd()).isTrue();
            assertThat(work.stop()).isEqualTo(LongWork.Stop.IN_THE_WORK);
            assertThat(Words.ofNewOrder(work.stop()))
                    .contains("a better order near the known one was not looked for to the end");
        }
    }

    private static void raise(LongWork work) throws Exception {
        String self = Long.toString(ProcessHandle.current().pid());
        assertThat(new ProcessBuilder("kill", "-TERM", self).start().waitFor()).isZero();
        // The signal is handed over on a thread of its own.
        for (int k = 0; k < 500 && work.stop() == LongWork.Stop.NONE; k++) {
            Thread.sleep(10);
        }
    }
}
