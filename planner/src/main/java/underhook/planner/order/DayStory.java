package underhook.planner.order;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.core.job.Place;
import underhook.planner.search.Cause;
import underhook.planner.search.DayEvent;
import underhook.planner.search.DayTable;
import underhook.planner.search.EmptyWay;
import underhook.planner.search.LiftDone;
import underhook.planner.search.Ordered;
import underhook.planner.search.TeamStay;

/** Gives an ordered day its ways and its words. */
final class DayStory {
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final DayModel model;
    private final List<Trip> trips;
    private final People people;
    private final DayTable table;

    DayStory(DayModel model, TripMaker maker, People people, DayTable table) {
        this.table = table;
        this.model = model;
        this.trips = maker.trips();
        this.people = people;
    }

    DayState tell(Ordered day) {
        return new DayState(
                day.events().stream().map(this::event).toList(),
                day.stays().stream().map(this::stay).toList(),
                day.releasedS(),
                day.teams().stream()
                        .map(end -> new DayState.TeamEnd(end.place(), end.arrivedS(), end.freeS()))
                        .toList(),
                day.finishS(),
                day.flownS());
    }

    private DayState.Event event(DayEvent event) {
        return new DayState.Event(
                event.kind(),
                event.from(),
                event.to(),
                event.startS(),
                event.endS(),
                event.fuelStartKg(),
                event.fuelEndKg(),
                event.line(),
                event.engineOn(),
                event.lift().map(lift -> lifted(lift, event.from())).orElse(null),
                event.team(),
                event.legs().stream().map(this::way).toList(),
                event.lift().isPresent() ? why(event.cause()) : because(event.cause()));
    }

    private DayState.Flown lifted(LiftDone lift, int from) {
        return new DayState.Flown(
                lift.trip(),
                lift.before().stream().map(this::way).toList(),
                known(
                        model.legs()
                                .loadedLeg(
                                        trips.get(lift.trip()),
                                        lift.line(),
                                        lift.slotFrom(),
                                        lift.slotTo())),
                lift.hookedS(),
                lift.fuelAtHookKg(),
                lift.releasedS(),
                lift.slotFrom(),
                lift.slotTo(),
                lift.line(),
                from);
    }

    private DayLegs.LegAt way(EmptyWay way) {
        return known(model.legs().emptyLeg(way.from(), way.to(), way.line(), way.slot()));
    }

    private static DayLegs.LegAt known(Optional<DayLegs.LegAt> leg) {
        return leg.orElseThrow(() -> new IllegalStateException("a way flown is not known."));
    }

    private DayState.Stay stay(TeamStay stay) {
        String place = model.places.get(stay.place()).id().value();
        String doing =
                switch (stay.doing()) {
                    case WORKS -> "works and waits";
                    case WALKS -> "walks to " + place;
                    case FLIES -> "flown to " + place;
                };
        return new DayState.Stay(
                stay.team(),
                stay.place(),
                stay.fromS(),
                stay.untilS(),
                doing,
                stay.doing() == TeamStay.Doing.WALKS);
    }

    /** What a lift was flown as soon as; where nothing held it back, by when the wind or the end of its forecast wants it done. */
    private String why(Cause cause) {
        String purpose = purpose(cause);
        if (cause.kind() != Cause.Kind.LIFT) {
            return purpose + ": as soon as it may; " + held(cause);
        }
        long closesS = table.windowEndS(cause.trip());
        return closesS < table.endS()
                ? purpose
                        + ": as soon as the machine is there; the forecast closes it at "
                        + clock(closesS)
                : purpose + ": as soon as the machine is there; the order is free";
    }

    private String clock(long timeS) {
        return CLOCK.withZone(model.job.zone()).format(model.instant(timeS));
    }

    private String because(Cause cause) {
        String purpose = purpose(cause);
        return switch (cause.kind()) {
            case LIFT -> purpose;
            case MOVE -> "moves for " + purpose;
            case FUEL -> "fuel for " + purpose;
            case LINE ->
                    cause.trip() < 0
                            ? "people fly with the line off"
                            : purpose + " needs this line";
            case ENGINE_LIMIT -> "the engine was on for long enough" + keptFree();
            // Nothing holds back what a break was only wished before.
            case EARLY_BREAK ->
                    cause.other() < 0
                            ? "a break before " + purpose
                            : "a break while " + purpose + " is not ready";
            case TEAM_MOVE -> "flies " + team(cause.other()) + " to its work";
            case TEAM, AFTER, READY, HANDLER, STAFF, ROW, WIND, ZONE, WAY_IN ->
                    "waits: " + purpose + " is not ready before; " + held(cause);
            case HOME -> "last landing";
        };
    }

    private String keptFree() {
        long keptS = (long) Math.ceil(model.rules.duty().shutDown().keptS());
        return keptS > 0 ? "; " + keptS + " s are kept free to shut down" : "";
    }

    /** What holds a lift back. */
    private String held(Cause cause) {
        return switch (cause.kind()) {
            case TEAM -> team(cause.other()) + " is not there before";
            case AFTER -> trips.get(cause.other()) + " must be down for long enough";
            case READY -> trips.get(cause.other()) + " must have made the place ready";
            case HANDLER -> "whoever hooks at " + place(cause) + " has refuelled";
            case STAFF -> "nobody is at " + place(cause) + " before";
            case ROW -> "the weather's next row would begin while it is flown";
            case WIND -> shut(trips.get(cause.trip()));
            case ZONE -> "a zone closes the way to " + place(cause) + " for some hours";
            case WAY_IN -> "the wind is over the limit of the way in to " + place(cause);
            case LIFT, MOVE, FUEL, LINE, ENGINE_LIMIT, EARLY_BREAK, TEAM_MOVE, HOME -> "it is next";
        };
    }

    private String purpose(Cause cause) {
        if (cause.trip() < 0) {
            if (cause.kind() == Cause.Kind.HOME || cause.other() < 0) {
                return "the day";
            }
            // Where nobody is to refuel, the other is that place.
            boolean isPlace = cause.kind() == Cause.Kind.STAFF;
            return isPlace ? "flying people" : "flying " + team(cause.other());
        }
        Trip trip = trips.get(cause.trip());
        return trip + " to " + model.places.get(trip.to()).id();
    }

    private String place(Cause cause) {
        return model.places.get(cause.other()).id().value();
    }

    /** What shuts a trip in some hours: the wind, a zone, or the one now and the other then. */
    private String shut(Trip trip) {
        boolean byWind = false;
        boolean byZone = false;
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            byWind |= !model.air().isWindWithin(trip, slot);
            byZone |= !model.ways().isOpen(trip, slot);
        }
        String wind = "the wind at " + windier(trip) + " is over its limit";
        String zone =
                "a zone closes the way to " + model.places.get(trip.to()).id() + " for some hours";
        return byZone ? (byWind ? wind + ", or " + zone : zone) : wind;
    }

    /** The more exposed end: where the wind is over a limit at one, it is there. */
    private String windier(Trip trip) {
        Place from = model.places.get(trip.from());
        Place to = model.places.get(trip.to());
        return (from.exposureFactor() > to.exposureFactor() ? from : to).id().value();
    }

    private String team(int team) {
        return team < 0 ? "the crew" : people.teams.get(team).id().value();
    }
}
