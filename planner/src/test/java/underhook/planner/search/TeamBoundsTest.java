package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Bounds that rest on the work of teams: invented days of two laydowns and some sites, expected by hand. */
class TeamBoundsTest {
    private static final int FIRST = 0;
    private static final int OTHER = 1;
    private static final int SITE = 2;

    @Test
    void a_pole_set_down_at_a_laydown_asks_for_no_team() {
        DayTable table = day(1, 1, List.of(pole(OTHER, 600, 0), pole(SITE, 600, 0)));

        Ordered plain = DayOrder.plain(table);

        assertThat(plain.isFlown(0) && plain.isFlown(1)).isTrue();
        assertThat(DayOrder.flightBoundS(table, plain))
                .isLessThanOrEqualTo((double) plain.flownS());
        assertThat(finishBoundS(table, plain)).isLessThanOrEqualTo(plain.finishS());
    }

    @Test
    void a_pole_does_not_make_ready_its_own_place() {
        DayTable table = day(1, 1, List.of(pole(SITE, 600, 7200)));

        Ordered plain = DayOrder.plain(table);

        assertThat(plain.isFlown(0)).isTrue();
        assertThat(plain.finishS()).isLessThan(7200);
        assertThat(finishBoundS(table, plain)).isLessThanOrEqualTo(plain.finishS());
    }

    @Test
    void forty_teams_guy_forty_poles_at_once() {
        List<TripRow> poles = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            poles.add(pole(SITE + i, 36_000, 0));
        }
        boolean[] placed = new boolean[40];
        Arrays.fill(placed, true);

        assertThat(new TeamWork(day(40, 40, poles), placed).lastReleaseS()).isZero();
    }

    @Test
    void a_place_with_two_poles_is_made_ready_once() {
        // Landed after 120 s, an hour to make ready: 3720 s; after ten minutes of guying the other
        // pole, 4320 s.
        List<TripRow> trips = List.of(bag(SITE, 3600), pole(SITE, 600, 0), pole(SITE, 600, 0));

        assertThat(soonestS(flownDay(trips, 4400), OTHER, 120)).containsExactly(120L, 3720L, 3720L);
        assertThat(soonestS(flownDay(trips, 4300), OTHER, 120)).isEmpty();
    }

    @Test
    void of_two_places_the_one_that_comes_first_is_not_the_other_as_well() {
        // Landed after 120 s, ready after 20 minutes: 1320 s; ten minutes of guying, half an hour's
        // walk and 20 minutes: 4920 s. Where the wind closes before, that order is none.
        List<TripRow> trips =
                List.of(
                        bag(SITE, 1200),
                        pole(SITE, 600, 0),
                        bag(SITE + 1, 1200),
                        pole(SITE + 1, 600, 0));

        // The second place is half an hour from the landing as well.
        assertThat(soonestS(flownDay(trips, 36_000), OTHER, 120))
                .containsExactly(120L, 1320L, 1920L, 3120L);
        assertThat(soonestS(flownDay(trips, 5000), OTHER, 120))
                .containsExactly(120L, 1320L, 1920L, 4920L);
        assertThat(soonestS(flownDay(trips, 4900), OTHER, 120)).isEmpty();
    }

    private static List<Long> soonestS(DayTable table, int landing, long landedS) {
        List<List<List<Integer>>> all = new ArrayList<>();
        for (int k = 0; k < table.trips(); k++) {
            all.add(List.of(List.of(k)));
        }
        return new TeamChain(table, new HookChoices(all))
                .from(0, landing, landedS)
                .map(from -> IntStream.range(0, table.trips()).mapToObj(from::releaseS).toList())
                .orElse(List.of());
    }

    /** One team that begins where no path leads away; the second site is half an hour from everywhere else. */
    private static DayTable flownDay(List<TripRow> trips, long endS) {
        List<List<Long>> walks = new ArrayList<>();
        for (int from = 0; from < SITE + 2; from++) {
            List<Long> row = new ArrayList<>();
            for (int to = 0; to < SITE + 2; to++) {
                boolean cut = from != to && (from == FIRST || to == FIRST);
                boolean far = from != to && (from == SITE + 1 || to == SITE + 1);
                row.add(cut ? DayTable.NO_WALK_S : far ? 1800L : 0L);
            }
            walks.add(row);
        }
        return day(1, 2, trips, endS, walks);
    }

    private static long finishBoundS(DayTable table, Ordered day) {
        return DayOrder.finishBoundS(table, day, DayOrder.flightBoundS(table, day));
    }

    private static TripRow pole(int to, long busyS, long readyS) {
        return new TripRow(
                FIRST,
                to,
                60,
                60,
                0,
                1,
                true,
                false,
                busyS,
                readyS,
                List.of(),
                false,
                List.of(true));
    }

    private static TripRow bag(int to, long readyS) {
        return new TripRow(
                FIRST, to, 60, 60, 0, 1, false, false, 0, readyS, List.of(), false, List.of(true));
    }

    private static DayTable day(int teams, int sites, List<TripRow> trips) {
        return day(teams, sites, trips, 36_000);
    }

    private static DayTable day(int teams, int sites, List<TripRow> trips, long endS) {
        int places = SITE + sites;
        return day(
                teams,
                sites,
                trips,
                endS,
                Collections.nCopies(places, Collections.nCopies(places, 0L)));
    }

    private static DayTable day(
            int teams, int sites, List<TripRow> trips, long endS, List<List<Long>> walks) {
        long never = DayTable.NEVER_S;
        List<SpotRow> spots = new ArrayList<>();
        List<Integer> serves = new ArrayList<>();
        for (int place = 0; place < SITE + sites; place++) {
            boolean site = place >= SITE;
            long fromS = site ? never : 0;
            spots.add(
                    new SpotRow(
                            site,
                            !site,
                            !site,
                            fromS,
                            false,
                            fromS,
                            fromS,
                            site ? 0 : place,
                            site ? 0 : place));
            if (site) {
                serves.add(place);
            }
        }
        List<Integer> landing = Collections.nCopies(spots.size(), DayTable.NONE);
        return new DayTable(
                spots,
                trips,
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(0, 0, endS, 36_000, 36_000, 1800, 60, 60, 0, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(3500, 1200, 1000)),
                        new DayTable.People(
                                Collections.nCopies(
                                        teams,
                                        new TeamRow(
                                                FIRST, 0, true, true, true, serves, landing, 9000)),
                                walks),
                        new DayTable.Hours(0, List.of(40_000L), List.of(0)),
                        new Ways()));
    }

    /** Every way takes a minute. */
    private static final class Ways implements WaysAllDay {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 60;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return from == to ? 0 : 60;
        }
    }
}
