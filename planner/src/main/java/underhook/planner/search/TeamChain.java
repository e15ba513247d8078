package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * From when a team that is flown in once, and walks from there, may have each trip that only it may do.
 *
 * <p>It stands up its poles in some order. At each it comes, makes ready, has the pole let go and guys it, and then walks
 * to the next at least the shortest way. Of all orders in which every pole is let go before the wind closes it, the one
 * in which a pole comes soonest says from when that one may come. What else is set down for the team is not there before
 * it can have walked there; what it hooks after its pole, not before the pole is guyed.
 */
final class TeamChain {
    /** Every order of so many poles is looked at; of more, of the first ones. */
    private static final int MOST_POLES = 12;

    private final DayTable table;
    private final HookChoices hooks;
    private final boolean[] placed;
    private final boolean[] certain;

    TeamChain(DayTable table, HookChoices hooks) {
        this.table = table;
        this.hooks = hooks;
        this.placed = hooks.placed(table.trips.length);
        this.certain = hooks.certain(table.trips.length);
    }

    /** From when trips may come; of those that others may do as well, nothing. */
    static final class From {
        private final DayTable table;
        private final long[] hookS;
        private final long[] releaseS;

        private From(DayTable table) {
            this.table = table;
            this.hookS = new long[table.trips.length];
            this.releaseS = new long[table.trips.length];
        }

        /** What a trip is not let go before, s. */
        long releaseS(int trip) {
            return releaseS[trip];
        }

        /**
         * Whether a trip may be hooked up in an hour.
         *
         * @param last hour in which it may then be let go at the latest
         */
        boolean mayBegin(int trip, int hour, int last) {
            return table.slotUntilS(hour) > hookS[trip] && table.slotUntilS(last) > releaseS[trip];
        }
    }

    /** After a landing at a place at a time; none when no order is in time. */
    Optional<From> from(int team, int landing, long landedS) {
        From from = new From(table);
        for (int k = 0; k < placed.length; k++) {
            int place = table.teamPlace[k];
            if (placed[k] && isOnly(team, k) && isFlownTo(team, place)) {
                long thereS = landedS + table.walkS[landing][place];
                (table.needsTeamAtDrop(k) ? from.releaseS : from.hookS)[k] = thereS;
            }
        }
        List<Integer> poles = poles(team);
        long[] earliestS = earliestS(poles, landing, landedS);
        for (int i = 0; i < earliestS.length; i++) {
            if (earliestS[i] >= DayTable.NEVER_S) {
                return Optional.empty();
            }
            int pole = poles.get(i);
            from.releaseS[pole] = Math.max(from.releaseS[pole], earliestS[i]);
            for (int k = 0; k < placed.length; k++) {
                boolean last =
                        placed[k]
                                && table.trips[k].lastAtPlace()
                                && table.needsTeamAtHook(k)
                                && table.trips[k].from() == table.trips[pole].to();
                if (last) {
                    from.hookS[k] =
                            Math.max(from.hookS[k], earliestS[i] + table.trips[pole].busyAfterS());
                }
            }
        }
        return Optional.of(from);
    }

    /** Whether a team cannot come there before it is flown. */
    boolean isFlownTo(int team, int place) {
        return table.walkS[table.teams[team].start()][place] >= DayTable.NO_WALK_S;
    }

    /** Whether a team may do a trip that needs one, and no other may. */
    boolean isOnly(int team, int trip) {
        if (table.teamPlace[trip] < 0) {
            return false;
        }
        for (int other = 0; other < table.teams.length; other++) {
            if (other != team && table.mayWork(other, trip)) {
                return false;
            }
        }
        return table.mayWork(team, trip);
    }

    /** Poles that are flown on every day. */
    private List<Integer> poles(int team) {
        List<Integer> poles = new ArrayList<>();
        for (int k = 0; k < certain.length && poles.size() < MOST_POLES; k++) {
            if (certain[k]
                    && table.isGuyed(k)
                    && isOnly(team, k)
                    && isFlownTo(team, table.trips[k].to())) {
                poles.add(k);
            }
        }
        return poles;
    }

    /** Of each pole when it may be let go at the earliest; never where no order is in time. */
    private long[] earliestS(List<Integer> poles, int landing, long landedS) {
        int count = poles.size();
        long[][] soonestS = new long[1 << count][count];
        long[][] latestS = new long[1 << count][count];
        for (int done = 1; done < 1 << count; done++) {
            for (int last = 0; last < count; last++) {
                soonestS[done][last] = DayTable.NEVER_S;
                if ((done >> last & 1) == 0) {
                    continue;
                }
                int before = done & ~(1 << last);
                if (before == 0) {
                    soonestS[done][last] = landedS + comeS(landing, poles.get(last));
                }
                for (int other = 0; other < count; other++) {
                    if ((before >> other & 1) == 1) {
                        soonestS[done][last] =
                                Math.min(
                                        soonestS[done][last],
                                        soonestS[before][other]
                                                + nextS(poles.get(other), poles.get(last)));
                    }
                }
            }
        }
        long[] earliestS = new long[count];
        Arrays.fill(earliestS, DayTable.NEVER_S);
        for (int done = (1 << count) - 1; done > 0; done--) {
            for (int last = 0; last < count; last++) {
                long inTimeS = -1;
                for (int next = 0; next < count; next++) {
                    if ((done >> next & 1) == 0) {
                        inTimeS =
                                Math.max(
                                        inTimeS,
                                        latestS[done | 1 << next][next]
                                                - nextS(poles.get(last), poles.get(next)));
                    }
                }
                long closesS = table.windowEndS[poles.get(last)];
                latestS[done][last] =
                        done == (1 << count) - 1 ? closesS : Math.min(closesS, inTimeS);
                if ((done >> last & 1) == 1 && soonestS[done][last] <= latestS[done][last]) {
                    earliestS[last] = Math.min(earliestS[last], soonestS[done][last]);
                }
            }
        }
        return earliestS;
    }

    /** From one pole's release to that of the next, s; who stays at the place does not make it ready again. */
    private long nextS(int pole, int next) {
        boolean stays = table.trips[pole].to() == table.trips[next].to();
        return table.trips[pole].busyAfterS() + (stays ? 0 : comeS(table.trips[pole].to(), next));
    }

    /** On foot to a pole's place and until that is ready, s. */
    private long comeS(int from, int pole) {
        int to = table.trips[pole].to();
        return Math.min(DayTable.NO_WALK_S / 64, table.walkS[from][to]) + readyS(to);
    }

    /** How long a place is made ready at least, however loads are combined, s. */
    private long readyS(int place) {
        long mostS = 0;
        for (List<List<Integer>> group : hooks.groups()) {
            long leastS = DayTable.NEVER_S;
            for (List<Integer> way : group) {
                long wayS = 0;
                for (int k : way) {
                    TripRow trip = table.trips[k];
                    boolean readies = !trip.standsUp() && trip.to() == place;
                    wayS = readies ? Math.max(wayS, trip.readyAfterS()) : wayS;
                }
                leastS = Math.min(leastS, wayS);
            }
            mostS = Math.max(mostS, leastS);
        }
        return mostS;
    }
}
