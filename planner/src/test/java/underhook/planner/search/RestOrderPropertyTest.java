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
        for (TeamStay stay : day.stays()) {
            teams.set(stay.place(), stay.team());
        }
        for (int team = 0; team < day.teams().size(); team++) {
            teams.set(day.teams().get(team).place(), team);
        }
        return new RestOrder.Kept(
                tokens, teams, Collections.nCopies(table.trips(), DayTable.NONE), List.of(9000));
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

            Ordered again = RestOrder.ofDay(table, kept(table, plain)).first();

            for (int k = 0; k < table.trips(); k++) {
                if (plain.isFlown(k)) {
                    assertThat(again.isFlown(k)).as("seed " + seed + " trip " + k).isTrue();
                }
            }
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
                assertThat(rest.finishBoundS(day)).isLessThanOrEqualTo(day.finishS());
            }
        }
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
}
