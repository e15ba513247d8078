package underhook.planner.odds;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import underhook.core.job.Job;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;

/**
 * One thing that people could do about the day.
 *
 * @param what in words
 * @param edit what becomes of each edge
 */
record Change(String what, Function<Edge, Optional<Edge>> edit) {
    /** How much earlier the day could begin, s. @source PRACTICE a quarter of an hour can be asked for */
    private static final double EARLIER_S = 900;

    /** How much quicker people could be, s. @source PRACTICE five minutes can be practised */
    private static final double QUICKER_S = 300;

    /** What a second set laid out leaves of a change's time. @source PRACTICE */
    private static final double PREPARED_FRACTION = 0.5;

    /** Everything that could be changed on this day. */
    static List<Change> list(Job job, Plan plan, DayNet net, Limits limits) {
        List<Change> all = new ArrayList<>();
        for (String crew : names(net, Edge.Kind.CREW_READY)) {
            all.add(
                    new Change(
                            "crew " + crew + " ready on time",
                            edge ->
                                    Optional.of(
                                            is(edge, Edge.Kind.CREW_READY, crew)
                                                    ? edge.withVaries(0)
                                                    : edge)));
        }
        for (String place : names(net, Edge.Kind.HANDLER)) {
            all.add(
                    new Change(
                            "somebody else refuels at " + place,
                            edge ->
                                    is(edge, Edge.Kind.HANDLER, place)
                                            ? Optional.empty()
                                            : Optional.of(edge)));
        }
        if (canBeginEarlier(job, plan, net, limits)) {
            all.add(new Change("everybody begins 15 min earlier", Change::earlier));
        }
        Map<Edge.Kind, Change> kinds = new EnumMap<>(Edge.Kind.class);
        kinds.put(Edge.Kind.GUYING, of(Edge.Kind.GUYING, "guying 5 min quicker", Change::quicker));
        kinds.put(
                Edge.Kind.MAKING_READY,
                of(
                        Edge.Kind.MAKING_READY,
                        "places ready 5 min sooner after the bag",
                        Change::quicker));
        kinds.put(
                Edge.Kind.LINE_CHANGE,
                of(
                        Edge.Kind.LINE_CHANGE,
                        "a second line laid out: line changes in half the time",
                        Change::half));
        kinds.put(
                Edge.Kind.REFUEL,
                of(Edge.Kind.REFUEL, "refuelling in half the time", Change::half));
        kinds.forEach(
                (kind, change) -> {
                    if (net.network().edges().stream().anyMatch(edge -> edge.kind() == kind)) {
                        all.add(change);
                    }
                });
        return all;
    }

    private static boolean is(Edge edge, Edge.Kind kind, String about) {
        return edge.kind() == kind && edge.about().equals(about);
    }

    private static TreeSet<String> names(DayNet net, Edge.Kind kind) {
        TreeSet<String> names = new TreeSet<>();
        for (Edge edge : net.network().edges()) {
            if (edge.kind() == kind) {
                names.add(edge.about());
            }
        }
        return names;
    }

    private static Change of(Edge.Kind kind, String what, UnaryOperator<Edge> edit) {
        return new Change(what, edge -> Optional.of(edge.kind() == kind ? edit.apply(edge) : edge));
    }

    private static Optional<Edge> earlier(Edge edge) {
        boolean clock = edge.kind() == Edge.Kind.CLOCK || edge.kind() == Edge.Kind.CREW_READY;
        return Optional.of(
                clock && edge.from() == NetMaker.ZERO
                        ? edge.withFixed(edge.fixedS() - EARLIER_S)
                        : edge);
    }

    /** By five minutes, but never to less than half. */
    private static Edge quicker(Edge edge) {
        return edge.withVaries(Math.max(edge.variesS() / 2, edge.variesS() - QUICKER_S));
    }

    private static Edge half(Edge edge) {
        return edge.withVaries(edge.variesS() * PREPARED_FRACTION);
    }

    /** Whether duty, light and forecast allow it. */
    private static boolean canBeginEarlier(Job job, Plan plan, DayNet net, Limits limits) {
        Clock clock = net.clock();
        double firstS = clock.timeS(plan.steps().get(0).startAt()) - EARLIER_S;
        double flownS =
                plan.steps().stream()
                                .filter(Limits::flies)
                                .map(Step::startAt)
                                .mapToDouble(clock::timeS)
                                .findFirst()
                                .orElse(0)
                        - EARLIER_S;
        return firstS >= 0
                && flownS >= limits.lightFromS()
                && flownS >= clock.timeS(job.weather().hours().get(0).from());
    }
}
