package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import underhook.core.plan.StepKind;

/** The expected values are brute force: of all days that are built the least flown of those with as much in common. */
class HeldBoundsPropertyTest {
    private static final int DAYS = 120;

    @Test
    void none_flies_less_with_crews_on_foot_while_the_wind_changes() {
        Tally tally = held(seed -> TinyDay.ofChangingWind(seed, 3 + (int) (seed % 3)));

        assertThat(tally.days).isGreaterThan(DAYS);
        assertThat(tally.meanRatio()).as("mean of bound over best").isGreaterThan(0.97);
    }

    @Test
    void none_flies_less_with_crews_that_are_flown() {
        Tally tally = held(seed -> TinyDay.ofFlownTeams(seed, 3 + (int) (seed % 2)));

        assertThat(tally.days).isGreaterThan(DAYS);
        assertThat(tally.meanRatio()).as("mean of bound over best").isGreaterThan(0.9);
    }

    @Test
    void none_flies_less_where_loads_are_fetched_and_tools_go_on() {
        Tally tally =
                held(
                        seed ->
                                seed % 2 == 0
                                        ? TinyDay.ofFlownTeams(seed, 2 + (int) (seed % 3 / 2))
                                                .withMoved(seed)
                                        : TinyDay.of(seed, 2 + (int) (seed % 3 / 2))
                                                .withFetched(seed));

        assertThat(tally.days).isGreaterThan(DAYS);
        assertThat(tally.meanRatio()).as("mean of bound over best").isGreaterThan(0.9);
    }

    @Test
    void none_flies_less_where_the_wind_changes_within_a_lift() {
        Tally tally =
                held(
                        seed ->
                                (seed % 2 == 0
                                                ? TinyDay.ofFlownTeams(seed, 2)
                                                : TinyDay.of(seed, 1 + (int) (seed % 4 / 2)))
                                        .withShortSpells(seed));

        assertThat(tally.days).isGreaterThan(DAYS);
    }

    private static Tally held(LongFunction<TinyDay> days) {
        Tally tally = new Tally();
        for (long seed = 0; seed < DAYS; seed++) {
            TinyDay day = days.apply(seed);
            Map<List<Integer>, Ordered> leastByPeople = new HashMap<>();
            Map<List<Integer>, Ordered> leastByHours = new HashMap<>();
            new EveryWish(day)
                    .built(
                            built -> {
                                keepLess(leastByPeople, people(built, false), built);
                                List<Integer> hours = people(built, true);
                                hours.addAll(HeldDay.hours(built).hookedIn());
                                keepLess(leastByHours, hours, built);
                            });
            String name = "day " + seed;
            leastByPeople.values().forEach(least -> people(day.table(), least, name));
            leastByHours.values().forEach(least -> tally.add(hours(day.table(), least, name)));
        }
        return tally;
    }

    private static void keepLess(
            Map<List<Integer>, Ordered> leastBy, List<Integer> what, Ordered built) {
        leastBy.merge(what, built, (one, other) -> other.flownS() < one.flownS() ? other : one);
    }

    /** From where to where people are flown, in any order, and in which hours. */
    private static List<Integer> people(Ordered built, boolean hours) {
        List<Integer> all = new ArrayList<>();
        for (DayEvent event : built.events()) {
            if (event.kind() == StepKind.CREW_MOVE) {
                EmptyWay way = event.legs().get(0);
                int hour = hours ? way.slot() : 0;
                all.add((hour * TinyDay.PLACES + way.from()) * TinyDay.PLACES + way.to());
            }
        }
        all.sort(null);
        return all;
    }

    private static void people(DayTable table, Ordered least, String name) {
        assertThat(DayOrder.flightBoundWithPeopleS(table, least, () -> false))
                .as(name)
                .isLessThanOrEqualTo((double) least.flownS());
    }

    private static double hours(DayTable table, Ordered least, String name) {
        OptionalDouble boundS = DayOrder.flightBoundWithHoursS(table, least, () -> false);
        assertThat(boundS).as(name).isPresent();
        assertThat(boundS.getAsDouble()).as(name).isLessThanOrEqualTo((double) least.flownS());
        return boundS.getAsDouble() / least.flownS();
    }

    private static final class Tally {
        private int days;
        private double sumRatio;

        void add(double ratio) {
            days++;
            sumRatio += ratio;
        }

        double meanRatio() {
            return sumRatio / days;
        }
    }
}
