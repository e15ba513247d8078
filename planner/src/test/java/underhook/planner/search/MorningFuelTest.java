package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * With no fuel on the day the machine is filled in the evening: to the tank where its people walk, to what the cabin
 * allows where they are flown. Expected of the rules, no source outside.
 */
class MorningFuelTest {
    private static final int CABIN_KG = 200;
    private static final int TANK_KG = 340;

    @ParameterizedTest
    @CsvSource({"on foot,600,-1,340", "near enough,600,2,340", "far,2401,2,200", "no way,-1,2,200"})
    void only_people_who_are_flown_keep_fuel_out_of_the_tank(
            String how, long walkS, int landing, int expectedKg) {
        DayTable table = table(walkS < 0 ? DayTable.NO_WALK_S : walkS, landing);
        Decoder decoder = new Decoder(table);
        DayLog log = new DayLog();
        Wish wish = new Greedy(table, decoder).plain();
        wish.refuelToKg[0] = TANK_KG;

        decoder.decode(wish, log);

        assertThat(log.events.get(0).fuelStartKg()).as(how).isEqualTo(expectedKg);
    }

    private static DayTable table(long walkS, int landing) {
        SpotRow laydown = new SpotRow(false, true, true, -600, false, -600, -600, 0, 0);
        long never = DayTable.NEVER_S;
        SpotRow site = new SpotRow(true, false, false, never, false, never, never, 0, 0);
        int none = DayTable.NONE;
        TeamRow team =
                new TeamRow(
                        1,
                        0,
                        true,
                        true,
                        true,
                        List.of(1, 2),
                        List.of(none, none, landing),
                        CABIN_KG);
        DayRules rules = new DayRules(0, 0, 20_000, 90_000, 90_000, 1800, 120, 300, 20, 180);
        FuelRules fuel = new FuelRules(TANK_KG, 0.01, 0.01, 0, 0, 0, 0, 60, 10);
        long no = DayTable.NO_WALK_S;
        return new DayTable(
                List.of(laydown, site, site),
                List.of(trip(1), trip(2)),
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, new Rates(3500, 1200, 1000, 0)),
                        new DayTable.People(
                                List.of(team),
                                List.of(
                                        List.of(0L, no, no),
                                        List.of(no, 0L, walkS),
                                        List.of(no, walkS, 0L))),
                        new DayTable.Hours(0, List.of(30_000L), List.of(0)),
                        new EvenWays(100, 100)));
    }

    private static TripRow trip(int to) {
        return new TripRow(
                0, to, 75, 55, 45, 1, false, false, 0, 0, List.of(), false, List.of(true));
    }
}
