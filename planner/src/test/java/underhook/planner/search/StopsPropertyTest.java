package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The expected least time on the ground is found by trying every stop at every tenth minute, from the rules alone: a
 * break after so long with the engine on, the reserve never touched, fuelling in a break or for itself.
 */
class StopsPropertyTest {
    private static final int STEP_S = 600;
    private static final double STEP_KG = 30;
    private static final long NEVER = Long.MAX_VALUE / 4;

    /** Limits in steps of flying, times of stops in seconds. */
    private record Limits(
            int engineOn, int tank, int reserve, long breakS, long refuelS, long stepS) {
        long fuellingS(int filled) {
            return refuelS + filled * stepS;
        }
    }

    @Test
    void no_way_of_stopping_stands_less_than_is_counted() {
        SplittableRandom random = new SplittableRandom(1);
        int met = 0;
        for (int i = 0; i < 300; i++) {
            Limits limits =
                    new Limits(
                            3 + random.nextInt(16),
                            6 + random.nextInt(10),
                            random.nextInt(4),
                            60L * (5 + random.nextInt(40)),
                            60L * random.nextInt(6),
                            10L + random.nextInt(120));
            int steps = 1 + random.nextInt(60);
            long leastS = leastS(limits, steps);
            long countedS = HourRoom.stopsS(table(limits), (long) steps * STEP_S);
            assertThat(countedS).as("%s, %d steps", limits, steps).isLessThanOrEqualTo(leastS);
            met += countedS > 0 && countedS >= leastS - 1 ? 1 : 0;
        }
        assertThat(met).as("times it is as much as that").isGreaterThan(30);
    }

    /** For each time since the last break and each fuel the least stood so far, step by step. */
    private static long leastS(Limits limits, int steps) {
        long[][] now = new long[limits.engineOn() + 1][limits.tank() + 1];
        for (long[] row : now) {
            Arrays.fill(row, NEVER);
        }
        now[0][limits.tank()] = 0;
        for (int step = 0; step < steps; step++) {
            now = flown(limits, stopped(limits, now));
        }
        return Arrays.stream(now).flatMapToLong(Arrays::stream).min().orElseThrow();
    }

    private static long[][] stopped(Limits limits, long[][] from) {
        long[][] to = Arrays.stream(from).map(long[]::clone).toArray(long[][]::new);
        for (int since = 0; since < from.length; since++) {
            for (int fuel = 0; fuel <= limits.tank(); fuel++) {
                for (int filled = fuel; filled <= limits.tank(); filled++) {
                    long fuelS = filled > fuel ? limits.fuellingS(filled - fuel) : 0;
                    long restS = Math.max(limits.breakS(), fuelS);
                    long here = from[since][fuel];
                    to[since][filled] = Math.min(to[since][filled], here + fuelS);
                    to[0][filled] = Math.min(to[0][filled], here + restS);
                }
            }
        }
        return to;
    }

    private static long[][] flown(Limits limits, long[][] from) {
        long[][] to = new long[from.length][limits.tank() + 1];
        for (long[] row : to) {
            Arrays.fill(row, NEVER);
        }
        for (int since = 0; since + 1 < from.length; since++) {
            for (int fuel = limits.reserve() + 1; fuel <= limits.tank(); fuel++) {
                to[since + 1][fuel - 1] = from[since][fuel];
            }
        }
        return to;
    }

    private static DayTable table(Limits limits) {
        DayRules rules =
                new DayRules(
                        0,
                        0,
                        100_000,
                        (long) limits.engineOn() * STEP_S,
                        100_000,
                        limits.breakS(),
                        60,
                        60,
                        0,
                        0);
        FuelRules fuel =
                new FuelRules(
                        limits.tank() * STEP_KG,
                        STEP_KG / STEP_S,
                        STEP_KG / STEP_S,
                        0,
                        0,
                        limits.reserve() * STEP_S,
                        0,
                        limits.refuelS(),
                        STEP_KG / limits.stepS());
        return new DayTable(
                List.of(new SpotRow(false, true, true, 0, false, 0, 0, 0, 0)),
                List.of(),
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, new Rates(1, 1, 1)),
                        new DayTable.People(List.of(), List.of(List.of(0L))),
                        new DayTable.Hours(0, List.of(100_000L), List.of(0)),
                        new Nothing()));
    }

    /** Nothing is flown. */
    private static final class Nothing implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return DayTable.NONE;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return DayTable.NONE;
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return 0;
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return 0;
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            return 0;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return false;
        }
    }
}
