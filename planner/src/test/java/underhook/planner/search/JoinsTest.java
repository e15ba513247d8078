package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What may follow what without a landing in between: invented days of two laydowns and two sites, expected by hand.
 * Every way takes a minute but for one; so do hooking up, the loaded way and setting down, three minutes a trip.
 */
class JoinsTest {
    private static final int FIRST = 0;
    private static final int OTHER = 1;
    private static final int NEAR_OTHER = 2;
    private static final int SITE = 3;

    @Test
    void a_crew_that_guys_a_pole_does_not_hook_at_another_site_at_once() {
        DayTable table = day(false, List.of(pole(SITE), fetched(NEAR_OTHER)));

        // Either way round: two trips, to the site to hook up and back from the other, 480 s; not
        // straight from one site to the other, 420 s.
        assertThat(DayOrder.flightBoundS(table, DayOrder.plain(table))).isEqualTo(480);
    }

    @Test
    void with_people_at_both_sites_it_is_flown_straight() {
        DayTable table = day(true, List.of(bag(SITE, List.of()), fetched(NEAR_OTHER)));

        assertThat(DayOrder.flightBoundS(table, DayOrder.plain(table))).isEqualTo(420);
    }

    @Test
    void what_something_waits_for_is_not_the_last() {
        DayTable free = day(true, List.of(bag(NEAR_OTHER, List.of()), bag(SITE, List.of())));
        DayTable bound =
                day(
                        true,
                        List.of(
                                bag(NEAR_OTHER, List.of()),
                                bag(SITE, List.of(new TripRow.After(0, 0)))));

        // From the last site to the nearest laydown: 5 s, or a minute from where the second one
        // goes.
        assertThat(DayOrder.flightBoundS(free, DayOrder.plain(free))).isEqualTo(425);
        assertThat(DayOrder.flightBoundS(bound, DayOrder.plain(bound))).isEqualTo(480);
    }

    @Test
    void nothing_comes_between_what_something_must_lie_between() {
        TripRow first = bag(SITE, List.of());
        TripRow between = bag(NEAR_OTHER, List.of(new TripRow.After(0, 0)));
        TripRow moved = moved(List.of(new TripRow.After(1, 0)));
        DayTable table = day(true, List.of(first, between, moved));
        boolean[] all = {true, true, true};
        Joins joins = new Joins(table, all, all);

        assertThat(joins.leastWayS(0, 2)).isEqualTo(DayTable.NEVER_S);
        assertThat(joins.leastWayS(1, 2)).isZero();
        assertThat(joins.mayBeLast(0) || joins.mayBeLast(1)).isFalse();
        assertThat(joins.mayBeLast(2)).isTrue();
    }

    @Test
    void what_may_hang_on_another_hook_stands_between_nothing() {
        TripRow first = bag(SITE, List.of());
        TripRow between = bag(NEAR_OTHER, List.of(new TripRow.After(0, 0)));
        TripRow moved = moved(List.of(new TripRow.After(1, 0)));
        DayTable table = day(true, List.of(first, between, moved));
        boolean[] all = {true, true, true};
        Joins joins = new Joins(table, all, new boolean[] {true, false, true});

        assertThat(joins.leastWayS(0, 2)).isZero();
        assertThat(joins.mayBeLast(0)).isTrue();
    }

    private static TripRow pole(int to) {
        return row(FIRST, to, true, 600, List.of());
    }

    private static TripRow bag(int to, List<TripRow.After> after) {
        return row(FIRST, to, false, 0, after);
    }

    private static TripRow fetched(int from) {
        return row(from, FIRST, false, 0, List.of());
    }

    private static TripRow moved(List<TripRow.After> after) {
        return row(SITE, NEAR_OTHER, false, 0, after);
    }

    private static TripRow row(
            int from, int to, boolean pole, long busyS, List<TripRow.After> after) {
        boolean backhaul = to < NEAR_OTHER;
        return new TripRow(
                from, to, 60, 60, 0, 1, pole, backhaul, busyS, 0, after, false, List.of(true));
    }

    private static DayTable day(boolean staffed, List<TripRow> trips) {
        List<SpotRow> spots =
                List.of(laydown(FIRST), laydown(OTHER), site(staffed, OTHER), site(staffed, FIRST));
        TeamRow team =
                new TeamRow(
                        SITE,
                        0,
                        true,
                        true,
                        true,
                        List.of(NEAR_OTHER, SITE),
                        Collections.nCopies(4, DayTable.NONE),
                        9000);
        return new DayTable(
                spots,
                trips,
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(FIRST, 0, 36_000, 36_000, 36_000, 1800, 60, 60, 0, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(3500, 1200, 1000)),
                        new DayTable.People(
                                List.of(team), Collections.nCopies(4, Collections.nCopies(4, 0L))),
                        new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                        new Ways()));
    }

    private static SpotRow laydown(int here) {
        return new SpotRow(false, true, true, 0, false, 0, 0, here, here);
    }

    private static SpotRow site(boolean staffed, int home) {
        long fromS = staffed ? 0 : DayTable.NEVER_S;
        return new SpotRow(true, false, false, DayTable.NEVER_S, false, fromS, fromS, home, home);
    }

    private static final class Ways implements WaysAllDay {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 60;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            if (from == to) {
                return 0;
            }
            return from == NEAR_OTHER && to == OTHER ? 5 : 60;
        }
    }
}
