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

    /** Of the ceiling, for the order of a day that was there late: then it ends so much later. */
    private static final double LEAST_ORDER_FRACTION = 0.4;

    /** Of what is left once there is a day, for the order itself; the rest is for others to choose from and for the bounds. */
    private static final double ORDER_FRACTION = 0.95;

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
                        () -> watch.goneSinceDayRatio() >= 1 || watch.isFinished(),
                        () -> watch.isEnough() || watch.isStopped(),
                        () -> watch.isStopped() ? 1 : watch.goneSinceDayRatio() / ORDER_FRACTION,
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
                        watch.hasDay();
                        progress.hasDay();
                    }
                });
    }

    /** The time since the planning began and since it was stopped. Safe for threads. */
    private static final class Watch {
        private final PlanDay.Request request;
        private final long startNanos = System.nanoTime();
        private final AtomicReference<@Nullable Long> stoppedNanos = new AtomicReference<>();

        /** When there was a day, since the start. */
        private final AtomicReference<@Nullable Long> dayNanos = new AtomicReference<>();

        Watch(PlanDay.Request request) {
            this.request = request;
        }

        void hasDay() {
            dayNanos.compareAndSet(null, elapsedNanos());
        }

        /** Of loads looked at. */
        boolean isEnough() {
            return elapsedNanos() >= LOADS_FRACTION * request.ceiling().toNanos();
        }

        /** However late there was a day, its order has its share of what is left. */
        double goneSinceDayRatio() {
            Long day = dayNanos.get();
            long fromNanos = day == null ? 0 : day;
            double ceilingNanos = request.ceiling().toNanos();
            double leftNanos =
                    Math.max(ceilingNanos - fromNanos, LEAST_ORDER_FRACTION * ceilingNanos);
            return (elapsedNanos() - fromNanos) / leftNanos;
        }

        private long elapsedNanos() {
            return System.nanoTime() - startNanos;
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
