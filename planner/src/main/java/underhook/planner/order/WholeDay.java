package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
import underhook.core.finding.Finding;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;
import underhook.planner.search.Ordered;

/** Tells a day that was found as a plan: what is flown, what is left out and why, what it costs. */
final class WholeDay {
    private final DayModel model;
    private final TripMaker maker;
    private final People people;
    private final DayTable table;

    WholeDay(DayModel model, TripMaker maker, People people, DayTable table) {
        this.model = model;
        this.maker = maker;
        this.people = people;
        this.table = table;
    }

    /**
     * How a day was found.
     *
     * @param cutShort whether the search for it was cut short
     * @param cutFor whether one trip may be missing for that
     * @param front days to choose from; empty where none were looked for
     * @param bounds what no order goes below; asked when all else is known
     */
    record Found(
            boolean cutShort,
            Predicate<Trip> cutFor,
            List<DayOrder.Offer> front,
            Supplier<DayBounds> bounds) {}

    /** The plan, not yet re-checked; refused when nothing is flown. */
    Outcome<Plan> plan(Ordered ordered, PlanSettings settings, Found found) {
        DayState day = new DayStory(model, maker, people, table).tell(ordered);
        List<Finding> findings = new ArrayList<>(model.job.readingFindings());
        findings.addAll(model.zonesAtPlaces().list());
        findings.addAll(maker.findings());
        Map<LoadId, LeftOut> leftOut = new TreeMap<>(maker.leftOut());
        for (int k = 0; k < maker.trips().size(); k++) {
            if (day.releasedS().get(k) < 0) {
                for (LeftOut out : leftOut(k, day, found)) {
                    leftOut.put(out.load(), out);
                    findings.add(
                            Finding.of(
                                    out.code(),
                                    Severity.STOP,
                                    out.load().value(),
                                    "rules",
                                    out.message()));
                }
            }
        }
        if (leftOut.size() == model.job.loads().size()) {
            findings.addAll(new DayFindings(model, people, maker, day).listOfPlaces());
            return Outcome.refused(Waivers.applied(model.job, findings));
        }
        findings.addAll(new DayFindings(model, people, maker, day).list());
        List<RefusedComfort> comforts = new Discomforts(model).list(maker.trips(), people, day);
        DayCosts costs =
                new DayCosts(
                        model,
                        found.bounds().get(),
                        new DayCosts.Days(ordered, found.front()),
                        comforts);
        return Outcome.done(
                new PlanBuilder(
                                model,
                                maker,
                                people,
                                new PlanBuilder.Built(
                                        day,
                                        found.cutShort(),
                                        Optional.of(costs),
                                        comforts,
                                        List.of()))
                        .build(
                                settings,
                                List.copyOf(leftOut.values()),
                                Waivers.applied(model.job, findings)));
    }

    private List<LeftOut> leftOut(int k, DayState day, Found found) {
        Trip trip = maker.trips().get(k);
        Unflown.Reason reason =
                new Unflown(table, k, trip, new Boarding(model, people))
                        .reason(found.cutFor().test(trip));
        Waits waits = new Waits(model.job);
        return trip.ids().stream()
                .map(
                        id ->
                                waits.inVain(id, before -> isFlown(before, day))
                                        .orElse(new LeftOut(id, reason.code(), reason.message())))
                .toList();
    }

    private boolean isFlown(LoadId load, DayState day) {
        for (int k = 0; k < maker.trips().size(); k++) {
            if (maker.trips().get(k).carries(load)) {
                return day.releasedS().get(k) >= 0;
            }
        }
        return false;
    }
}
