package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import underhook.core.plan.StepKind;

/**
 * Invented days of one laydown on which crews are flown in or walk, against the earliest day that a search for the
 * finish alone finds: each is a legal day, so none may end before the bound.
 */
class TeamRoundsPropertyTest {
    private static final int DAYS = 60;
    private static final DayOrder.Stops UNSTOPPED = new DayOrder.Stops(() -> false);
    private static final int SITES = 4;
    private static final int LANDING = SITES + 1;
    private static final int PLACES = SITES + 3;

    @Test
    void no_day_that_is_found_is_down_before() {
        double tightest = 0;
        double sumRatio = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            World world = new World(seed);
            DayTable table = world.table(5400);
            DayOrder.Found found = DayOrder.find(table, new Effort(seed, 2), UNSTOPPED, done -> {});
            HookChoices hooks = HookChoices.asFlown(found.day());
            long boundS = DayOrder.finishBoundS(table, hooks, 0);
            long earliestS =
                    found.front().stream().mapToLong(DayOrder.Offer::finishS).min().orElseThrow();

            assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo(earliestS);
            tightest = Math.max(tightest, (double) boundS / earliestS);
            sumRatio += (double) boundS / earliestS;
        }
        assertThat(tightest).as("bound over earliest at its best").isGreaterThan(0.98);
        assertThat(sumRatio / DAYS).as("mean of bound over earliest").isGreaterThan(0.8);
    }

    /**
     * With what none flies less than, and so short a time with the engine on that breaks must be; the first may hold
     * the line after people were flown.
     */
    @Test
    void nor_where_a_break_must_be_and_may_hold_the_line() {
        int broken = 0;
        int held = 0;
        double tightest = 0;
        for (int seed = 0; seed < 2 * DAYS; seed++) {
            DayTable table = new World(seed).table(900L + 37L * (seed % 20));
            DayOrder.Found found = DayOrder.find(table, new Effort(seed, 2), UNSTOPPED, done -> {});
            if (isAllFlown(found.day(), table)) {
                HookChoices hooks = HookChoices.asFlown(found.day());
                double flownS = DayOrder.flightBoundS(table, hooks, found.day().flownS());
                long boundS = DayOrder.finishBoundS(table, hooks, flownS);
                long earliestS =
                        found.front().stream()
                                .mapToLong(DayOrder.Offer::finishS)
                                .min()
                                .orElseThrow();

                assertThat(boundS).as("day %d", seed).isLessThanOrEqualTo(earliestS);
                boolean breaks = flownS > (double) table.rules.stretchS();
                broken += breaks ? 1 : 0;
                held += breaks && isLineHeld(found.day(), table) ? 1 : 0;
                tightest = breaks ? Math.max(tightest, (double) boundS / earliestS) : tightest;
            }
        }
        assertThat(broken).as("days on which a break must be").isGreaterThan(DAYS);
        assertThat(held).as("of them days whose first break holds the line").isGreaterThan(0);
        assertThat(tightest).as("bound over earliest at its best").isGreaterThan(0.97);
    }

    /** Two stretches after the line are nearly full, so it is known when the break between them is. */
    @Test
    void nor_where_the_machine_can_only_stand_between_two_full_stretches() {
        int asked = 0;
        int raised = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            World world = new World(seed);
            DayTable table = world.table(withTwoStretchesS(world, seed));
            DayOrder.Found found = DayOrder.find(table, new Effort(seed, 2), UNSTOPPED, done -> {});
            if (isAllFlown(found.day(), table)) {
                HookChoices hooks = HookChoices.asFlown(found.day());
                double flownS = DayOrder.flightBoundS(table, hooks, found.day().flownS());
                long earliestS =
                        found.front().stream()
                                .mapToLong(DayOrder.Offer::finishS)
                                .min()
                                .orElseThrow();

                assertThat(DayOrder.finishBoundS(table, hooks, flownS))
                        .as("day %d", seed)
                        .isLessThanOrEqualTo(earliestS);
                asked++;
                raised += isRaisedByBreak(table, hooks, (long) flownS) ? 1 : 0;
            }
        }
        assertThat(asked).as("days on which all is flown").isGreaterThan(DAYS / 2);
        assertThat(raised)
                .as("of them days on which the break holds up the teams")
                .isGreaterThan(5);
    }

    private static long withTwoStretchesS(World world, int seed) {
        DayTable free = world.table(5400);
        HookChoices all =
                new HookChoices(
                        IntStream.range(0, free.trips())
                                .mapToObj(k -> List.of(List.of(k)))
                                .toList());
        double tripsS = FlightBound.ofTrips(free, all).boundS(10_000);
        return (long) Math.ceil(tripsS / 2) + 5L * (seed % 20);
    }

    /** Whether teams alone would be done sooner, could the machine fly meanwhile. */
    private static boolean isRaisedByBreak(DayTable table, HookChoices hooks, long flownS) {
        LeastStops stops = LeastStops.ofDay(table, 0);
        double laterS = FlightBound.ofTrips(table, hooks).boundS((double) flownS);
        LeastStops.Held held = stops.held(flownS, (long) Math.ceil(laterS));
        return stops.mayHoldLine(flownS, (long) Math.ceil(laterS))
                && roundsS(table, hooks, held)
                        > roundsS(table, hooks, new LeastStops.Held(held.lineFromS(), List.of()));
    }

    private static long roundsS(DayTable table, HookChoices hooks, LeastStops.Held held) {
        Earliest earliest = new Earliest(table, hooks.certain(table.trips()), held);
        return new TeamRounds(table, hooks, earliest, new HomeWays(table)).finishS();
    }

    private static boolean isAllFlown(Ordered day, DayTable table) {
        return IntStream.range(0, table.trips()).allMatch(day::isFlown);
    }

    /** Whether the line is first fitted straight before or after standing with it for a whole break, after flying. */
    private static boolean isLineHeld(Ordered day, DayTable table) {
        long flownS = 0;
        long offS = 0;
        boolean fitted = false;
        for (DayEvent event : day.events()) {
            long lastsS = event.endS() - event.startS();
            if (event.engineOn()) {
                if (fitted) {
                    return flownS > 0 && offS >= table.rules.breakS();
                }
                flownS += lastsS;
                offS = 0;
            } else {
                offS += lastsS;
                fitted |= event.kind() == StepKind.LINE_CHANGE;
            }
        }
        return false;
    }

    /** A row of sites, two places to land people, two crews. */
    private static final class World {
        final double[] eastM = new double[PLACES];
        final double[] northM = new double[PLACES];
        final int[] closedHour = new int[PLACES];
        final boolean[] flown = new boolean[2];
        final boolean[] shares = new boolean[PLACES];
        final List<TripRow> trips = new ArrayList<>();

        World(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            eastM[0] = 600;
            for (int site = 1; site <= SITES; site++) {
                eastM[site] = 300 * site;
                northM[site] = 400 + random.nextInt(600);
                closedHour[site] = random.nextInt(4);
                shares[site] = random.nextBoolean();
                long readyS = random.nextInt(900);
                int bag = trips.size();
                for (int i = random.nextInt(2); i >= 0; i--) {
                    trips.add(trip(site, 1 + random.nextInt(3), 0, readyS, List.of()));
                }
                trips.add(
                        trip(
                                site,
                                1,
                                600 + random.nextInt(1800),
                                0,
                                List.of(new TripRow.After(bag, 0))));
            }
            for (int team = 0; team < 2; team++) {
                flown[team] = random.nextBoolean();
                eastM[LANDING + team] = 450 + 600 * team;
                northM[LANDING + team] = 600;
            }
        }

        private static TripRow trip(
                int site, int releases, long guyingS, long readyS, List<TripRow.After> after) {
            return new TripRow(
                    0,
                    site,
                    60,
                    50,
                    30,
                    releases,
                    guyingS > 0,
                    false,
                    guyingS,
                    readyS,
                    after,
                    false,
                    List.of(true));
        }

        double wayM(int from, int to) {
            return Math.hypot(eastM[from] - eastM[to], northM[from] - northM[to]);
        }

        DayTable table(long stretchS) {
            List<SpotRow> spots = new ArrayList<>();
            List<List<Long>> walks = new ArrayList<>();
            for (int place = 0; place < PLACES; place++) {
                boolean site = place > 0 && place <= SITES;
                long staffS = place == 0 ? 0 : DayTable.NEVER_S;
                spots.add(
                        new SpotRow(site, !site, place == 0, staffS, false, staffS, staffS, 0, 0));
                List<Long> row = new ArrayList<>();
                for (int to = 0; to < PLACES; to++) {
                    long wayS = 60 + (long) wayM(place, to);
                    row.add(place == to ? 0 : place * to == 0 ? DayTable.NO_WALK_S : wayS);
                }
                walks.add(row);
            }
            List<TeamRow> teams = IntStream.range(0, 2).mapToObj(this::team).toList();
            return new DayTable(
                    spots,
                    trips,
                    new DayTable.Parts(
                            new DayTable.Constants(
                                    new DayRules(
                                            0, 0, 43_200, stretchS, 43_200, 1200, 120, 180, 20, 0),
                                    new FuelRules(900, 0.04, 0.04, 4, 2, 1200, 0, 240, 1),
                                    new Rates(100, 1000, 1000)),
                            new DayTable.People(teams, walks),
                            new DayTable.Hours(
                                    0,
                                    IntStream.rangeClosed(1, 12).mapToObj(i -> i * 3600L).toList(),
                                    List.of(0)),
                            new Ways(this)));
        }

        private TeamRow team(int team) {
            int first = 1 + 2 * team;
            return new TeamRow(
                    flown[team] ? 0 : first,
                    0,
                    true,
                    true,
                    true,
                    IntStream.rangeClosed(1, SITES)
                            .filter(site -> shares[site] || site == first || site == first + 1)
                            .boxed()
                            .toList(),
                    IntStream.range(0, PLACES).mapToObj(at -> landing(team, at)).toList(),
                    900);
        }

        private int landing(int team, int place) {
            if (!flown[team]) {
                return DayTable.NONE;
            }
            return place == 0 ? 0 : LANDING + team;
        }
    }

    private record Ways(World world) implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return 20 + (int) (world.wayM(0, world.trips.get(trip).to()) / 18);
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return from == to ? 0 : 20 + (int) (world.wayM(from, to) / 25);
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return loadedS(trip, 0, slot, slot);
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return emptyS(from, to, 0, slot);
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            return 2000;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return slot != world.closedHour[world.trips.get(trip).to()];
        }
    }
}
