package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import underhook.core.crew.Daylight;
import underhook.core.job.Crew;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.plan.StepKind;

/**
 * Builds a day step by step: of all that may be done next, what starts soonest, after the wishes.
 *
 * <p>Every day it returns keeps every rule that it knows; what cannot be done is dropped and named. A
 * team stays at a place until all that needs it there is done, then goes on to its next place, on foot
 * or, where that is far, by helicopter with the line off. The machine waits on the ground.
 */
final class DayBuilder {
    /** A longer walk is flown where it can be. */
    private static final long LONG_WALK_S = 40 * 60;

    /** People stand ready this long before a set-down. */
    private static final long READY_BEFORE_S = 60;

    /** Kept free before the engine-on limit for turning in and shutting down. */
    private static final long ENGINE_MARGIN_S = 120;

    /** Moving people first opens work elsewhere. */
    private static final long CREW_MOVE_BONUS_S = 600;

    /** A lift whose window has so many times this left ranks a second later. */
    private static final long SLACK_PER_SECOND_S = 8;

    /** What a team needs for a place and the walk to the next, for ranking only. */
    private static final long PLACE_S = 50 * 60;

    /** From hook-up of what comes before to hook-up of what waits for it, for ranking only. */
    private static final long LEAD_S = 12 * 60;

    /** A trip about to be lifted: its number, the team that works on it or -1, the line, and why. */
    private record Lift(int trip, int team, int line, String why) {}

    /** Something done with the engine on, ending at a place; the team is -1 when none flies along. */
    private record Run(
            StepKind kind,
            int to,
            long durationS,
            List<DayModel.LegAt> legs,
            int team,
            String because) {}

    private final DayModel model;
    private final List<Trip> trips;
    private final TripMaker maker;
    private final People people;
    private final long dayStartS;
    private final long dayEndS;
    private final long[] windowEndS;
    private final int[][] afterTrips;
    private final long[][] afterWaitS;
    private final boolean[] afterMissing;
    private final boolean[] standsUp;
    private final boolean[] lastAtPlace;
    private final long[] readyAfterS;
    private final int[] teamPlace;
    private final int[] nearestFuel;
    private final int[] nearestGround;

    DayBuilder(DayModel model, TripMaker maker, People people) {
        this.model = model;
        this.trips = maker.trips();
        this.maker = maker;
        this.people = people;
        long dutyFromS = model.seconds(model.rules.dutyFrom());
        long dutyEndS = dutyFromS + (long) model.rules.dutyS();
        Optional<Daylight> light =
                Daylight.find(model.job.origin(), model.job.date(), model.job.zone());
        long sunUpS = light.map(day -> model.seconds(day.from()) + 60).orElse(DayModel.NEVER_S);
        long sunDownS =
                light.map(
                                day ->
                                        model.seconds(day.until())
                                                - 60
                                                - (long) model.rules.dayEndBeforeSunsetS())
                        .orElse(0L);
        this.dayStartS = Math.max(dutyFromS, Math.max(sunUpS, model.slots.get(0).fromS()));
        this.dayEndS = Math.min(dutyEndS, sunDownS);
        this.windowEndS = new long[trips.size()];
        this.afterTrips = new int[trips.size()][];
        this.afterWaitS = new long[trips.size()][];
        this.afterMissing = new boolean[trips.size()];
        this.standsUp = new boolean[trips.size()];
        this.lastAtPlace = new boolean[trips.size()];
        this.readyAfterS = new long[trips.size()];
        this.teamPlace = new int[trips.size()];
        for (int k = 0; k < trips.size(); k++) {
            windowEndS[k] = windowEndS(trips.get(k));
            findAfter(k);
            standsUp[k] = trips.get(k).standsUp();
            lastAtPlace[k] = trips.get(k).lastAtPlace();
            readyAfterS[k] = trips.get(k).readyAfterS();
            teamPlace[k] = teamPlace(trips.get(k));
        }
        this.nearestFuel = new int[model.places.size()];
        this.nearestGround = new int[model.places.size()];
        for (int i = 0; i < model.places.size(); i++) {
            nearestFuel[i] = nearest(i, true);
            nearestGround[i] = nearest(i, false);
        }
    }

    private int nearest(int place, boolean fuel) {
        int best = -1;
        for (int i = 0; i < model.places.size(); i++) {
            Place at = model.places.get(i);
            boolean fits =
                    at.kind() == PlaceKind.LAYDOWN
                            && at.agreed()
                            && at.standing()
                            && model.isKnown(i)
                            && (!fuel
                                    || (at.fuel()
                                            && people.stayingFromS(i, Crew.Role.REFUEL)
                                                    < DayModel.NEVER_S));
            if (fits
                    && (best < 0
                            || model.points.get(place).distanceToM(model.points.get(i))
                                    < model.points
                                            .get(place)
                                            .distanceToM(model.points.get(best)))) {
                best = i;
            }
        }
        return best;
    }

    private long windowEndS(Trip trip) {
        long end = -1;
        for (int slot = 0; slot < model.slots.size(); slot++) {
            if (maker.isWindWithin(trip, slot)) {
                end = model.slots.get(slot).untilS();
            }
        }
        return Math.min(end, dayEndS);
    }

    private void findAfter(int k) {
        List<int[]> found = new ArrayList<>();
        List<Long> waits = new ArrayList<>();
        for (Load load : trips.get(k).loads()) {
            for (Load.After after : load.after()) {
                int index = tripOf(after);
                if (index < 0) {
                    afterMissing[k] = true;
                } else if (index != k) {
                    found.add(new int[] {index});
                    waits.add((long) Math.ceil(after.waitS()));
                }
            }
        }
        afterTrips[k] = found.stream().mapToInt(one -> one[0]).toArray();
        afterWaitS[k] = waits.stream().mapToLong(Long::longValue).toArray();
    }

    private int tripOf(Load.After after) {
        for (int i = 0; i < trips.size(); i++) {
            if (trips.get(i).carries(after.load())) {
                return i;
            }
        }
        return -1;
    }

    int[] afterTrips(int trip) {
        return afterTrips[trip].clone();
    }

    boolean waitsForLeftOut(int trip) {
        return afterMissing[trip];
    }

    /** When the wind or the day closes a trip for good, s. */
    long windowEndS(int trip) {
        return windowEndS[trip];
    }

    /** Whether the wind closes a trip before the day ends. */
    boolean isWindowed(int trip) {
        return windowEndS[trip] < dayEndS;
    }

    long dayStartS() {
        return dayStartS;
    }

    /** Whether a team must be at the place where a trip is set down. */
    private boolean needsTeamAtDrop(Trip trip) {
        if (!TripMaker.isSite(model.places.get(trip.to()))) {
            return false;
        }
        return trip.standsUp()
                || people.stayingFromS(trip.to(), Crew.Role.RECEIVE) >= DayModel.NEVER_S;
    }

    /** Whether a team must be at the place where a trip is hooked up. */
    private boolean needsTeamAtHook(Trip trip) {
        return TripMaker.isSite(model.places.get(trip.from()))
                && people.stayingFromS(trip.from(), Crew.Role.HOOK) >= DayModel.NEVER_S;
    }

    /** The place where a trip needs a team; -1 when it needs none. */
    int teamPlace(Trip trip) {
        return needsTeamAtDrop(trip) ? trip.to() : needsTeamAtHook(trip) ? trip.from() : -1;
    }

    /** Builds the day. */
    DayState build(Wishes wishes) {
        DayState state = new DayState(trips.size(), people.teams.size(), model.places.size());
        state.place = model.place(model.job.machineStart());
        state.timeS = dayStartS;
        for (int team = 0; team < people.teams.size(); team++) {
            Crew crew = people.teams.get(team);
            state.teamPlace[team] = model.place(crew.start());
            state.teamFreeS[team] = Math.max(dayStartS, model.seconds(crew.availableFrom()));
            state.teamArrivedS[team] = state.teamFreeS[team];
        }
        state.restWaitS = wishes.restWaitS();
        state.fuelKg = morningFuelKg(wishes);
        for (int k = 0; k < trips.size(); k++) {
            state.dropped[k] = afterMissing[k] || windowEndS[k] < 0;
        }
        long[] due = dueS(wishes);
        boolean more = true;
        while (more) {
            dropDead(state);
            DayState best = null;
            long bestScore = Long.MAX_VALUE;
            for (int k = 0; k < trips.size(); k++) {
                if (state.releasedS[k] >= 0 || state.dropped[k]) {
                    continue;
                }
                DayState next = attempt(state, k, wishes);
                if (next != null) {
                    long score =
                            startOf(next)
                                    - state.timeS
                                    + wishes.biasS().get(k)
                                    + (due[k] - next.releasedS[k]) / SLACK_PER_SECOND_S;
                    if (score < bestScore) {
                        bestScore = score;
                        best = next;
                    }
                }
            }
            for (int team = 0; team < people.teams.size(); team++) {
                DayState next = attemptCrewMove(state, team, wishes);
                if (next != null) {
                    long score = next.timeS - state.timeS - CREW_MOVE_BONUS_S;
                    if (score < bestScore) {
                        bestScore = score;
                        best = next;
                    }
                }
            }
            if (best == null) {
                more = dropOne(state);
            } else {
                state = best;
            }
        }
        return finish(state);
    }

    /** When each trip should be done for the teams to finish behind it in time; ranks, forbids nothing. */
    private long[] dueS(Wishes wishes) {
        long[] due = windowEndS.clone();
        for (List<Integer> order : wishes.teamOrder()) {
            long nextS = dayEndS + PLACE_S;
            for (int i = order.size() - 1; i >= 0; i--) {
                long placeS = nextS - PLACE_S;
                for (int k = 0; k < trips.size(); k++) {
                    if (teamPlace[k] == order.get(i)) {
                        placeS = Math.min(placeS, windowEndS[k]);
                    }
                }
                for (int k = 0; k < trips.size(); k++) {
                    if (teamPlace[k] == order.get(i)) {
                        due[k] = Math.min(due[k], placeS);
                    }
                }
                nextS = placeS;
            }
        }
        for (int round = 0; round < 3; round++) {
            for (int k = 0; k < trips.size(); k++) {
                for (int i = 0; i < afterTrips[k].length; i++) {
                    int before = afterTrips[k][i];
                    due[before] = Math.min(due[before], due[k] - afterWaitS[k][i] - LEAD_S);
                }
                for (int other = 0; other < trips.size(); other++) {
                    if (standsUp[k]
                            && readyAfterS[other] > 0
                            && trips.get(other).to() == trips.get(k).to()) {
                        due[other] = Math.min(due[other], due[k] - readyAfterS[other] - LEAD_S);
                    }
                }
            }
        }
        return due;
    }

    private static long startOf(DayState state) {
        return state.open != null ? state.open.hookedS() : state.timeS;
    }

    /** Filled so far in the evening that the first people can be flown. */
    private double morningFuelKg(Wishes wishes) {
        double fuelKg = Math.min(model.machine.fuelUsableKg(), wishes.refuelToKg());
        double people1Kg =
                people.teams.stream()
                        .mapToDouble(crew -> crew.people() * crew.massEachKg())
                        .max()
                        .orElse(0);
        double cabinKg =
                model.machine.maxInternalMassKg()
                        - model.operatingMassKg()
                        - people1Kg
                        - model.machine.fuelGaugeSpreadKg();
        return Math.floor(Math.min(fuelKg, cabinKg));
    }

    private void dropDead(DayState state) {
        boolean again = true;
        while (again) {
            again = false;
            for (int k = 0; k < trips.size(); k++) {
                if (state.dropped[k] || state.releasedS[k] >= 0) {
                    continue;
                }
                boolean dead = state.timeS > windowEndS[k];
                for (int before : afterTrips[k]) {
                    dead |= state.dropped[before];
                }
                if (dead) {
                    state.dropped[k] = true;
                    again = true;
                }
            }
        }
    }

    /** Nothing can be done: the first of what is left is dropped, so that the rest may go on. */
    private boolean dropOne(DayState state) {
        for (int k = 0; k < trips.size(); k++) {
            if (!state.dropped[k] && state.releasedS[k] < 0) {
                state.dropped[k] = true;
                return true;
            }
        }
        return false;
    }

    private DayState finish(DayState state) {
        if (state.open != null) {
            int home = nearestGround[state.place];
            DayState next = state.copy();
            if (home >= 0 && flyTo(next, home, "last landing")) {
                return next;
            }
        }
        return state;
    }

    /** The team that works at a place by the wishes; -1 when none does. */
    private static int teamOf(Wishes wishes, int place) {
        for (int team = 0; team < wishes.teamOrder().size(); team++) {
            if (wishes.teamOrder().get(team).contains(place)) {
                return team;
            }
        }
        return -1;
    }

    /** Where a team is wanted next; its own place while something needs it there. */
    private int nextPlace(DayState state, int team, Wishes wishes) {
        if (hasWork(state, state.teamPlace[team])) {
            return state.teamPlace[team];
        }
        for (int place : wishes.teamOrder().get(team)) {
            if (hasWork(state, place)) {
                return place;
            }
        }
        return -1;
    }

    private boolean hasWork(DayState state, int place) {
        for (int k = 0; k < trips.size(); k++) {
            if (state.releasedS[k] < 0 && !state.dropped[k] && teamPlace[k] == place) {
                return true;
            }
        }
        return false;
    }

    /** Whether a team is at a place, or wanted there next and can walk. */
    private boolean canBeBrought(DayState state, int team, int place, Wishes wishes) {
        return nextPlace(state, team, wishes) == place
                && (state.teamPlace[team] == place || !mustFly(state, team, place));
    }

    private boolean mustFly(DayState state, int team, int place) {
        long walkS = people.walkS(state.teamPlace[team], place);
        return (walkS > LONG_WALK_S && landingNear(place, people.teams.get(team).people()) >= 0)
                || walkS >= People.NO_WALK_S;
    }

    private void walk(DayState state, int team, int place) {
        long leaveS = state.teamFreeS[team];
        long walkS = people.walkS(state.teamPlace[team], place);
        stayUntil(state, team, leaveS);
        if (walkS > 0) {
            state.add(
                    new DayState.Stay(
                            team,
                            place,
                            leaveS,
                            leaveS + walkS,
                            "walks to " + model.places.get(place).id()));
        }
        state.teamPlace[team] = place;
        state.teamFreeS[team] = leaveS + walkS;
        state.teamArrivedS[team] = leaveS + walkS;
    }

    private static void stayUntil(DayState state, int team, long untilS) {
        long fromS = state.teamArrivedS[team];
        if (untilS > fromS) {
            state.add(
                    new DayState.Stay(
                            team, state.teamPlace[team], fromS, untilS, "works and waits"));
        }
    }

    private int landingNear(int place, int heads) {
        if (heads > model.machine.seats()) {
            return -1;
        }
        int best = -1;
        for (int i = 0; i < model.places.size(); i++) {
            boolean near = people.canLand(i) && people.walkS(i, place) < LONG_WALK_S;
            if (near && (best < 0 || people.walkS(i, place) < people.walkS(best, place))) {
                best = i;
            }
        }
        return best;
    }

    private @Nullable DayState attemptCrewMove(DayState before, int team, Wishes wishes) {
        int target = nextPlace(before, team, wishes);
        if (target < 0 || target == before.teamPlace[team] || !mustFly(before, team, target)) {
            return null;
        }
        Crew crew = people.teams.get(team);
        int to = landingNear(target, crew.people());
        int from = landingNear(before.teamPlace[team], crew.people());
        if (to < 0 || from < 0 || to == from) {
            return null;
        }
        DayState state = before.copy();
        String because = "flies " + crew.id() + " to its work";
        if (state.line >= 0 || state.open != null) {
            int ground = state.open != null ? nearestGround[state.place] : state.place;
            if (ground < 0 || !flyTo(state, ground, because)) {
                return null;
            }
        }
        double cabinKg =
                model.machine.maxInternalMassKg()
                        - model.operatingMassKg()
                        - crew.people() * crew.massEachKg()
                        - model.machine.fuelGaugeSpreadKg();
        double needKg = cabinNeedKg(state, from, to);
        if (state.fuelKg < needKg
                && !refuel(state, Math.min(Math.floor(cabinKg), wishes.refuelToKg()), because)) {
            return null;
        }
        if (state.fuelKg < needKg) {
            return null;
        }
        if (state.line >= 0) {
            changeLine(state, -1, "people fly with the line off");
        }
        long readyS = state.teamFreeS[team] + people.walkS(state.teamPlace[team], from);
        long travelS = 0;
        if (state.place != from) {
            int slot = model.slot(state.timeS);
            Optional<DayModel.LegAt> leg =
                    slot < 0 ? Optional.empty() : model.emptyLeg(state.place, from, -1, slot);
            if (leg.isEmpty()) {
                return null;
            }
            travelS = leg.get().durationS();
        }
        if (state.timeS + travelS < readyS) {
            waitUntil(state, readyS - travelS, "waits for " + crew.id());
        }
        if (state.place != from && !flyTo(state, from, because)) {
            return null;
        }
        if (state.timeS < readyS) {
            waitUntil(state, readyS, "waits for " + crew.id());
        }
        int slot = model.slot(state.timeS);
        Optional<DayModel.LegAt> leg =
                slot < 0 ? Optional.empty() : model.emptyLeg(from, to, -1, slot);
        double fuelAfterStartKg = state.fuelKg;
        if (leg.isEmpty() || fuelAfterStartKg > cabinKg) {
            return null;
        }
        long boardingS = (long) Math.ceil(model.rules.boardingS());
        long durationS = leg.get().durationS() + 2 * boardingS;
        long startS = state.timeS;
        if (people.walkS(state.teamPlace[team], from) > 0) {
            walk(state, team, from);
        }
        stayUntil(state, team, startS);
        if (!engineOn(
                state,
                new Run(StepKind.CREW_MOVE, to, durationS, List.of(leg.get()), team, because))) {
            return null;
        }
        state.add(
                new DayState.Stay(
                        team, to, startS, state.timeS, "flown to " + model.places.get(to).id()));
        state.teamPlace[team] = to;
        state.teamFreeS[team] = state.timeS;
        state.teamArrivedS[team] = state.timeS;
        if (to != target) {
            walk(state, team, target);
        }
        return isWithinDay(state) ? state : null;
    }

    private double cabinNeedKg(DayState state, int from, int to) {
        int slot = model.slot(state.timeS);
        if (slot < 0) {
            return Double.POSITIVE_INFINITY;
        }
        double seconds = 4 * model.rules.boardingS();
        int fuelPlace = nearestFuel[to];
        for (int[] pair : new int[][] {{state.place, from}, {from, to}, {to, fuelPlace}}) {
            if (pair[0] != pair[1] && pair[1] >= 0) {
                Optional<DayModel.LegAt> leg = model.emptyLeg(pair[0], pair[1], -1, slot);
                if (leg.isEmpty()) {
                    return Double.POSITIVE_INFINITY;
                }
                seconds += leg.get().durationS();
            }
        }
        return model.machine.startFuelKg()
                + model.machine.burnKgPerS()
                        * (seconds + model.machine.reserveS() + model.rules.contingencyS())
                + model.machine.fuelGaugeSpreadKg();
    }

    /** A trip flown next; null when it cannot be. */
    private @Nullable DayState attempt(DayState before, int k, Wishes wishes) {
        Trip trip = trips.get(k);
        for (int other : afterTrips[k]) {
            if (before.releasedS[other] < 0) {
                return null;
            }
        }
        if (lastAtPlace[k] && isAnyLeftTo(before, trip.from(), k)) {
            return null;
        }
        if (standsUp[k] && isAnyReadierLeftTo(before, k)) {
            return null;
        }
        int team = -1;
        int at = teamPlace[k];
        if (at >= 0) {
            team = teamOf(wishes, at);
            if (team < 0 || !canBeBrought(before, team, at, wishes)) {
                return null;
            }
            if (standsUp[k] && !people.teams.get(team).roles().contains(Crew.Role.GUY)) {
                return null;
            }
        }
        DayState state = before.copy();
        if (team >= 0 && state.teamPlace[team] != at) {
            walk(state, team, at);
        }
        int slot = model.slot(state.timeS);
        if (slot < 0) {
            return null;
        }
        int line = chooseLine(state, trip, slot);
        if (line < 0) {
            return null;
        }
        Optional<DayModel.LegAt> out = model.loadedLeg(trip, line, slot, slot);
        int fuelPlace = nearestFuel[trip.to()];
        if (out.isEmpty() || fuelPlace < 0) {
            return null;
        }
        Optional<DayModel.LegAt> back =
                trip.to() == fuelPlace ? out : model.emptyLeg(trip.to(), fuelPlace, line, slot);
        if (back.isEmpty()) {
            return null;
        }
        long approachS = approachS(state, trip.from(), slot);
        if (approachS < 0) {
            return null;
        }
        double needKg = maker.fuelNeedKg(trip, out.get(), back.get());
        double toHookKg =
                model.machine.burnKgPerS()
                                * (approachS + model.rules.returnExtraS() + trip.hookUpS())
                        + (state.engineOff ? model.machine.startFuelKg() : 0);
        boolean refuels = state.fuelKg - toHookKg < needKg;
        boolean changes = state.line != line;
        long tripS =
                approachS
                        + trip.hookUpS()
                        + out.get().durationS()
                        + trip.setDownS()
                        + back.get().durationS()
                        + (long) (2 * model.rules.returnExtraS())
                        + ENGINE_MARGIN_S;
        boolean rests = state.onSinceBreakS + tripS > model.rules.engineOnS();
        String why = trip + " to " + model.places.get(trip.to()).id();
        if (refuels || changes || rests) {
            if (!land(state, trip, refuels, why)) {
                return null;
            }
            if (refuels) {
                double mostKg =
                        model.fuelMaxKg(trip, line, slot, slot)
                                - model.machine.fuelGaugeSpreadKg()
                                + model.machine.burnKgPerS() * trip.hookUpS();
                double wantKg = Math.min(wishes.refuelToKg(), mostKg);
                if (!refuel(state, Math.max(wantKg, needKg + toHookKg + 10), why)) {
                    return null;
                }
            }
            if (rests) {
                rest(state, "the engine was on for long enough");
            }
            if (changes) {
                changeLine(state, line, why + " needs this line");
            }
        }
        return lift(state, new Lift(k, team, line, why));
    }

    /** Seconds to fly to the hook-up place; negative when there is no way. */
    private long approachS(DayState state, int from, int slot) {
        if (state.place == from) {
            return 0;
        }
        Optional<DayModel.LegAt> leg = model.emptyLeg(state.place, from, state.line, slot);
        return leg.map(DayModel.LegAt::durationS).orElse(-1L);
    }

    private boolean isAnyLeftTo(DayState state, int place, int except) {
        for (int k = 0; k < trips.size(); k++) {
            if (k != except
                    && trips.get(k).to() == place
                    && state.releasedS[k] < 0
                    && !state.dropped[k]) {
                return true;
            }
        }
        return false;
    }

    /** Whether something that makes the place ready is still to come there. */
    private boolean isAnyReadierLeftTo(DayState state, int pole) {
        for (int k = 0; k < trips.size(); k++) {
            if (k != pole
                    && trips.get(k).to() == trips.get(pole).to()
                    && readyAfterS[k] > 0
                    && state.releasedS[k] < 0
                    && !state.dropped[k]) {
                return true;
            }
        }
        return false;
    }

    /** The fitted line when it will do, else the shortest that will; -1 when none will. */
    private int chooseLine(DayState state, Trip trip, int slot) {
        if (state.line >= 0 && isLineFit(trip, state.line, slot)) {
            return state.line;
        }
        for (int line : model.linesByLength()) {
            if (isLineFit(trip, line, slot)) {
                return line;
            }
        }
        return -1;
    }

    private boolean isLineFit(Trip trip, int line, int slot) {
        var item = model.machine.lines().get(line);
        return trip.liftMassKg() <= item.limitKg()
                && trip.liftMassKg() + item.massKg() <= model.machine.hookLimitKg()
                && model.loadedLeg(trip, line, slot, slot).isPresent();
    }

    /** Puts the machine on the ground where it can be served. */
    private boolean land(DayState state, Trip trip, boolean forFuel, String why) {
        int ground = state.place;
        if (state.open != null || TripMaker.isSite(model.places.get(state.place))) {
            boolean standsAtHook =
                    !TripMaker.isSite(model.places.get(trip.from()))
                            && model.places.get(trip.from()).standing();
            ground = standsAtHook ? trip.from() : nearestGround[state.place];
        }
        if (forFuel && ground >= 0 && nearestFuel[ground] != ground) {
            ground = nearestFuel[state.place];
        }
        return ground >= 0
                && ((ground == state.place && state.open == null) || flyTo(state, ground, why));
    }

    /** From hook-up to the last release. */
    private @Nullable DayState lift(DayState state, Lift lift) {
        Trip trip = trips.get(lift.trip());
        for (int round = 0; round < 4; round++) {
            long waitS = missingS(state, lift.trip(), lift.team());
            if (waitS < 0) {
                return null;
            }
            if (waitS == 0) {
                return liftNow(state, lift);
            }
            if (!land(state, trip, false, lift.why())) {
                return null;
            }
            waitS = missingS(state, lift.trip(), lift.team());
            if (waitS < 0) {
                return null;
            }
            if (waitS > 0) {
                waitUntil(
                        state,
                        state.timeS + waitS,
                        "waits: " + lift.why() + " is not ready before");
            }
        }
        return null;
    }

    /** Seconds to wait before leaving for a trip; negative when it can never be. */
    private long missingS(DayState state, int k, int team) {
        Trip trip = trips.get(k);
        for (long waitS = 0; state.timeS + waitS < dayEndS; ) {
            long leaveS = state.timeS + waitS;
            int slot = model.slot(leaveS);
            if (slot < 0) {
                return -1;
            }
            long approachS = approachS(state, trip.from(), slot);
            if (approachS < 0) {
                return -1;
            }
            if (approachS > 0 && state.open != null) {
                approachS += (long) Math.ceil(model.rules.returnExtraS());
            }
            long hookedS = leaveS + approachS + trip.hookUpS();
            int slotHook = model.slot(hookedS);
            if (slotHook < 0) {
                return -1;
            }
            Optional<DayModel.LegAt> out = model.loadedLeg(trip, state.line, slotHook, slotHook);
            if (out.isEmpty()) {
                return -1;
            }
            long firstS = hookedS + out.get().durationS() + (long) Math.ceil(firstSetDownS(trip));
            long shiftS =
                    Math.max(
                            0,
                            Math.max(
                                    earliestHookS(state, k, team) - hookedS,
                                    earliestReleaseS(state, k, team) - firstS));
            int slotDrop = model.slot(firstS + shiftS);
            int slotLater = model.slot(hookedS + shiftS);
            if (slotDrop < 0 || slotLater < 0) {
                return -1;
            }
            if (shiftS == 0
                    && maker.isWindWithin(trip, slotHook)
                    && maker.isWindWithin(trip, slotDrop)) {
                return waitS;
            }
            if (shiftS == 0) {
                // The wind: try the next row.
                shiftS = Math.max(1, model.slots.get(slotHook).untilS() - hookedS);
            }
            waitS += shiftS;
        }
        return -1;
    }

    private double firstSetDownS(Trip trip) {
        return trip.setDownS() - (trip.loads().size() - 1) * model.rules.secondReleaseS();
    }

    private long earliestHookS(DayState state, int index, int team) {
        Trip trip = trips.get(index);
        boolean last = lastAtPlace[index];
        long readyS;
        if (needsTeamAtHook(trip)) {
            readyS =
                    team >= 0 && state.teamPlace[team] == trip.from()
                            ? state.teamFreeS[team]
                            : DayModel.NEVER_S;
        } else {
            readyS = people.stayingFromS(trip.from(), Crew.Role.HOOK);
            if (people.refuellerAloneHooks(trip.from())) {
                readyS = Math.max(readyS, state.refuelBusyS[trip.from()]);
            }
        }
        for (int k = 0; k < trips.size(); k++) {
            if (last && trips.get(k).to() == trip.from() && state.releasedS[k] >= 0) {
                readyS = Math.max(readyS, state.releasedS[k] + 1);
            }
        }
        return readyS + 1;
    }

    private long earliestReleaseS(DayState state, int k, int team) {
        Trip trip = trips.get(k);
        long readyS = 0;
        if (needsTeamAtDrop(trip)) {
            readyS = state.teamFreeS[team] + READY_BEFORE_S;
        } else {
            long staying = people.stayingFromS(trip.to(), Crew.Role.RECEIVE);
            readyS = staying >= DayModel.NEVER_S ? DayModel.NEVER_S : staying + READY_BEFORE_S;
        }
        for (int i = 0; i < afterTrips[k].length; i++) {
            readyS = Math.max(readyS, state.releasedS[afterTrips[k][i]] + afterWaitS[k][i]);
        }
        if (standsUp[k]) {
            for (int other = 0; other < trips.size(); other++) {
                if (readyAfterS[other] > 0
                        && trips.get(other).to() == trip.to()
                        && state.releasedS[other] >= 0) {
                    long fromS = Math.max(state.releasedS[other], state.teamArrivedS[team]);
                    readyS = Math.max(readyS, fromS + readyAfterS[other]);
                }
            }
        }
        return readyS;
    }

    private @Nullable DayState liftNow(DayState state, Lift lift) {
        int k = lift.trip();
        int team = lift.team();
        int line = lift.line();
        Trip trip = trips.get(k);
        List<DayModel.LegAt> before = new ArrayList<>();
        long startS = state.timeS;
        int from = state.place;
        double fuelStartKg = state.fuelKg;
        if (state.place != trip.from()) {
            if (state.open == null && TripMaker.isSite(model.places.get(trip.from()))) {
                Optional<DayModel.LegAt> leg =
                        model.emptyLeg(state.place, trip.from(), line, model.slot(state.timeS));
                if (leg.isEmpty()) {
                    return null;
                }
                before.add(leg.get());
                burn(state, leg.get().durationS(), model.machine.burnKgPerS());
                state.place = trip.from();
            } else {
                if (!flyTo(state, trip.from(), lift.why())) {
                    return null;
                }
                startS = state.timeS;
                from = state.place;
                fuelStartKg = state.fuelKg;
            }
        } else if (state.open != null) {
            closeRotation(state, List.of(), trip.from());
            startS = state.timeS;
            fuelStartKg = state.fuelKg;
        }
        burn(state, trip.hookUpS(), model.machine.burnKgPerS());
        long hookedS = state.timeS;
        int slotFrom = model.slot(hookedS);
        if (slotFrom < 0) {
            return null;
        }
        Optional<DayModel.LegAt> out = model.loadedLeg(trip, line, slotFrom, slotFrom);
        if (out.isEmpty()) {
            return null;
        }
        long firstSetDownS = (long) Math.ceil(firstSetDownS(trip));
        int slotTo = model.slot(hookedS + out.get().durationS() + firstSetDownS);
        if (slotTo < 0) {
            return null;
        }
        if (slotTo != slotFrom) {
            out = model.loadedLeg(trip, line, slotFrom, slotTo);
            if (out.isEmpty()) {
                return null;
            }
        }
        int slotLast = model.slot(hookedS + out.get().durationS() + trip.setDownS());
        double fuelAtHookKg = state.fuelKg;
        double mostKg = model.fuelMaxKg(trip, line, slotFrom, slotTo);
        if (fuelAtHookKg + model.machine.fuelGaugeSpreadKg() > mostKg
                || slotLast != slotTo
                // The way in of the other hour may be shorter and end before it.
                || model.slot(hookedS + out.get().durationS() + firstSetDownS) != slotTo
                || !maker.isWindWithin(trip, slotFrom)
                || !maker.isWindWithin(trip, slotTo)
                || model.hoverMassKg(trip.from(), slotFrom) <= 0
                || model.hoverMassKg(trip.to(), slotTo) <= 0) {
            return null;
        }
        burn(state, out.get().durationS(), model.machine.burnKgPerS());
        double hoverBurn =
                trip.standsUp()
                        ? Math.max(model.machine.burnKgPerS(), model.machine.hoverBurnKgPerS())
                        : model.machine.burnKgPerS();
        List<Long> released = new ArrayList<>();
        burn(state, firstSetDownS, hoverBurn);
        released.add(state.timeS);
        for (int i = 1; i < trip.loads().size(); i++) {
            burn(state, (long) Math.ceil(model.rules.secondReleaseS()), hoverBurn);
            released.add(state.timeS);
        }
        if (released.get(0) < earliestReleaseS(state, k, team)) {
            return null;
        }
        state.releasedS[k] = state.timeS;
        state.place = trip.to();
        if (team >= 0 && needsTeamAtDrop(trip)) {
            state.teamFreeS[team] =
                    Math.max(state.teamFreeS[team], state.timeS + trip.busyAfterS());
        } else if (team >= 0) {
            state.teamFreeS[team] = Math.max(state.teamFreeS[team], hookedS + 1);
        }
        state.open =
                new DayState.Flown(
                        k,
                        before,
                        out.get(),
                        hookedS,
                        fuelAtHookKg,
                        released,
                        slotFrom,
                        slotTo,
                        line,
                        from,
                        startS,
                        fuelStartKg,
                        lift.why());
        if (!TripMaker.isSite(model.places.get(trip.to()))) {
            closeRotation(state, List.of(), trip.to());
        }
        return isWithinDay(state) ? state : null;
    }

    private boolean isWithinDay(DayState state) {
        long homeS = 0;
        if (state.open != null) {
            int slot = model.slot(state.timeS);
            int home = nearestGround[state.place];
            if (slot < 0 || home < 0) {
                return false;
            }
            Optional<DayModel.LegAt> leg = model.emptyLeg(state.place, home, state.line, slot);
            if (leg.isEmpty()) {
                return false;
            }
            homeS = leg.get().durationS() + (long) Math.ceil(model.rules.returnExtraS());
        }
        double lowKg =
                state.fuelKg
                        - homeS * model.machine.burnKgPerS()
                        - model.machine.fuelGaugeSpreadKg();
        return state.timeS + homeS <= dayEndS
                && state.onTotalS + homeS <= (long) model.rules.engineOnDayS()
                && state.onSinceBreakS + homeS <= (long) model.rules.engineOnS()
                && lowKg >= model.machine.reserveS() * model.machine.burnKgPerS();
    }

    /** Runs the engine for so long. */
    private void burn(DayState state, long durationS, double burnKgPerS) {
        if (state.engineOff) {
            state.fuelKg -= model.machine.startFuelKg();
            state.engineOff = false;
        }
        state.fuelKg -= durationS * burnKgPerS;
        state.timeS += durationS;
        state.onSinceBreakS += durationS;
        state.onTotalS += durationS;
    }

    private boolean engineOn(DayState state, Run run) {
        double fuelStartKg = state.fuelKg;
        long startS = state.timeS;
        int from = state.place;
        burn(state, run.durationS(), model.machine.burnKgPerS());
        state.place = run.to();
        if (run.kind() != StepKind.WAIT) {
            state.flightS += run.durationS();
        }
        state.add(
                new DayState.Event(
                        run.kind(),
                        from,
                        run.to(),
                        startS,
                        state.timeS,
                        fuelStartKg,
                        state.fuelKg,
                        state.line,
                        true,
                        null,
                        run.team(),
                        run.legs(),
                        run.because()));
        return state.fuelKg > 0;
    }

    private void engineOff(DayState state, StepKind kind, long durationS, String because) {
        long startS = state.timeS;
        state.timeS += durationS;
        state.engineOff = true;
        state.add(
                new DayState.Event(
                        kind,
                        state.place,
                        state.place,
                        startS,
                        state.timeS,
                        state.fuelKg,
                        state.fuelKg,
                        state.line,
                        false,
                        null,
                        -1,
                        List.of(),
                        because));
    }

    /** Flies to a place: the way back of an open rotation, or an empty move. */
    private boolean flyTo(DayState state, int to, String because) {
        int slot = model.slot(state.timeS);
        if (slot < 0) {
            return false;
        }
        Optional<DayModel.LegAt> leg = model.emptyLeg(state.place, to, state.line, slot);
        if (leg.isEmpty()) {
            return false;
        }
        if (state.open != null) {
            burn(
                    state,
                    leg.get().durationS() + (long) Math.ceil(model.rules.returnExtraS()),
                    model.machine.burnKgPerS());
            closeRotation(state, List.of(leg.get()), to);
            return true;
        }
        return engineOn(
                state,
                new Run(
                        StepKind.POSITION,
                        to,
                        leg.get().durationS(),
                        List.of(leg.get()),
                        -1,
                        "moves for " + because));
    }

    private static void closeRotation(DayState state, List<DayModel.LegAt> back, int to) {
        DayState.Flown flown = state.open;
        if (flown == null) {
            return;
        }
        state.open = null;
        state.place = to;
        state.flightS += state.timeS - flown.startS();
        state.add(
                new DayState.Event(
                        StepKind.ROTATION,
                        flown.from(),
                        to,
                        flown.startS(),
                        state.timeS,
                        flown.fuelStartKg(),
                        state.fuelKg,
                        flown.line(),
                        true,
                        flown,
                        -1,
                        back,
                        flown.because()));
    }

    private boolean refuel(DayState state, double toKg, String because) {
        int place = state.place;
        long handlerS = people.stayingFromS(place, Crew.Role.REFUEL);
        if (!model.places.get(place).fuel() || handlerS >= DayModel.NEVER_S) {
            return false;
        }
        double targetKg = Math.floor(Math.min(toKg, model.machine.fuelUsableKg()));
        if (targetKg <= state.fuelKg + 1) {
            return false;
        }
        if (state.timeS < handlerS) {
            waitUntil(state, handlerS, "waits for the refueller");
        }
        double upliftKg = targetKg - state.fuelKg;
        long durationS =
                (long) Math.ceil(model.rules.refuelS() + upliftKg / model.rules.refuelKgPerS());
        long startS = state.timeS;
        double fuelStartKg = state.fuelKg;
        state.timeS += durationS;
        state.fuelKg = targetKg;
        state.engineOff = true;
        state.refuels++;
        state.refuelBusyS[place] = state.timeS + (long) Math.ceil(model.rules.refuelHandlerBusyS());
        state.add(
                new DayState.Event(
                        StepKind.REFUEL,
                        place,
                        place,
                        startS,
                        state.timeS,
                        fuelStartKg,
                        targetKg,
                        state.line,
                        false,
                        null,
                        -1,
                        List.of(),
                        "fuel for " + because));
        return true;
    }

    private void changeLine(DayState state, int line, String because) {
        state.line = line;
        engineOff(
                state, StepKind.LINE_CHANGE, (long) Math.ceil(model.rules.lineChangeS()), because);
    }

    private void rest(DayState state, String because) {
        engineOff(state, StepKind.BREAK, (long) Math.ceil(model.rules.breakS()), because);
        state.onSinceBreakS = 0;
    }

    /** Waits on the ground; the engine is stopped when that saves fuel, and long waits are breaks. */
    private void waitUntil(DayState state, long untilS, String because) {
        long durationS = untilS - state.timeS;
        boolean restsEarly =
                durationS >= state.restWaitS && state.onSinceBreakS > model.rules.engineOnS() / 3;
        if (restsEarly && durationS < (long) Math.ceil(model.rules.breakS())) {
            durationS = (long) Math.ceil(model.rules.breakS());
        }
        if (durationS >= (long) Math.ceil(model.rules.breakS())) {
            engineOff(state, StepKind.BREAK, durationS, because);
            state.onSinceBreakS = 0;
        } else if (state.engineOff
                || durationS * model.machine.burnKgPerS() > model.machine.startFuelKg()) {
            engineOff(state, StepKind.WAIT, durationS, because);
        } else {
            engineOn(state, new Run(StepKind.WAIT, state.place, durationS, List.of(), -1, because));
        }
    }
}
