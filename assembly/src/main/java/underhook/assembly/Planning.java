package underhook.assembly;

import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import underhook.app.PlanDay;
import underhook.app.Progress;
import underhook.app.port.ReadJob;
import underhook.core.finding.Outcome;
import underhook.core.plan.Plan;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;
import underhook.planner.search.Effort;

/** Hands a day to the planner, with a name for the plan and a watch. */
final class Planning implements PlanDay.Planning {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** Reading lies before the search, checking and writing behind it. */
    private static final double BEFORE_FRACTION = 0.05;

    private static final double SEARCH_FRACTION = 0.85;

    /** Of the ceiling, for looking at loads one by one; the rest is for their order. */
    private static final double LOADS_FRACTION = 0.6;

    /** Of the ceiling, for the order itself; the rest is for others to choose from and for the bounds. */
    private static final double ORDER_FRACTION = 0.75;

    private final String program;
    private final InstantSource clock;

    Planning(String program, InstantSource clock) {
        this.program = program;
        this.clock = clock;
    }

    @Override
    public Outcome<Plan> plan(ReadJob job, PlanDay.Request request, Progress progress) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        long startNanos = System.nanoTime();
        long ceilingNanos = request.ceiling().toNanos();
        long enoughNanos = (long) (LOADS_FRACTION * ceilingNanos);
        long settledNanos = (long) (ORDER_FRACTION * ceilingNanos);
        PlanSettings settings =
                new PlanSettings(
                        "plan-" + STAMP.format(now),
                        now,
                        new Effort(request.seed(), request.effort().toSeconds()),
                        program,
                        () -> mustEnd(request, startNanos, ceilingNanos),
                        () -> mustEnd(request, startNanos, enoughNanos),
                        () -> mustEnd(request, startNanos, settledNanos));
        return DayPlanner.plan(
                job.job(),
                job.ground(),
                settings,
                (doing, done) -> progress.at(doing, BEFORE_FRACTION + SEARCH_FRACTION * done));
    }

    private static boolean mustEnd(PlanDay.Request request, long startNanos, long mostNanos) {
        return request.stopped().getAsBoolean() || System.nanoTime() - startNanos >= mostNanos;
    }
}
