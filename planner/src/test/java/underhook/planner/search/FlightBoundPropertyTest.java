package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The expected values are brute force, written from the rules of the invented days. */
class FlightBoundPropertyTest {
    private static final int DAYS = 150;

    @Test
    void no_day_of_any_order_flies_less_while_the_wind_changes() {
        int whole = 0;
        double tightest = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.ofStaffedSites(seed, 3 + seed % 3);
            long leastS = new EveryStart(day).leastFlownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                tightest = Math.max(tightest, boundS / leastS);
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
        assertThat(tightest).as("the bound is reached somewhere").isGreaterThan(0.999);
    }

    @Test
    void no_day_flies_less_where_the_wind_changes_within_a_lift() {
        int whole = 0;
        double tightest = 0;
        for (int seed = 0; seed < 2 * DAYS; seed++) {
            TinyDay staffed = TinyDay.ofStaffedSites(seed, 1 + seed % 3 / 2);
            TinyDay day =
                    (seed % 2 == 0 ? staffed : staffed.withFetched(seed)).withShortSpells(seed);
            long leastS = new EveryStart(day).leastFlownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                tightest = Math.max(tightest, boundS / leastS);
            }
        }
        assertThat(whole).isGreaterThan(DAYS);
        assertThat(tightest).as("the bound comes near somewhere").isGreaterThan(0.95);
    }

    /** Crews on foot, crews that are flown, tools that go on between them. */
    @Test
    void no_order_that_is_built_flies_less_or_ends_sooner_where_the_wind_changes_within_a_lift() {
        int whole = 0;
        for (int seed = 0; seed < 3 * DAYS; seed++) {
            TinyDay plain =
                    seed % 3 == 0
                            ? TinyDay.ofFlownTeams(seed, 1 + seed % 2)
                            : TinyDay.of(seed, 1 + seed % 4 / 2);
            TinyDay day = (seed % 3 == 1 ? plain.withMoved(seed) : plain).withShortSpells(seed);
            DayTable table = day.table();
            Built least = leastBuilt(day);
            if (least.flownS() < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) least.flownS());
                assertThat(DayOrder.finishBoundS(table, alone(table), boundS))
                        .as("day %d", seed)
                        .isLessThanOrEqualTo(least.finishS());
            }
        }
        assertThat(whole).isGreaterThan(DAYS);
    }

    @Test
    void no_order_that_is_built_flies_less_with_crews_on_foot() {
        int whole = 0;
        double sumRatio = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.ofChangingWind(seed, 3 + seed % 3);
            long leastS = leastBuilt(day).flownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                sumRatio += boundS / leastS;
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
        assertThat(sumRatio / whole).as("mean of bound over best").isGreaterThan(0.9);
    }

    @Test
    void no_day_flies_less_on_which_loads_are_fetched_from_sites_and_moved_between_them() {
        int whole = 0;
        double tightest = 0;
        for (int seed = 0; seed < 2 * DAYS; seed++) {
            TinyDay day = TinyDay.ofStaffedSites(seed, 2 + seed % 2).withFetched(seed);
            long leastS = new EveryStart(day).leastFlownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                tightest = Math.max(tightest, boundS / leastS);
            }
        }
        assertThat(whole).isGreaterThan(DAYS);
        assertThat(tightest).as("the bound is reached somewhere").isGreaterThan(0.999);
    }

    @Test
    void no_order_flies_less_on_which_crews_on_foot_hook_what_is_fetched() {
        int whole = 0;
        double sumRatio = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.of(seed, 2 + seed % 2).withFetched(seed);
            long leastS = new EveryOrder(day).run().leastFlownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                assertThat(boundS(TinyDay.ofChangingWind(seed, 2 + seed % 2).withFetched(seed)))
                        .as("changing wind, day %d", seed)
                        .isLessThanOrEqualTo(
                                (double)
                                        leastBuilt(
                                                        TinyDay.ofChangingWind(seed, 2 + seed % 2)
                                                                .withFetched(seed))
                                                .flownS());
                sumRatio += boundS / leastS;
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
        assertThat(sumRatio / whole).as("mean of bound over best").isGreaterThan(0.95);
    }

    @Test
    void no_order_that_is_built_flies_less_with_crews_that_are_flown() {
        int whole = 0;
        double sumRatio = 0;
        for (int seed = 0; seed < 2 * DAYS; seed++) {
            TinyDay day = TinyDay.ofFlownTeams(seed, 3 + seed % 2);
            TinyDay other = seed % 3 == 0 ? day.withFetched(seed) : day;
            long leastS = leastBuilt(other).flownS();
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(other);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                sumRatio += boundS / leastS;
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
        assertThat(sumRatio / whole).as("mean of bound over best").isGreaterThan(0.8);
    }

    /** What goes on from a site to another needs a team at either end, flown in or on foot. */
    @Test
    void no_order_that_is_built_flies_less_or_ends_sooner_where_tools_go_on_between_crews() {
        int whole = 0;
        double sumRatio = 0;
        for (int seed = 0; seed < 4 * DAYS; seed++) {
            int count = 2 + seed % 2;
            TinyDay day =
                    (seed % 4 == 0
                                    ? TinyDay.ofChangingWind(seed, count)
                                    : TinyDay.ofFlownTeams(seed, count))
                            .withMoved(seed);
            DayTable table = day.table();
            Built least = leastBuilt(day);
            if (least.flownS() < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(day);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) least.flownS());
                assertThat(DayOrder.finishBoundS(table, alone(table), boundS))
                        .as("day %d", seed)
                        .isLessThanOrEqualTo(least.finishS());
                sumRatio += boundS / least.flownS();
            }
        }
        assertThat(whole).isGreaterThan(DAYS);
        assertThat(sumRatio / whole).as("mean of bound over best").isGreaterThan(0.7);
    }

    @Test
    void no_combination_flies_less_than_the_bound_over_all_of_them() {
        int whole = 0;
        int apart = 0;
        double tightest = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay.Halves halves = halves(TinyDay.ofStaffedSites(seed, 3), seed);
            long togetherS = new EveryStart(halves.together()).leastFlownS();
            long apartS = new EveryStart(halves.apart()).leastFlownS();
            long leastS = Math.min(togetherS, apartS);
            if (leastS < Long.MAX_VALUE) {
                whole++;
                apart += apartS < togetherS ? 1 : 0;
                double boundS = boundS(halves);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                tightest = Math.max(tightest, boundS / leastS);
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
        assertThat(apart).as("days on which two hooks fly less").isBetween(DAYS / 10, whole - 1);
        assertThat(tightest).as("the bound is reached somewhere").isGreaterThan(0.999);
    }

    @Test
    void no_combination_that_is_built_beats_a_bound_with_crews_on_foot() {
        int whole = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay.Halves halves = halves(TinyDay.ofChangingWind(seed, 3), seed);
            Built together = leastBuilt(halves.together());
            Built apart = leastBuilt(halves.apart());
            long leastS = Math.min(together.flownS(), apart.flownS());
            if (leastS < Long.MAX_VALUE) {
                whole++;
                double boundS = boundS(halves);
                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) leastS);
                assertThat(DayOrder.finishBoundS(halves.either().table(), halves.hooks(), boundS))
                        .as("day %d", seed)
                        .isLessThanOrEqualTo(Math.min(together.finishS(), apart.finishS()));
            }
        }
        assertThat(whole).isGreaterThan(DAYS / 2);
    }

    @Test
    void what_is_left_out_holds_nothing_back() {
        int poles = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            TinyDay day = TinyDay.ofChangingWind(seed, 4);
            DayTable table = day.withOneTooLate(firstBag(day)).table();
            Ordered plain = DayOrder.plain(table);
            poles += flownPoles(day, plain);
            double boundS = DayOrder.flightBoundS(table, plain);

            assertThat(plain.isFlown(day.lifts().size())).isFalse();
            assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo((double) plain.flownS());
            assertThat(DayOrder.finishBoundS(table, plain, boundS))
                    .as("day %d", seed)
                    .isLessThanOrEqualTo(plain.finishS());
        }
        assertThat(poles).as("poles where a bag is left out").isGreaterThan(DAYS / 4);
    }

    private static int flownPoles(TinyDay day, Ordered flown) {
        int poles = 0;
        for (int k = 0; k < day.lifts().size(); k++) {
            TinyDay.Lift lift = day.lifts().get(k);
            boolean there = lift.to() == day.lifts().get(firstBag(day)).to();
            poles += lift.pole() && there && flown.isFlown(k) ? 1 : 0;
        }
        return poles;
    }

    private static int firstBag(TinyDay day) {
        int bag = 0;
        while (day.lifts().get(bag).pole() || day.lifts().get(bag).backhaul()) {
            bag = (bag + 1) % day.lifts().size();
        }
        return bag;
    }

    /** Hooking up two at once takes so long that it is sometimes worth it. */
    private static TinyDay.Halves halves(TinyDay day, int seed) {
        return day.halved(firstBag(day), 60 + seed * 7 % 400);
    }

    private static double boundS(TinyDay.Halves halves) {
        return new FlightBound(halves.either().table(), halves.hooks()).boundS(1e5);
    }

    private static double boundS(TinyDay day) {
        DayTable table = day.table();
        return new FlightBound(table, alone(table)).boundS(1e5);
    }

    private static HookChoices alone(DayTable table) {
        List<List<List<Integer>>> all = new ArrayList<>();
        for (int k = 0; k < table.trips(); k++) {
            all.add(List.of(List.of(k)));
        }
        return new HookChoices(all);
    }

    /** The least flying and the earliest finish of all that were built. */
    private record Built(long flownS, long finishS) {}

    /** Every order of the trips, each with every team that may work at each place. */
    private static Built leastBuilt(TinyDay day) {
        Decoder decoder = new Decoder(day.table());
        long[] leastS = {Long.MAX_VALUE, Long.MAX_VALUE};
        new EveryWish(day)
                .each(
                        wish -> {
                            decoder.decode(wish, null);
                            if (decoder.run().countDropped() == 0) {
                                leastS[0] = Math.min(leastS[0], decoder.run().flightS);
                                leastS[1] = Math.min(leastS[1], decoder.run().timeS);
                            }
                        });
        return new Built(leastS[0], leastS[1]);
    }
}
