package underhook.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import underhook.planner.search.DayRules;
import underhook.planner.search.DayTable;
import underhook.planner.search.FuelRules;
import underhook.planner.search.LegTimes;
import underhook.planner.search.Rates;
import underhook.planner.search.SpotRow;
import underhook.planner.search.TeamRow;
import underhook.planner.search.TripRow;

/**
 * An invented day of four loads to a site: bags on one hook, then a pole, two laydowns below a row of sites.
 *
 * <p>One crew for every four sites or so, on foot from site to site; the wind grows by the hour and closes the
 * poles of every fourth site after an hour for each ten loads. Fuel, reserve and limits as on the demo day, but
 * the engine may run ten hours a day of fourteen.
 */
final class SeededDay implements InventedDay {
    private static final int HOURS = 14;
    private static final long HOUR_S = 3600;

    /** Three hours with the engine on, of which two minutes are kept free to shut down. */
    private static final long STRETCH_S = 10_680;

    private static final int LOADS_UNTIL_AN_HOUR_IS_OVER = 10;
    private static final double SPEED_M_PER_S = 25;

    private final int sites;
    private final double[] eastM;
    private final double[] northM;
    private final double[] headwindFactor;
    private final List<TripRow> trips = new ArrayList<>();
    private final boolean[] exposed;

    SeededDay(int loads, long seed) {
        SplittableRandom random = new SplittableRandom(seed * 1000 + loads);
        this.sites = loads / LOADS_PER_SITE;
        this.eastM = new double[sites + 2];
        this.northM = new double[sites + 2];
        this.headwindFactor = new double[HOURS];
        this.exposed = new boolean[sites + 2];
        double lengthM = 400.0 * sites;
        eastM[0] = lengthM * 0.25;
        eastM[1] = lengthM * 0.75;
        for (int i = 0; i < sites; i++) {
            eastM[2 + i] = 400.0 * i + random.nextInt(150);
            northM[2 + i] = 700 + random.nextInt(900);
            exposed[2 + i] = i % 4 == 3;
        }
        for (int hour = 0; hour < HOURS; hour++) {
            headwindFactor[hour] = 1 + 0.015 * hour;
        }
        for (int i = 0; i < sites; i++) {
            addTrips(2 + i, random);
        }
    }

    private void addTrips(int site, SplittableRandom random) {
        int laydown = distanceM(0, site) < distanceM(1, site) ? 0 : 1;
        int bag = trips.size();
        int bags = LOADS_PER_SITE - 1;
        trips.add(row(laydown, site, bags, false, 1200, List.of()));
        long waitS = random.nextInt(3) == 0 ? 1800 : 0;
        trips.add(row(laydown, site, 1, true, 0, List.of(new TripRow.After(bag, waitS))));
    }

    private static TripRow row(
            int from, int to, int releases, boolean pole, long readyS, List<TripRow.After> after) {
        return new TripRow(
                from,
                to,
                75,
                pole ? 300 : 55,
                45,
                releases,
                pole,
                false,
                pole ? 600 : 0,
                readyS,
                after,
                false,
                List.of(true));
    }

    private double distanceM(int one, int other) {
        return Math.hypot(eastM[one] - eastM[other], northM[one] - northM[other]);
    }

    @Override
    public DayTable table(Rates rates) {
        List<SpotRow> spots = new ArrayList<>();
        for (int place = 0; place < sites + 2; place++) {
            boolean site = place >= 2;
            long staff = site ? DayTable.NEVER_S : 0;
            int home = !site ? place : distanceM(0, place) < distanceM(1, place) ? 0 : 1;
            spots.add(new SpotRow(site, !site, !site, staff, false, staff, staff, home, home));
        }
        int teamCount = Math.max(2, sites / 4);
        List<TeamRow> teams = new ArrayList<>();
        for (int team = 0; team < teamCount; team++) {
            teams.add(team(team, teamCount));
        }
        List<Long> untilS = new ArrayList<>();
        for (int hour = 1; hour <= HOURS; hour++) {
            untilS.add(hour * HOUR_S);
        }
        DayRules rules =
                new DayRules(0, 0, HOURS * HOUR_S, STRETCH_S, 10 * HOUR_S, 1800, 180, 360, 20, 180);
        FuelRules fuel = new FuelRules(340, 2.3 / 60, 2.5 / 60, 8, 2, 1200, 600, 240, 25.0 / 60);
        return new DayTable(
                spots,
                trips,
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, rates),
                        new DayTable.People(teams, walks()),
                        new DayTable.Hours(0, untilS, List.of(0)),
                        new Ways()));
    }

    private TeamRow team(int team, int count) {
        int first = 2 + team * sites / count;
        int end = Math.min(sites + 2, 3 + (team + 1) * sites / count);
        return new TeamRow(
                first,
                0,
                true,
                true,
                true,
                IntStream.range(first, end).boxed().toList(),
                Collections.nCopies(sites + 2, DayTable.NONE),
                340);
    }

    private List<List<Long>> walks() {
        List<List<Long>> all = new ArrayList<>();
        for (int from = 0; from < sites + 2; from++) {
            List<Long> row = new ArrayList<>();
            for (int to = 0; to < sites + 2; to++) {
                row.add(from == to ? 0 : (long) (120 + distanceM(from, to) / 0.8));
            }
            all.add(row);
        }
        return all;
    }

    private final class Ways implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            TripRow row = trips.get(trip);
            double slowFactor = row.standsUp() ? 1.5 : 1.1;
            return (int)
                    Math.ceil(
                            30
                                    + distanceM(row.from(), row.to())
                                            * slowFactor
                                            * headwindFactor[slotFrom]
                                            / SPEED_M_PER_S);
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            double wayS = distanceM(from, to) / SPEED_M_PER_S * headwindFactor[slot];
            return from == to ? 0 : (int) Math.ceil(25 + wayS);
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
            return trips.get(trip).standsUp() ? 300 - 6 * slotTo : 320;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            TripRow row = trips.get(trip);
            int closes = sites * LOADS_PER_SITE / LOADS_UNTIL_AN_HOUR_IS_OVER;
            return !(row.standsUp() && exposed[row.to()]) || slot < closes;
        }
    }
}
