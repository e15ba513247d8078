package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/** Flies a trip: brings its team, lands for fuel, line or rest where it must, waits, lifts. */
final class Lifts {
    /** Above what is needed when filling for one trip, kg. */
    private static final double SPARE_KG = 10;

    /** Counted for each trip too late besides the time itself, s. */
    private static final long LATE_S = 600;

    /** A stop for fuel in a wait takes at least this much, kg. */
    private static final double WORTH_FUELLING_KG = 25;

    private final DayTable table;
    private final Run run;
    private final Grounding grounding;
    private final TeamMoves teamMoves;
    private final Readiness readiness;

    /** A trip that waits longer than this is not flown now, s. */
    private long patienceS = DayTable.NEVER_S;

    private boolean waitsTooLong;

    /** Whether the last trip flown would be within the day but for the engine's time before a break. */
    private boolean ranTooLong;

    /** What the trip under way waited for last; itself when the machine came late enough. */
    private Cause cause = Cause.of(Cause.Kind.LIFT, DayTable.NONE);

    Lifts(Run run, Grounding grounding, TeamMoves teamMoves) {
        this.table = run.table;
        this.run = run;
        this.grounding = grounding;
        this.teamMoves = teamMoves;
        this.readiness = new Readiness(run);
    }

    Readiness readiness() {
        return readiness;
    }

    /** Whether the last trip not flown would only have had to wait. */
    boolean waitsTooLong() {
        return waitsTooLong;
    }

    /** Flies a trip that need not wait for longer than so; else the run is good for nothing. */
    boolean fly(int k, Wish wish, long mostWaitS) {
        patienceS = mostWaitS;
        waitsTooLong = false;
        boolean flown = fly(k, wish);
        patienceS = DayTable.NEVER_S;
        return flown;
    }

    /** Whether the last trip not flown only had the engine on for too long, as after people who are flown. */
    boolean ranTooLong() {
        return ranTooLong;
    }

    /** Flies a trip after a break where the machine lands nearest. */
    boolean flyRested(int k, Wish wish) {
        if (!grounding.landNearest(k)) {
            return false;
        }
        grounding.rest(Cause.of(Cause.Kind.ENGINE_LIMIT, k));
        return fly(k, wish);
    }

    /** Flies a trip that is due; false when it cannot be: the run is then good for nothing. */
    boolean fly(int k, Wish wish) {
        ranTooLong = false;
        TripRow trip = table.trips[k];
        if (!bring(k, wish, true)) {
            return false;
        }
        if (table.isClosedByHours() && !waitForWays(k, wish)) {
            return false;
        }
        int slot = table.slot(run.timeS);
        int line = slot < 0 ? DayTable.NONE : chooseLine(k, wish.line[k], slot);
        if (line < 0 || table.spots[trip.to()].nearestFuel() < 0) {
            return false;
        }
        return prepare(k, line, slot, wish) && waitAndLift(k, wish);
    }

    /** On the ground until an hour in which there are ways for a trip on some line; false where there is none any more. */
    private boolean waitForWays(int k, Wish wish) {
        int slot = table.slot(run.timeS);
        int open = slot;
        while (open >= 0 && open < table.slots() && !hasWays(k, wish, open)) {
            open++;
        }
        if (open < 0 || open >= table.slots()) {
            return false;
        }
        if (open > slot) {
            waitsTooLong = table.slotFromS(open) - run.timeS > patienceS;
            if (waitsTooLong || !grounding.land(k, false)) {
                return false;
            }
            if (table.slotFromS(open) > run.timeS) {
                grounding.waitUntil(
                        table.slotFromS(open), new Cause(Cause.Kind.ZONE, k, table.trips[k].to()));
            }
        }
        return true;
    }

    private boolean hasWays(int k, Wish wish, int slot) {
        TripRow trip = table.trips[k];
        int line = chooseLine(k, wish.line[k], slot);
        return line >= 0
                && backS(trip.to(), line, slot) >= 0
                && readiness.approachS(trip.from(), slot) >= 0;
    }

    /** Flies a trip that is due with the line and the fuel that there are, and people who walk; false as above. */
    boolean flyAsFitted(int k, Wish wish) {
        return bring(k, wish, false)
                && run.line >= 0
                && table.trips[k].linesAllowed().get(run.line)
                && table.spots[table.trips[k].to()].nearestFuel() >= 0
                && waitAndLift(k, wish);
    }

    /** Brings whoever must be at either end; false where somebody cannot come, or would have to be at both. */
    private boolean bring(int k, Wish wish, boolean mayFly) {
        int hooker = hooker(k, wish);
        int receiver = receiver(k, wish);
        if (table.needsTeamAtHook(k)
                && (hooker < 0
                        || hooker == receiver
                        || !table.mayHook(hooker, k)
                        || !bring(hooker, table.hookPlace[k], wish, mayFly))) {
            return false;
        }
        return !table.needsTeamAtDrop(k)
                || (receiver >= 0
                        && table.mayWork(receiver, k)
                        && bring(receiver, table.trips[k].to(), wish, mayFly));
    }

    private boolean bring(int team, int at, Wish wish, boolean mayFly) {
        if (run.teamPlace[team] == at) {
            return true;
        }
        return (mayFly || !teamMoves.isFlown(team, at, wish)) && teamMoves.bring(team, at, wish);
    }

    /** The team that hooks a trip; none where whoever stays there does. */
    private int hooker(int k, Wish wish) {
        return table.needsTeamAtHook(k) ? wish.teamOf[table.hookPlace[k]] : DayTable.NONE;
    }

    private int receiver(int k, Wish wish) {
        return table.needsTeamAtDrop(k) ? wish.teamOf[table.trips[k].to()] : DayTable.NONE;
    }

    /** The wished line, else the fitted one when it will do, else the shortest that will. */
    private int chooseLine(int k, int wished, int slot) {
        if (wished >= 0 && isLineFit(k, wished, slot)) {
            return wished;
        }
        if (run.line >= 0 && isLineFit(k, run.line, slot)) {
            return run.line;
        }
        for (int line : table.lines) {
            if (isLineFit(k, line, slot)) {
                return line;
            }
        }
        return DayTable.NONE;
    }

    private boolean isLineFit(int k, int line, int slot) {
        return table.trips[k].linesAllowed().get(line) && table.loadedS(k, line, slot, slot) >= 0;
    }

    /** Fuel, line and rest. */
    private boolean prepare(int k, int line, int slot, Wish wish) {
        TripRow trip = table.trips[k];
        int outS = table.loadedS(k, line, slot, slot);
        int backS = backS(trip.to(), line, slot);
        int approachS = readiness.approachS(trip.from(), slot);
        if (backS < 0 || approachS < 0) {
            return false;
        }
        long extraS = table.rules.returnExtraS();
        double needKg = table.fuel.needKg(outS + backS + extraS, trip.setDownS());
        boolean refuels = run.fuelKg - toHookKg(trip, approachS) < needKg;
        boolean changes = run.line != line;
        long turnsS =
                (run.open >= 0 && approachS > 0 ? extraS : 0)
                        + (table.spots[trip.to()].site() ? extraS : 0);
        long tripS = approachS + trip.hookUpS() + outS + trip.setDownS() + backS + turnsS;
        boolean rests = run.onSinceBreakS + tripS > table.rules.stretchS();
        if (!refuels && !changes && !rests) {
            return true;
        }
        boolean landed =
                (changes && !refuels && isFittedThere(trip.from(), line, slot))
                        ? grounding.flyTo(trip.from(), Cause.of(Cause.Kind.MOVE, k))
                        : grounding.land(k, refuels);
        if (!landed) {
            return false;
        }
        if (refuels && !refuel(k, line, needKg, wish)) {
            return false;
        }
        if (changes) {
            grounding.changeLine(line, Cause.of(Cause.Kind.LINE, k));
        }
        if (rests) {
            grounding.rest(Cause.of(Cause.Kind.ENGINE_LIMIT, k));
        } else if (refuels && wish.restsAt(run.refuels)) {
            grounding.rest(Cause.of(Cause.Kind.EARLY_BREAK, k));
        }
        return true;
    }

    /** Whether the machine is sooner at a hook-up with the line off, to fit one there. */
    private boolean isFittedThere(int from, int line, int slot) {
        boolean stands = !table.spots[from].site() && table.spots[from].ground();
        if (run.line >= 0 || run.open >= 0 || run.place == from || !stands) {
            return false;
        }
        int offS = table.emptyS(run.place, from, DayTable.NONE, slot);
        int onS = table.emptyS(run.place, from, line, slot);
        return offS >= 0 && (onS < 0 || offS < onS);
    }

    private boolean refuel(int k, int line, double needKg, Wish wish) {
        int slot = table.slot(run.timeS);
        int approachS = slot < 0 ? DayTable.NONE : readiness.approachS(table.trips[k].from(), slot);
        if (approachS < 0) {
            return false;
        }
        double toHookKg = toHookKg(table.trips[k], approachS) + table.fuel.startKg();
        // A little above what the hook-up allows, so that what is wished full is flown after
        // something lighter. Where there are many trips it is what the hook-up allows.
        double extraKg =
                table.hasManyTrips() ? table.fuel.burnKgPerS() * table.rules.returnExtraS() : 0;
        double mostKg = mostKg(k, line, slot) + toHookKg - extraKg;
        double wantKg = Math.min(wish.refuelToKg(run.refuels), mostKg);
        return grounding.refuel(
                Math.max(wantKg, needKg + toHookKg + SPARE_KG), Cause.of(Cause.Kind.FUEL, k));
    }

    /** Most fuel by the gauge at the hook-up. */
    private double mostKg(int k, int line, int slot) {
        return table.mostFuelKg(k, line, slot, slot) - table.fuel.spreadKg();
    }

    private double toHookKg(TripRow trip, int approachS) {
        return table.fuel.burnKgPerS() * (approachS + table.rules.returnExtraS() + trip.hookUpS())
                + (run.engineOff ? table.fuel.startKg() : 0);
    }

    private int backS(int to, int line, int slot) {
        int fuelPlace = table.spots[to].nearestFuel();
        return to == fuelPlace ? 0 : table.emptyS(to, fuelPlace, line, slot);
    }

    private boolean waitAndLift(int k, Wish wish) {
        int hooker = hooker(k, wish);
        int receiver = receiver(k, wish);
        int refuels = run.refuels;
        cause = Cause.of(Cause.Kind.LIFT, k);
        for (int round = 0; round < 4; round++) {
            long waitS = readiness.missingS(k, hooker, receiver);
            if (waitS == 0) {
                return lift(k, hooker, receiver);
            }
            waitsTooLong = waitS > patienceS;
            if (waitS < 0 || waitsTooLong || !grounding.land(k, false)) {
                return false;
            }
            waitS = readiness.missingS(k, hooker, receiver);
            if (waitS < 0) {
                return false;
            }
            if (waitS > 0) {
                pause(k, waitS, wish, run.refuels == refuels);
            }
        }
        return false;
    }

    /** Waits; fuels or takes a whole break meanwhile where that is wished. */
    private void pause(int k, long waitS, Wish wish, boolean mayFuel) {
        cause = readiness.cause(k);
        int slot = table.slot(run.timeS);
        if (mayFuel
                && !run.isFilling()
                && wish.fuelsWhileWaiting
                && table.spots[run.place].fuel()
                && slot >= 0) {
            double toKg =
                    Math.min(
                            wish.refuelToKg(run.refuels),
                            mostKg(k, run.line, slot) + table.fuel.startKg());
            boolean worth = toKg - run.fuelKg >= WORTH_FUELLING_KG;
            if (worth
                    && grounding.refuelS(toKg) <= waitS
                    && run.timeS >= table.spots[run.place].refuellerFromS()
                    && grounding.refuel(toKg, cause)) {
                return;
            }
        }
        boolean restsEarly =
                waitS >= wish.restWaitS
                        && waitS < run.breakLeftS()
                        && run.onSinceBreakS > table.rules.stretchS() / 3;
        if (restsEarly) {
            grounding.rest(new Cause(Cause.Kind.EARLY_BREAK, k, cause.other()));
        } else {
            grounding.waitUntil(run.timeS + waitS, cause);
        }
    }

    /** From hook-up to the last release. */
    private boolean lift(int k, int hooker, int receiver) {
        TripRow trip = table.trips[k];
        EmptyWay before = null;
        long startS = run.timeS;
        int from = run.place;
        double fuelStartKg = run.fuelKg;
        if (run.open < 0 && run.place != trip.from() && table.spots[trip.from()].site()) {
            int slot = table.slot(run.timeS);
            int legS = table.emptyS(run.place, trip.from(), run.line, slot);
            if (legS < 0) {
                return false;
            }
            before = new EmptyWay(run.place, trip.from(), run.line, slot);
            if (!grounding.holdsUntil(before, run.timeS + legS)) {
                return false;
            }
            run.fly(legS);
            run.place = trip.from();
        } else {
            if (run.place != trip.from()) {
                if (!grounding.flyTo(trip.from(), Cause.of(Cause.Kind.MOVE, k))) {
                    return false;
                }
            } else if (run.open >= 0) {
                run.closeRotation(trip.from(), null);
            }
            startS = run.timeS;
            from = run.place;
            fuelStartKg = run.fuelKg;
        }
        run.openRotation(k, startS, from, fuelStartKg);
        run.fly(trip.hookUpS());
        if (!hang(k, receiver, before)) {
            return false;
        }
        occupy(hooker, run.hookedS + 1);
        occupy(receiver, run.timeS + trip.busyAfterS());
        if (!table.spots[trip.to()].site()) {
            run.closeRotation(trip.to(), null);
        }
        return isWithinDay();
    }

    private boolean hang(int k, int receiver, @org.jspecify.annotations.Nullable EmptyWay before) {
        TripRow trip = table.trips[k];
        long hookedS = run.timeS;
        int slotFrom = table.slot(hookedS);
        int outS = slotFrom < 0 ? DayTable.NONE : table.loadedS(k, run.line, slotFrom, slotFrom);
        int slotTo = outS < 0 ? DayTable.NONE : table.slot(hookedS + outS + trip.firstSetDownS());
        if (slotTo < 0) {
            return false;
        }
        if (slotTo != slotFrom) {
            outS = table.loadedS(k, run.line, slotFrom, slotTo);
        }
        int backS = backS(trip.to(), run.line, slotTo);
        double readKg = run.fuelKg;
        boolean lifts =
                outS >= 0
                        && backS >= 0
                        && readKg + table.fuel.spreadKg()
                                <= table.mostFuelKg(k, run.line, slotFrom, slotTo)
                        && readKg
                                >= table.fuel.needKg(
                                        outS + backS + table.rules.returnExtraS(), trip.setDownS())
                        // The way in of the other hour may be shorter and end before it.
                        && table.slot(hookedS + outS + trip.firstSetDownS()) == slotTo
                        && table.slot(hookedS + outS + trip.setDownS()) == slotTo
                        && run.isOpen(k, slotFrom, slotTo);
        if (!lifts) {
            return false;
        }
        run.fly(outS);
        long firstS = run.timeS + trip.firstSetDownS();
        if (firstS < readiness.earliestReleaseS(k, receiver)) {
            return false;
        }
        run.burn(trip.setDownS(), table.fuel.setDownKgPerS(trip.standsUp()));
        run.releasedS[k] = run.timeS;
        run.comfortCents += table.setDownPrice(k, run.line, slotFrom, slotTo).centsAt(run.timeS);
        run.hookedS = hookedS;
        if (!table.isOpen(k, slotFrom) || !table.isOpen(k, slotTo)) {
            run.lateS += LATE_S + Math.max(0, run.timeS - table.windowEndS[k]);
        }
        run.place = trip.to();
        if (run.isLogged()) {
            List<Long> released = new ArrayList<>();
            for (int i = 0; i < trip.releases(); i++) {
                released.add(firstS + i * trip.nextReleaseS());
            }
            run.setLift(
                    new LiftDone(
                            k,
                            run.line,
                            before == null ? List.of() : List.of(before),
                            hookedS,
                            readKg,
                            released,
                            slotFrom,
                            slotTo),
                    cause);
        }
        return true;
    }

    private void occupy(int team, long untilS) {
        if (team >= 0) {
            run.teamFreeS[team] = Math.max(run.teamFreeS[team], untilS);
        }
    }

    /** Whether the machine comes home from here within the day, its weather, the engine's time and the fuel. */
    boolean isWithinDay() {
        long homeS = 0;
        if (run.open >= 0 || !table.spots[run.place].ground()) {
            int slot = table.slot(run.timeS);
            int home = table.spots[run.place].nearestGround();
            int legS =
                    slot < 0 || home < 0
                            ? DayTable.NONE
                            : table.emptyS(run.place, home, run.line, slot);
            if (legS < 0) {
                return false;
            }
            homeS = legS + (run.open >= 0 ? table.rules.returnExtraS() : 0);
        }
        double lowKg = run.fuelKg - homeS * table.fuel.burnKgPerS() - table.fuel.spreadKg();
        boolean within =
                run.timeS + homeS <= table.downS()
                        && run.onTotalS + homeS <= table.rules.engineOnDayS()
                        && lowKg >= table.fuel.reserveKg();
        ranTooLong =
                within && (run.overranEngine || run.onSinceBreakS + homeS > table.rules.stretchS());
        return within && !ranTooLong;
    }
}
