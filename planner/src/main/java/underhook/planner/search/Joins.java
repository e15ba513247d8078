package underhook.planner.search;

/**
 * Whether the machine can hook up at a site right after a set-down there, without going away in between.
 *
 * <p>Mostly it cannot: what leaves a site last leaves after its pole, and the crew that would hook it still guys
 * the pole. A place is given to one team.
 */
final class Joins {
    private final DayTable table;
    private final boolean[] placed;
    private final boolean[] certain;

    /**
     * @param placed trips that may be flown
     * @param certain trips that are flown, however loads are combined
     */
    Joins(DayTable table, boolean[] placed, boolean[] certain) {
        this.table = table;
        this.placed = placed;
        this.certain = certain;
    }

    /** Whether some trip that ends at a site may be followed at once by one that begins there. */
    boolean isAny(int site) {
        for (int before = 0; before < placed.length; before++) {
            for (int next = 0; next < placed.length; next++) {
                boolean meet =
                        before != next
                                && placed[before]
                                && placed[next]
                                && table.trips[before].to() == site
                                && table.trips[next].from() == site;
                if (meet && mayFollow(before, next)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean mayFollow(int before, int next) {
        TripRow leaves = table.trips[next];
        boolean busy =
                table.needsTeamAtHook(next)
                        && table.needsTeamAtDrop(before)
                        && table.trips[before].busyAfterS() >= leaves.hookUpS();
        return !busy
                && !(leaves.lastAtPlace() && isFollowedThere(before))
                && longestWaitS(before, next) <= longestTripS(next);
    }

    /** Whether something else must be let go at the same place later. */
    private boolean isFollowedThere(int before) {
        TripRow first = table.trips[before];
        for (int k = 0; k < placed.length; k++) {
            TripRow later = table.trips[k];
            boolean same = k != before && certain[k] && later.to() == first.to();
            boolean pole = later.standsUp() && first.readyAfterS() > 0;
            if (same && (pole || waitS(before, k) >= 0)) {
                return true;
            }
        }
        return false;
    }

    private long longestWaitS(int before, int next) {
        return Math.max(0, waitS(before, next));
    }

    /** What one trip waits for after another, s; negative when it does not. */
    private long waitS(int before, int next) {
        long waitS = -1;
        for (TripRow.After after : table.trips[next].after()) {
            waitS = after.trip() == before ? Math.max(waitS, after.waitS()) : waitS;
        }
        return waitS;
    }

    /** The longest from the beginning of the hook-up to the first release at any hour with any line, s. */
    private long longestTripS(int k) {
        long longestS = 0;
        int cuts = table.cuts();
        for (int line : table.lines) {
            for (int hour = 0; hour < table.slots(); hour++) {
                for (int later = hour; later < Math.min(hour + 2, table.slots()); later++) {
                    longestS =
                            table.isOpen(k, hour)
                                    ? Math.max(longestS, table.loadedS(k, line, hour, later))
                                    : longestS;
                }
            }
        }
        TripRow trip = table.trips[k];
        return table.cuts() > cuts
                ? DayTable.NEVER_S
                : longestS + trip.hookUpS() + trip.firstSetDownS();
    }
}
