package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Whatever is wished, the engine is never on for longer than the rules plan before a break, counted from the steps alone;
 * invented days with small tanks on which people walk or are flown, DERIVED.
 */
class EngineStretchPropertyTest {
    private static final int DAYS = 24;
    private static final int CHANGES = 400;

    @Test
    void no_day_has_the_engine_on_for_longer_than_is_planned() {
        int flownTrips = 0;
        int full = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            long stretchS = 1500L + random.nextInt(2500);
            DayTable table = TrailPropertyTest.table(seed, stretchS);
            Decoder decoder = new Decoder(table);
            WishChanger changer = new WishChanger(table);
            Wish wish = new Greedy(table, decoder).plain();
            for (int i = 0; i < CHANGES; i++) {
                changer.change(wish, random);
                wish.restsAt[random.nextInt(Wish.LEVELS)] = random.nextBoolean();
                DayLog log = new DayLog();
                decoder.decode(wish, log);

                long longestS = longestS(log, table.rules.breakS());
                assertThat(longestS).as("day %d, %d", seed, i).isLessThanOrEqualTo(stretchS);
                full += longestS > stretchS - 60 ? 1 : 0;
                flownTrips += table.trips() - decoder.run().countDropped();
            }
        }
        assertThat(full).as("days that use all but a minute").isGreaterThan(DAYS * CHANGES / 10);
        assertThat(flownTrips).isGreaterThan(DAYS * CHANGES * 8);
    }

    private static long longestS(DayLog log, long breakS) {
        long longestS = 0;
        long onS = 0;
        long offS = 0;
        for (DayEvent event : log.events) {
            long lastsS = event.endS() - event.startS();
            if (event.engineOn()) {
                onS = (offS >= breakS ? 0 : onS) + lastsS;
                offS = 0;
            } else {
                offS += lastsS;
            }
            longestS = Math.max(longestS, onS);
        }
        return longestS;
    }
}
