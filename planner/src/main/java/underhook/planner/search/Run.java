package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import underhook.core.plan.StepKind;

/**
 * A day as far as it is built: clock, fuel, line, where everybody is.
 *
 * <p>Mutable and not safe for threads; it never leaves this package.
 */
final class Run {
    final DayTable table;
    final long[] releasedS;
    final boolean[] dropped;
    final int[] teamPlace;
    final long[] teamFreeS;
    final long[] teamArrivedS;
    final long[] refuelBusyS;

    long timeS;
    int place;
    double fuelKg;
    int line;
    boolean engineOff;

    /** Since when the engine is off, s. */
    long offFromS;

    /** When a refuelling ended behind which nothing was done; never without one. */
    private long filledS;

    long onSinceBreakS;

    /** Whether the engine is on for longer than it may be before some break of what is ordered. */
    boolean overranEngine;

    /** Whether it had no break since the rest of a day is ordered: then it may only just come down in time. */
    private boolean onFromBefore;

    long onTotalS;
    long flightS;
    int refuels;

    /** As many as were tried, also where the trip they were for could not be flown then. */
    int refuelsTried;

    /** Of comforts refused so far, cents. */
    long comfortCents;

    /**
     * Whether a trip may be flown after the wind has closed it, so that a search sees how much too late it is. A
     * day with such a trip is none.
     */
    boolean soft;

    /** How much too late, in sum, s; every late trip counts something. */
    long lateS;

    /** When the last trip was hooked up, s. */
    long hookedS;

    /** The trip whose rotation is not closed yet: the machine hovers where it was set down. */
    int open;

    private long openStartS;
    private int openFrom;
    private double openFuelKg;
    private @Nullable LiftDone openLift;
    private @Nullable Cause openCause;
    private @Nullable DayLog log;
    private int events;
    private int stays;

    Run(DayTable table) {
        this.table = table;
        this.releasedS = new long[table.trips.length];
        this.dropped = new boolean[table.trips.length];
        this.teamPlace = new int[table.teams.length];
        this.teamFreeS = new long[table.teams.length];
        this.teamArrivedS = new long[table.teams.length];
        this.refuelBusyS = new long[table.spots.length];
    }

    /** The morning. */
    void begin(double morningFuelKg, @Nullable DayLog newLog) {
        Arrays.fill(releasedS, -1);
        Arrays.fill(refuelBusyS, 0);
        for (int k = 0; k < dropped.length; k++) {
            dropped[k] = table.isNeverFlown(k);
        }
        for (int team = 0; team < teamPlace.length; team++) {
            teamPlace[team] = table.teams[team].start();
            teamFreeS[team] = Math.max(table.rules.startS(), table.teams[team].fromS());
            teamArrivedS[team] = teamFreeS[team];
        }
        timeS = table.rules.startS();
        place = table.rules.startPlace();
        fuelKg = morningFuelKg;
        line = DayTable.NONE;
        engineOff = true;
        offFromS = timeS;
        filledS = DayTable.NEVER_S;
        onSinceBreakS = 0;
        overranEngine = false;
        onFromBefore = false;
        onTotalS = 0;
        flightS = 0;
        refuels = 0;
        refuelsTried = 0;
        comfortCents = 0;
        lateS = 0;
        open = DayTable.NONE;
        openLift = null;
        openCause = null;
        log = newLog;
        events = 0;
        stays = 0;
    }

    /** Goes on from the middle of a day that was begun. */
    void resume(Midday now) {
        for (int k = 0; k < releasedS.length; k++) {
            releasedS[k] = now.releasedS().get(k);
            dropped[k] &= releasedS[k] < 0;
        }
        now.closed().forEach(trip -> dropped[trip] = releasedS[trip] < 0);
        for (int team = 0; team < teamPlace.length; team++) {
            Midday.Team at = now.teams().get(team);
            teamPlace[team] = at.place();
            teamFreeS[team] = at.freeS();
            teamArrivedS[team] = at.arrivedS();
        }
        for (int i = 0; i < refuelBusyS.length; i++) {
            refuelBusyS[i] = now.refuelBusyS().get(i);
        }
        timeS = now.timeS();
        place = now.place();
        fuelKg = now.fuelKg();
        line = now.line();
        engineOff = now.engineOff();
        offFromS = timeS - now.offS();
        onSinceBreakS = now.onSinceBreakS();
        onFromBefore = true;
        onTotalS = now.onTotalS();
    }

    /** Takes over what another has, and cuts the log they share back to it. */
    void copyFrom(Run other) {
        System.arraycopy(other.releasedS, 0, releasedS, 0, releasedS.length);
        System.arraycopy(other.dropped, 0, dropped, 0, dropped.length);
        refuelsTried = other.refuelsTried;
        standAs(other);
    }

    /** Takes over all but which trips were flown or dropped, and what was tried. */
    void standAs(Run other) {
        System.arraycopy(other.teamPlace, 0, teamPlace, 0, teamPlace.length);
        System.arraycopy(other.teamFreeS, 0, teamFreeS, 0, teamFreeS.length);
        System.arraycopy(other.teamArrivedS, 0, teamArrivedS, 0, teamArrivedS.length);
        System.arraycopy(other.refuelBusyS, 0, refuelBusyS, 0, refuelBusyS.length);
        timeS = other.timeS;
        place = other.place;
        fuelKg = other.fuelKg;
        line = other.line;
        engineOff = other.engineOff;
        offFromS = other.offFromS;
        filledS = other.filledS;
        onSinceBreakS = other.onSinceBreakS;
        overranEngine = other.overranEngine;
        onFromBefore = other.onFromBefore;
        onTotalS = other.onTotalS;
        flightS = other.flightS;
        refuels = other.refuels;
        comfortCents = other.comfortCents;
        lateS = other.lateS;
        hookedS = other.hookedS;
        open = other.open;
        openStartS = other.openStartS;
        openFrom = other.openFrom;
        openFuelKg = other.openFuelKg;
        openLift = other.openLift;
        openCause = other.openCause;
        log = other.log;
        events = other.events;
        stays = other.stays;
        if (log != null) {
            log.cutTo(events, stays);
        }
    }

    boolean isLogged() {
        return log != null;
    }

    /** Runs the engine for so long. */
    void burn(long durationS, double burnKgPerS) {
        if (engineOff) {
            fuelKg -= table.fuel.startKg();
            engineOff = false;
        }
        fuelKg -= durationS * burnKgPerS;
        timeS += durationS;
        onSinceBreakS += durationS;
        onTotalS += durationS;
        overranEngine |= !onFromBefore && onSinceBreakS > table.rules.stretchS();
    }

    /** Stands for so long with the engine off; with all that it was off before, long enough is a break. */
    void stand(long durationS) {
        if (!engineOff) {
            engineOff = true;
            offFromS = timeS;
        }
        timeS += durationS;
        if (timeS - offFromS >= table.rules.breakS()) {
            onSinceBreakS = 0;
            onFromBefore = false;
        }
    }

    /** How much longer the engine must be off for it to be a break, s. */
    long breakLeftS() {
        return Math.max(0, table.rules.breakS() - (engineOff ? timeS - offFromS : 0));
    }

    void fly(long durationS) {
        burn(durationS, table.fuel.burnKgPerS());
    }

    /** A rotation begins here. */
    void openRotation(int trip, long startS, int from, double fuelStartKg) {
        open = trip;
        openStartS = startS;
        openFrom = from;
        openFuelKg = fuelStartKg;
    }

    /** What was lifted, and what it was lifted as soon as. */
    void setLift(LiftDone lift, Cause cause) {
        openLift = lift;
        openCause = cause;
    }

    /** The open rotation ends at a place, by this way back or by none. */
    void closeRotation(int to, @Nullable EmptyWay back) {
        int trip = open;
        int rotationLine = line;
        open = DayTable.NONE;
        place = to;
        flightS += timeS - openStartS;
        filledS = DayTable.NEVER_S;
        if (log != null) {
            log.events.add(
                    new DayEvent(
                            StepKind.ROTATION,
                            openFrom,
                            to,
                            openStartS,
                            timeS,
                            openFuelKg,
                            fuelKg,
                            rotationLine,
                            true,
                            Optional.ofNullable(openLift),
                            DayTable.NONE,
                            back == null ? List.of() : List.of(back),
                            openCause == null ? Cause.of(Cause.Kind.LIFT, trip) : openCause));
            events++;
        }
        openLift = null;
        openCause = null;
    }

    /** What is written of something that is no rotation. */
    record Note(StepKind kind, int from, int team, List<EmptyWay> legs, Cause cause) {
        static Note of(StepKind kind, int at, Cause cause) {
            return new Note(kind, at, DayTable.NONE, List.of(), cause);
        }
    }

    /** Whether the machine was refuelled just now: what is filled in besides is part of it. */
    boolean isFilling() {
        return filledS == timeS;
    }

    /** Writes down what began then with so much fuel and ends now; only where a log is kept. */
    void write(Note note, long startS, double fuelStartKg) {
        filledS = note.kind() == StepKind.REFUEL ? timeS : DayTable.NEVER_S;
        if (log == null) {
            return;
        }
        log.events.add(
                new DayEvent(
                        note.kind(),
                        note.from(),
                        place,
                        startS,
                        timeS,
                        fuelStartKg,
                        fuelKg,
                        line,
                        !engineOff,
                        Optional.empty(),
                        note.team(),
                        note.legs(),
                        note.cause()));
        events++;
    }

    void write(TeamStay stay) {
        if (log != null) {
            log.stays.add(stay);
            stays++;
        }
    }

    /** Whether a trip may be flown from one hour to another: each between them counts, though it lasts minutes only. */
    boolean isOpen(int trip, int slotFrom, int slotTo) {
        for (int slot = slotFrom; slot <= slotTo; slot++) {
            if (!isOpen(trip, slot)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a trip may be flown in an hour, too late counted as may where that is allowed. */
    private boolean isOpen(int trip, int slot) {
        return table.isOpen(trip, slot)
                || (soft && table.slotFromS(slot) >= table.windowEndS[trip]);
    }

    boolean isLeft(int trip) {
        return releasedS[trip] < 0 && !dropped[trip];
    }

    int countDropped() {
        int count = 0;
        for (boolean one : dropped) {
            count += one ? 1 : 0;
        }
        return count;
    }
}
