package underhook.planner.search;

import java.util.function.Predicate;
import java.util.stream.IntStream;

/** When a trip may be hooked and let go, and what it waits for. */
final class Readiness {
    /** People stand ready this long before a set-down, s. */
    private final DayTable table;

    private final Run run;

    /** For what leaves a place last, all that goes there. */
    private final int[][] brought;

    /** For each pole, what its place is made ready by. */
    private final int[][] readiers;

    /** For each pole that makes ready, the others that do. */
    private final int[][] poles;

    /** What the last answer was forced by. */
    private Cause.Kind kind = Cause.Kind.TEAM;

    private int other = DayTable.NONE;

    Readiness(Run run) {
        this.table = run.table;
        this.run = run;
        this.brought = new int[table.trips.length][];
        this.readiers = new int[table.trips.length][];
        this.poles = new int[table.trips.length][];
        for (int k = 0; k < brought.length; k++) {
            TripRow trip = table.trips[k];
            brought[k] = others(k, trip.lastAtPlace(), one -> one.to() == trip.from());
            readiers[k] = others(k, trip.standsUp(), one -> one.readies(trip));
            poles[k] = others(k, trip.standsUp(), one -> one.isEitherFirst(trip));
        }
    }

    private int[] others(int k, boolean asked, Predicate<TripRow> fits) {
        return IntStream.range(0, asked ? table.trips.length : 0)
                .filter(i -> i != k && fits.test(table.trips[i]))
                .toArray();
    }

    Cause cause(int trip) {
        return new Cause(kind, trip, other);
    }

    /** Whether nothing of what must come before a trip is still to be flown. */
    boolean isDue(int k) {
        for (int before : table.afterTrips[k]) {
            if (run.releasedS[before] < 0) {
                return false;
            }
        }
        return !isAnyLeft(brought[k]) && !isAnyLeft(readiers[k]);
    }

    private boolean isAnyLeft(int[] trips) {
        for (int trip : trips) {
            if (run.isLeft(trip)) {
                return true;
            }
        }
        return false;
    }

    /** Seconds to wait before leaving for a trip; negative when it can never be. */
    long missingS(int k, int hooker, int receiver) {
        TripRow trip = table.trips[k];
        long waitS = 0;
        while (run.timeS + waitS < table.rules.endS()) {
            long leaveS = run.timeS + waitS;
            int slot = table.slot(leaveS);
            int approachS = slot < 0 ? DayTable.NONE : approachS(trip.from(), slot);
            if (approachS < 0) {
                if (slot < 0 || !table.isClosedByHours()) {
                    return -1;
                }
                say(Cause.Kind.ZONE, trip.from());
                waitS += table.slotUntilS(slot) - leaveS;
                continue;
            }
            long hookedS = leaveS + approachS + trip.hookUpS();
            if (approachS > 0 && run.open >= 0) {
                hookedS += table.rules.returnExtraS();
            }
            int slotHook = table.slot(hookedS);
            if (approachS > 0 && !holdsUntil(trip.from(), slot, hookedS - trip.hookUpS())) {
                // The wind turns while it comes: leave in the next row.
                say(Cause.Kind.WAY_IN, trip.from());
                waitS += table.slotUntilS(slot) - leaveS;
                continue;
            }
            int outS =
                    slotHook < 0 ? DayTable.NONE : table.loadedS(k, run.line, slotHook, slotHook);
            if (outS < 0) {
                if (slotHook < 0 || !table.isClosedByHours()) {
                    return -1;
                }
                say(Cause.Kind.ZONE, trip.to());
                waitS += Math.max(1, table.slotUntilS(slotHook) - hookedS);
                continue;
            }
            int slotFirst = table.slot(hookedS + outS + trip.firstSetDownS());
            if (slotFirst >= 0 && slotFirst != slotHook) {
                outS = table.loadedS(k, run.line, slotHook, slotFirst);
            }
            if (outS < 0) {
                say(Cause.Kind.ROW, DayTable.NONE);
                waitS += Math.max(1, table.slotUntilS(slotHook) - hookedS);
                continue;
            }
            long firstS = hookedS + outS + trip.firstSetDownS();
            long lastS = hookedS + outS + trip.setDownS();
            Cause.Kind heldBy = kind;
            int heldOther = other;
            long dropLateS = earliestReleaseS(k, receiver) - firstS;
            Cause.Kind dropKind = kind;
            int dropOther = other;
            long hookLateS = earliestHookS(k, hooker) - hookedS;
            if (dropLateS > hookLateS) {
                say(dropKind, dropOther);
            }
            long shiftS = Math.max(0, Math.max(hookLateS, dropLateS));
            if (shiftS == 0) {
                // People and loads no longer hold it back: what did last stays told.
                say(heldBy, heldOther);
            }
            int slotDrop = table.slot(firstS + shiftS);
            if (slotDrop < 0) {
                return -1;
            }
            if (shiftS == 0 && (slotDrop != slotFirst || slotDrop != table.slot(lastS))) {
                // All is let go in one hour, and the way in of the next may end before it begins.
                say(Cause.Kind.ROW, DayTable.NONE);
                shiftS = table.slotUntilS(slotDrop) - firstS;
            } else if (shiftS == 0 && table.isClosedByHours() && !returns(trip, slotDrop)) {
                say(Cause.Kind.ZONE, trip.to());
                shiftS = Math.max(1, table.slotUntilS(slotHook) - hookedS);
            } else if (shiftS == 0 && run.isOpen(k, slotHook, slotDrop)) {
                return waitS;
            }
            if (shiftS == 0) {
                // The wind: try the next row.
                say(Cause.Kind.WIND, trip.to());
                shiftS = Math.max(1, table.slotUntilS(slotHook) - hookedS);
            }
            waitS += shiftS;
        }
        return -1;
    }

    /** Whether a way leads on from the set-down to where the machine may stand, and to fuel. */
    private boolean returns(TripRow trip, int slot) {
        SpotRow to = table.spots[trip.to()];
        return isOpen(trip.to(), to.nearestGround(), slot)
                && isOpen(trip.to(), to.nearestFuel(), slot);
    }

    private boolean isOpen(int from, int to, int slot) {
        return to < 0 || to == from || table.emptyS(from, to, run.line, slot) >= 0;
    }

    /** As {@link Grounding#holdsUntil} asks it, whichever trip is hooked up. */
    private boolean holdsUntil(int from, int slot, long comesS) {
        int slotEnd = table.slot(comesS + table.longestHookUpS());
        return table.holdsUntil(
                new EmptyWay(run.place, from, run.line, slot),
                slotEnd < 0 ? table.slots() - 1 : slotEnd);
    }

    int approachS(int from, int slot) {
        return run.place == from ? 0 : table.emptyS(run.place, from, run.line, slot);
    }

    /** When a trip may be hooked at the earliest, s: whoever hooks it is there, and free, when the hook-up begins. */
    private long earliestHookS(int k, int team) {
        TripRow trip = table.trips[k];
        long readyS;
        if (table.needsTeamAtHook(k)) {
            readyS =
                    team >= 0 && run.teamPlace[team] == trip.from()
                            ? run.teamFreeS[team]
                            : DayTable.NEVER_S;
            say(Cause.Kind.TEAM, team);
        } else {
            SpotRow spot = table.spots[trip.from()];
            readyS = spot.hookerFromS();
            say(Cause.Kind.STAFF, trip.from());
            if (spot.refuellerAloneHooks() && run.refuelBusyS[trip.from()] > readyS) {
                readyS = run.refuelBusyS[trip.from()];
                say(Cause.Kind.HANDLER, trip.from());
            }
        }
        readyS += Math.max(0, trip.hookUpS() - 1);
        for (int i : brought[k]) {
            if (run.releasedS[i] + 1 > readyS) {
                readyS = run.releasedS[i] + 1;
                say(Cause.Kind.AFTER, i);
            }
        }
        return Math.max(readyS + 1, waitedForS(k, readyS + 1));
    }

    /** From when what waits where something was set down may be hooked: nobody hooks it before that is over, s. */
    private long waitedForS(int k, long otherwiseS) {
        TripRow trip = table.trips[k];
        int[] afterTrips = table.afterTrips[k];
        long readyS = otherwiseS;
        for (int i = 0; i < afterTrips.length; i++) {
            long waitS = table.afterWaitS[k][i];
            long afterS = run.releasedS[afterTrips[i]] + waitS + trip.hookUpS();
            boolean waitsThere = waitS > 0 && trip.from() == table.trips[afterTrips[i]].to();
            if (waitsThere && afterS > readyS) {
                readyS = afterS;
                say(Cause.Kind.AFTER, afterTrips[i]);
            }
        }
        return readyS;
    }

    /**
     * When the first on a hook may be let go at the earliest, s.
     *
     * @param team that receives it; none where whoever stays there does
     */
    long earliestReleaseS(int k, int team) {
        TripRow trip = table.trips[k];
        long standingUpS = trip.standingUpS();
        long aheadS = Math.max(DayTable.READY_BEFORE_S, standingUpS);
        long readyS;
        if (table.needsTeamAtDrop(k)) {
            readyS = run.teamFreeS[team] + aheadS;
            say(Cause.Kind.TEAM, team);
        } else {
            long staying = table.spots[trip.to()].receiverFromS();
            readyS = staying >= DayTable.NEVER_S ? DayTable.NEVER_S : staying + aheadS;
            say(Cause.Kind.STAFF, trip.to());
        }
        int[] afterTrips = table.afterTrips[k];
        for (int i = 0; i < afterTrips.length; i++) {
            long waitS = table.afterWaitS[k][i];
            long afterS = run.releasedS[afterTrips[i]] + (waitS > 0 ? waitS + standingUpS : 0);
            if (afterS > readyS) {
                readyS = afterS;
                say(Cause.Kind.AFTER, afterTrips[i]);
            }
        }
        long hereS = team >= 0 ? run.teamArrivedS[team] : table.spots[trip.to()].receiverFromS();
        return readyS(
                poles[k], hereS, standingUpS, readyS(readiers[k], hereS, standingUpS, readyS));
    }

    /** From when a pole may be let go, the place made ready, before it came, by those of these that were let go. */
    private long readyS(int[] trips, long hereS, long standingUpS, long otherwiseS) {
        long readyS = otherwiseS;
        for (int i : trips) {
            if (run.releasedS[i] >= 0) {
                long fromS = Math.max(run.releasedS[i], hereS);
                long afterS = fromS + table.trips[i].readyAfterS() + standingUpS;
                if (afterS > readyS) {
                    readyS = afterS;
                    say(Cause.Kind.READY, i);
                }
            }
        }
        return readyS;
    }

    private void say(Cause.Kind newKind, int newOther) {
        kind = newKind;
        other = newOther;
    }
}
