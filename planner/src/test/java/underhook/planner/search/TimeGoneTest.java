package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** What a search makes of little time; common practice of this project, no source. */
class TimeGoneTest {
    private static final int DAYS = 40_000;
    private static final int WORDS = 12;

    private double nowRatio;

    @Test
    void of_the_second_half_each_has_half_as_much_again_as_its_share_of_what_is_left() {
        TimeGone half = ((TimeGone) () -> nowRatio).ofWhatIsLeft(0.5);
        assertThat(ratioAt(half, 0.5)).isZero();
        assertThat(ratioAt(half, 0.6875)).isCloseTo(0.5, within(1e-9));
        assertThat(ratioAt(half, 0.875)).isEqualTo(1);

        nowRatio = 0.8;
        TimeGone later = ((TimeGone) () -> nowRatio).ofWhatIsLeft(0.25);
        assertThat(ratioAt(later, 0.8)).isZero();
        assertThat(ratioAt(later, 0.87)).isLessThan(1);
        assertThat(ratioAt(later, 0.8751)).isEqualTo(1);
    }

    @Test
    void nobody_goes_on_when_all_is_over() {
        nowRatio = 1.2;
        assertThat(((TimeGone) () -> nowRatio).ofWhatIsLeft(1).isOver()).isTrue();
        assertThat(((TimeGone) () -> 0.3).first(0.25).isOver()).isTrue();
        assertThat(TimeGone.once(() -> false).isOver()).isFalse();
    }

    /** With the same few days built, one that goes cold in them finds more than one that is cut while it is hot. */
    @Test
    void a_search_goes_cold_in_the_time_it_has() {
        long cooledCents = 0;
        long cutCents = 0;
        for (int seed = 1; seed <= 20; seed++) {
            Search cooled = search(seed);
            AtomicInteger words = new AtomicInteger();
            cooled.run(
                    new SplittableRandom(seed),
                    DAYS,
                    manner(() -> words.getAndIncrement() / (double) WORDS));
            Search cut = search(seed);
            AtomicInteger others = new AtomicInteger();
            cut.run(
                    new SplittableRandom(seed),
                    DAYS,
                    manner(TimeGone.once(() -> others.getAndIncrement() == WORDS)));

            assertThat(cooled.wasCut()).isTrue();
            assertThat(cooled.built()).isLessThanOrEqualTo(cut.built());
            cooledCents += cooled.bestCents();
            cutCents += cut.bestCents();
        }
        assertThat(cooledCents).isLessThan(cutCents);
    }

    @Test
    void with_time_enough_nothing_changes() {
        Search unhurried = search(3);
        unhurried.run(new SplittableRandom(3), 2000, manner(TimeGone.once(() -> false)));
        Search timed = search(3);
        AtomicInteger words = new AtomicInteger();
        timed.run(new SplittableRandom(3), 2000, manner(() -> words.getAndIncrement() / 25.0));

        assertThat(timed.wasCut()).isFalse();
        assertThat(timed.best().tokens).isEqualTo(unhurried.best().tokens);
        assertThat(timed.built()).isEqualTo(unhurried.built());
    }

    /** With a clock that goes on each time it is asked, a whole search ends by it, with all lifts that it has in time enough. */
    @Test
    void a_search_in_a_hurry_ends_with_the_clock_and_flies_what_an_unhurried_one_does() {
        DayTable table = TinyDay.of(11, 12).table();
        Effort effort = new Effort(3, 2);
        DayOrder.Found whole =
                DayOrder.find(table, effort, new DayOrder.Stops(() -> false), d -> {});
        AtomicInteger words = new AtomicInteger();
        DayOrder.Found hurried =
                DayOrder.find(
                        TinyDay.of(11, 12).table(),
                        effort,
                        new DayOrder.Stops(
                                () -> words.incrementAndGet() / 600.0, () -> words.get() > 700),
                        d -> {});

        assertThat(whole.cutShort()).isFalse();
        assertThat(hurried.cutShort()).isTrue();
        assertThat(words.get()).isGreaterThanOrEqualTo(600);
        assertThat(hurried.built()).isBetween(1, whole.built() - 1);
        assertThat(countLeftOut(hurried)).isEqualTo(countLeftOut(whole));
    }

    private static long countLeftOut(DayOrder.Found found) {
        return found.day().releasedS().stream().filter(releasedS -> releasedS < 0).count();
    }

    private double ratioAt(TimeGone gone, double ratio) {
        nowRatio = ratio;
        return gone.goneRatio();
    }

    private static Search.Manner manner(TimeGone gone) {
        return new Search.Manner(450, false, gone);
    }

    private static Search search(int seed) {
        DayTable table = TinyDay.of(seed, 12).table();
        Decoder decoder = new Decoder(table);
        return new Search(decoder, new Greedy(table, decoder).order(Lean.none(table)));
    }
}
