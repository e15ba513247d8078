package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.plan.StepKind;

/**
 * A wish fills up to 100 kg, the trip behind it needs more: it is one refuelling, which is begun once. Figures by
 * hand, invented: the second trip burns 0.1 kg/s for 220 s of flying, 400 s of set-down and 600 s of reserve, 122 kg,
 * and before its hook-up 0.1 kg/s for 95 s and 1 kg for the start, 10.5 kg; with 10 kg to spare it is filled up to
 * 142.5 kg, in whole kilograms 142.
 */
class FillingOnTest {
    private static final int REFUEL_S = 240;

    @Test
    void what_is_filled_in_at_once_is_one_refuelling() {
        DayTable table = table();
        Decoder decoder = new Decoder(table);
        DayLog log = new DayLog();
        Wish wish = new Greedy(table, decoder).plain();
        wish.tokens = new int[] {0, 4, 1};
        Arrays.fill(wish.refuelToKg, 100);

        decoder.decode(wish, log);

        Ordered day = Ordered.of(decoder.run(), log, 0);
        List<DayEvent> refuels =
                day.events().stream().filter(one -> one.kind() == StepKind.REFUEL).toList();
        assertThat(refuels).hasSize(1);
        DayEvent refuel = refuels.get(0);
        assertThat(refuel.fuelEndKg()).isEqualTo(142);
        double flowS = (refuel.fuelEndKg() - refuel.fuelStartKg()) / 0.5;
        // Each part is rounded up to a whole second.
        assertThat((double) (refuel.endS() - refuel.startS()))
                .isBetween(REFUEL_S + flowS, REFUEL_S + flowS + 2);
        for (int i = 1; i < day.events().size(); i++) {
            assertThat(day.events().get(i).startS()).isEqualTo(day.events().get(i - 1).endS());
        }
    }

    private static DayTable table() {
        SpotRow laydown = new SpotRow(false, true, true, -600, false, -600, -600, 0, 0);
        long never = DayTable.NEVER_S;
        SpotRow site = new SpotRow(true, false, false, never, false, never, never, 0, 0);
        int none = DayTable.NONE;
        TeamRow team = new TeamRow(1, 0, true, true, true, List.of(1, 1), List.of(none, none), 340);
        DayRules rules = new DayRules(0, 0, 20_000, 90_000, 90_000, 1800, 120, 300, 20, 0);
        FuelRules fuel = new FuelRules(340, 0.1, 0.1, 1, 0, 600, 0, REFUEL_S, 0.5);
        return new DayTable(
                List.of(laydown, site),
                List.of(trip(45), trip(400)),
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, new Rates(3500, 1200, 1000, 0)),
                        new DayTable.People(
                                List.of(team), List.of(List.of(0L, 0L), List.of(0L, 0L))),
                        new DayTable.Hours(0, List.of(30_000L), List.of(0)),
                        new EvenWays(100, 100)));
    }

    private static TripRow trip(long setDownS) {
        return new TripRow(
                0,
                1,
                75,
                setDownS,
                setDownS,
                1,
                false,
                false,
                0,
                0,
                List.of(),
                false,
                List.of(true));
    }
}
