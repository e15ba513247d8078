package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** A cause is true when the lift comes earlier without it; expected of the rules, no source outside. */
class CauseTest {
    private static final int DAYS = 120;

    @Test
    void a_lift_that_waits_for_another_to_lie_is_earlier_without_that() {
        assertThat(countEarlier(Cause.Kind.AFTER, TinyDay::ofStaffedSites, TinyDay::withoutWaits))
                .isGreaterThan(3);
    }

    @Test
    void a_pole_that_waits_for_its_place_is_earlier_when_that_is_ready_at_once() {
        assertThat(countEarlier(Cause.Kind.READY, TinyDay::of, TinyDay::withoutReadying))
                .isGreaterThan(3);
    }

    @Test
    void a_lift_that_waits_for_the_wind_is_earlier_without_it() {
        assertThat(
                        countEarlier(
                                Cause.Kind.WIND,
                                TinyDay::ofLongGuying,
                                TinyDay::withoutClosedSpells))
                .isGreaterThan(3);
    }

    /** A day of so many lifts. */
    private interface Days {
        TinyDay of(long seed, int count);
    }

    /** How often a lift names a cause; each must be let go earlier, in the same order, without it. */
    private static int countEarlier(Cause.Kind kind, Days days, UnaryOperator<TinyDay> without) {
        int count = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = days.of(seed, 5);
            Wish wish = new Greedy(day.table(), new Decoder(day.table())).plain();
            Run free = decoded(without.apply(day), wish, new DayLog());
            DayLog log = new DayLog();
            Run run = decoded(day, wish, log);
            for (DayEvent event : log.events) {
                if (event.lift().isPresent() && event.cause().kind() == kind) {
                    int trip = event.lift().get().trip();
                    count++;
                    assertThat(free.releasedS[trip])
                            .as("day %d, trip %d", seed, trip)
                            .isLessThan(run.releasedS[trip]);
                    break;
                }
            }
        }
        return count;
    }

    private static Run decoded(TinyDay day, Wish wish, DayLog log) {
        Decoder decoder = new Decoder(day.table());
        decoder.decode(wish, log);
        return decoder.run();
    }
}
