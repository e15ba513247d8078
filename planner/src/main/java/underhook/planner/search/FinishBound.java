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
        long wholeS = (long) Math.floor(flownS);
        long startS = table.rules.startS();
        Earliest earliest = new Earliest(table, placed);
        long finishS =
                Math.max(
                        peopleS(earliest),
                        new TeamWork(table, placed).lastReleaseS() + leastHomeS());
        if (!isAnyPlaced()) {
            return Math.max(finishS, startS);
        }
        LeastStops stops = LeastStops.ofDay(table, moreKg());
        long machineS = startS + wholeS + stops.stopsS(wholeS);
        // Either the line takes time of its own, or nothing is hooked up before a whole break.
        long laterS = machineS > finishS ? withLineS(wholeS) : 0;
        if (machineS > finishS && stops.mayHoldLine(wholeS, laterS)) {
            Earliest later = new Earliest(table, placed, stops.held(wholeS, laterS));
            long sharedS = Math.max(startS + wholeS + stops.sharedS(wholeS), peopleS(later));
            machineS = Math.min(machineS, sharedS);
        }
        return Math.max(finishS, machineS);
    }

    /** What is flown at least once the line is fitted, wherever that is; people may have been flown before. */
    private long withLineS(long flownS) {
        return (long) Math.ceil(FlightBound.ofTrips(table, hooks).boundS((double) flownS));
    }

    /** When trips and teams let the machine be down, s. */
    private long peopleS(Earliest earliest) {
        long finishS = new TeamRounds(table, hooks, earliest, home).finishS();
        for (int k = 0; k < placed.length; k++) {
            if (placed[k]) {
                TripRow trip = table.trips[k];
                long laterS = (trip.releases() - 1) * trip.nextReleaseS();
                finishS = Math.max(finishS, earliest.releaseS(k) + laterS + home.leastS(trip.to()));
            }
        }
        return finishS;
    }

    private boolean isAnyPlaced() {
        boolean any = false;
        for (boolean one : placed) {
            any |= one;
        }
        return any;
    }

    /** Burnt besides the flow: the first start, and what poles take more. */
    private double moreKg() {
        double moreKg = table.fuel.startKg();
        for (int k = 0; k < placed.length; k++) {
            if (placed[k]) {
                double kgPerS = table.fuel.setDownKgPerS(table.trips[k].standsUp());
                moreKg += (kgPerS - table.fuel.burnKgPerS()) * table.trips[k].setDownS();
            }
        }
        return moreKg;
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
