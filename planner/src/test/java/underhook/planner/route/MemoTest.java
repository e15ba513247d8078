package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is kept is told by what it is for; no outside source. */
class MemoTest {
    @Test
    void theSameQuestionIsWorkedOutOnce() {
        AtomicInteger worked = new AtomicInteger();
        Function<Integer, Integer> work = question -> question * 10 + worked.incrementAndGet();
        Memo<Integer, Integer> memo = Memo.of();

        assertThat(memo.find(4)).isNull();
        assertThat(memo.get(4, work)).isEqualTo(41);
        assertThat(memo.get(4, work)).isEqualTo(41);
        assertThat(memo.get(5, work)).isEqualTo(52);
        assertThat(memo.find(4)).isEqualTo(41);
    }

    @Test
    void whatIsAskedWhileAnAnswerIsWorkedOutIsKeptToo() {
        Memo<Integer, Integer> memo = Memo.of();

        // As a recursive definition asks: the sum of all numbers up to one.
        assertThat(sum(memo, 100)).isEqualTo(5050);
        assertThat(memo.find(10)).isEqualTo(55);
    }

    private static int sum(Memo<Integer, Integer> memo, int until) {
        return until == 0 ? 0 : memo.get(until, number -> number + sum(memo, number - 1));
    }

    @Test
    void equalQuestionsAreTwoWhereTheObjectCounts() {
        Memo<List<Integer>, Integer> memo = Memo.byIdentity();
        List<Integer> one = List.of(1);
        List<Integer> other = List.of(1);

        assertThat(memo.get(one, unused -> 1)).isEqualTo(1);
        assertThat(memo.get(other, unused -> 2)).isEqualTo(2);
        assertThat(memo.questions()).hasSize(2);
    }

    @Test
    void ofTheLastOnlySoManyAreKept() {
        Memo<Integer, Integer> memo = Memo.ofLast(2);
        memo.get(1, unused -> 1);
        memo.get(2, unused -> 2);
        memo.get(1, unused -> 0);
        memo.get(3, unused -> 3);

        assertThat(memo.find(2)).isNull();
        assertThat(memo.find(1)).isEqualTo(1);
        assertThat(memo.find(3)).isEqualTo(3);
    }

    @Test
    void whatTwoWorkOutAtOnceIsTheSameForBoth() throws InterruptedException {
        Memo<Integer, Object> memo = Memo.of();
        CountDownLatch both = new CountDownLatch(2);
        Object[] got = new Object[2];
        List<Thread> threads =
                IntStream.range(0, 2)
                        .mapToObj(
                                i -> new Thread(() -> got[i] = memo.get(7, unused -> answer(both))))
                        .toList();
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }

        assertThat(got[0]).isNotNull().isSameAs(got[1]);
    }

    /** Only once both are at it. */
    private static Object answer(CountDownLatch both) {
        both.countDown();
        try {
            both.await();
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
        return new Object();
    }
}
