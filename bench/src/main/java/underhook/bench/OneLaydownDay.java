package underhook.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import underhook.planner.search.DayRules;
import underhook.planner.search.DayTable;
import underhook.planner.search.FuelRules;
import underhook.planner.search.HookChoices;
import underhook.planner.search.LegTimes;
import underhook.planner.search.Ordered;
import underhook.planner.search.Rates;
import underhook.planner.search.SpotRow;
import underhook.planner.search.TeamRow;
import underhook.planner.search.TripRow;

/**
 * An invented day from one laydown: light loads, together on a hook where they are not too heavy, and a pole alone to
 * each site of a row; ways take the same at every hour.
 *
 * <p>A crew for every four sites or so, which also serves the next one on either side; every third comes by air from
 * the laydown, the others are there. Guying takes 25 to 40 minutes. Light loads are received by the crew, which then
 * makes the site ready for ten minutes, or are laid down where nobody of it is needed. Half of the sites are closed by the wind for one
 * hour. A pole
 * allows less fuel after two hours and again after four. After 90 minutes with the engine on comes a break of 20.
 */
final class OneLaydownDay implements InventedDay {
    private static final int HOURS = 12;
    private static final long HOUR_S = 3600;

    /** 90 minutes with the engine on, of which two are kept free to shut down. */
    private static final long STRETCH_S = 5280;

    private static final long MAKING_READY_S = 600;
    private static final double SPEED_M_PER_S = 25;
    private static final double MOST_TOGETHER_KG = 400;

    /** About as many loads are flown in an hour, so that windows lie within the day. */
    private static final int LOADS_PER_HOUR = 18;

    /** With people aboard, kg of fuel. */
    private static final double CABIN_FUEL_KG = 220;

    private static final double USABLE_KG = 340;

    private final int sites;
    private final boolean received;
    private final double[] eastM;
    private final double[] northM;
    private final long[] guyingS;
    private final int[] closedHour;
    private final int[] poleFuelKg;
    private final boolean[] flown;

    /** The day's own trips, then those of other ways. */
    private final List<TripRow> trips = new ArrayList<>();

    private final List<List<List<Integer>>> groups = new ArrayList<>();
    private int own;

    private OneLaydownDay(int loads, long seed, boolean received) {
        SplittableRandom random = new SplittableRandom(seed * 1000 + loads + 500);
        this.sites = loads / LOADS_PER_SITE;
        this.received = received;
        this.flown = new boolean[Math.max(2, sites / 4)];
        for (int team = 0; team < flown.length; team++) {
            flown[team] = random.nextInt(3) == 0;
        }
        int landings = (int) IntStream.range(0, flown.length).filter(team -> flown[team]).count();
        this.eastM = new double[sites + 1 + landings];
        this.northM = new double[sites + 1 + landings];
        this.guyingS = new long[sites + 1];
        this.closedHour = new int[sites + 1];
        this.poleFuelKg = new int[sites + 1];
        eastM[0] = 140.0 * sites;
        for (int site = 1; site <= sites; site++) {
            eastM[site] = 280.0 * (site - 1) + random.nextInt(100);
            northM[site] = 500 + random.nextInt(600);
            guyingS[site] = 1500L + random.nextInt(901);
            closedHour[site] =
                    random.nextBoolean() ? random.nextInt(1 + loads / LOADS_PER_HOUR) : HOURS;
            poleFuelKg[site] = 230 + random.nextInt(61);
        }
        for (int team = 0; team < flown.length; team++) {
            if (flown[team]) {
                int middle = (firstSite(team) + firstSite(team + 1)) / 2;
                eastM[landing(team)] = eastM[middle];
                northM[landing(team)] = northM[middle] - 100;
            }
        }
        addTrips(random);
    }

    /** A day on which the crews receive the light loads too. */
    static OneLaydownDay received(int loads, long seed) {
        return new OneLaydownDay(loads, seed, true);
    }

    /** A day on which the crews are needed for the poles alone, as on the days that the aims come from. */
    static OneLaydownDay laidDown(int loads, long seed) {
        return new OneLaydownDay(loads, seed, false);
    }

    private int firstSite(int team) {
        return 1 + team * sites / flown.length;
    }

    private void addTrips(SplittableRandom random) {
        List<List<List<List<Integer>>>> ways = new ArrayList<>();
        for (int site = 1; site <= sites; site++) {
            int[] massKg = random.ints(LOADS_PER_SITE - 1, 50, 161).toArray();
            List<List<List<Integer>>> all = new ArrayList<>();
            addWays(massKg, List.of(), 0, all);
            int to = site;
            all.sort(Comparator.comparingLong(way -> flownS(to, way)));
            ways.add(all);
            List<Integer> bags = addBags(site, all.get(0));
            trips.add(
                    new TripRow(
                            0,
                            site,
                            60,
                            100,
                            0,
                            1,
                            true,
                            false,
                            guyingS[site],
                            0,
                            bags.stream().map(bag -> new TripRow.After(bag, 0)).toList(),
                            false,
                            List.of(true)));
            groups.add(new ArrayList<>(List.of(bags)));
            groups.add(List.of(List.of(trips.size() - 1)));
        }
        own = trips.size();
        for (int site = 1; site <= sites; site++) {
            for (List<List<Integer>> way : ways.get(site - 1).stream().skip(1).toList()) {
                groups.get(2 * (site - 1)).add(addBags(site, way));
            }
        }
    }

    /** Puts each of the loads on a hook of its own or with others, in every way that is not too heavy. */
    private static void addWays(
            int[] massKg, List<List<Integer>> hung, int next, List<List<List<Integer>>> all) {
        if (next == massKg.length) {
            all.add(hung);
            return;
        }
        for (int hook = 0; hook <= hung.size(); hook++) {
            List<List<Integer>> more = new ArrayList<>(hung);
            List<Integer> with = new ArrayList<>(hook < hung.size() ? hung.get(hook) : List.of());
            with.add(next);
            if (hook < hung.size()) {
                more.set(hook, with);
            } else {
                more.add(with);
            }
            if (with.stream().mapToInt(load -> massKg[load]).sum() <= MOST_TOGETHER_KG) {
                addWays(massKg, more, next + 1, all);
            }
        }
    }

    /** How long the hooks of a way take, there and back: every order flies as much for them. */
    private long flownS(int site, List<List<Integer>> way) {
        return way.stream()
                .mapToLong(
                        hook -> {
                            TripRow trip = bags(site, hook.size());
                            return trip.hookUpS() + trip.setDownS() + outS(trip) + emptyS(site, 0);
                        })
                .sum();
    }

    private List<Integer> addBags(int site, List<List<Integer>> way) {
        List<Integer> numbers = new ArrayList<>();
        for (List<Integer> hook : way) {
            numbers.add(trips.size());
            trips.add(bags(site, hook.size()));
        }
        return numbers;
    }

    private TripRow bags(int site, int count) {
        return new TripRow(
                0,
                site,
                50 + 10 * count,
                40,
                25,
                count,
                false,
                false,
                0,
                received ? MAKING_READY_S : 0,
                List.of(),
                false,
                List.of(true));
    }

    private double distanceM(int one, int other) {
        return Math.hypot(eastM[one] - eastM[other], northM[one] - northM[other]);
    }

    private int outS(TripRow trip) {
        double slowFactor = trip.standsUp() ? 1.5 : 1.1;
        return (int) Math.ceil(20 + distanceM(0, trip.to()) * slowFactor / SPEED_M_PER_S);
    }

    private int emptyS(int from, int to) {
        return from == to ? 0 : (int) Math.ceil(20 + distanceM(from, to) / SPEED_M_PER_S);
    }

    @Override
    public DayTable table(Rates rates) {
        return table(trips.subList(0, own), rates);
    }

    @Override
    public DayTable everyWay() {
        return table(trips, RATES);
    }

    /** Over every way of the loads of which the day found flies something. */
    @Override
    public HookChoices hooks(Ordered found) {
        return new HookChoices(
                groups.stream()
                        .filter(group -> group.get(0).stream().allMatch(found::isFlown))
                        .toList());
    }

    private DayTable table(List<TripRow> rows, Rates rates) {
        List<SpotRow> spots = new ArrayList<>();
        for (int place = 0; place < eastM.length; place++) {
            boolean site = place > 0 && place <= sites;
            long staff = place > 0 ? DayTable.NEVER_S : 0;
            long receiver = received ? staff : 0;
            spots.add(
                    new SpotRow(
                            site,
                            !site,
                            place == 0,
                            staff,
                            false,
                            staff,
                            receiver,
                            nearestGround(place),
                            0));
        }
        List<TeamRow> teams = IntStream.range(0, flown.length).mapToObj(this::team).toList();
        List<Long> untilS = IntStream.rangeClosed(1, HOURS).mapToObj(one -> one * HOUR_S).toList();
        DayRules rules =
                new DayRules(0, 0, HOURS * HOUR_S, STRETCH_S, 11 * HOUR_S, 1200, 120, 180, 20, 180);
        FuelRules fuel = new FuelRules(USABLE_KG, 2.3 / 60, 2.5 / 60, 8, 2, 1200, 0, 240, 25. / 60);
        return new DayTable(
                spots,
                rows,
                new DayTable.Parts(
                        new DayTable.Constants(rules, fuel, rates),
                        new DayTable.People(teams, walks()),
                        new DayTable.Hours(0, untilS, List.of(0)),
                        new Ways()));
    }

    /** The laydown or a landing. */
    private int nearestGround(int place) {
        return IntStream.range(0, eastM.length)
                .filter(to -> to == 0 || to > sites)
                .boxed()
                .min(Comparator.comparingInt(to -> emptyS(place, to)))
                .orElseThrow();
    }

    private TeamRow team(int team) {
        int first = firstSite(team);
        int end = firstSite(team + 1);
        return new TeamRow(
                flown[team] ? 0 : first,
                0,
                true,
                true,
                true,
                IntStream.range(Math.max(1, first - 1), Math.min(sites, end) + 1).boxed().toList(),
                IntStream.range(0, eastM.length)
                        .mapToObj(place -> flown[team] ? landed(team, place) : DayTable.NONE)
                        .toList(),
                flown[team] ? CABIN_FUEL_KG : USABLE_KG);
    }

    /** Where the machine lands with a crew that is flown, in the middle of its sites; besides at the laydown. */
    private int landing(int team) {
        return sites + 1 + (int) IntStream.range(0, team).filter(other -> flown[other]).count();
    }

    private int landed(int team, int place) {
        return place == 0 ? 0 : landing(team);
    }

    /** Up on the row; the laydown lies too far below. */
    private List<List<Long>> walks() {
        List<List<Long>> all = new ArrayList<>();
        for (int from = 0; from < eastM.length; from++) {
            List<Long> row = new ArrayList<>();
            for (int to = 0; to < eastM.length; to++) {
                long wayS = (long) (120 + distanceM(from, to) / 0.8);
                row.add(from == to ? 0 : from * to == 0 ? DayTable.NO_WALK_S : wayS);
            }
            all.add(row);
        }
        return all;
    }

    private final class Ways implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            return outS(trips.get(trip));
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return OneLaydownDay.this.emptyS(from, to);
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return outS(trips.get(trip));
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return OneLaydownDay.this.emptyS(from, to);
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            TripRow row = trips.get(trip);
            return row.standsUp() ? poleFuelKg[row.to()] - 15 * Math.min(2, slotTo / 2) : 310;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return slot != closedHour[trips.get(trip).to()];
        }
    }
}
