package underhook.planner.search;

import java.util.List;
import java.util.stream.Stream;
import underhook.core.plan.StepKind;

/** People on their way: on foot by themselves, or flown with the line off. */
final class TeamMoves {
    /** A longer walk is flown where it can be and no walk is wished, s. @source PRACTICE own choice */
    private static final long LONG_WALK_S = 40 * 60;

    private final DayTable table;
    private final Run run;
    private final Grounding grounding;

    TeamMoves(Run run, Grounding grounding) {
        this.table = run.table;
        this.run = run;
        this.grounding = grounding;
    }

    /** Brings a team to a place, on foot or by air; false where it cannot come. */
    boolean bring(int team, int place, Wish wish) {
        if (!isFlown(team, place, wish)) {
            walk(team, place);
            return true;
        }
        return fly(team, place, wish);
    }

    /** Whether a team is flown to a place rather than walks. */
    boolean isFlown(int team, int place, Wish wish) {
        long walkS = table.walkS[run.teamPlace[team]][place];
        int landing = table.teams[team].landing().get(place);
        return walkS >= DayTable.NO_WALK_S
                || (walkS > LONG_WALK_S
                        && !wish.walksTo[place]
                        && landing >= 0
                        && table.walkS[landing][place] < walkS);
    }

    /** Whether it may have to be flown at all, from where it starts or works to where it works. */
    boolean mayBeFlown(TeamRow team) {
        return Stream.concat(Stream.of(team.start()), team.serves().stream())
                .anyMatch(from -> team.serves().stream().anyMatch(to -> isFar(team, from, to)));
    }

    private boolean isFar(TeamRow team, int from, int to) {
        return team.landing().get(to) >= 0 && table.walkS[from][to] > LONG_WALK_S;
    }

    private void walk(int team, int place) {
        long leaveS = run.teamFreeS[team];
        long walkS = table.walkS[run.teamPlace[team]][place];
        stayUntil(team, leaveS);
        run.comfortCents += walkS / 60 * table.rates.walkCents();
        if (walkS > 0) {
            run.write(new TeamStay(team, place, leaveS, leaveS + walkS, TeamStay.Doing.WALKS));
        }
        run.teamPlace[team] = place;
        run.teamFreeS[team] = leaveS + walkS;
        run.teamArrivedS[team] = leaveS + walkS;
    }

    private void stayUntil(int team, long untilS) {
        long fromS = run.teamArrivedS[team];
        if (untilS > fromS) {
            run.write(new TeamStay(team, run.teamPlace[team], fromS, untilS, TeamStay.Doing.WORKS));
        }
    }

    /** Flies a team to where a place is reached from, and lets it walk on; false where that cannot be. */
    boolean fly(int team, int place, Wish wish) {
        TeamRow row = table.teams[team];
        int to = row.landing().get(place);
        int from = row.landing().get(run.teamPlace[team]);
        Cause cause = new Cause(Cause.Kind.TEAM_MOVE, DayTable.NONE, team);
        if (to < 0 || from < 0 || to == from || !readyCabin(team, new int[] {from, to}, wish)) {
            return false;
        }
        long readyS = run.teamFreeS[team] + table.walkS[run.teamPlace[team]][from];
        if (!meet(team, from, readyS)) {
            return false;
        }
        waitForWay(from, to, cause);
        int slot = table.slot(run.timeS);
        int legS = slot < 0 ? DayTable.NONE : table.emptyS(from, to, DayTable.NONE, slot);
        EmptyWay way = new EmptyWay(from, to, DayTable.NONE, slot);
        long flownS = legS + 2 * table.rules.boardingS();
        if (legS < 0
                || !grounding.holdsUntil(way, run.timeS + flownS)
                || run.fuelKg > row.cabinFuelKg()) {
            return false;
        }
        if (table.walkS[run.teamPlace[team]][from] > 0) {
            walk(team, from);
        }
        stayUntil(team, run.timeS);
        carry(team, legS, way, cause);
        if (to != place) {
            walk(team, place);
        }
        return run.fuelKg > 0;
    }

    /** Where zones close the way for some hours. */
    private void waitForWay(int from, int to, Cause cause) {
        int slot = table.slot(run.timeS);
        int open = slot < 0 ? DayTable.NONE : openSlot(from, to, slot);
        if (open > slot) {
            grounding.waitUntil(table.slotFromS(open), cause);
        }
    }

    /** The first hour from one on in which a way with the line off is open; that one itself where none is. */
    private int openSlot(int from, int to, int slot) {
        for (int at = slot; table.isClosedByHours() && at < table.slots(); at++) {
            if (table.emptyS(from, to, DayTable.NONE, at) >= 0) {
                return at;
            }
        }
        return slot;
    }

    /** Gets the line off, and as much fuel aboard as moving people between two places takes. */
    private boolean readyCabin(int team, int[] way, Wish wish) {
        Cause fuel = new Cause(Cause.Kind.FUEL, DayTable.NONE, team);
        Cause move = new Cause(Cause.Kind.TEAM_MOVE, DayTable.NONE, team);
        if (run.line >= 0 || run.open >= 0) {
            int ground = run.open >= 0 ? table.spots[run.place].nearestGround() : run.place;
            if (ground < 0 || !table.spots[ground].ground()) {
                ground = table.spots[run.place].nearestGround();
            }
            if (ground < 0
                    || ((ground != run.place || run.open >= 0) && !grounding.flyTo(ground, move))) {
                return false;
            }
        }
        double mostKg = Math.floor(table.teams[team].cabinFuelKg());
        double needKg = needKg(way);
        if (run.fuelKg < needKg
                && !grounding.refuel(
                        Math.max(
                                Math.min(mostKg, wish.refuelToKg(run.refuels)),
                                Math.min(mostKg, Math.ceil(needKg))),
                        fuel)) {
            return false;
        }
        if (run.fuelKg < needKg) {
            return false;
        }
        if (run.line >= 0) {
            grounding.changeLine(DayTable.NONE, new Cause(Cause.Kind.LINE, DayTable.NONE, team));
        }
        return true;
    }

    /** To where the team is boarded, not much before it is there. */
    private boolean meet(int team, int from, long readyS) {
        Cause waits = new Cause(Cause.Kind.TEAM, DayTable.NONE, team);
        if (run.place != from) {
            int slot = table.slot(run.timeS);
            int legS = slot < 0 ? DayTable.NONE : table.emptyS(run.place, from, run.line, slot);
            if (legS < 0 && !table.isClosedByHours()) {
                return false;
            }
            if (legS >= 0 && run.timeS + legS < readyS && table.spots[run.place].ground()) {
                grounding.waitUntil(readyS - legS, waits);
            }
            if (!grounding.flyTo(from, new Cause(Cause.Kind.TEAM_MOVE, DayTable.NONE, team))) {
                return false;
            }
        }
        if (run.timeS < readyS) {
            grounding.waitUntil(readyS, waits);
        }
        return true;
    }

    private void carry(int team, int legS, EmptyWay way, Cause cause) {
        long startS = run.timeS;
        double fuelStartKg = run.fuelKg;
        run.fly(legS + 2 * table.rules.boardingS());
        run.flightS += legS + 2 * table.rules.boardingS();
        run.place = way.to();
        run.write(
                new Run.Note(StepKind.CREW_MOVE, way.from(), team, List.of(way), cause),
                startS,
                fuelStartKg);
        run.write(new TeamStay(team, way.to(), startS, run.timeS, TeamStay.Doing.FLIES));
        run.teamPlace[team] = way.to();
        run.teamFreeS[team] = run.timeS;
        run.teamArrivedS[team] = run.timeS;
    }

    private double needKg(int[] way) {
        int slot = table.slot(run.timeS);
        if (slot < 0) {
            return Double.POSITIVE_INFINITY;
        }
        long seconds = 4 * table.rules.boardingS();
        int[] path = {run.place, way[0], way[1], table.spots[way[1]].nearestFuel()};
        for (int i = 0; i + 1 < path.length; i++) {
            if (path[i] != path[i + 1] && path[i + 1] >= 0) {
                int open = openSlot(path[i], path[i + 1], slot);
                int legS = table.emptyS(path[i], path[i + 1], DayTable.NONE, open);
                if (legS < 0) {
                    return Double.POSITIVE_INFINITY;
                }
                seconds += legS;
            }
        }
        FuelRules fuel = table.fuel;
        return fuel.startKg()
                + fuel.burnKgPerS() * (seconds + fuel.reserveS() + fuel.contingencyS())
                + fuel.spreadKg();
    }
}
