package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;

/** Plans a day: every load that can be flown placed in it, or left out with its reason. */
public final class DayPlanner {
    /** Is told what is being done. */
    public interface Progress {
        /** Doing so, and how far the whole is, in [0, 1]. */
        void step(String doing, double doneFraction);
    }

    private DayPlanner() {}

    /**
     * Plans the day.
     *
     * @param ground heights over the job's local plane
     * @param settings seed, time of planning and when to stop
     * @return the plan, not yet re-checked; refused when nothing at all can be flown
     */
    public static Outcome<Plan> plan(
            Job job, Ground ground, PlanSettings settings, Progress progress) {
        progress.step("finding the ways", 0);
        DayModel model = new DayModel(job, ground, settings.stop());
        TripMaker maker = new TripMaker(model, new Ceiling(settings.enough()));
        People people = new People(model);
        List<Finding> findings = new ArrayList<>(job.readingFindings());
        findings.addAll(model.zonesAtPlaces().list());
        findings.addAll(maker.findings());
        if (maker.trips().isEmpty()) {
            findings.add(
                    Finding.of(
                            maker.isCut() || model.isCut()
                                    ? FindingCode.SEARCH_CUT
                                    : FindingCode.NO_ROOM_IN_DAY,
                            Severity.STOP,
                            job.name(),
                            "loads",
                            maker.isCut() || model.isCut()
                                    ? "The search was stopped at its time limit before a load that"
                                            + " can be flown was found. Perhaps more time."
                                    : "No load of this job can be flown."));
            return Outcome.refused(Waivers.applied(job, findings));
        }
        DayTables tables = new DayTables(model, maker, people);
        DayTable table = tables.table();
        DayOrder.Found found =
                DayOrder.find(
                        table,
                        settings.effort(),
                        new DayOrder.Stops(settings.enough(), settings.settled(), settings.stop()),
                        done -> progress.step("searching the order of the day", 0.3 + 0.6 * done));
        DayState day = new DayStory(model, maker, people, table).tell(found.day());
        progress.step("writing the plan", 0.9);
        Map<LoadId, LeftOut> leftOut = maker.leftOut();
        for (int k = 0; k < maker.trips().size(); k++) {
            if (day.releasedS().get(k) < 0) {
                Trip trip = maker.trips().get(k);
                boolean cut = found.cutShort() || model.isCut(trip);
                Reason reason = reason(table, k, cut);
                Waits waits = new Waits(job);
                for (LoadId id : trip.ids()) {
                    LeftOut out =
                            waits.inVain(id, before -> isFlown(before, maker.trips(), day))
                                    .orElse(new LeftOut(id, reason.code(), reason.message()));
                    leftOut.put(id, out);
                    findings.add(
                            Finding.of(
                                    out.code(), Severity.STOP, id.value(), "rules", out.message()));
                }
            }
        }
        if (leftOut.size() == job.loads().size()) {
            return Outcome.refused(Waivers.applied(job, findings));
        }
        findings.addAll(new DayFindings(model, people, maker, day).list());
        progress.step("bounding the flying time", 0.92);
        List<RefusedComfort> comforts = new Discomforts(model).list(maker.trips(), people, day);
        DayCosts costs =
                new DayCosts(model, DayBounds.of(model, tables, found.day()), found, comforts);
        boolean cutShort = found.cutShort() || maker.isCut() || model.isCut();
        return Outcome.done(
                new PlanBuilder(
                                model,
                                maker,
                                people,
                                new PlanBuilder.Built(
                                        day, cutShort, Optional.of(costs), comforts, List.of()))
                        .build(
                                settings,
                                List.copyOf(leftOut.values()),
                                Waivers.applied(job, findings)));
    }

    private record Reason(FindingCode code, String message) {}

    private static Reason reason(DayTable table, int trip, boolean cut) {
        if (!table.isReached(trip) && !cut) {
            return new Reason(
                    FindingCode.NO_CREW,
                    "No crew that may do the work can come there, on foot or by air. Perhaps another"
                            + " crew, another place to land, or somebody who stays there.");
        }
        if (table.hasNobodyToHook(trip)) {
            return new Reason(
                    FindingCode.NO_HANDLER,
                    "Nobody who stays at its pick-up is trained to hook. Perhaps a loader there.");
        }
        return cut
                ? new Reason(
                        FindingCode.SEARCH_CUT,
                        "The search was stopped at its time limit before a day was found in which it"
                                + " fits. Perhaps more time.")
                : new Reason(
                        FindingCode.NO_ROOM_IN_DAY,
                        "No day was found in which it fits: wind, crews, fuel or duty end first."
                                + (table.hasFuel()
                                        ? ""
                                        : " No place keeps fuel that somebody there may fill: what is"
                                                + " aboard in the morning is all there is.")
                                + " This is a search's answer, not a proof.");
    }

    private static boolean isFlown(LoadId load, List<Trip> trips, DayState day) {
        for (int k = 0; k < trips.size(); k++) {
            if (trips.get(k).carries(load)) {
                return day.releasedS().get(k) >= 0;
            }
        }
        return false;
    }
}
