package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntSupplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A day as a puzzle: places, trips, teams, lines, hours and rules, all by number.
 *
 * <p>What it holds never changes; what {@link LegTimes} was once asked is kept, so it is not safe for threads. A fork
 * is for another thread; {@link LegTimes} is asked by both at once.
 */
public final class DayTable {
    /** No place, no line, no team, no way. */
    public static final int NONE = -1;

    /** Later than any day. */
    public static final long NEVER_S = Long.MAX_VALUE / 4;

    /** A way on foot that does not exist, s. */
    public static final long NO_WALK_S = Long.MAX_VALUE / 8;

    /** A guess goes no higher, s. */
    private static final double NO_GUESS_S = 100_000;

    /** With no more trips, looking for other fuellings found no better days. @source PRACTICE own measure */
    private static final int FEW_FUELLINGS_TRIPS = 40;

    /** Whoever receives stands ready so long before a set-down, s. */
    public static final long READY_BEFORE_S = 60;

    private static final long MINUTE_S = 60;

    /** Not yet asked. */
    private static final int UNKNOWN = Integer.MIN_VALUE;

    /**
     * People and their ways on foot.
     *
     * @param walkS from each place to each, s
     */
    public record People(List<TeamRow> teams, List<List<Long>> walkS) {
        public People {
            teams = List.copyOf(teams);
            walkS = walkS.stream().map(List::copyOf).toList();
        }
    }

    /**
     * Hours of the weather and lines in stock.
     *
     * @param untilS end of each hour, s; each begins where the one before ends
     * @param firstS start of the first, s
     * @param linesByLength lines, shortest first
     */
    public record Hours(long firstS, List<Long> untilS, List<Integer> linesByLength) {
        public Hours {
            untilS = List.copyOf(untilS);
            linesByLength = List.copyOf(linesByLength);
        }
    }

    /** What holds all day. */
    public record Constants(DayRules rules, FuelRules fuel, Rates rates) {}

    final DayRules rules;
    final FuelRules fuel;
    final Rates rates;
    final SpotRow[] spots;
    final TripRow[] trips;
    final TeamRow[] teams;
    final long[][] walkS;
    final int[] lines;
    final boolean[][] serves;

    /** Where a trip needs a team; none when those who stay there do. */
    final int[] teamPlace;

    /** For each trip where a team must come to hook it; {@link #NONE} where none need. */
    final int[] hookPlace;

    /** When the wind or the day closes a trip for good, s; negative when it is never open. */
    final long[] windowEndS;

    private final Parts parts;
    private final LegTimes legTimes;
    private final long firstS;
    private final long[] untilS;
    private final long lastS;

    /** For each minute the hour in which it begins. */
    private final int[] slotAt;

    private final boolean[] teamAtDrop;
    private final boolean[] teamAtHook;

    /** For each team and trip whether it may do what the trip asks of one. */
    private final boolean[] works;

    private final boolean[] hooks;

    /** For each trip what must be released before, and how long before, s. */
    final int[][] afterTrips;

    final long[][] afterWaitS;
    private final int[] loaded;
    private final int[] most;
    private final int[] empty;

    /** Of each empty way the last hour until which its way in holds. */
    private final int[] heldUntil;

    private final double[] leastLoadedS;
    private final boolean[] open;
    private final List<@Nullable SetDownPrice> setDowns;
    private final List<@Nullable SetDownPrice> setDownGuesses;
    private final int[] loadedGuess;
    private final int[] emptyGuess;

    /** For each trip and line how much more than the least its first way took that was found, s. */
    private final int[] loadedMore;

    /** The same for each empty way and line. */
    private final int[] emptyMore;

    private final long longestHookUpS;
    private final boolean closedByHours;

    private boolean guessing;
    private boolean guessed;

    /** Whether what was asked last was given up because the time was over. */
    private boolean isCut;

    /** How often what was asked for became known, or was forgotten. */
    private long finds;

    /** A day of these parts. */
    public DayTable(List<SpotRow> spots, List<TripRow> trips, Parts parts) {
        this.rules = parts.constants().rules();
        this.fuel = parts.constants().fuel();
        this.rates = parts.constants().rates();
        this.spots = spots.toArray(SpotRow[]::new);
        this.trips = trips.toArray(TripRow[]::new);
        this.teams = parts.people().teams().toArray(TeamRow[]::new);
        this.walkS =
                parts.people().walkS().stream()
                        .map(row -> row.stream().mapToLong(Long::longValue).toArray())
                        .toArray(long[][]::new);
        this.lines = parts.hours().linesByLength().stream().mapToInt(line -> line).toArray();
        this.serves = new boolean[teams.length][spots.size()];
        for (int team = 0; team < teams.length; team++) {
            for (int place : teams[team].serves()) {
                serves[team][place] = true;
            }
        }
        this.firstS = parts.hours().firstS();
        this.untilS = parts.hours().untilS().stream().mapToLong(Long::longValue).toArray();
        this.lastS = untilS.length == 0 ? firstS : untilS[untilS.length - 1];
        this.slotAt = slotsByMinute();
        this.parts = parts;
        this.legTimes = parts.legTimes();
        this.closedByHours = legTimes.isClosedByHours();
        this.longestHookUpS = trips.stream().mapToLong(TripRow::hookUpS).max().orElse(0);
        this.afterTrips = new int[trips.size()][];
        this.afterWaitS = new long[trips.size()][];
        this.teamAtDrop = new boolean[trips.size()];
        this.teamAtHook = new boolean[trips.size()];
        this.works = new boolean[teams.length * trips.size()];
        this.hooks = new boolean[teams.length * trips.size()];
        int hours = untilS.length;
        this.loaded = unknown(trips.size() * lines.length * hours * hours);
        this.most = unknown(loaded.length);
        this.setDowns = new ArrayList<>(Collections.nCopies(loaded.length, null));
        this.setDownGuesses =
                new ArrayList<>(Collections.nCopies(trips.size() * lines.length * hours, null));
        this.empty = unknown(spots.size() * spots.size() * (lines.length + 1) * hours);
        this.heldUntil = unknown(empty.length);
        this.leastLoadedS = new double[trips.size() * hours];
        Arrays.fill(leastLoadedS, Double.NaN);
        this.open = new boolean[trips.size() * hours];
        this.loadedGuess = unknown(trips.size() * hours);
        this.emptyGuess = unknown(spots.size() * spots.size() * hours);
        this.loadedMore = unknown(trips.size() * lines.length);
        this.emptyMore = unknown(spots.size() * spots.size() * (lines.length + 1));
        this.teamPlace = new int[trips.size()];
        this.hookPlace = new int[trips.size()];
        this.windowEndS = new long[trips.size()];
        for (int k = 0; k < trips.size(); k++) {
            List<TripRow.After> after = trips.get(k).after();
            afterTrips[k] = after.stream().mapToInt(TripRow.After::trip).toArray();
            afterWaitS[k] = after.stream().mapToLong(TripRow.After::waitS).toArray();
            teamAtDrop[k] = needsTeamAtDrop(trips.get(k));
            teamAtHook[k] = needsTeamAtHook(trips.get(k));
            hookPlace[k] = teamAtHook[k] ? trips.get(k).from() : NONE;
            teamPlace[k] = teamAtDrop[k] ? trips.get(k).to() : hookPlace[k];
            for (int team = 0; team < teams.length; team++) {
                hooks[team * trips.size() + k] = teamAtHook[k] && findMayHook(team, k);
                works[team * trips.size() + k] =
                        teamAtDrop[k] ? findMayReceive(team, k) : mayHook(team, k);
            }
            windowEndS[k] = -1;
            for (int slot = 0; slot < hours; slot++) {
                open[k * hours + slot] = legTimes.isOpen(k, slot);
                if (open[k * hours + slot]) {
                    windowEndS[k] = Math.min(untilS[slot], rules.endS());
                }
            }
        }
    }

    /** The same day, which remembers and guesses for itself; both may be asked at once. */
    DayTable fork() {
        return new DayTable(List.of(spots), List.of(trips), parts);
    }

    /** The rest of what a day is made of. */
    public record Parts(Constants constants, People people, Hours hours, LegTimes legTimes) {}

    private int[] slotsByMinute() {
        int minutes = (int) ((lastS - firstS) / MINUTE_S) + 1;
        int[] all = new int[minutes];
        int slot = 0;
        for (int minute = 0; minute < minutes; minute++) {
            while (slot < untilS.length && firstS + minute * MINUTE_S >= untilS[slot]) {
                slot++;
            }
            all[minute] = slot;
        }
        return all;
    }

    private static int[] unknown(int count) {
        int[] all = new int[count];
        Arrays.fill(all, UNKNOWN);
        return all;
    }

    public boolean needsTeamAtDrop(int trip) {
        return teamAtDrop[trip];
    }

    boolean needsTeamAtHook(int trip) {
        return teamAtHook[trip];
    }

    private boolean needsTeamAtDrop(TripRow trip) {
        SpotRow to = spots[trip.to()];
        return to.site() && (trip.standsUp() || to.receiverFromS() >= NEVER_S);
    }

    /** Whether a trip stands a pole up where a team guys it. */
    boolean isGuyed(int trip) {
        return trips[trip].standsUp() && teamAtDrop[trip];
    }

    private boolean needsTeamAtHook(TripRow trip) {
        SpotRow from = spots[trip.from()];
        return from.site() && from.hookerFromS() >= NEVER_S;
    }

    /** Whether nobody who may hook ever stands where a trip begins: there no team is sent to. */
    public boolean hasNobodyToHook(int trip) {
        SpotRow from = spots[trips[trip].from()];
        return !from.site() && from.hookerFromS() >= NEVER_S;
    }

    /** Whether nobody who may receive ever stands where a trip ends: there no team is sent to. */
    public boolean hasNobodyToReceive(int trip) {
        SpotRow to = spots[trips[trip].to()];
        return !to.site() && to.receiverFromS() >= NEVER_S;
    }

    /** Whether a team must be at either end of a trip; one team cannot be at both. */
    public boolean needsTwoTeams(int trip) {
        return teamAtHook[trip] && teamAtDrop[trip];
    }

    /** Whether a trip that needs one team needs it where it begins. */
    public boolean needsTeamAtPickUp(int trip) {
        return teamAtHook[trip];
    }

    /** Where a team does something for a trip when each place has its team; {@link #NONE} when it does nothing. */
    int placeFor(int team, int trip, int[] teamOf) {
        int place = teamPlace[trip];
        if (place >= 0 && teamOf[place] == team) {
            return place;
        }
        int pickUp = hookPlace[trip];
        return pickUp >= 0 && teamOf[pickUp] == team ? pickUp : NONE;
    }

    /** Whether fuel is kept where the machine may stand and somebody may fill it. */
    public boolean hasFuel() {
        return Arrays.stream(spots).anyMatch(SpotRow::fuel);
    }

    /** How many trips there are. */
    public int trips() {
        return trips.length;
    }

    /** Whether a trip can be flown on no day: it waits for what is not flown, or is closed at every hour. */
    boolean isNeverFlown(int trip) {
        return trips[trip].waitsForLeftOut() || windowEndS[trip] < 0;
    }

    /** Where a trip's people are, else where it goes. */
    int workPlace(int trip) {
        return teamPlace[trip] >= 0 ? teamPlace[trip] : trips[trip].to();
    }

    /** How many trips are so. */
    int countNeverFlown() {
        return (int) IntStream.range(0, trips.length).filter(this::isNeverFlown).count();
    }

    /** Whether there are so many trips that how often and how far is fuelled decides much of the day. */
    boolean hasManyTrips() {
        return trips.length > FEW_FUELLINGS_TRIPS;
    }

    /** Whether every trip begins at the same place: then every order flies nearly the same. */
    boolean isAllHookedUpAtOnePlace() {
        return Arrays.stream(trips).mapToInt(TripRow::from).distinct().count() <= 1;
    }

    /** Whether no team is ever flown: then its own order and the machine's hang together by waits alone. */
    boolean arePeopleOnFoot() {
        return Arrays.stream(teams)
                .allMatch(team -> team.landing().stream().allMatch(place -> place < 0));
    }

    /** From when the machine may fly, s. */
    public long startS() {
        return rules.startS();
    }

    /** By when the machine must be down, s. */
    public long endS() {
        return rules.endS();
    }

    /** When the wind or the day closes a trip for good, s; negative when it is never open. */
    public long windowEndS(int trip) {
        return windowEndS[trip];
    }

    /** Whether something that a trip waits for is not flown at all. */
    public boolean waitsForLeftOut(int trip) {
        return trips[trip].waitsForLeftOut();
    }

    /** Whether a way that there is not now may be there in a later hour. */
    boolean isClosedByHours() {
        return closedByHours;
    }

    /** How many hours of weather there are. */
    public int slots() {
        return untilS.length;
    }

    long slotFromS(int slot) {
        return slot == 0 ? firstS : untilS[slot - 1];
    }

    long slotUntilS(int slot) {
        return untilS[slot];
    }

    /** Until when the machine may be in the air: the day's end, or that of the weather that is known. */
    long downS() {
        return Math.min(rules.endS(), lastS);
    }

    /** The hour at a time; {@link #NONE} when no weather is known then. */
    int slot(long timeS) {
        if (timeS < firstS || timeS >= lastS) {
            return NONE;
        }
        int slot = slotAt[(int) ((timeS - firstS) / MINUTE_S)];
        while (timeS >= untilS[slot]) {
            slot++;
        }
        return slot;
    }

    boolean isOpen(int trip, int slot) {
        return open[trip * untilS.length + slot];
    }

    int loadedS(int trip, int line, int slotFrom, int slotTo) {
        int at = ((trip * lines.length + line) * untilS.length + slotFrom) * untilS.length + slotTo;
        if (loaded[at] == UNKNOWN) {
            int row = trip * lines.length + line;
            if (guessing && loadedMore[row] != UNKNOWN) {
                guessed = true;
                return leastLoadedGuessS(trip, slotFrom) + loadedMore[row];
            }
            int asked = ask(() -> legTimes.loadedS(trip, line, slotFrom, slotTo));
            if (isCut) {
                return asked;
            }
            loaded[at] = asked;
            finds++;
            if (asked >= 0 && loadedMore[row] == UNKNOWN) {
                loadedMore[row] = asked - leastLoadedGuessS(trip, slotFrom);
            }
        }
        return loaded[at];
    }

    /** What the comforts cost that a lift refuses; guessed where its way is. */
    SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
        int row = (trip * lines.length + line) * untilS.length;
        int at = (row + slotFrom) * untilS.length + slotTo;
        boolean known = loaded[at] != UNKNOWN;
        List<@Nullable SetDownPrice> kept = known ? setDowns : setDownGuesses;
        SetDownPrice price = kept.get(known ? at : row + slotTo);
        if (price == null) {
            price =
                    known
                            ? legTimes.setDownPrice(trip, line, slotFrom, slotTo)
                            : legTimes.guessedSetDownPrice(trip, line, slotTo);
            kept.set(known ? at : row + slotTo, price);
        }
        return price;
    }

    int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
        int at = ((trip * lines.length + line) * untilS.length + slotFrom) * untilS.length + slotTo;
        if (most[at] == UNKNOWN) {
            int asked = ask(() -> legTimes.mostFuelKg(trip, line, slotFrom, slotTo));
            if (isCut) {
                return asked;
            }
            most[at] = asked;
        }
        return most[at];
    }

    int emptyS(int from, int to, int line, int slot) {
        int row = (from * spots.length + to) * (lines.length + 1) + line + 1;
        int at = row * untilS.length + slot;
        if (empty[at] == UNKNOWN) {
            if (guessing && emptyMore[row] != UNKNOWN) {
                guessed = true;
                return leastEmptyGuessS(from, to, slot) + emptyMore[row];
            }
            int asked = ask(() -> legTimes.emptyS(from, to, line, slot));
            if (isCut) {
                return asked;
            }
            empty[at] = asked;
            finds++;
            if (asked >= 0 && emptyMore[row] == UNKNOWN) {
                emptyMore[row] = asked - leastEmptyGuessS(from, to, slot);
            }
        }
        return empty[at];
    }

    /**
     * Whether an empty way may be flown that comes in, and hovers on, in another hour than it leaves in; of one that is
     * guessed it is not asked.
     */
    boolean holdsUntil(EmptyWay way, int slotEnd) {
        int row = (way.from() * spots.length + way.to()) * (lines.length + 1) + way.line() + 1;
        int at = row * untilS.length + way.slot();
        if (slotEnd == way.slot() || empty[at] == UNKNOWN) {
            return true;
        }
        if (heldUntil[at] == UNKNOWN) {
            heldUntil[at] = lastHeld(way);
        }
        return slotEnd <= heldUntil[at];
    }

    private int lastHeld(EmptyWay way) {
        int last = way.slot();
        while (last + 1 < untilS.length && legTimes.holdsUntil(way, last + 1)) {
            last++;
        }
        return last;
    }

    /** The longest hook-up of the day, s. */
    long longestHookUpS() {
        return longestHookUpS;
    }

    /** What another thread gave up meanwhile counts too: then it is asked once more. */
    private int ask(IntSupplier question) {
        int cuts = legTimes.cuts();
        int answer = question.getAsInt();
        isCut = legTimes.cuts() > cuts;
        return answer;
    }

    private int leastLoadedGuessS(int trip, int slot) {
        int at = trip * untilS.length + slot;
        if (loadedGuess[at] == UNKNOWN) {
            loadedGuess[at] = (int) Math.min(NO_GUESS_S, leastLoadedS(trip, slot));
        }
        return loadedGuess[at];
    }

    private int leastEmptyGuessS(int from, int to, int slot) {
        int at = (from * spots.length + to) * untilS.length + slot;
        if (emptyGuess[at] == UNKNOWN) {
            emptyGuess[at] = (int) Math.min(NO_GUESS_S, leastEmptyS(from, to, slot));
        }
        return emptyGuess[at];
    }

    /**
     * From now on a way that was found in one hour is guessed in every other, until {@link #stopGuessing()}: as much
     * longer than what no way goes below as it was in the first. To find a way takes far longer than to build a
     * day, and most days are not worth one.
     */
    void startGuessing() {
        guessing = true;
        guessed = false;
    }

    /**
     * Forgets which ways were asked for: what a search finds then hangs on nothing that was asked before it.
     */
    void forget() {
        for (int[] known : List.of(loaded, empty, loadedMore, emptyMore)) {
            Arrays.fill(known, UNKNOWN);
        }
        finds++;
    }

    /** Learns of a fork which ways were asked for. */
    void learn(DayTable fork) {
        learn(loaded, fork.loaded);
        learn(empty, fork.empty);
        learn(most, fork.most);
        learn(loadedMore, fork.loadedMore);
        learn(emptyMore, fork.emptyMore);
        finds++;
    }

    private static void learn(int[] mine, int[] others) {
        for (int i = 0; i < mine.length; i++) {
            mine[i] = mine[i] == UNKNOWN ? others[i] : mine[i];
        }
    }

    /** Changes whenever a way becomes known that may have been guessed before. */
    long finds() {
        return finds;
    }

    boolean isGuessing() {
        return guessing;
    }

    /** Whether anything was guessed since the guessing began. */
    boolean hasGuessed() {
        return guessed;
    }

    /** What is built now rests on guesses made before. */
    void restOnGuesses() {
        guessed = true;
    }

    /** Whether anything was guessed since the guessing began. */
    boolean stopGuessing() {
        guessing = false;
        return guessed;
    }

    /** How often a way was given up because the time was over. */
    int cuts() {
        return legTimes.cuts();
    }

    double leastLoadedS(int trip, int slot) {
        int at = trip * untilS.length + slot;
        if (Double.isNaN(leastLoadedS[at])) {
            leastLoadedS[at] = legTimes.leastLoadedS(trip, slot);
        }
        return leastLoadedS[at];
    }

    double leastEmptyS(int from, int to, int slot) {
        if (from == to) {
            return 0;
        }
        return legTimes.leastEmptyS(from, to, slot);
    }

    /**
     * Whether somebody who may do what a trip asks can come to its place at all: on foot, or by air with
     * the ways on foot to and from the landing places that teams take; where a team must be at either end, one to each.
     * False proves that no order flies it.
     */
    public boolean isReached(int trip) {
        int place = teamPlace[trip];
        for (int team = 0; place >= 0 && team < teams.length; team++) {
            boolean works = mayWork(team, trip) && comes(teams[team], place);
            if (works && (!needsTwoTeams(trip) || isHookedBesides(team, trip))) {
                return true;
            }
        }
        return place < 0;
    }

    /**
     * Before when nobody can have stood ready where a trip is let go, whatever the order, s: whoever stays there, else
     * the first team that may receive it, on foot or flown from next to it.
     */
    long receivedFromS(int trip) {
        long aheadS = Math.max(READY_BEFORE_S, trips[trip].standingUpS());
        return aheadS
                + (needsTeamAtDrop(trip)
                        ? teamFromS(team -> mayWork(team, trip), teamPlace[trip])
                        : Math.min(spots[trips[trip].to()].receiverFromS(), NEVER_S / 2));
    }

    /** Before when nobody can have hooked a trip, whatever the order, s. */
    private long hookedFromS(int trip) {
        return trips[trip].hookUpS()
                + (needsTeamAtHook(trip)
                        ? teamFromS(team -> mayHook(team, trip), hookPlace[trip])
                        : Math.min(spots[trips[trip].from()].hookerFromS(), NEVER_S / 2));
    }

    private long teamFromS(IntPredicate may, int place) {
        long bestS = NEVER_S / 2;
        for (int team = 0; team < teams.length; team++) {
            if (may.test(team)) {
                long wayS = Math.min(walkS[teams[team].start()][place], 2 * rules.boardingS());
                bestS = Math.min(bestS, teams[team].fromS() + wayS);
            }
        }
        return bestS;
    }

    /** Whether whoever may hook a trip can only have done so when the wind has closed it or the day is over. */
    public boolean isHookedTooLate(int trip) {
        return hookedFromS(trip) > windowEndS[trip];
    }

    /** The same of whoever may receive it. */
    public boolean isReceivedTooLate(int trip) {
        return receivedFromS(trip) > windowEndS[trip];
    }

    /** Whether another team can come to hook a trip that one receives. */
    private boolean isHookedBesides(int receiver, int trip) {
        return IntStream.range(0, teams.length)
                .anyMatch(
                        team ->
                                team != receiver
                                        && mayHook(team, trip)
                                        && comes(teams[team], hookPlace[trip]));
    }

    /** On foot; or boarding where it can walk to, and walking on from anywhere that it is landed. */
    private boolean comes(TeamRow team, int place) {
        long[] fromStartS = walkS[team.start()];
        boolean boards = false;
        boolean landed = false;
        for (int at = 0; at < spots.length; at++) {
            int to = team.landing().get(at);
            boards |= to >= 0 && fromStartS[at] < NO_WALK_S;
            landed |= to >= 0 && walkS[to][place] < NO_WALK_S;
        }
        return fromStartS[place] < NO_WALK_S || (boards && landed);
    }

    /** Whether a team may do what a trip asks of one; of two, what it asks where it is let go. */
    boolean mayWork(int team, int trip) {
        return works[team * trips.length + trip];
    }

    /** Whether a team may hook a trip that asks one for it. */
    boolean mayHook(int team, int trip) {
        return hooks[team * trips.length + trip];
    }

    private boolean findMayReceive(int team, int trip) {
        TeamRow row = teams[team];
        return serves[team][trips[trip].to()]
                && (!trips[trip].standsUp() || row.guys())
                && row.receives();
    }

    private boolean findMayHook(int team, int trip) {
        return serves[team][trips[trip].from()] && teams[team].hooks();
    }
}
