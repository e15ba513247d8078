package underhook.planner.verify;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.plan.Plan;
import underhook.core.plan.StepKind;
import underhook.core.plan.VerifierReport;

/**
 * Re-checks a written plan against its job; see the package for how.
 *
 * <p>What it found of single legs and hovers it keeps for the next plan of the same job, of several jobs.
 */
public final class PlanVerifier {
    /** What no day can have been, however it went. */
    private static final Set<FindingCode> NEVER_SO =
            EnumSet.of(
                    FindingCode.STEP_OVERLAP,
                    FindingCode.FUEL_ARITHMETIC,
                    FindingCode.LOAD_TWICE,
                    FindingCode.LOAD_FORGOTTEN,
                    FindingCode.CREW_TWO_PLACES,
                    FindingCode.CREW_TOO_FAST,
                    FindingCode.LINE_ON_WITH_PEOPLE);

    /** What nobody tells of: it lasted as long as it does, and took no more fuel than there was time for. */
    private static final Set<StepKind> UNTOLD =
            EnumSet.of(StepKind.CREW_MOVE, StepKind.POSITION, StepKind.REFUEL);

    /** Days of which proofs are kept. */
    private static final int DAYS = 4;

    /** Those of the last checks, last first, but for those that another thread works with. */
    private final Deque<SoftReference<Proofs>> free = new ArrayDeque<>();

    /**
     * Every rule over every step of the plan.
     *
     * <p>A plan that speaks of things the job does not have, or that lacks what its steps need, is
     * refused for that alone: nothing else could be computed.
     *
     * @param job the job as read, SI
     * @param ground height fields in the job's own plane, m AMSL and m above ground
     * @param plan the plan as written
     * @return how many checks were made, and each violation with severity STOP; apart, those of what was done or
     *     begun when the day was ordered anew
     */
    public VerifierReport check(Job job, Ground ground, Plan plan) {
        Proofs proofs = taken(job, ground);
        VerifierReport report = check(new Day(job, ground, plan, proofs));
        synchronized (free) {
            free.addFirst(new SoftReference<>(proofs));
            if (free.size() > DAYS) {
                free.removeLast();
            }
        }
        return report;
    }

    private Proofs taken(Job job, Ground ground) {
        synchronized (free) {
            for (Iterator<SoftReference<Proofs>> each = free.iterator(); each.hasNext(); ) {
                Proofs known = each.next().get();
                if (known == null) {
                    each.remove();
                } else if (known.areOf(job, ground)) {
                    each.remove();
                    return known;
                }
            }
        }
        return new Proofs(job, ground);
    }

    private static VerifierReport check(Day day) {
        new FormCheck(day).run();
        if (!day.ledger().isClean()) {
            return day.ledger().toReport(List.of());
        }
        flown(day);
        new SummaryCheck(day).run();
        new LeftOutCheck(day).run();
        new PlacesCheck(day).run();
        new KitCheck(day).run();
        new BalanceCheck(day).run();
        new OddsCheck(day).run();
        new FindingsCheck(day).run();
        new FiguresCheck(day).run();
        new ComfortCheck(day).run();
        return day.ledger().toReport(over(day));
    }

    /** What is found of each step, and of the steps one after the other. */
    private static void flown(Day day) {
        new ClockCheck(day).run();
        new DutyCheck(day).run();
        new LoadCheck(day).run();
        new FuelCheck(day).run();
        new LiftCheck(day).run();
        new MarginCheck(day).run();
        new WindCheck(day).run();
        new LineCheck(day).run();
        new RoomCheck(day).run();
        new LegCheck(day).run();
        new ExposureCheck(day).run();
        new HangCheck(day).run();
        new GearCheck(day).run();
        new GuyCheck(day).run();
        new WayCheck(day).run();
        new WireCheck(day).run();
        new FinalCheck(day).run();
        new FallCheck(day).run();
        new CrewCheck(day).run();
        new CrewLineCheck(day).run();
    }

    /**
     * What is done or begun was flown by what was known then, and as it went: that it keeps no rule of now, or that
     * nobody told how it went, refuses no order of what is left. It is found by the same checks of that part alone.
     * Lifts are told when they were hooked and let go; of flights without a load nobody tells, so that one that was
     * quicker than its ways is made up, and so is somebody who came sooner than on foot or by a flight.
     */
    private static List<Finding> over(Day day) {
        Optional<Day> done = day.done();
        if (day.ledger().isClean() || done.isEmpty()) {
            return List.of();
        }
        flown(done.get());
        return done.get().ledger().violations().stream()
                .filter(one -> !NEVER_SO.contains(one.code()))
                .filter(one -> !isMadeUp(day, one))
                .toList();
    }

    private static boolean isMadeUp(Day day, Finding one) {
        return one.code() == FindingCode.STEP_TIME
                && IntStream.range(0, day.plan().steps().size())
                        .filter(i -> Day.name(i + 1).equals(one.subject()))
                        .mapToObj(day.plan().steps()::get)
                        .anyMatch(step -> UNTOLD.contains(step.kind()));
    }
}
