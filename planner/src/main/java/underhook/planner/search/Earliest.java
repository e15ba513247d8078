package underhook.planner.search;

import java.util.List;

/**
 * When each trip can be let go at the earliest, whatever the order: the line is fitted, people come, what must lie
 * there lies there, the place is ready.
 */
final class Earliest {
    private final DayTable table;
    private final boolean[] placed;
    private final long[] releaseS;
    private final long lineFromS;
    private final List<LeastStops.Break> breaks;

    /** With the line fitted first thing in the morning. */
    Earliest(DayTable table, boolean[] placed) {
        this(
                table,
                placed,
                new LeastStops.Held(table.rules.startS() + table.rules.lineChangeS(), List.of()));
    }

    /**
     * @param placed trips that are flown; what may be left out, or hung on another hook, holds nothing back
     * @param held from when the line is fitted, and breaks of which it is known when they are
     */
    Earliest(DayTable table, boolean[] placed, LeastStops.Held held) {
        this.table = table;
        this.placed = placed;
        this.lineFromS = held.lineFromS();
        this.breaks = held.breaks();
        this.releaseS = new long[table.trips.length];
        for (int k = 0; k < releaseS.length; k++) {
            releaseS[k] = Math.max(lineFromS + outS(k), table.receivedFromS(k));
        }
        // Chains are no longer than the trips; what runs in a circle is never flown anyhow.
        boolean moved = true;
        for (int round = 0; round < releaseS.length && moved; round++) {
            moved = raise();
        }
    }

    /** First release of a trip at the earliest, s. */
    long releaseS(int trip) {
        return releaseS[trip];
    }

    /**
     * Last release of a trip no sooner than that, s: the machine has come down from it before a break, or hooks it up
     * after that.
     *
     * @param homeS from there to where the machine may stand at least, s
     */
    long releaseS(int trip, long fromS, long homeS) {
        long timeS = fromS;
        for (LeastStops.Break one : breaks) {
            boolean isBefore = timeS + homeS <= one.fromS();
            timeS = isBefore ? timeS : Math.max(timeS, one.untilS() + outS(trip));
        }
        return timeS;
    }

    /** When the line is fitted at the earliest, s. */
    long lineFromS() {
        return lineFromS;
    }

    /** From the hook-up's beginning to the first release of a trip at least, s. */
    long outS(int trip) {
        TripRow row = table.trips[trip];
        double leastS = Double.POSITIVE_INFINITY;
        for (int hour = 0; hour < table.slots(); hour++) {
            leastS = Math.min(leastS, table.leastLoadedS(trip, hour));
        }
        return row.hookUpS()
                + (long) Math.floor(Math.min(leastS, HourLeast.NONE_S))
                + row.firstSetDownS();
    }

    private boolean raise() {
        boolean moved = false;
        for (int k = 0; k < releaseS.length; k++) {
            long leastS = releaseS[k];
            long standingUpS = table.trips[k].standingUpS();
            for (TripRow.After after : table.trips[k].after()) {
                long waitS = after.waitS() > 0 ? after.waitS() + aheadS(k, after.trip()) : 0;
                leastS =
                        placed[after.trip()]
                                ? Math.max(leastS, releaseS[after.trip()] + waitS)
                                : leastS;
            }
            for (int i = 0; i < releaseS.length && table.trips[k].standsUp(); i++) {
                TripRow other = table.trips[i];
                boolean readies =
                        i != k
                                && placed[i]
                                && other.readies(table.trips[k])
                                && table.windowEndS[i] >= 0;
                leastS =
                        readies
                                ? Math.max(leastS, releaseS[i] + other.readyAfterS() + standingUpS)
                                : leastS;
            }
            moved |= leastS > releaseS[k];
            releaseS[k] = leastS;
        }
        return moved;
    }

    /** How long before its release a wait is over at least: before it is hooked where the other lies, or stood up, s. */
    private long aheadS(int k, int other) {
        TripRow trip = table.trips[k];
        return trip.from() == table.trips[other].to() ? outS(k) : trip.standingUpS();
    }
}
