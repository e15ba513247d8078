package underhook.planner.search;

/**
 * When no order of the placed trips is down before: the machine flies at least so long and must stand now and then;
 * and no trip is let go before its people, what it waits for and its place are there.
 *
 * <p>Waiting for crews between trips is not bounded, so it lies well below most days.
 */
final class FinishBound {
    private final DayTable table;

    FinishBound(DayTable table) {
        this.table = table;
    }

    /**
     * The bound, s.
     *
     * @param placed trips that are flown, however loads are combined
     * @param flownS what no order flies less than, s
     */
    long finishS(boolean[] placed, double flownS) {
        long airS = (long) Math.floor(flownS);
        // The line is off in the morning, and is fitted once at least.
        long standsS = Math.max(table.rules.lineChangeS(), HourRoom.stopsS(table, airS));
        long finishS = table.rules.startS() + airS + standsS;
        Earliest earliest = new Earliest(table);
        for (int k = 0; k < table.trips.length; k++) {
            if (placed[k]) {
                long laterS = (table.trips[k].releases() - 1) * table.trips[k].nextReleaseS();
                finishS = Math.max(finishS, earliest.releaseS(k) + laterS);
            }
        }
        return finishS;
    }
}
