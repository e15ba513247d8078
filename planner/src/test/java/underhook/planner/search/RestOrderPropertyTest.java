package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.plan.StepKind;

/** Laws of ordering the rest of a day; invented tiny days, DERIVED. */
class RestOrderPropertyTest {
    private static final int DAYS = 40;
    private static final int TRIPS = 7;

    private static List<DayEvent> rotations(Ordered day) {
        return day.events().stream().filter(event -> event.lift().isPresent()).toList();
    }

    private static RestOrder.Kept kept(DayTable table, Ordered day) {
        List<Integer> tokens = new ArrayList<>();
        rotations(day).forEach(event -> tokens.add(event.lift().orElseThrow().trip()));
        List<Integer> teams = new ArrayList<>(Collections.nCopies(TinyDay.PLACES, DayTable.NONE));
        for (DayEvent event : rotations(day)) {
            int trip = event.lift().orElseThrow().trip();
            int place = table.teamPlace[trip];
            for (int team = 0; team < TinyDay.TEAMS && place >= 0; team++) {
                if (table.mayWork(team, trip) && isThere(table, day, team, event)) {
                    teams.set(place, team);
                }
            }
        }
        return new RestOrder.Kept(
                tokens, teams, Collections.nCopies(table.trips(), DayTable.NONE), List.of(9000));
    }

    /** Whether two teams stood where one of them worked: the day itself does not say which did. */
    private static boolean isAmbiguous(DayTable table, Ordered day) {
        for (DayEvent event : rotations(day)) {
            int trip = event.lift().orElseThrow().trip();
            int there = 0;
            for (int team = 0; team < TinyDay.TEAMS && table.teamPlace[trip] >= 0; team++) {
                boolean may = table.mayWork(team, trip);
                there += may && isThere(table, day, team, event) ? 1 : 0;
            }
            if (there > 1) {
                return true;
            }
        }
        return false;
    }

    /** Whether a team is where a lift needs one when it does: at its hook-up, or when it is let go. */
    private static boolean isThere(DayTable table, Ordered day, int team, DayEvent event) {
        LiftDone lift = event.lift().orElseThrow();
        int place = table.teamPlace[lift.trip()];
        long atS =
                table.needsTeamAtDrop(lift.trip())
                        ? day.releasedS().get(lift.trip())
                        : lift.hookedS();
        Ordered.TeamEnd end = day.teams().get(team);
        return (end.place() == place && end.arrivedS() <= atS)
                || day.stays().stream()
                        .anyMatch(
                                stay ->
                                        stay.team() == team
                                                && stay.place() == place
                                                && stay.doing() == TeamStay.Doing.WORKS
                                                && stay.fromS() <= atS
                                                && stay.untilS() >= atS);
    }

    /** How a day stands when so many lifts are done: the teams have not left where they worked last. */
    private static Midday after(DayTable table, Ordered day, int lifts) {
        DayEvent last = rotations(day).get(lifts - 1);
        List<Long> released = new ArrayList<>();
        for (int k = 0; k < table.trips(); k++) {
            long at = day.releasedS().get(k);
            released.add(at >= 0 && at <= last.endS() ? at : -1);
        }
        List<Midday.Team> teams = new ArrayList<>();
        for (int team = 0; team < TinyDay.TEAMS; team++) {
            int place = table.teams[team].start();
            long arrivedS = 0;
            for (TeamStay stay : day.stays()) {
                if (stay.team() == team && stay.fromS() < last.endS()) {
                    place = stay.place();
                    arrivedS = stay.doing() == TeamStay.Doing.WORKS ? stay.fromS() : stay.untilS();
                }
            }
            teams.add(new Midday.Team(place, arrivedS, Math.max(arrivedS, last.endS() + 600)));
        }
        return new Midday(
                last.endS(),
                last.to(),
                last.fuelEndKg(),
                last.line(),
                false,
                0,
                last.endS(),
                last.endS(),
                released,
                List.of(),
                teams,
                Collections.nCopies(TinyDay.PLACES, 0L));
    }

    @Test
    void the_known_order_of_a_whole_day_flies_what_it_flew() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            if (isAmbiguous(table, plain)) {
                continue;
            }

            Ordered again = RestOrder.ofDay(table, kept(table, plain)).first();

            for (int k = 0; k < table.trips(); k++) {
                if (plain.isFlown(k)) {
                    assertThat(again.isFlown(k)).as("seed " + seed + " trip " + k).isTrue();
                }
            }
        }
    }

    /** The plain order has the first team that may at each place, and so has one whose teams are not known. */
    @Test
    void a_place_whose_team_is_not_known_loses_no_trip() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            RestOrder.Kept known = kept(table, plain);
            RestOrder.Kept nobody =
                    new RestOrder.Kept(
                            known.tokens(),
                            Collections.nCopies(TinyDay.PLACES, DayTable.NONE),
                            known.lines(),
                            known.refuelToKg());

            Ordered again = RestOrder.ofDay(table, nobody).first();

            assertThat(again.releasedS()).as("seed " + seed).isEqualTo(plain.releasedS());
        }
    }

    @Test
    void what_is_done_stays_and_nothing_new_begins_before_now() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            int lifts = rotations(plain).size() / 2;
            if (lifts == 0) {
                continue;
            }
            Midday now = after(table, plain, lifts);
            RestOrder rest = RestOrder.of(table, now, kept(table, plain));

            for (Ordered day : List.of(rest.first(), rest.better(seed, 300, () -> false))) {
                for (int k = 0; k < table.trips(); k++) {
                    long done = now.releasedS().get(k);
                    if (done >= 0) {
                        assertThat(day.releasedS().get(k)).isEqualTo(done);
                    } else if (day.isFlown(k)) {
                        assertThat(day.releasedS().get(k)).isGreaterThan(now.timeS());
                    }
                }
                assertThat(day.events()).allMatch(event -> event.startS() >= now.timeS());
                assertThat(rest.finishBoundS(table, rest.asFlown(day)))
                        .isLessThanOrEqualTo(day.finishS());
            }
        }
    }

    /** A break and fuel that stand behind the last lift of the known order. */
    @Test
    void what_stands_behind_the_last_lift_is_done_for_none() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            RestOrder.Kept known = kept(table, plain);
            DayEvent last = plain.events().get(plain.events().size() - 1);
            List<RestOrder.Kept.Step> steps =
                    plain.events().stream().map(RestOrderPropertyTest::step).toList();
            List<RestOrder.Kept.Step> more = new ArrayList<>(steps);
            for (StepKind stop : List.of(StepKind.BREAK, StepKind.REFUEL)) {
                more.add(
                        new RestOrder.Kept.Step(
                                stop, DayTable.NONE, last.to(), last.line(), 9000, 0));
            }

            assertThat(first(table, known, more))
                    .as("seed " + seed)
                    .isEqualTo(first(table, known, steps));
        }
    }

    private static Ordered first(
            DayTable table, RestOrder.Kept known, List<RestOrder.Kept.Step> steps) {
        return RestOrder.ofDay(
                        table,
                        new RestOrder.Kept(
                                known.tokens(),
                                known.teamOf(),
                                known.lines(),
                                known.refuelToKg(),
                                known.walksTo(),
                                steps,
                                DayTable.NEVER_S))
                .first();
    }

    private static RestOrder.Kept.Step step(DayEvent event) {
        return new RestOrder.Kept.Step(
                event.kind(),
                event.lift().map(LiftDone::trip).orElse(event.team()),
                event.to(),
                event.line(),
                event.fuelEndKg(),
                event.endS() - event.startS());
    }

    @Test
    void a_search_is_never_dearer_than_the_known_order_and_the_same_twice() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            RestOrder rest = RestOrder.ofDay(table, kept(table, plain));

            Ordered better = rest.better(5, 300, () -> false);

            assertThat(better.cents()).isLessThanOrEqualTo(rest.first().cents());
            assertThat(rest.better(5, 300, () -> false)).isEqualTo(better);
        }
    }

    @Test
    void a_closed_trip_is_not_flown_and_a_moved_one_follows_the_other() {
        DayTable table = TinyDay.of(3, TRIPS).table();
        Ordered plain = DayOrder.plain(table);
        DayEvent first = rotations(plain).get(0);
        Midday now = after(table, plain, 1);
        int trip = rotations(plain).get(1).lift().orElseThrow().trip();
        Midday closed =
                new Midday(
                        now.timeS(),
                        now.place(),
                        now.fuelKg(),
                        now.line(),
                        now.engineOff(),
                        now.offS(),
                        now.onSinceBreakS(),
                        now.onTotalS(),
                        now.releasedS(),
                        List.of(trip),
                        now.teams(),
                        now.refuelBusyS());

        Ordered day = RestOrder.of(table, closed, kept(table, plain)).first();

        assertThat(day.isFlown(trip)).isFalse();
        assertThat(day.releasedS().get(first.lift().orElseThrow().trip()))
                .isEqualTo(plain.releasedS().get(first.lift().orElseThrow().trip()));
        assertThat(first.kind()).isEqualTo(StepKind.ROTATION);
    }

    /** Two ways of one group: the loads of the first trip, or those of the second. */
    @Test
    void a_bound_over_ways_of_hanging_together_is_above_that_of_none() {
        for (long seed = 0; seed < DAYS; seed++) {
            DayTable table = TinyDay.of(seed, TRIPS).table();
            Ordered plain = DayOrder.plain(table);
            RestOrder rest = RestOrder.ofDay(table, kept(table, plain));

            long bothS =
                    rest.finishBoundS(
                            table, new HookChoices(List.of(List.of(List.of(0), List.of(1)))));

            for (int trip : List.of(0, 1)) {
                long oneS =
                        rest.finishBoundS(table, new HookChoices(List.of(List.of(List.of(trip)))));
                assertThat(bothS).as("seed " + seed).isLessThanOrEqualTo(oneS);
            }
        }
    }
}
