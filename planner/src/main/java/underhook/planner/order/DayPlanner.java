package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.plan.Plan;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;

/** Plans a day: every load that can be flown placed in it, or left out with its reason. */
public final class DayPlanner {
    /** Is told what is being done. */
    public interface Progress {
        /** Doing so, and how far the whole is, in [0, 1]. */
        void step(String doing, double doneFraction);

        /** From now on there is a day that can be flown: whoever ends the search has that at least. */
        default void hasDay() {}
    }

    private static final String ENDED =
            "The search was stopped before there was a day. " + Unflown.MORE_TIME;

    private DayPlanner() {}

    /**
     * Plans the day.
     *
     * @param ground heights over the job's local plane
     * @param settings seed, time of planning and when to stop
     * @return the plan, not yet re-checked; refused when nothing at all can be flown, and when it was ended before there
     *     was a day
     */
    public static Outcome<Plan> plan(
            Job job, Ground ground, PlanSettings settings, Progress progress) {
        progress.step("finding the ways", 0);
        // However little time is given, a first day is made: of the loads that were looked at until
        // then.
        AtomicBoolean hasDay = new AtomicBoolean();
        BooleanSupplier ended = settings.ended();
        DayModel model =
                new DayModel(
                        job,
                        ground,
                        () ->
                                (hasDay.get() || ended.getAsBoolean())
                                        && settings.stop().getAsBoolean());
        People people = new People(model);
        Begun begun = begin(model, people, settings, progress);
        TripMaker maker = begun.maker();
        tellNobody(begun, new Boarding(model, people));
        List<Finding> findings = new ArrayList<>(job.readingFindings());
        findings.addAll(model.zonesAtPlaces().list());
        findings.addAll(maker.findings());
        if (maker.trips().isEmpty() || ended.getAsBoolean()) {
            return refused(
                    job,
                    findings,
                    isNotLookedAt(maker) || ended.getAsBoolean()
                            ? new Unflown.Reason(FindingCode.SEARCH_CUT, ENDED)
                            : new Unflown.Reason(
                                    FindingCode.NO_ROOM_IN_DAY,
                                    "No load of this job can be flown."));
        }
        DayTables tables = begun.tables();
        DayTable table = begun.first().table();
        hasDay.set(true);
        if (begun.first().fliesAny()) {
            progress.hasDay();
        }
        DayOrder.Found found =
                DayOrder.find(
                        begun.first(),
                        settings.effort(),
                        new DayOrder.Stops(
                                settings.orderGone(),
                                () -> ended.getAsBoolean() || settings.stop().getAsBoolean()),
                        done -> progress.step("searching the order of the day", 0.3 + 0.6 * done));
        progress.step("writing the plan", 0.9);
        boolean cutShort =
                found.cutShort() || maker.isCut() || model.legs().isCut() || ended.getAsBoolean();
        WholeDay whole = new WholeDay(model, maker, people, table);
        return whole.plan(
                found.day(),
                settings,
                new WholeDay.Found(
                        cutShort,
                        trip -> found.cutShort() || model.legs().isCut(trip),
                        found.front(),
                        () -> {
                            progress.step("bounding the flying time", 0.92);
                            return DayBounds.of(model, tables, found.day(), ended);
                        }));
    }

    private static boolean isNotLookedAt(TripMaker maker) {
        return maker.leftOut().values().stream()
                .anyMatch(out -> out.code() == FindingCode.SEARCH_CUT);
    }

    /** Of a load that there was no time to look at, whether people alone keep it back: more time would not help. */
    private static void tellNobody(Begun begun, Boarding boarding) {
        List<Trip> unseen = begun.maker().notLookedAt();
        if (unseen.isEmpty()) {
            return;
        }
        DayTable table = begun.tables().table(unseen);
        for (int k = 0; k < unseen.size(); k++) {
            Trip trip = unseen.get(k);
            new Unflown(table, k, trip, boarding)
                    .nobody()
                    .ifPresent(why -> begun.maker().tellWhy(trip.loads().get(0), why));
        }
    }

    /** The trips that are looked at, and a first day of them. */
    private record Begun(TripMaker maker, DayTables tables, DayOrder.First first) {}

    /** Of more and more loads, until some can be flown in a day: those looked at first may wait for people or others. */
    private static Begun begin(
            DayModel model, People people, PlanSettings settings, Progress progress) {
        int leastTrips = 1;
        while (true) {
            TripMaker maker = new TripMaker(model, new Ceiling(settings.enough()), leastTrips);
            DayTables tables = new DayTables(model, maker, people);
            progress.step("making a first day", 0.3);
            DayOrder.First first = DayOrder.first(tables.table());
            if (first.fliesAny() || !maker.isCut() || settings.ended().getAsBoolean()) {
                return new Begun(maker, tables, first);
            }
            leastTrips *= 2;
        }
    }

    private static Outcome<Plan> refused(Job job, List<Finding> findings, Unflown.Reason why) {
        findings.add(Finding.of(why.code(), Severity.STOP, job.name(), "loads", why.message()));
        return Outcome.refused(Waivers.applied(job, findings));
    }
}
