package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A day built on from a known one is the day built from the morning on; invented days, DERIVED. */
class TrailPropertyTest {
    private static final int DAYS = 24;
    private static final int CHANGES = 1500;

    /** A day with a small tank, a break after so long, and teams that walk or are flown. */
    static DayTable table(int seed, long stretchS) {
        boolean flown = seed % 2 == 0;
        int trips = seed % 4 < 2 ? 24 : 45;
        DayTable tiny = TinyDay.ofChangingWind(seed, trips).withComforts(seed).table();
        List<Integer> landing = new ArrayList<>();
        List<List<Long>> walks = new ArrayList<>();
        for (int place = 0; place < TinyDay.PLACES; place++) {
            landing.add(flown ? place : DayTable.NONE);
            List<Long> row = new ArrayList<>();
            for (int to = 0; to < TinyDay.PLACES; to++) {
                boolean none = flown && place != to && (place + to + seed) % 3 == 0;
                row.add(none ? DayTable.NO_WALK_S : 2 * tiny.walkS[place][to]);
            }
            walks.add(row);
        }
        List<TeamRow> teams = new ArrayList<>();
        for (TeamRow team : tiny.teams) {
            teams.add(new TeamRow(team.start(), 0, true, true, true, team.serves(), landing, 250));
        }
        DayRules rules = new DayRules(0, 0, 16_000, stretchS, 90_000, 1200, 60, 300, 20, 180);
        FuelRules fuel = new FuelRules(340, 0.04, 0.05, 4, 2, 1200, 300, 240, 0.4);
        return new DayTable(
                List.of(tiny.spots),
                List.of(tiny.trips),
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, tiny.rates),
                        new DayTable.People(teams, walks),
                        new DayTable.Hours(
                                0, Arrays.stream(TinyDay.UNTIL_S).boxed().toList(), List.of(0)),
                        new Ways(tiny)));
    }

    /** How a day came out. */
    private record Built(
            long cents,
            List<Long> releasedS,
            long timeS,
            double fuelKg,
            long lateS,
            boolean guessed) {
        static Built of(Decoder decoder, long cents) {
            Run run = decoder.run();
            return new Built(
                    cents,
                    Arrays.stream(run.releasedS).boxed().toList(),
                    run.timeS,
                    run.fuelKg,
                    run.lateS,
                    run.table.hasGuessed());
        }
    }

    @Test
    void a_day_built_on_from_another_is_the_day_built_from_the_morning_on() {
        int flownTrips = 0;
        int refuels = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            DayTable table = table(seed, 5400);
            Decoder decoder = new Decoder(table);
            WishChanger changer = new WishChanger(table);
            SplittableRandom random = new SplittableRandom(seed);
            Wish now = new Greedy(table, decoder).plain();
            for (int i = 0; i < CHANGES; i++) {
                Wish next = now.copy();
                changer.change(next, random);
                if (i % 4 == 0) {
                    int level = random.nextInt(Wish.LEVELS);
                    next.restsAt[level] = !next.restsAt[level];
                    int place = random.nextInt(TinyDay.PLACES);
                    next.walksTo[place] = !next.walksTo[place];
                }
                decoder.run().soft = i % 3 == 0;
                table.startGuessing();
                Built near = Built.of(decoder, decoder.decodeNear(next));
                table.startGuessing();
                Built whole = Built.of(decoder, decoder.decode(next, null));
                table.stopGuessing();

                assertThat(near).as("day %d, change %d", seed, i).isEqualTo(whole);
                refuels += decoder.run().refuels;
                flownTrips += table.trips() - decoder.run().countDropped();
                if (random.nextInt(3) == 0) {
                    decoder.keepKnown();
                    now = next;
                }
                if (random.nextInt(200) == 0) {
                    // Ways become known that were guessed.
                    decoder.decode(next, null);
                }
            }
        }
        assertThat(flownTrips).isGreaterThan(DAYS * CHANGES * 8);
        assertThat(refuels).isGreaterThan(DAYS * CHANGES);
    }

    /** Ways of another day. */
    private record Ways(DayTable day) implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return day.loadedS(trip, line, slotFrom, slotTo);
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return day.emptyS(from, to, line, slot);
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return day.leastLoadedS(trip, slot) / 2;
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return day.leastEmptyS(from, to, slot) / 2;
        }

        @Override
        public SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
            day.loadedS(trip, line, slotFrom, slotTo);
            return day.setDownPrice(trip, line, slotFrom, slotTo);
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            return 180 + 10 * (trip % 7);
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return day.isOpen(trip, slot);
        }
    }
}
