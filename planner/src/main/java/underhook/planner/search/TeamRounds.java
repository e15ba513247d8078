package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * When the machine is down at the earliest, as each team goes from place to place and guys poles there.
 *
 * <p>Every sharing of the places among the teams that may stand up their poles is looked at, and of each team every
 * order of its places. Of an order holds:
 *
 * <ul>
 *   <li>Whatever a team does there and wherever it comes back, before the last pole of some places is let go it has
 *       come to the first of them, not before the machine can let something go there; has gone between them all; and
 *       has done all that {@link PlaceWork} counts for each, but for the guying of that pole. These follow each other,
 *       so their sum is a bound, whatever is done in several visits.
 *   <li>It comes to a place, stands ready for something that readies it and waits while the wind closes that; from then
 *       on or from its coming back it makes ready, waits while the wind closes the pole, and guys it. What comes later
 *       is never let go sooner, so of all ways to the same work done and the same place the soonest is enough.
 * </ul>
 *
 * <p>So the later of both is a bound for each pole of an order, one after the other; the machine then flies home from the
 * last. One team works at a place.
 */
final class TeamRounds {
    /** Orders of so many places are looked at for a team; where one may work at more, this says nothing. */
    private static final int MOST_PLACES = 9;

    /** Sharings looked at; where there are more, this says nothing. */
    private static final int MOST_SHARINGS = 200_000;

    private final DayTable table;
    private final LiftHours lifts;
    private final PlaceWork work;
    private final Earliest earliest;
    private final HomeWays home;
    private final List<Integer> places;

    /** For each team and set of its places when it is done at the earliest, s. */
    private final long[][] doneS;

    /** For each team the bit of each place; 0 where it may not work. */
    private final int[][] bits;

    private int sharings;
    private long bestS;

    TeamRounds(DayTable table, HookChoices hooks, Earliest earliest, HomeWays home) {
        this.table = table;
        this.lifts = new LiftHours(table);
        this.work = new PlaceWork(table, hooks);
        this.earliest = earliest;
        this.home = home;
        this.places = IntStream.range(0, table.spots.length).filter(work::hasPole).boxed().toList();
        this.doneS = new long[table.teams.length][];
        this.bits = new int[table.teams.length][table.spots.length];
    }

    /** The bound, s; the start of the day where it says nothing. */
    long finishS() {
        for (int team = 0; team < table.teams.length; team++) {
            int count = 0;
            for (int place : places) {
                if (mayWork(team, place)) {
                    bits[team][place] = 1 << count++;
                }
                if (count > MOST_PLACES) {
                    return table.rules.startS();
                }
            }
        }
        for (int team = 0; team < table.teams.length; team++) {
            doneS[team] = doneS(team);
        }
        bestS = DayTable.NEVER_S;
        share(0, new int[table.teams.length], table.rules.startS());
        return sharings > MOST_SHARINGS || bestS >= DayTable.NEVER_S ? table.rules.startS() : bestS;
    }

    /** Gives each place to each team that may have it, while that is done before the best known. */
    private void share(int next, int[] sets, long lastS) {
        if (lastS >= bestS || ++sharings > MOST_SHARINGS) {
            return;
        }
        if (next == places.size()) {
            bestS = lastS;
            return;
        }
        for (int team = 0; team < sets.length; team++) {
            int bit = bits[team][places.get(next)];
            if (bit != 0) {
                sets[team] |= bit;
                share(next + 1, sets, Math.max(lastS, doneS[team][sets[team]]));
                sets[team] &= ~bit;
            }
        }
    }

    private boolean mayWork(int team, int place) {
        return IntStream.range(0, table.trips.length)
                .filter(k -> work.isPole(k, place))
                .allMatch(k -> table.mayWork(team, k));
    }

    private long[] doneS(int team) {
        int[] own = places.stream().filter(at -> bits[team][at] != 0).mapToInt(at -> at).toArray();
        TeamWays ways = new TeamWays(table, team);
        long[][] sumS = sumS(ways, own);
        long[] done = new long[1 << own.length];
        Arrays.fill(done, DayTable.NEVER_S);
        done[0] = table.rules.startS();
        int[] power = new int[own.length + 1];
        power[0] = 1;
        for (int i = 0; i < own.length; i++) {
            power[i + 1] = power[i] * 3;
        }
        // For each place nothing yet, made ready, guyed: by digits of three; and where the team is.
        long[][] freeS = new long[power[own.length]][own.length];
        for (long[] row : freeS) {
            Arrays.fill(row, DayTable.NEVER_S);
        }
        for (int state = 0; state < freeS.length; state++) {
            int guyed = guyed(state, own.length);
            for (int i = 0; i < own.length; i++) {
                int stage = state / power[i] % 3;
                if (stage == 2) {
                    continue;
                }
                long comesS =
                        state == 0 ? ways.fromStartS(own[i]) : comesS(ways, own, freeS[state], i);
                if (comesS >= DayTable.NEVER_S) {
                    continue;
                }
                if (stage == 0 && work.isReadied(own[i])) {
                    int next = state + power[i];
                    long laidS = laidS(own[i], comesS + work.leastReceivingS(own[i]));
                    freeS[next][i] = Math.min(freeS[next][i], laidS);
                } else {
                    int next = state + (2 - stage) * power[i];
                    int set = guyed | 1 << i;
                    long letGoS = comesS + work.lastStayS(own[i]);
                    letGoS = openS(own[i], Math.max(letGoS, sumS[set][i]));
                    long guyedS = letGoS + work.shortestGuyingS(own[i]);
                    freeS[next][i] = Math.min(freeS[next][i], guyedS);
                    if (next == allOf(set, power)) {
                        done[set] = Math.min(done[set], letGoS + home.leastS(own[i]));
                    }
                }
            }
        }
        return done;
    }

    /** The set of places at which all is guyed. */
    private static int guyed(int state, int count) {
        int set = 0;
        int left = state;
        for (int i = 0; i < count; i++) {
            set |= left % 3 == 2 ? 1 << i : 0;
            left /= 3;
        }
        return set;
    }

    /** The state in which all is guyed at these places and nothing done elsewhere. */
    private static int allOf(int set, int[] power) {
        int state = 0;
        for (int i = 0; i + 1 < power.length; i++) {
            state += (set >> i & 1) * 2 * power[i];
        }
        return state;
    }

    private static long comesS(TeamWays ways, int[] own, long[] freeS, int to) {
        long soonestS = DayTable.NEVER_S;
        for (int i = 0; i < own.length; i++) {
            soonestS = Math.min(soonestS, freeS[i] + ways.wayS(own[i], own[to]));
        }
        return soonestS;
    }

    /** For each set of places and the last of them: all that is done before its last pole is let go, in sum, s. */
    private long[][] sumS(TeamWays ways, int[] own) {
        int sets = 1 << own.length;
        // From the first thing done until all places are come to: ways alone.
        long[][] wayS = new long[sets][own.length];
        long[][] sumS = new long[sets][own.length];
        long[] workS = new long[sets];
        for (int set = 1; set < sets; set++) {
            int low = Integer.numberOfTrailingZeros(set);
            workS[set] = workS[set & (set - 1)] + work.wholeS(own[low]);
            for (int i = 0; i < own.length; i++) {
                int before = set & ~(1 << i);
                wayS[set][i] = before == 0 ? beginS(ways, own[i]) : DayTable.NEVER_S;
                for (int j = 0; j < own.length; j++) {
                    if ((before >> j & 1) == 1) {
                        long onS = wayS[before][j] + ways.wayS(own[j], own[i]);
                        wayS[set][i] = Math.min(wayS[set][i], onS);
                    }
                }
                sumS[set][i] = wayS[set][i] + workS[set] - work.longestGuyingS(own[i]);
            }
        }
        return sumS;
    }

    /** When something that readies a place may be let go there, no sooner than that, s. */
    private long laidS(int place, long fromS) {
        long soonestS = DayTable.NEVER_S;
        for (int k : work.readiers(place)) {
            soonestS = Math.min(soonestS, openTripS(k, Math.max(fromS, earliest.releaseS(k))));
        }
        return soonestS;
    }

    /** When a team that does something at a place first begins there, s. */
    private long beginS(TeamWays ways, int place) {
        long machineS = DayTable.NEVER_S;
        for (int k = 0; k < table.trips.length; k++) {
            if (work.isPole(k, place) || work.readiers(place).contains(k)) {
                machineS = Math.min(machineS, firstReleaseS(ways, place, k));
            }
        }
        return Math.max(ways.fromStartS(place), machineS - work.beforeFirstS(place));
    }

    /** When the machine lets a trip go at the earliest: the line is fitted when the team need not be flown any more. */
    private long firstReleaseS(TeamWays ways, int place, int k) {
        long machineS = ways.machineFromS(place, table.trips[k].from()) + table.rules.lineChangeS();
        return Math.max(machineS, earliest.lineFromS()) + earliest.outS(k);
    }

    /** The last pole of a place let go no sooner than that, when the wind allows it, s. */
    private long openS(int place, long fromS) {
        long soonestS = DayTable.NEVER_S;
        long lastS = fromS;
        for (int k = 0; k < table.trips.length; k++) {
            if (work.isPole(k, place)) {
                lastS = Math.max(lastS, earliest.releaseS(k));
            }
        }
        for (int k = 0; k < table.trips.length; k++) {
            soonestS = work.isPole(k, place) ? Math.min(soonestS, openTripS(k, lastS)) : soonestS;
        }
        return soonestS;
    }

    /** What is let go in an hour was hooked up in it or in one before. */
    private long openTripS(int k, long fromS) {
        long timeS = flownS(k, fromS);
        int slot = table.slot(timeS);
        while (slot >= 0) {
            boolean isLate = lifts.isBegunBefore(k, slot);
            long carriedS =
                    (long) Math.floor(table.leastLoadedS(k, slot)) + table.trips[k].setDownS();
            long soonestS = isLate ? timeS : Math.max(timeS, table.slotFromS(slot) + carriedS);
            boolean isOpen = table.isOpen(k, slot) && table.slot(soonestS) == slot;
            timeS = flownS(k, isOpen ? soonestS : table.slotUntilS(slot));
            if (isOpen && timeS == soonestS) {
                return timeS;
            }
            slot = table.slot(timeS);
        }
        return DayTable.NEVER_S;
    }

    private long flownS(int k, long fromS) {
        return earliest.releaseS(k, fromS, home.leastS(table.trips[k].to()));
    }
}
