package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class AnswersTest {
    private final Answers answers = new Answers();
    private final AtomicInteger made = new AtomicInteger();

    private Asset text() throws IOException {
        made.incrementAndGet();
        return new Asset("text/plain", "told".getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void is_worked_out_once_though_two_ask_at_the_same_time() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        CompletableFuture<Asset> one =
                CompletableFuture.supplyAsync(
                        () -> {
                            try {
                                return answers.get(
                                        "map",
                                        () -> {
                                            begun.countDown();
                                            await(mayEnd);
                                            return text();
                                        });
                            } catch (IOException impossible) {
                                throw new AssertionError(impossible);
                            }
                        });
        await(begun);
        CompletableFuture<Asset> other =
                CompletableFuture.supplyAsync(
                        () -> {
                            try {
                                return answers.get("map", this::text);
                            } catch (IOException impossible) {
                                throw new AssertionError(impossible);
                            }
                        });

        mayEnd.countDown();

        assertThat(other.get(10, TimeUnit.SECONDS)).isSameAs(one.get(10, TimeUnit.SECONDS));
        assertThat(made).hasValue(1);
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(10, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException stopped) {
            throw new AssertionError(stopped);
        }
    }

    @Test
    void tries_again_after_it_could_not_be_worked_out() throws Exception {
        assertThatThrownBy(
                        () ->
                                answers.get(
                                        "map",
                                        () -> {
                                            throw new Refused(409, "not yet");
                                        }))
                .isInstanceOf(Refused.class);

        assertThat(answers.get("map", this::text).toText()).isEqualTo("told");
    }

    @Test
    void forgets_the_oldest() throws Exception {
        for (int i = 0; i < 9; i++) {
            answers.get("map " + i, this::text);
        }

        answers.get("map 8", this::text);
        answers.get("map 0", this::text);

        assertThat(made).hasValue(10);
    }
}
