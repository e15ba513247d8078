package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Public instances of known problems as days: people at every site, loads that are hooked and let go at the same
 * spot in no time, nothing but empty ways to fly. Then the flying time is the length of a path.
 *
 * <p>Tables and best values: TSPLIB, instances ESC07 (a shortest path from the first node to the last in which
 * some come before others) and gr17 (a shortest round trip).
 */
class PublicOrdersReferenceTest {
    private static final int NO_WAY = -1;
    private static final int END_S = 36_000;

    /** Row to column; -1: the column's node comes before the row's. */
    private static final int[][] ESC07 = {
        {0, 0, 0, 0, 0, 0, 0, 0, NO_WAY},
        {-1, 0, 100, 200, 75, 0, 300, 100, 0},
        {-1, 400, 0, 500, 325, 400, 600, 0, 0},
        {-1, 700, 800, 0, 550, 700, 900, 800, 0},
        {-1, -1, 250, 225, 0, 275, 525, 250, 0},
        {-1, -1, 100, 200, -1, 0, -1, -1, 0},
        {-1, -1, 1100, 1200, 1075, 1000, 0, 1100, 0},
        {-1, -1, 0, 500, 325, 400, 600, 0, 0},
        {-1, -1, -1, -1, -1, -1, -1, -1, 0},
    };

    private static final int ESC07_BEST = 2125;

    /** Lower half with the diagonal, row by row. */
    private static final String GR17 =
            "0 633 0 257 390 0 91 661 228 0 412 227 169 383 0 150 488 112 120 267 0 80 572 196"
                    + " 77 351 63 0 134 530 154 105 309 34 29 0 259 555 372 175 338 264 232 249 0"
                    + " 505 289 262 476 196 360 444 402 495 0 353 282 110 324 61 208 292 250 352 154"
                    + " 0 324 638 437 240 421 329 297 314 95 578 435 0 70 567 191 27 346 83 47 68"
                    + " 189 439 287 254 0 211 466 74 182 243 105 150 108 326 336 184 391 145 0 268"
                    + " 420 53 239 199 123 207 165 383 240 140 448 202 57 0 246 745 472 237 528 364"
                    + " 332 349 202 685 542 157 289 426 483 0 121 518 142 84 297 35 29 36 236 390"
                    + " 238 301 55 96 153 336 0";

    private static final int GR17_BEST = 2085;

    @Test
    void some_before_others() {
        DayTable table = day(ESC07);

        Ordered found = DayOrder.find(table, 1, () -> false, done -> {}).day();

        assertThat(found.flownS()).isEqualTo(ESC07_BEST);
        assertThat(DayOrder.flightBoundS(table, found))
                .isBetween(0.3 * ESC07_BEST, 1.0 * ESC07_BEST);
    }

    @Test
    void a_round_trip() {
        DayTable table = day(roundTrip(GR17));

        Ordered found = DayOrder.find(table, 1, () -> false, done -> {}).day();

        assertThat(found.flownS()).isEqualTo(GR17_BEST);
        assertThat(DayOrder.flightBoundS(table, found)).isBetween(0.7 * GR17_BEST, 1.0 * GR17_BEST);
    }

    /** The first node once more as the last. */
    private static int[][] roundTrip(String lowerHalf) {
        int[] all = Arrays.stream(lowerHalf.split(" ")).mapToInt(Integer::parseInt).toArray();
        int count = (int) Math.sqrt(2.0 * all.length);
        int[][] wayS = new int[count + 1][count + 1];
        int next = 0;
        for (int row = 0; row < count; row++) {
            for (int column = 0; column <= row; column++) {
                wayS[row][column] = all[next];
                wayS[column][row] = all[next++];
            }
            wayS[row][count] = wayS[row][0];
            wayS[row][0] = row == 0 ? 0 : NO_WAY;
            wayS[count][row] = NO_WAY;
        }
        wayS[0][count] = NO_WAY;
        return wayS;
    }

    private static boolean isBefore(int[][] wayS, int first, int then) {
        int last = wayS.length - 1;
        return first > 0 && then < last && wayS[then][first] == NO_WAY;
    }

    private static DayTable day(int[][] wayS) {
        int last = wayS.length - 1;
        List<SpotRow> spots = new ArrayList<>();
        List<TripRow> trips = new ArrayList<>();
        for (int node = 0; node <= last; node++) {
            boolean ground = node == 0 || node == last;
            spots.add(new SpotRow(!ground, ground, ground, -600, false, -600, -600, last, last));
            if (!ground) {
                int here = node;
                List<TripRow.After> after =
                        IntStream.range(1, last)
                                .filter(first -> isBefore(wayS, first, here))
                                .mapToObj(first -> new TripRow.After(first - 1, 0))
                                .toList();
                trips.add(
                        new TripRow(
                                node,
                                node,
                                0,
                                0,
                                0,
                                1,
                                false,
                                false,
                                0,
                                0,
                                after,
                                false,
                                List.of(true)));
            }
        }
        return new DayTable(
                spots,
                trips,
                new DayTable.Parts(
                        new DayTable.Constants(
                                new DayRules(0, 0, END_S, END_S, END_S, 1800, 0, 60, 0, 0),
                                new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10),
                                new Rates(6000, 0, 0)),
                        new DayTable.People(List.of(), List.of()),
                        new DayTable.Hours(0, List.of(END_S + 3600L), List.of(0)),
                        new Ways(wayS)));
    }

    private static final class Ways implements WaysAllDay {
        private final int[][] wayS;

        Ways(int[][] wayS) {
            this.wayS = wayS;
        }

        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 0;
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return wayS[from][to];
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return wayS[from][to] < 0 ? HourLeast.NONE_S : wayS[from][to];
        }
    }
}
