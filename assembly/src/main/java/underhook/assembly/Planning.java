package underhook.assembly;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import underhook.app.PlanDay;
import underhook.app.PlanId;
import underhook.app.Progress;
import underhook.app.port.ReadJob;
import underhook.core.finding.Outcome;
import underhook.core.plan.Plan;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;
import underhook.planner.search.Effort;

/** Hands a day to the planner, with a name for the plan and a watch. */
final class Planning implements PlanDay.Planning {
    /** Reading lies before the search, checking and writing behind it. */
    private static final double BEFORE_FRACTION = 0.05;

    private static final double SEARCH_FRACTION = 0.85;

    /** Of the ceiling, for looking at loads one by one; the rest is for their order. */
    private static final double LOADS_FRACTION = 0.8;

    /** Of the ceiling, for the order itself; the rest is for others to choose from and for the bounds. */
    private static final double ORDER_FRACTION = 0.9;

    /** After it was stopped by hand, for the ways of the best day; what is not found then is not flown. */
    private static final long FINISHING_NANOS = 1_000_000_000;

    private final String program;
    private final InstantSource clock;

    Planning(String program, InstantSource clock) {
        this.program = program;
        this.clock = clock;
    }

    @Override
    public Outcome<Plan> plan(ReadJob job, PlanDay.Request request, Progress progress) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        Watch watch = new Watch(request);
        PlanSettings settings =
                new PlanSettings(
                        PlanId.of(now),
                        now,
                        new Effort(request.seed(), request.effort().toSeconds()),
                        program,
                        () -> watch.isPast(1) || watch.isFinished(),
                        () -> watch.isPast(LOADS_FRACTION) || watch.isStopped(),
                        () -> watch.isPast(ORDER_FRACTION) || watch.isStopped(),
                        watch::isStopped);
        return DayPlanner.plan(
                job.job(),
                job.ground(),
                settings,
                new DayPlanner.Progress() {
                    @Override
                    public void step(String doing, double done) {
                        progress.at(doing, BEFORE_FRACTION + SEARCH_FRACTION * done);
                    }

                    @Override
                    public void hasDay() {
                        progress.hasDay();
                    }
                });
    }

    /** The time since the planning began and since it was stopped. Safe for threads. */
    private static final class Watch {
        private final PlanDay.Request request;
        private final long startNanos = System.nanoTime();
        private final AtomicReference<@Nullable Long> stoppedNanos = new AtomicReference<>();

        Watch(PlanDay.Request request) {
            this.request = request;
        }

        boolean isPast(double ceilingFraction) {
            long mostNanos = (long) (ceilingFraction * request.ceiling().toNanos());
            return System.nanoTime() - startNanos >= mostNanos;
        }

        boolean isStopped() {
            if (!request.stopped().getAsBoolean()) {
                return false;
            }
            stoppedNanos.compareAndSet(null, System.nanoTime());
            return true;
        }

        boolean isFinished() {
            if (!isStopped()) {
                return false;
            }
            Long since = stoppedNanos.get();
            return since != null && System.nanoTime() - since >= FINISHING_NANOS;
        }
    }
}
