package underhook.planner.search;

import java.util.List;
import underhook.core.plan.StepKind;

/** What the machine does between lifts: flies empty, lands, fuels, changes the line, rests, waits. */
final class Grounding {
    /** Who refuels elsewhere is flown to rather than waited for so long, s. @source PRACTICE own choice */
    private static final long LONG_WAIT_S = 1800;

    private final DayTable table;
    private final Run run;

    Grounding(Run run) {
        this.table = run.table;
        this.run = run;
    }

    /**
     * Flies to a place: the way back of an open rotation, or an empty move. False where no way leads there, and where
     * it would be flown into the reserve: nothing has happened then.
     */
    boolean flyTo(int to, Cause cause) {
        int slot = table.slot(run.timeS);
        int legS = slot < 0 ? DayTable.NONE : table.emptyS(run.place, to, run.line, slot);
        if (legS < 0 && slot >= 0 && table.isClosedByHours()) {
            EmptyWay closed = new EmptyWay(run.place, to, run.line, slot);
            return waitsForNextHour(closed, cause, Cause.Kind.ZONE) && flyTo(to, cause);
        }
        if (legS < 0 || !keepsReserve(legS + (run.open >= 0 ? table.rules.returnExtraS() : 0))) {
            return false;
        }
        EmptyWay way = new EmptyWay(run.place, to, run.line, slot);
        long extraS = run.open >= 0 ? table.rules.returnExtraS() : 0;
        if (!holdsUntil(way, run.timeS + legS + extraS)) {
            return waitsForNextHour(way, cause, Cause.Kind.WAY_IN) && flyTo(to, cause);
        }
        if (run.open >= 0) {
            run.fly(legS + table.rules.returnExtraS());
            run.closeRotation(to, way);
            return true;
        }
        int from = run.place;
        long startS = run.timeS;
        double fuelStartKg = run.fuelKg;
        run.fly(legS);
        run.flightS += legS;
        run.place = to;
        run.write(
                new Run.Note(StepKind.POSITION, from, DayTable.NONE, List.of(way), cause),
                startS,
                fuelStartKg);
        return true;
    }

    /**
     * Whether a way that is left now keeps the limits of wind until it ends, and while the machine hovers to hook up
     * then: what is landed for may begin at once.
     */
    boolean holdsUntil(EmptyWay way, long endS) {
        int slotEnd = table.slot(endS + table.longestHookUpS());
        return table.holdsUntil(way, slotEnd < 0 ? table.slots() - 1 : slotEnd);
    }

    /**
     * Whether the machine stands where it may wait for the way in of the next hour; then it has.
     *
     * @param held what holds it back
     */
    boolean waitsForNextHour(EmptyWay way, Cause cause, Cause.Kind held) {
        boolean stands = run.open < 0 && table.spots[run.place].ground();
        if (stands) {
            Cause turned = cause.trip() < 0 ? cause : new Cause(held, cause.trip(), way.to());
            waitUntil(table.slotUntilS(way.slot()), turned);
        }
        return stands;
    }

    private boolean keepsReserve(long flownS) {
        double burnKg =
                flownS * table.fuel.burnKgPerS() + (run.engineOff ? table.fuel.startKg() : 0);
        return run.fuelKg - burnKg - table.fuel.spreadKg() >= table.fuel.reserveKg();
    }

    /** Puts the machine on the ground where it can be served before a trip. */
    boolean land(int trip, boolean forFuel) {
        int ground = groundFor(trip, forFuel);
        return ground >= 0
                && ((ground == run.place && run.open < 0)
                        || flyTo(ground, Cause.of(Cause.Kind.MOVE, trip)));
    }

    /** Puts the machine down where that is soonest. */
    boolean landNearest(int trip) {
        int ground = table.spots[run.place].nearestGround();
        boolean isDown = run.open < 0 && table.spots[run.place].ground();
        return isDown || (ground >= 0 && flyTo(ground, Cause.of(Cause.Kind.MOVE, trip)));
    }

    private int groundFor(int trip, boolean forFuel) {
        int ground = run.place;
        if (run.open >= 0 || table.spots[run.place].site()) {
            int from = table.trips[trip].from();
            boolean standsAtHook = !table.spots[from].site() && table.spots[from].ground();
            ground = standsAtHook ? from : table.spots[run.place].nearestGround();
        }
        ground =
                forFuel && ground >= 0 && !table.spots[ground].fuel()
                        ? table.spots[run.place].nearestFuel()
                        : ground;
        return forFuel && ground >= 0 && refuellerWaitS(ground) > LONG_WAIT_S
                ? nearestStaffed(ground)
                : ground;
    }

    /** How long whoever refuels at a place is waited for, s; not above 0 where nobody is. */
    long refuellerWaitS(int at) {
        return table.spots[at].refuellerFromS() - run.timeS;
    }

    /** The nearest place where fuel is kept and somebody is to fill it in; a place itself where there is no other. */
    private int nearestStaffed(int otherwise) {
        int slot = table.slot(run.timeS);
        int best = otherwise;
        int bestS = Integer.MAX_VALUE;
        for (int at = 0; slot >= 0 && at < table.spots.length; at++) {
            boolean serves =
                    table.spots[at].fuel()
                            && table.spots[at].ground()
                            && refuellerWaitS(at) <= LONG_WAIT_S;
            int legS = serves ? table.emptyS(run.place, at, run.line, slot) : DayTable.NONE;
            if (legS >= 0 && legS < bestS) {
                best = at;
                bestS = legS;
            }
        }
        return best;
    }

    /** Fills up to so much here; false where that cannot be or takes nothing. */
    boolean refuel(double toKg, Cause cause) {
        SpotRow spot = table.spots[run.place];
        if (!spot.fuel()) {
            return false;
        }
        double targetKg = Math.floor(Math.min(toKg, table.fuel.usableKg()));
        if (targetKg <= run.fuelKg + 1) {
            return false;
        }
        if (run.timeS < spot.refuellerFromS()) {
            waitUntil(spot.refuellerFromS(), new Cause(Cause.Kind.STAFF, cause.trip(), run.place));
        }
        long startS = run.timeS;
        double fuelStartKg = run.fuelKg;
        run.stand(refuelS(targetKg));
        run.fuelKg = targetKg;
        run.refuels++;
        run.refuelsTried = Math.max(run.refuelsTried, run.refuels);
        run.refuelBusyS[run.place] = run.timeS + table.rules.refuelHandlerBusyS();
        run.write(Run.Note.of(StepKind.REFUEL, run.place, cause), startS, fuelStartKg);
        return true;
    }

    /** How long filling up to so much takes, s; what is filled in besides only flows. */
    long refuelS(double toKg) {
        double beginsS = run.isFilling() ? 0 : table.fuel.refuelS();
        return (long) Math.ceil(beginsS + (toKg - run.fuelKg) / table.fuel.refuelKgPerS());
    }

    void changeLine(int line, Cause cause) {
        run.line = line;
        engineOff(StepKind.LINE_CHANGE, table.rules.lineChangeS(), cause);
    }

    /** A whole break, or what is left of one that fuelling began. */
    void rest(Cause cause) {
        long leftS = run.breakLeftS();
        if (leftS > 0) {
            engineOff(StepKind.BREAK, leftS, cause);
        }
    }

    private void engineOff(StepKind kind, long durationS, Cause cause) {
        long startS = run.timeS;
        run.stand(durationS);
        run.write(Run.Note.of(kind, run.place, cause), startS, run.fuelKg);
    }

    /** Waits on the ground; the engine is stopped when that saves fuel, and long waits are breaks. */
    void waitUntil(long untilS, Cause cause) {
        long durationS = untilS - run.timeS;
        if (durationS >= table.rules.breakS()) {
            engineOff(StepKind.BREAK, durationS, cause);
        } else if (run.engineOff || durationS * table.fuel.burnKgPerS() > table.fuel.startKg()) {
            engineOff(StepKind.WAIT, durationS, cause);
        } else {
            long startS = run.timeS;
            double fuelStartKg = run.fuelKg;
            run.fly(durationS);
            run.write(Run.Note.of(StepKind.WAIT, run.place, cause), startS, fuelStartKg);
        }
    }
}
