package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A lift that its crew awaits about the turn of an hour is flown, however the hour changes its way in. Expected of
 * the rules, no source outside.
 */
class HourEdgeTest {
    private static final long HOUR_S = 3600;

    /** What the way takes within one hour. */
    private static final int WAY_S = 130;

    @ParameterizedTest
    @ValueSource(ints = {90, 129, 130, 131, 200})
    void a_way_that_the_next_hour_makes_shorter_or_longer_is_waited_for(int intoNextS) {
        for (long fromS = HOUR_S - 600; fromS <= HOUR_S + 600; fromS += 7) {
            assertThat(releasedS(fromS, intoNextS, 1))
                    .as("crew there from %d s", fromS)
                    .isBetween(fromS + 60, fromS + 60 + 400);
        }
    }

    @Test
    void two_that_are_let_go_one_after_the_other_are_so_in_one_hour() {
        for (long fromS = HOUR_S - 600; fromS <= HOUR_S + 600; fromS += 7) {
            long lastS = releasedS(fromS, WAY_S, 2);
            assertThat(lastS).as("crew there from %d s", fromS).isGreaterThanOrEqualTo(fromS + 105);
            assertThat((lastS - 45) / HOUR_S).isEqualTo(lastS / HOUR_S);
        }
    }

    /** When the last of one hook is let go; negative when it is not flown. */
    private static long releasedS(long crewFromS, int intoNextS, int releases) {
        DayTable table = table(crewFromS, intoNextS, releases);
        Decoder decoder = new Decoder(table);
        decoder.decode(new Greedy(table, decoder).plain(), null);
        return decoder.run().releasedS[0];
    }

    private static DayTable table(long crewFromS, int intoNextS, int releases) {
        long never = DayTable.NEVER_S;
        SpotRow laydown = new SpotRow(false, true, true, -600, false, -600, -600, 0, 0);
        SpotRow site = new SpotRow(true, false, false, never, false, never, never, 0, 0);
        TripRow trip =
                new TripRow(
                        0,
                        1,
                        75,
                        55,
                        45,
                        releases,
                        false,
                        false,
                        0,
                        0,
                        List.of(),
                        false,
                        List.of(true));
        int none = DayTable.NONE;
        TeamRow team =
                new TeamRow(1, crewFromS, true, true, true, List.of(1), List.of(none, none), 9000);
        DayRules rules = new DayRules(0, 0, 20_000, 90_000, 90_000, 1800, 120, 300, 20, 180);
        FuelRules fuel = new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10);
        return new DayTable(
                List.of(laydown, site),
                List.of(trip),
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, new Rates(3500, 1200, 1000, 0)),
                        new DayTable.People(
                                List.of(team),
                                List.of(
                                        List.of(0L, DayTable.NO_WALK_S),
                                        List.of(DayTable.NO_WALK_S, 0L))),
                        new DayTable.Hours(0, List.of(HOUR_S, 30_000L), List.of(0)),
                        new EvenWays(WAY_S, intoNextS)));
    }
}
