package underhook.planner.search;

/**
 * When no order of the placed trips is down before: the machine flies at least so long and stands now and then; no
 * trip is let go before its people, what it waits for and its place are there; and teams make places ready and guy
 * poles one after the other. After the last release comes the way to where the machine may stand.
 *
 * <p>Each of the three is counted for itself, so it lies well below most days on which the machine waits for crews.
 */
final class FinishBound {
    private final DayTable table;
    private final HookChoices hooks;

    /** Trips that are flown, however loads are combined. */
    private final boolean[] placed;

    private final HomeWays home;

    FinishBound(DayTable table, HookChoices hooks) {
        this.table = table;
        this.hooks = hooks;
        this.placed = hooks.certain(table.trips.length);
        this.home = new HomeWays(table);
    }

    /**
     * The bound, s.
     *
     * @param flownS what no order flies less than, s
     */
    long finishS(double flownS) {
        long finishS = machineS((long) Math.floor(flownS));
        Earliest earliest = new Earliest(table, placed);
        TeamWork work = new TeamWork(table, placed);
        for (int k = 0; k < placed.length; k++) {
            if (placed[k]) {
                TripRow trip = table.trips[k];
                long laterS = (trip.releases() - 1) * trip.nextReleaseS();
                finishS = Math.max(finishS, earliest.releaseS(k) + laterS + home.leastS(trip.to()));
            }
        }
        finishS = Math.max(finishS, work.lastReleaseS() + leastHomeS());
        return Math.max(finishS, new TeamRounds(table, hooks, earliest, home).finishS());
    }

    private long machineS(long flownS) {
        boolean any = false;
        double moreKg = table.fuel.startKg();
        for (int k = 0; k < placed.length; k++) {
            if (placed[k]) {
                any = true;
                double kgPerS = table.fuel.setDownKgPerS(table.trips[k].standsUp());
                moreKg += (kgPerS - table.fuel.burnKgPerS()) * table.trips[k].setDownS();
            }
        }
        long stopsS = LeastStops.ofDay(table, moreKg, savesS()).stopsS(flownS);
        return table.rules.startS() + (any ? flownS + stopsS : 0);
    }

    /** What flying before the first trip can save later: the way to another laydown, where nobody is flown. */
    private long savesS() {
        for (TeamRow team : table.teams) {
            if (team.landing().stream().anyMatch(place -> place >= 0)) {
                return DayTable.NEVER_S;
            }
        }
        long longestS = 0;
        int cuts = table.cuts();
        for (int to = 0; to < table.spots.length; to++) {
            for (int hour = 0; hour < table.slots() && table.spots[to].ground(); hour++) {
                int wayS =
                        to == table.rules.startPlace()
                                ? 0
                                : table.emptyS(table.rules.startPlace(), to, DayTable.NONE, hour);
                longestS = wayS < 0 ? DayTable.NEVER_S : Math.max(longestS, wayS);
            }
        }
        return table.cuts() > cuts ? DayTable.NEVER_S : longestS;
    }

    private long leastHomeS() {
        long leastS = DayTable.NEVER_S;
        for (int k = 0; k < placed.length; k++) {
            leastS =
                    placed[k] && table.trips[k].standsUp()
                            ? Math.min(leastS, home.leastS(table.trips[k].to()))
                            : leastS;
        }
        return leastS < DayTable.NEVER_S ? leastS : 0;
    }
}
