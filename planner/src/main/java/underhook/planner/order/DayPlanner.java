package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
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
        DayModel model = new DayModel(job, ground);
        TripMaker maker = new TripMaker(model);
        People people = new People(model);
        List<Finding> findings = new ArrayList<>(job.readingFindings());
        findings.addAll(maker.findings());
        if (maker.trips().isEmpty()) {
            findings.add(
                    Finding.of(
                            FindingCode.NO_ROOM_IN_DAY,
                            Severity.STOP,
                            job.name(),
                            "loads",
                            "No load of this job can be flown."));
            return Outcome.refused(findings);
        }
        DayTable table = new DayTables(model, maker, people).table();
        DayOrder.Found found =
                DayOrder.find(
                        table,
                        settings.seed(),
                        settings.stop(),
                        done -> progress.step("searching the order of the day", 0.3 + 0.6 * done));
        DayState day = new DayStory(model, maker, people).tell(found.day());
        progress.step("writing the plan", 0.9);
        Map<LoadId, LeftOut> leftOut = maker.leftOut();
        for (int k = 0; k < maker.trips().size(); k++) {
            if (day.releasedS().get(k) < 0) {
                leaveOut(maker.trips().get(k), table.waitsForLeftOut(k), leftOut, findings);
            }
        }
        if (leftOut.size() == job.loads().size()) {
            return Outcome.refused(findings);
        }
        findings.addAll(new DayFindings(model, people, maker, day).list());
        progress.step("bounding the flying time", 0.92);
        double boundS = DayOrder.flightBoundS(table, found.day());
        return Outcome.done(
                new PlanBuilder(model, maker, people, new PlanBuilder.Built(day, found.cutShort()))
                        .build(settings, List.copyOf(leftOut.values()), findings, boundS));
    }

    private static void leaveOut(
            Trip trip,
            boolean waitsForLeftOut,
            Map<LoadId, LeftOut> leftOut,
            List<Finding> findings) {
        for (LoadId id : trip.ids()) {
            FindingCode code =
                    waitsForLeftOut ? FindingCode.ORDER_RULE : FindingCode.NO_ROOM_IN_DAY;
            String message =
                    waitsForLeftOut
                            ? "What must come before it is left out."
                            : "No day was found in which it fits: wind, crews, fuel or duty end first."
                                    + " This is a search's answer, not a proof.";
            leftOut.put(id, new LeftOut(id, code, message));
            findings.add(Finding.of(code, Severity.STOP, id.value(), "rules", message));
        }
    }
}
