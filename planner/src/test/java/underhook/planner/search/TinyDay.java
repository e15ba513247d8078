package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * An invented day of a few trips: two laydowns, four sites, two teams on foot, three spells of weather.
 *
 * <p>Plenty of fuel, one line and no limit on the engine, so that an order is all that is to be decided. Ways take
 * the same at every hour, or change from spell to spell where that is asked.
 */
final class TinyDay {
    static final int SITES = 4;
    static final int PLACES = 2 + SITES;
    static final int TEAMS = 2;

    /** Ends of the spells, where nothing else is asked. */
    static final long[] UNTIL_S = {5400, 10_800, 43_200};

    static final long START_S = 0;
    static final long END_S = 36_000;
    static final long LINE_S = 300;
    static final long EXTRA_S = 20;
    static final long FLYING_CENTS = 3500;
    static final long STANDING_CENTS = 1200;
    static final long PEOPLE_CENTS = 1000;

    private final int[][] wayS;
    private final int[][] walkS;
    private final List<Lift> lifts;
    private final boolean[][] open;
    private final int[][] mayWork;
    private final int[] teamStart;

    /** What a way takes in each spell, in hundredths of what it takes in still air. */
    private int[] slowness = {100, 100, 100};

    /** Ends of the spells. */
    private long[] untilS = UNTIL_S;

    /** What is refused to whom; nothing where it is not asked for. */
    private List<Wind> comforts = List.of();

    private long walkCents;

    /** Whether people stay at every site, so that nobody walks and no crew is waited for. */
    private boolean staffed;

    /** Where teams are landed for each place, if they are flown; they then begin at the first laydown, from where no path leads. */
    private List<Integer> landing = java.util.Collections.nCopies(PLACES, DayTable.NONE);

    private boolean flown;

    private TinyDay(int[][] wayS, int[][] walkS, List<Lift> lifts, Works works) {
        this.wayS = wayS;
        this.walkS = walkS;
        this.lifts = lifts;
        this.open = works.open;
        this.mayWork = works.mayWork;
        this.teamStart = works.teamStart;
    }

    /** When each lift may be flown, where each team may work, and where it starts. */
    private static final class Works {
        final boolean[][] open;
        final int[][] mayWork = new int[TEAMS][PLACES];
        final int[] teamStart = new int[TEAMS];

        Works(int count) {
            this(count, UNTIL_S.length);
        }

        Works(int count, int spells) {
            open = new boolean[count][spells];
        }
    }

    /** One load; it waits for what it names, or for nothing (-1). */
    record Lift(
            int from,
            int to,
            long hookS,
            long setDownS,
            boolean pole,
            boolean backhaul,
            long busyS,
            long readyS,
            int after,
            long afterS) {
        Lift hooked(long otherHookS, long otherReadyS) {
            return new Lift(
                    from,
                    to,
                    otherHookS,
                    setDownS,
                    pole,
                    backhaul,
                    busyS,
                    otherReadyS,
                    after,
                    afterS);
        }

        Lift busy(long otherBusyS, long otherReadyS) {
            return new Lift(
                    from,
                    to,
                    hookS,
                    setDownS,
                    pole,
                    backhaul,
                    otherBusyS,
                    otherReadyS,
                    after,
                    afterS);
        }

        Lift after(int other, long waitS) {
            return new Lift(from, to, hookS, setDownS, pole, backhaul, busyS, readyS, other, waitS);
        }
    }

    static TinyDay of(long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        int[][] at = new int[PLACES][2];
        for (int[] point : at) {
            point[0] = random.nextInt(3000);
            point[1] = random.nextInt(1500);
        }
        int[][] way = new int[PLACES][PLACES];
        int[][] walk = new int[PLACES][PLACES];
        for (int a = 0; a < PLACES; a++) {
            for (int b = 0; b < PLACES; b++) {
                double far = Math.hypot(at[a][0] - at[b][0], at[a][1] - at[b][1]);
                way[a][b] = a == b ? 0 : 30 + (int) (far / 20);
                walk[a][b] = a == b ? 0 : 120 + (int) far;
            }
        }
        List<Lift> lifts = new ArrayList<>();
        while (lifts.size() < count) {
            addSite(lifts, random, count - lifts.size());
        }
        Works works = new Works(count);
        for (int k = 0; k < count; k++) {
            for (int slot = 0; slot < UNTIL_S.length; slot++) {
                works.open[k][slot] = slot < 2 || !lifts.get(k).pole() || random.nextInt(3) > 0;
            }
        }
        for (int place = 2; place < PLACES; place++) {
            int only = random.nextInt(3);
            works.mayWork[0][place] = only != 1 ? 1 : 0;
            works.mayWork[1][place] = only != 0 ? 1 : 0;
        }
        works.teamStart[1] = 2 + random.nextInt(SITES);
        return new TinyDay(way, walk, lifts, works);
    }

    int[][] wayS() {
        return wayS;
    }

    int[][] walkS() {
        return walkS;
    }

    List<Lift> lifts() {
        return lifts;
    }

    boolean[][] open() {
        return open;
    }

    int[][] mayWork() {
        return mayWork;
    }

    int[] teamStart() {
        return teamStart;
    }

    /**
     * What a lift's way in refuses.
     *
     * @param spellCents in each spell
     * @param sunCents besides, between two times
     */
    private record Wind(List<Long> spellCents, long sunFromS, long sunUntilS, long sunCents) {}

    /** The same with comforts that cost up to as much as a detour of some minutes. */
    TinyDay withComforts(long seed) {
        SplittableRandom random = new SplittableRandom(seed + 991);
        List<Wind> all = new ArrayList<>();
        for (int k = 0; k < lifts.size(); k++) {
            List<Long> spells = new ArrayList<>();
            for (int spell = 0; spell < UNTIL_S.length; spell++) {
                spells.add(random.nextBoolean() ? random.nextLong(9000) : 0);
            }
            long sunFromS = random.nextInt(3600);
            all.add(
                    new Wind(
                            spells,
                            sunFromS,
                            sunFromS + random.nextInt(5400),
                            random.nextInt(12_000)));
        }
        TinyDay other = withLifts(lifts);
        other.comforts = all;
        other.walkCents = 20L + random.nextInt(200);
        return other;
    }

    long walkCents() {
        return walkCents;
    }

    /** What a lift refuses when it is let go then, cents; the sun as it stood when five minutes were full. */
    long comfortCents(int lift, int spell, long releasedS) {
        if (comforts.isEmpty()) {
            return 0;
        }
        Wind wind = comforts.get(lift);
        long atS = releasedS - releasedS % 300;
        boolean sun = atS >= wind.sunFromS && atS < wind.sunUntilS;
        return wind.spellCents.get(spell) + (sun ? wind.sunCents : 0);
    }

    /** A day of long guying and making ready, on which any spell may be closed for a pole. */
    static TinyDay ofLongGuying(long seed, int count) {
        TinyDay day = of(seed, count);
        SplittableRandom random = new SplittableRandom(seed + 55);
        List<Lift> slow = new ArrayList<>();
        for (Lift lift : day.lifts) {
            long busyS = lift.pole() ? 900 + random.nextInt(1800) : 0;
            slow.add(lift.busy(busyS, lift.readyS() > 0 ? random.nextInt(1200) : 0));
        }
        TinyDay other = day.withLifts(slow);
        for (int k = 0; k < count; k++) {
            for (int spell = 0; spell < UNTIL_S.length && slow.get(k).pole(); spell++) {
                other.open[k][spell] = random.nextInt(4) > 0;
            }
        }
        return other;
    }

    /** A day on which each spell has its own wind. */
    static TinyDay ofChangingWind(long seed, int count) {
        TinyDay day = of(seed, count);
        SplittableRandom random = new SplittableRandom(seed + 77);
        day.slowness =
                new int[] {
                    90 + random.nextInt(60), 90 + random.nextInt(60), 90 + random.nextInt(60)
                };
        return day;
    }

    /** The same day with many spells shorter than a lift, each with its own wind, and a slow one after them. */
    TinyDay withShortSpells(long seed) {
        SplittableRandom random = new SplittableRandom(seed + 41);
        int spells = 30;
        Works works = new Works(lifts.size(), spells);
        long[] ends = new long[spells];
        int[] slow = new int[spells];
        for (int spell = 0; spell < spells; spell++) {
            long lengthS = spell == 0 ? LINE_S + 30 : 20 + random.nextInt(40);
            ends[spell] = (spell == 0 ? 0 : ends[spell - 1]) + lengthS;
            slow[spell] = random.nextInt(5) == 0 ? 60 + random.nextInt(40) : 300;
            for (int k = 0; k < lifts.size(); k++) {
                works.open[k][spell] = random.nextInt(8) > 0;
            }
        }
        ends[spells - 1] = UNTIL_S[UNTIL_S.length - 1];
        slow[spells - 1] = 300;
        for (boolean[] lift : works.open) {
            lift[spells - 1] = true;
        }
        System.arraycopy(mayWork, 0, works.mayWork, 0, TEAMS);
        System.arraycopy(teamStart, 0, works.teamStart, 0, TEAMS);
        TinyDay other = new TinyDay(wayS, walkS, lifts, works);
        other.slowness = slow;
        other.untilS = ends;
        other.staffed = staffed;
        other.landing = landing;
        other.flown = flown;
        return other;
    }

    long[] untilS() {
        return untilS;
    }

    /** The same, with people at every site and nothing that stands up. */
    static TinyDay ofStaffedSites(long seed, int count) {
        TinyDay day = ofChangingWind(seed, count);
        day.staffed = true;
        return day;
    }

    /** A day on which each spell has its own wind and teams are flown: to the other laydown, or to a site itself. */
    static TinyDay ofFlownTeams(long seed, int count) {
        TinyDay day = ofChangingWind(seed, count);
        SplittableRandom random = new SplittableRandom(seed + 5);
        List<Integer> landing = new ArrayList<>(List.of(0, 1));
        for (int site = 2; site < PLACES; site++) {
            landing.add(random.nextInt(3) == 0 ? site : 1);
        }
        day.landing = landing;
        day.flown = true;
        day.teamStart[1] = 0;
        return day;
    }

    /** The same with nothing that waits for another to lie long enough. */
    TinyDay withoutWaits() {
        List<Lift> free = new ArrayList<>();
        for (Lift lift : lifts) {
            free.add(lift.after(lift.after(), 0));
        }
        return withLifts(free);
    }

    /** The same with places that need no time to be made ready. */
    TinyDay withoutReadying() {
        List<Lift> free = new ArrayList<>();
        for (Lift lift : lifts) {
            free.add(lift.hooked(lift.hookS(), 0));
        }
        return withLifts(free);
    }

    /** The same with no spell closed for any lift. */
    TinyDay withoutClosedSpells() {
        TinyDay other = withLifts(lifts);
        for (int k = 0; k < other.open.length; k++) {
            other.open[k] = new boolean[untilS.length];
            Arrays.fill(other.open[k], true);
        }
        return other;
    }

    /**
     * Two loads on one hook, or each alone.
     *
     * @param together they hang on one hook, as the lift of this number
     * @param apart the first alone in its place, the second alone at the end
     * @param either lifts of both
     * @param hooks that one of the two ways is flown
     */
    record Halves(TinyDay together, TinyDay apart, TinyDay either, HookChoices hooks) {}

    /** The same day with a bag made two that hang on one hook, where hooking up takes so long, or apart. */
    Halves halved(int bag, long hookS) {
        int count = lifts.size();
        Lift one = lifts.get(bag);
        Lift whole = one.hooked(hookS, one.readyS());
        Lift half = one.hooked(one.hookS(), one.readyS());
        Lift other = one.hooked(one.hookS(), 0);
        List<Lift> together = new ArrayList<>(lifts);
        together.set(bag, whole);
        List<Lift> apart = new ArrayList<>(lifts);
        apart.set(bag, half);
        apart.add(other);
        List<Lift> either = new ArrayList<>();
        for (Lift lift : together) {
            either.add(lift.after() == bag ? lift.after(count, lift.afterS()) : lift);
        }
        either.addAll(List.of(half, other));
        List<List<List<Integer>>> groups = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            groups.add(
                    k == bag
                            ? List.of(List.of(bag), List.of(count, count + 1))
                            : List.of(List.of(k)));
        }
        return new Halves(
                withLifts(together, bag),
                withLifts(apart, bag),
                withLifts(either, bag),
                new HookChoices(groups));
    }

    /**
     * The same with one or two loads more that are hooked out at sites: fetched after all that goes there or, where people
     * stay at every site, moved on to another, some only after what was set down there has lain a while.
     */
    TinyDay withFetched(long seed) {
        SplittableRandom random = new SplittableRandom(seed + 313);
        List<Lift> more = new ArrayList<>(lifts);
        for (int count = 1 + random.nextInt(2); count > 0; count--) {
            int there = random.nextInt(lifts.size());
            int site = Math.max(lifts.get(there).from(), lifts.get(there).to());
            boolean backhaul = !staffed || random.nextBoolean();
            int to = backhaul ? random.nextInt(2) : 2 + (site - 1) % SITES;
            int after = !backhaul && random.nextBoolean() ? there : -1;
            long waitS = random.nextInt(3) * 900L;
            more.add(new Lift(site, to, 60, 40, false, backhaul, 0, 0, after, waitS));
        }
        return withLifts(more);
    }

    /** The same with tools that go on from a site where a bag or a pole goes to another, with a team at either end. */
    TinyDay withMoved(long seed) {
        SplittableRandom random = new SplittableRandom(seed + 677);
        List<Lift> more = new ArrayList<>(lifts);
        int there = random.nextInt(lifts.size());
        int site = Math.max(lifts.get(there).from(), lifts.get(there).to());
        int to = 2 + (site - 2 + 1 + random.nextInt(SITES - 1)) % SITES;
        int after = random.nextBoolean() ? there : -1;
        more.add(new Lift(site, to, 60, 40, false, false, 0, 0, after, random.nextInt(3) * 600L));
        return withLifts(more);
    }

    /** The same with one more bag to where a bag goes, which can be let go only after the day is over. */
    TinyDay withOneTooLate(int bag) {
        Lift one = lifts.get(bag);
        List<Lift> more = new ArrayList<>(lifts);
        more.add(
                new Lift(
                        one.from(),
                        one.to(),
                        one.hookS(),
                        one.setDownS(),
                        false,
                        false,
                        0,
                        one.readyS(),
                        bag,
                        END_S));
        return withLifts(more, bag);
    }

    private TinyDay withLifts(List<Lift> others) {
        return withLifts(others, 0);
    }

    /** Those beyond the day's own may be flown when one of its own may. */
    private TinyDay withLifts(List<Lift> others, int like) {
        Works works = new Works(others.size(), untilS.length);
        System.arraycopy(open, 0, works.open, 0, open.length);
        for (int k = open.length; k < others.size(); k++) {
            works.open[k] = open[like].clone();
        }
        System.arraycopy(mayWork, 0, works.mayWork, 0, TEAMS);
        System.arraycopy(teamStart, 0, works.teamStart, 0, TEAMS);
        TinyDay other = new TinyDay(wayS, walkS, others, works);
        other.slowness = slowness;
        other.untilS = untilS;
        other.staffed = staffed;
        other.landing = landing;
        other.flown = flown;
        return other;
    }

    /** An empty way in a spell. */
    int wayS(int from, int to, int spell) {
        return wayS[from][to] * slowness[spell] / 100;
    }

    /** A loaded way in the spell of its hook-up. */
    int loadedS(Lift lift, int spell) {
        return loadedS(lift) * slowness[spell] / 100;
    }

    private static void addSite(List<Lift> lifts, SplittableRandom random, int left) {
        int site = 2 + random.nextInt(SITES);
        int laydown = random.nextInt(2);
        int kind = random.nextInt(4);
        int bag = lifts.size();
        if (kind == 0 && left == 1) {
            lifts.add(new Lift(site, laydown, 60, 40, false, true, 0, 0, -1, 0));
        } else {
            lifts.add(new Lift(laydown, site, 60, 50, false, false, 0, 900, -1, 0));
            if (left > 1 && kind > 0) {
                long waitS = random.nextBoolean() ? 600 : 0;
                lifts.add(new Lift(laydown, site, 60, 240, true, false, 480, 0, bag, waitS));
            }
        }
    }

    DayTable table() {
        List<SpotRow> spots = new ArrayList<>();
        for (int place = 0; place < PLACES; place++) {
            boolean site = place >= 2;
            int nearest = wayS[place][0] <= wayS[place][1] ? 0 : 1;
            int home = site ? nearest : place;
            long never = DayTable.NEVER_S;
            spots.add(
                    new SpotRow(
                            site,
                            !site,
                            !site,
                            site ? never : -600,
                            false,
                            site && !staffed ? never : -600,
                            site && !staffed ? never : -600,
                            home,
                            home));
        }
        List<TripRow> trips = new ArrayList<>();
        for (Lift lift : lifts) {
            trips.add(
                    new TripRow(
                            lift.from(),
                            lift.to(),
                            lift.hookS(),
                            lift.setDownS(),
                            0,
                            1,
                            lift.pole() && !staffed,
                            lift.backhaul(),
                            lift.busyS(),
                            lift.readyS(),
                            lift.after() < 0
                                    ? List.of()
                                    : List.of(new TripRow.After(lift.after(), lift.afterS())),
                            false,
                            List.of(true)));
        }
        return new DayTable(spots, trips, parts());
    }

    private DayTable.Parts parts() {
        List<TeamRow> teams = new ArrayList<>();
        for (int team = 0; team < TEAMS; team++) {
            List<Integer> serves = new ArrayList<>();
            for (int place = 2; place < PLACES; place++) {
                if (mayWork[team][place] == 1) {
                    serves.add(place);
                }
            }
            teams.add(new TeamRow(teamStart[team], 0, true, true, true, serves, landing, 9000));
        }
        List<List<Long>> walks = new ArrayList<>();
        for (int from = 0; from < PLACES; from++) {
            List<Long> row = new ArrayList<>();
            for (int to = 0; to < PLACES; to++) {
                boolean cut = flown && from != to && (from == 0 || to == 0);
                row.add(cut ? DayTable.NO_WALK_S : (long) walkS[from][to]);
            }
            walks.add(row);
        }
        DayRules rules =
                new DayRules(0, START_S, END_S, 90_000, 90_000, 1800, 120, LINE_S, EXTRA_S, 180);
        FuelRules fuel = new FuelRules(9000, 0.01, 0.01, 0, 0, 0, 0, 60, 10);
        return new DayTable.Parts(
                new DayTable.Constants(
                        rules,
                        fuel,
                        new Rates(FLYING_CENTS, STANDING_CENTS, PEOPLE_CENTS, walkCents)),
                new DayTable.People(teams, walks),
                new DayTable.Hours(
                        START_S, java.util.Arrays.stream(untilS).boxed().toList(), List.of(0)),
                new Ways(this));
    }

    private record Ways(TinyDay day) implements LegTimes {
        @Override
        public int loadedS(int trip, int line, int slotFrom, int slotTo) {
            Lift lift = day.lifts.get(trip);
            return day.loadedS(lift, slotFrom);
        }

        @Override
        public int emptyS(int from, int to, int line, int slot) {
            return day.wayS(from, to, slot);
        }

        @Override
        public SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
            if (day.comforts.isEmpty()) {
                return SetDownPrice.NONE;
            }
            long fromS = slotTo == 0 ? 0 : day.untilS[slotTo - 1];
            List<Long> sun = new ArrayList<>();
            for (long timeS = fromS; timeS < day.untilS[slotTo]; timeS += 300) {
                sun.add(day.comfortCents(trip, slotTo, timeS) - steadyCents(trip, slotTo));
            }
            return new SetDownPrice(steadyCents(trip, slotTo), fromS, sun);
        }

        private long steadyCents(int trip, int slot) {
            return day.comforts.get(trip).spellCents.get(slot);
        }

        @Override
        public double leastLoadedS(int trip, int slot) {
            return loadedS(trip, 0, slot, slot);
        }

        @Override
        public double leastEmptyS(int from, int to, int slot) {
            return day.wayS(from, to, slot);
        }

        @Override
        public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
            return 20_000;
        }

        @Override
        public boolean isOpen(int trip, int slot) {
            return day.open[trip][slot];
        }
    }

    int loadedS(Lift lift) {
        return wayS[lift.from()][lift.to()] * (lift.pole() ? 3 : 2) / 2;
    }
}
