package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.geo.PlanePoint;
import underhook.core.job.PlaceKind;
import underhook.planner.route.Blocked;
import underhook.planner.route.NoWayIn;

/** Says why no way that keeps the rules leads from where a load waits to where it belongs. */
final class NoWay {
    /** More names than these help nobody. */
    private static final int NAMED = 6;

    private final DayModel model;

    NoWay(DayModel model) {
        this.model = model;
    }

    String say(Trip trip) {
        Blocked.Found found =
                model.finder()
                        .findBlock(
                                model.points.get(trip.from()),
                                model.points.get(trip.to()),
                                trip.kindNames());
        String from = model.places.get(trip.from()).id().value();
        String to = model.places.get(trip.to()).id().value();
        String why = "There is no way to " + to + " that keeps the rules: " + why(found, from, to);
        List<String> openers = openers(found, trip);
        List<String> inReach = List.copyOf(model.refusals().between(trip.from(), trip.to()).inReach);
        if (!inReach.isEmpty()) {
            why += " Let go on the way it could hit " + named(inReach, ", ") + ".";
        }
        return openers.isEmpty() ? why : why + " Perhaps " + named(openers, " or ") + ".";
    }

    /** Why no direction of a last part will do; empty where it is for want of room, not of ground. */
    Optional<String> sayNoWayIn(Trip trip) {
        Blocked.Why why =
                model.finder()
                        .findBlock(
                                model.points.get(trip.from()),
                                model.points.get(trip.to()),
                                trip.kindNames())
                        .why();
        if (why == Blocked.Why.START_CLOSED || why == Blocked.Why.END_CLOSED) {
            return Optional.of(say(trip));
        }
        return sayNoWayIn(trip.to(), trip).or(() -> sayNoWayIn(trip.from(), trip));
    }

    private Optional<String> sayNoWayIn(int place, Trip trip) {
        PlanePoint at = model.points.get(place);
        NoWayIn.Found found =
                NoWayIn.find(
                        from ->
                                model.finder()
                                        .blockers(
                                                at.towards(from, model.rules.finalM()),
                                                at,
                                                trip.kindNames()),
                        IntStream.range(0, model.slots.size())
                                .filter(
                                        slot ->
                                                trip.kinds().stream()
                                                        .allMatch(
                                                                kind ->
                                                                        model.isWindWithin(
                                                                                kind.windLimit(),
                                                                                place,
                                                                                slot)))
                                .mapToObj(slot -> model.wind(place, slot))
                                .toList(),
                        new NoWayIn.Limits(
                                model.rules.tailwindMPerS(), model.rules.crosswindMPerS()));
        String name = model.places.get(place).id().value();
        return switch (found.cause()) {
            case ROOM -> Optional.empty();
            case BLOCKED ->
                    Optional.of(
                            "Every last part to "
                                    + name
                                    + " would pass "
                                    + named(found.ids(), ", ")
                                    + ". Perhaps another place, a guard or an agreement to cross.");
            case WIND ->
                    Optional.of(
                            "Where the last part to "
                                    + name
                                    + " passes nothing the wind is too much from behind or the side"
                                    + " at every hour"
                                    + (found.ids().isEmpty()
                                            ? ""
                                            : "; elsewhere it would pass "
                                                    + named(found.ids(), ", "))
                                    + ". Perhaps another hour with another wind.");
        };
    }

    private static String why(Blocked.Found found, String from, String to) {
        String names = named(found.ids(), ", ");
        return switch (found.why()) {
            case START_CLOSED -> from + " itself lies within what must be kept off " + names + ".";
            case END_CLOSED -> to + " itself lies within what must be kept off " + names + ".";
            case EACH_ALONE ->
                    found.things().size() == 1
                            ? names + " alone closes it."
                            : "each of " + names + " closes it; one opened is enough.";
            case TOGETHER -> names + " close it together; no single one opens it.";
            case NOT_IN_PLAN ->
                    "in plan the ground is open, but wires are crossed at no allowed angle, ground or"
                            + " heights on the way are not known, or the wind is too strong.";
        };
    }

    private List<String> openers(Blocked.Found found, Trip trip) {
        List<String> openers = new ArrayList<>(found.openers());
        List<String> others =
                IntStream.range(0, model.places.size())
                        .filter(place -> place != trip.from() && place != trip.to())
                        .filter(place -> model.places.get(place).kind() == PlaceKind.LAYDOWN)
                        .filter(place -> model.places.get(place).agreed() && model.isKnown(place))
                        .filter(
                                place ->
                                        model.finder()
                                                .isJoined(
                                                        model.points.get(place),
                                                        model.points.get(trip.to()),
                                                        trip.kindNames()))
                        .mapToObj(place -> model.places.get(place).id().value())
                        .toList();
        if (!others.isEmpty() && found.why() != Blocked.Why.NOT_IN_PLAN) {
            openers.add("the laydown " + named(others, ", ") + ", from which there is a way");
        }
        if (found.why() == Blocked.Why.NOT_IN_PLAN) {
            openers.add("another hour with another wind");
        }
        return openers;
    }

    private static String named(List<String> names, String between) {
        return names.size() <= NAMED
                ? String.join(between, names)
                : String.join(between, names.subList(0, NAMED))
                        + " and "
                        + (names.size() - NAMED)
                        + " more";
    }
}
