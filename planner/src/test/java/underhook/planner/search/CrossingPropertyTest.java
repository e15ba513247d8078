package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What an order crossed of two has of each; common practice of this project, no source. */
class CrossingPropertyTest {
    private static final int TIMES = 300;

    @Test
    void each_trip_is_in_it_once_and_no_hint_that_neither_has() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < TIMES; i++) {
            DayTable table = TinyDay.ofFlownTeams(i, 4 + i % 5).table();
            Wish one = wish(table, random);
            Wish other = wish(table, random);
            Wish crossed = Crossing.of(table, one, other, random);
            assertThat(trips(table, crossed))
                    .containsExactlyInAnyOrder(
                            IntStream.range(0, table.trips.length).boxed().toArray(Integer[]::new));
            assertThat(both(one, other)).contains(crossed.tokens);
        }
    }

    @Test
    void it_begins_as_the_one_and_what_is_left_comes_in_the_turns_of_the_other() {
        SplittableRandom random = new SplittableRandom(6);
        for (int i = 0; i < TIMES; i++) {
            DayTable table = TinyDay.ofFlownTeams(i, 4 + i % 5).table();
            Wish one = wish(table, random);
            Wish other = wish(table, random);
            Wish child = Crossing.of(table, one, other, random);
            assertThat(child.tokens[0]).isEqualTo(one.tokens[0]);
            Integer[] crossed = trips(table, child);
            Integer[] ones = trips(table, one);
            int alike = 0;
            while (alike < crossed.length && crossed[alike].equals(ones[alike])) {
                alike++;
            }
            Integer[] rest = Arrays.copyOfRange(crossed, alike, crossed.length);
            if (rest.length > 0) {
                assertThat(trips(table, other)).containsSubsequence(rest);
            }
        }
    }

    @Test
    void crossed_with_itself_it_stays_as_it_is() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < TIMES; i++) {
            DayTable table = TinyDay.ofFlownTeams(i, 4 + i % 5).table();
            Wish one = wish(table, random);
            Wish crossed = Crossing.of(table, one, one.copy(), random);
            assertThat(crossed.tokens).isEqualTo(one.tokens);
            assertThat(crossed.teamOf).isEqualTo(one.teamOf);
            assertThat(crossed.refuelToKg).isEqualTo(one.refuelToKg);
        }
    }

    /** A first order, much changed; its hints are not always as many. */
    private static Wish wish(DayTable table, SplittableRandom random) {
        Lean lean = Lean.none(table);
        for (int i = 0; i < 5; i++) {
            lean = lean.changed(table, random);
        }
        Wish wish = new Greedy(table, new Decoder(table)).order(lean);
        WishChanger changer = new WishChanger(table);
        for (int i = 0; i < 30; i++) {
            changer.change(wish, random);
        }
        return wish;
    }

    private static Integer[] trips(DayTable table, Wish wish) {
        return Arrays.stream(wish.tokens)
                .filter(token -> token < table.trips.length)
                .boxed()
                .toArray(Integer[]::new);
    }

    private static int[] both(Wish one, Wish other) {
        return IntStream.concat(Arrays.stream(one.tokens), Arrays.stream(other.tokens)).toArray();
    }
}
