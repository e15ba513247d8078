package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.geo.PlanePoint;
import underhook.core.job.PlaceKind;
import underhook.planner.route.Blocked;
import underhook.planner.route.ClosedWays;
import underhook.planner.route.NoWayIn;

/** Says why no way that keeps the rules leads from where a load waits to where it belongs. */
final class NoWay {
    /** More names than these help nobody. */
    private static final int NAMED = 6;

    private final DayModel model;

    /** The ground while fewest zones' rules hold: what closes it then closes it all day. */
    private final ClosedWays closed;

    NoWay(DayModel model) {
        this.model = model;
        this.closed =
                model.air().slots.stream()
                        .map(DayAir.Slot::closed)
                        .min(Comparator.comparingInt(then -> then.job.zones().size()))
                        .orElse(model.zoneHours().wholeDay())
                        .finder
                        .closed();
    }

    /** What truly stands in the way, and what would open it. */
    String say(Trip trip) {
        String to = name(trip.to());
        Blocked.Found found =
                closed.findBlock(
                        model.points.get(trip.from()),
                        model.points.get(trip.to()),
                        trip.kindNames());
        if (found.why() != Blocked.Why.NOT_IN_PLAN) {
            List<String> openers = new ArrayList<>(openers(found));
            openers.addAll(otherLaydowns(trip));
            return "There is no way to "
                    + to
                    + " that keeps the rules: "
                    + why(found, name(trip.from()), to)
                    + perhaps(openers);
        }
        Refusals.Why out = model.legs().refusals().between(trip.from(), trip.to());
        Refusals.Why back = model.legs().refusals().between(trip.to(), trip.from());
        List<String> reasons = new ArrayList<>(reasons(out, trip, "with the load"));
        List<String> openers = new ArrayList<>(openers(out, trip));
        if (reasons.isEmpty()) {
            reasons.addAll(reasons(back, trip, "back with the empty line"));
            openers.addAll(openers(back, trip));
        }
        return "There is no way to "
                + to
                + " that keeps the rules, at no hour and with no line in stock"
                + (reasons.isEmpty() ? "" : ": " + String.join("; ", reasons))
                + "."
                + perhaps(openers);
    }

    /** What opens it: one of several, or several together. */
    private static List<String> openers(Blocked.Found found) {
        return switch (found.why()) {
            case START_CLOSED, END_CLOSED, TOGETHER ->
                    List.of(String.join(" and ", found.openers()));
            case EACH_ALONE -> found.openers();
            case MANY, NOT_IN_PLAN -> List.of();
        };
    }

    private String name(int place) {
        return model.places.get(place).id().value();
    }

    private List<String> reasons(Refusals.Why why, Trip trip, String how) {
        List<String> all = new ArrayList<>();
        if (!why.inReach.isEmpty()) {
            all.add(
                    "let go "
                            + where(why, trip)
                            + " "
                            + how
                            + " it could hit "
                            + named(List.copyOf(why.inReach), ", ")
                            + (why.fewest.size() > NAMED
                                    ? ", on every way that was tried "
                                            + why.fewest.size()
                                            + " of them or more"
                                    : ""));
        }
        if (why.unknownGround) {
            all.add(
                    "the terrain file has no heights under a part of the ways "
                            + where(why, trip)
                            + " "
                            + how
                            + ", or where a load let go there would fall");
        }
        if (why.wind) {
            all.add("the wind on the way " + how + " is too strong");
        }
        if (why.noWay) {
            all.add(
                    "the ground is open, but wires are crossed at no allowed angle or a first or last"
                            + " part ends in a pocket ("
                            + how
                            + ")");
        }
        return all;
    }

    private String where(Refusals.Why why, Trip trip) {
        if (why.atStart == why.atEnd) {
            return "near " + name(trip.from()) + " or " + name(trip.to());
        }
        return "near " + name(why.atStart ? trip.from() : trip.to());
    }

    private List<String> openers(Refusals.Why why, Trip trip) {
        List<String> all = new ArrayList<>();
        if (!why.fewest.isEmpty() && why.fewest.size() <= NAMED) {
            // With one thing gone another way may come first, and something else into its reach.
            all.add(
                    String.join(" and ", closed.openers(why.fewest))
                            + (why.fewest.size() > 1 ? " together" : "")
                            + ", and then another look: more may come into reach");
        }
        if (!why.inReach.isEmpty()) {
            all.add("another place, further from what could be hit");
        }
        if (why.unknownGround) {
            all.add("a terrain file that reaches further");
        }
        if (why.wind) {
            all.add("another day with another wind");
        }
        if (why.atStart || why.noWay) {
            all.addAll(otherLaydowns(trip));
        }
        if (why.noWay) {
            all.add("an agreement to cross a wire at another angle");
        }
        return all;
    }

    /** Why no direction of a last part will do; empty where it is for want of room, not of ground. */
    Optional<String> sayNoWayIn(Trip trip) {
        Blocked.Found between =
                closed.findBlock(
                        model.points.get(trip.from()),
                        model.points.get(trip.to()),
                        trip.kindNames());
        if (between.why() == Blocked.Why.START_CLOSED || between.why() == Blocked.Why.END_CLOSED) {
            return Optional.of(say(trip));
        }
        return sayNoWayIn(trip.to(), trip, between)
                .or(() -> sayNoWayIn(trip.from(), trip, between));
    }

    private Optional<String> sayNoWayIn(int place, Trip trip, Blocked.Found between) {
        NoWayIn.Found found = lookRound(place, trip);
        String names = named(found.ids(), ", ");
        List<String> openers = new ArrayList<>(opened(found, between));
        return switch (found.cause()) {
            case ROOM -> Optional.empty();
            case BLOCKED -> {
                openers.add("another place, further from what is in the way");
                yield Optional.of(
                        "Every last part to "
                                + name(place)
                                + " would pass "
                                + names
                                + "."
                                + perhaps(openers));
            }
            case WIND -> {
                openers.add("another day with another wind");
                yield Optional.of(
                        "Where the last part to "
                                + name(place)
                                + " passes nothing the wind is too much from behind or the side at"
                                + " every hour"
                                + (found.ids().isEmpty()
                                        ? ""
                                        : "; elsewhere it would pass " + names)
                                + "."
                                + perhaps(openers));
            }
        };
    }

    /** Bearings from which the last part to a place passes nothing, ten degrees apart, rad from grid north. */
    List<Double> openGridRad(int place, Trip trip) {
        return lookRound(place, trip).openGridRad();
    }

    private NoWayIn.Found lookRound(int place, Trip trip) {
        PlanePoint at = model.points.get(place);
        return NoWayIn.find(
                new NoWayIn.Below(
                        from ->
                                closed.blockers(
                                        at.towards(from, model.rules.flying().finalM()),
                                        at,
                                        trip.kindNames()),
                        closed::canOpen),
                IntStream.range(0, model.air().slots.size())
                        .filter(slot -> model.air().isWindWithin(trip, place, slot))
                        .mapToObj(slot -> model.air().wind(place, slot))
                        .toList(),
                new NoWayIn.Limits(
                        model.rules.flying().tailwindMPerS(),
                        model.rules.flying().crosswindMPerS()));
    }

    /** What opens the last part, and what closes the way to it besides; nothing where nothing does. */
    private List<String> opened(NoWayIn.Found found, Blocked.Found between) {
        if (found.fewest().isEmpty() || between.why() == Blocked.Why.MANY) {
            return List.of();
        }
        List<String> all = new ArrayList<>(closed.openers(found.fewest()));
        boolean apart = between.ids().stream().noneMatch(found.fewest()::contains);
        if (between.why() == Blocked.Why.TOGETHER) {
            all.addAll(between.openers());
        } else if (between.why() == Blocked.Why.EACH_ALONE && apart) {
            all.add(between.openers().get(0));
        }
        return List.of(String.join(" and ", all.stream().distinct().toList()));
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
            case TOGETHER ->
                    found.things().size() == 1
                            ? names + " closes it."
                            : names + " close it together; all of them must be opened.";
            case MANY -> names + " and others close it together; no few of them open it.";
            case NOT_IN_PLAN -> "in plan the ground is open.";
        };
    }

    /** Agreed laydowns from which the ground in plan is open. */
    private List<String> otherLaydowns(Trip trip) {
        List<String> others =
                IntStream.range(0, model.places.size())
                        .filter(place -> place != trip.from() && place != trip.to())
                        .filter(place -> model.places.get(place).kind() == PlaceKind.LAYDOWN)
                        .filter(place -> model.places.get(place).agreed() && model.isKnown(place))
                        .filter(
                                place ->
                                        closed.isJoined(
                                                model.points.get(place),
                                                model.points.get(trip.to()),
                                                trip.kindNames()))
                        .mapToObj(this::name)
                        .toList();
        return Stream.of(others)
                .filter(list -> !list.isEmpty())
                .map(list -> "the laydown " + named(list, ", ") + ", from which the ground is open")
                .toList();
    }

    private static String perhaps(List<String> openers) {
        List<String> each = openers.stream().distinct().toList();
        return each.isEmpty() ? "" : " Perhaps " + named(each, " or ") + ".";
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
