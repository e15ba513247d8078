package underhook.planner.search;

/**
 * In which hours of the weather a trip may be let go, by the hour in which it was hooked up.
 *
 * <p>An hour of the weather lasts as long as its row in the file: a lift may span any number of short ones.
 */
final class LiftHours {
    private final DayTable table;

    /** No lift lasts longer: the engine is on all the while, and runs on what the tank gives, s. */
    private final double longestS;

    LiftHours(DayTable table) {
        this.table = table;
        this.longestS =
                Math.min(
                        (double) table.rules.stretchS(),
                        table.fuel.usableKg() / table.fuel.burnKgPerS());
    }

    /** The last hour in which anything may be let go that was hooked up in one. */
    int last(int hour) {
        int last = hour;
        while (last + 1 < table.slots() && leastS(hour, last + 1) <= longestS) {
            last++;
        }
        return last;
    }

    /** The last hour in which a trip may be let go that was hooked up in one; none where there is none. */
    int last(int trip, int hour) {
        int last = table.isOpen(trip, hour) ? last(hour) : DayTable.NONE;
        while (last > hour && !table.isOpen(trip, last)) {
            last--;
        }
        return last;
    }

    /** Whether a trip that is let go in an hour may have been hooked up in one before. */
    boolean isBegunBefore(int trip, int hour) {
        for (int before = 0; before < hour; before++) {
            if (table.isOpen(trip, before) && last(before) >= hour) {
                return true;
            }
        }
        return false;
    }

    /** What lies between the end of one hour and the beginning of another, s. */
    private long leastS(int hour, int later) {
        return Math.max(0, table.slotFromS(later) - table.slotUntilS(hour) + 1);
    }

    /** Whether anything but its way speaks against a lift; whether the fuel lasts until then, too. To find a way takes long. */
    boolean mayBe(int trip, int line, int hour, int later) {
        if (!table.trips[trip].linesAllowed().get(line)
                || !table.isOpen(trip, hour)
                || !table.isOpen(trip, later)) {
            return false;
        }
        double leftKg = table.mostFuelKg(trip, line, hour, later);
        return leftKg > 0 && leftKg >= leastS(hour, later) * table.fuel.burnKgPerS();
    }

    /** What the way loaded of such a lift takes at the least, because it is hooked up in the one hour, s. */
    long leastLoadedS(int trip, int hour, int later) {
        return Math.max(0, leastS(hour, later) - table.trips[trip].setDownS());
    }

    /**
     * Whole seconds of the way loaded, of a lift that is hooked up in one hour and let go in another; {@link
     * DayTable#NONE} where no lift is.
     */
    int loadedS(int trip, int line, int hour, int later) {
        TripRow row = table.trips[trip];
        if (!mayBe(trip, line, hour, later)) {
            return DayTable.NONE;
        }
        int loadedS = table.loadedS(trip, line, hour, later);
        boolean meets =
                loadedS >= 0
                        && table.slotFromS(hour) + loadedS + row.firstSetDownS()
                                < table.slotUntilS(later)
                        && table.slotUntilS(hour) + loadedS + row.setDownS()
                                > table.slotFromS(later);
        return meets ? loadedS : DayTable.NONE;
    }
}
