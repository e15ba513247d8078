package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The expected least time on the ground is found by trying every stop at every tenth minute, from the rules alone: a
 * break after so long with the engine on, the reserve never touched, fuelling in a break or for itself, fuel for each
 * start, the line fitted once.
 */
class StopsPropertyTest {
    private static final int STEP_S = 600;
    private static final double STEP_KG = 30;
    private static final long NEVER = Long.MAX_VALUE / 4;

    /** Limits in steps of flying, times of stops in seconds. */
    private record Limits(
            int engineOn,
            int tank,
            int reserve,
            int start,
            long breakS,
            long refuelS,
            long stepS,
            long lineS) {
        static Limits of(SplittableRandom random) {
            return new Limits(
                    3 + random.nextInt(16),
                    6 + random.nextInt(10),
                    random.nextInt(4),
                    random.nextInt(2),
                    60L * (5 + random.nextInt(40)),
                    60L * random.nextInt(6),
                    10L + random.nextInt(120),
                    60L * (1 + random.nextInt(10)));
        }

        long fuellingS(int filled) {
            return filled > 0 ? refuelS + filled * stepS : 0;
        }
    }

    @Test
    void no_way_of_stopping_stands_less_than_is_counted() {
        SplittableRandom random = new SplittableRandom(1);
        int met = 0;
        for (int i = 0; i < 300; i++) {
            Limits limits = Limits.of(random);
            int steps = 1 + random.nextInt(60);
            long leastS = least(flown(limits, fullTank(limits), steps));
            long countedS = LeastStops.within(table(limits)).stopsS((long) steps * STEP_S);
            assertThat(countedS).as("%s, %d steps", limits, steps).isLessThanOrEqualTo(leastS);
            met += countedS > 0 && countedS >= leastS - 1 ? 1 : 0;
        }
        assertThat(met).as("times it is as much as that").isGreaterThan(30);
    }

    @Test
    void no_whole_day_with_its_line_stands_less() {
        SplittableRandom random = new SplittableRandom(2);
        int met = 0;
        int possible = 0;
        for (int i = 0; i < 300; i++) {
            Limits limits = Limits.of(random);
            int steps = 1 + random.nextInt(60);
            int saves = random.nextInt(4);
            long leastS = leastOfDayS(limits, steps, saves);
            long countedS = countedS(limits, steps, saves);
            assertThat(countedS).as("%s, %d steps", limits, steps).isLessThanOrEqualTo(leastS);
            possible += leastS < NEVER ? 1 : 0;
            met += leastS < NEVER && countedS >= leastS - 1 ? 1 : 0;
        }
        assertThat(possible).as("days that can be flown").isGreaterThan(200);
        assertThat(met).as("times it is as much as that").isGreaterThan(60);
    }

    @Test
    void a_tank_burnt_to_the_last_drop_is_filled_once() {
        // Two tanks of 150 kg: 1499 s of 0.2 kg, and two starts of 0.1 kg. One fuelling of 3000 s
        // and 3 s of flow.
        FuelRules fuel = new FuelRules(150, 0.2, 0.2, 0.1, 0, 0, 0, 3000, 50);
        DayRules rules = new DayRules(0, 0, 100_000, 3600, 100_000, 600, 60, 1, 0, 0);

        assertThat(LeastStops.ofDay(table(rules, fuel), 0.1).stopsS(1499)).isEqualTo(3004);
    }

    /** Days flown and stood at random, by the rules alone; fuel lasts for all of them. */
    @Test
    void later_breaks_are_when_they_are_told_to_be() {
        SplittableRandom random = new SplittableRandom(3);
        int held = 0;
        int pinned = 0;
        for (int i = 0; i < 200_000; i++) {
            StoodDay day = StoodDay.of(random);
            long flownS = day.flownS(0) - random.nextInt(3) * random.nextLong(30);
            long laterS = day.flownS(day.lineAt() + 1) - random.nextInt(3) * random.nextLong(30);
            LeastStops stops = LeastStops.ofDay(day.table(), 0);
            if (day.isLegal() && laterS > 0 && day.downS() < flownS + stops.stopsS(flownS)) {
                LeastStops.Held told = stops.held(flownS, laterS);
                List<LeastStops.Break> breaks = day.breaksAfterLine();
                assertThat(stops.mayHoldLine(flownS, laterS)).as("%s", day).isTrue();
                assertThat(told.lineFromS()).as("%s", day).isLessThanOrEqualTo(day.lineFromS());
                held++;
                for (int at = 0; at < told.breaks().size(); at++) {
                    LeastStops.Break one = told.breaks().get(at);
                    assertThat(breaks).as("%s", day).hasSameSizeAs(told.breaks());
                    assertThat(breaks.get(at).fromS())
                            .as("%s", day)
                            .isLessThanOrEqualTo(one.fromS());
                    assertThat(breaks.get(at).untilS())
                            .as("%s", day)
                            .isGreaterThanOrEqualTo(one.untilS());
                    pinned += one.fromS() < one.untilS() ? 1 : 0;
                }
            }
        }
        assertThat(held).as("days that are down before others").isGreaterThan(1000);
        assertThat(pinned).as("breaks told to be at one time for sure").isGreaterThan(300);
    }

    /**
     * Flown and stood in turn.
     *
     * @param piecesS flown, one more than stands
     * @param lineAt which stand holds the line; it is a whole break
     */
    private record StoodDay(
            long stretchS,
            long breakS,
            long lineS,
            List<Long> piecesS,
            List<Long> standsS,
            int lineAt) {
        static StoodDay of(SplittableRandom random) {
            long stretchS = 200L + random.nextInt(800);
            long breakS = 100L + random.nextInt(500);
            int stands = 1 + random.nextInt(4);
            int lineAt = random.nextInt(stands);
            List<Long> piecesS = new ArrayList<>();
            List<Long> standsS = new ArrayList<>();
            for (int at = 0; at <= stands; at++) {
                boolean full = random.nextInt(3) > 0;
                piecesS.add(full ? stretchS - random.nextInt(60) : random.nextLong(stretchS));
            }
            for (int at = 0; at < stands; at++) {
                boolean whole = at == lineAt || random.nextInt(4) > 0;
                long moreS = random.nextInt(2) * random.nextLong(80);
                standsS.add(whole ? breakS + moreS : random.nextLong(60));
            }
            return new StoodDay(
                    stretchS, breakS, 20L + random.nextInt(80), piecesS, standsS, lineAt);
        }

        private static long sumS(List<Long> timesS) {
            return timesS.stream().mapToLong(Long::longValue).sum();
        }

        long flownS(int from) {
            return sumS(piecesS.subList(from, piecesS.size()));
        }

        long downS() {
            return flownS(0) + sumS(standsS);
        }

        boolean isLegal() {
            long sinceS = 0;
            boolean legal = true;
            for (int at = 0; at < piecesS.size(); at++) {
                sinceS += piecesS.get(at);
                legal &= sinceS <= stretchS;
                sinceS = at < standsS.size() && standsS.get(at) >= breakS ? 0 : sinceS;
            }
            return legal;
        }

        /** When a stand begins. */
        private long fromS(int at) {
            return sumS(piecesS.subList(0, at + 1)) + sumS(standsS.subList(0, at));
        }

        long lineFromS() {
            return fromS(lineAt) + standsS.get(lineAt);
        }

        List<LeastStops.Break> breaksAfterLine() {
            return IntStream.range(lineAt + 1, standsS.size())
                    .filter(at -> standsS.get(at) >= breakS)
                    .mapToObj(at -> new LeastStops.Break(fromS(at), fromS(at) + standsS.get(at)))
                    .toList();
        }

        DayTable table() {
            return StopsPropertyTest.table(
                    new DayRules(0, 0, 100_000, stretchS, 100_000, breakS, 60, lineS, 0, 0),
                    new FuelRules(1_000_000, 0.1, 0.1, 0, 0, 0, 0, 0, 1));
        }
    }

    /** What is flown before the line shortens the rest by no more than it may save. */
    private static long countedS(Limits limits, int steps, int saves) {
        LeastStops stops = LeastStops.ofDay(table(limits), limits.start() * STEP_KG);
        long flownS = (long) steps * STEP_S;
        return stops.mayHoldLine(flownS, flownS - (long) saves * STEP_S)
                ? Math.min(stops.stopsS(flownS), stops.sharedS(flownS))
                : stops.stopsS(flownS);
    }

    /**
     * Least stood and flown above the steps: what is flown before the line is fitted shortens the rest by no more than
     * it may save.
     */
    private static long leastOfDayS(Limits limits, int steps, int saves) {
        long leastS = NEVER;
        for (int before = 0; before <= steps; before++) {
            int more = Math.max(0, before - saves);
            long[][] now = fullTank(limits);
            if (before > 0) {
                now = flown(limits, started(limits, now), before);
            }
            now = flown(limits, stopped(limits, now, limits.lineS()), steps + more - before);
            leastS = Math.min(leastS, least(now) + (long) more * STEP_S);
        }
        return Math.min(NEVER, leastS);
    }

    private static long least(long[][] stoodS) {
        return Arrays.stream(stoodS).flatMapToLong(Arrays::stream).min().orElseThrow();
    }

    private static long[][] fullTank(Limits limits) {
        long[][] now = nothing(limits);
        now[0][limits.tank()] = 0;
        return now;
    }

    private static long[][] nothing(Limits limits) {
        long[][] now = new long[limits.engineOn() + 1][limits.tank() + 1];
        for (long[] row : now) {
            Arrays.fill(row, NEVER);
        }
        return now;
    }

    private static long[][] started(Limits limits, long[][] from) {
        long[][] to = nothing(limits);
        for (int since = 0; since < from.length; since++) {
            for (int fuel = limits.start(); fuel <= limits.tank(); fuel++) {
                to[since][fuel - limits.start()] = from[since][fuel];
            }
        }
        return to;
    }

    /** For each time since the last break and each fuel the least stood so far, step by step. */
    private static long[][] flown(Limits limits, long[][] from, int steps) {
        long[][] now = from;
        for (int step = 0; step < steps; step++) {
            now = flown(limits, stopped(limits, now, 0));
        }
        return now;
    }

    /** After a stop with a line change of so long, or, where that is nothing, perhaps none. */
    private static long[][] stopped(Limits limits, long[][] from, long lineS) {
        long[][] off = nothing(limits);
        for (int since = 0; since < from.length; since++) {
            for (int fuel = 0; fuel <= limits.tank(); fuel++) {
                for (int filled = fuel; filled <= limits.tank(); filled++) {
                    long workS = lineS + limits.fuellingS(filled - fuel);
                    long restS = Math.max(limits.breakS(), workS);
                    long here = from[since][fuel];
                    off[since][filled] = Math.min(off[since][filled], here + workS);
                    off[0][filled] = Math.min(off[0][filled], here + restS);
                }
            }
        }
        long[][] to = started(limits, off);
        for (int since = 0; since < from.length && lineS == 0; since++) {
            for (int fuel = 0; fuel <= limits.tank(); fuel++) {
                to[since][fuel] = Math.min(to[since][fuel], from[since][fuel]);
            }
        }
        return to;
    }

    private static long[][] flown(Limits limits, long[][] from) {
        long[][] to = nothing(limits);
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
                        limits.lineS(),
                        0,
                        0);
        FuelRules fuel =
                new FuelRules(
                        limits.tank() * STEP_KG,
                        STEP_KG / STEP_S,
                        STEP_KG / STEP_S,
                        limits.start() * STEP_KG,
                        0,
                        limits.reserve() * STEP_S,
                        0,
                        limits.refuelS(),
                        STEP_KG / limits.stepS());
        return table(rules, fuel);
    }

    private static DayTable table(DayRules rules, FuelRules fuel) {
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
