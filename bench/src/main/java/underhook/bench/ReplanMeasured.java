package underhook.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.app.PlanDay;
import underhook.app.port.ReadJob;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.order.Standing;
import underhook.planner.verify.PlanVerifier;

/**
 * The demo day ordered anew at each of ten times from a third of it on: the first order, the re-check of the whole
 * day, the search near the known order; and each lift tried behind the next. The day is open and has been asked
 * once before; planning the whole day is the baseline.
 */
final class ReplanMeasured implements Measured {
    private static final int TIMES = 10;
    private static final Instant PLANNED_AT = Instant.parse("2026-09-08T05:00:00Z");

    @Override
    public String name() {
        return "replan";
    }

    @Override
    public String measure() {
        try {
            Path folder = Files.createTempDirectory("replan");
            Underhook program = new Underhook(new Settings(folder.resolve("data"), "bench"));
            program.writeDemo(folder.resolve("day"));
            long start = System.nanoTime();
            PlanDay.Result result =
                    program.planDay()
                            .plan(
                                    new PlanDay.Request(
                                            folder.resolve("day"),
                                            folder.resolve("out"),
                                            1,
                                            Duration.ofMinutes(5)),
                                    (doing, done) -> {});
            double planS = (System.nanoTime() - start) / 1e9;
            if (result instanceof PlanDay.Planned planned) {
                return measure(planned.output().readJob(), planned.output().plan(), planS);
            }
            return "replan: the demo day has no plan";
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static String measure(ReadJob job, Plan plan, double planS) {
        long start = System.nanoTime();
        OpenDay day = new OpenDay(job.job(), job.ground(), () -> false);
        double openS = (System.nanoTime() - start) / 1e9;
        day.reorder(plan, at(plan, 0), settings(plan), OpenDay.Effort.FIRST);
        PlanVerifier verifier = new PlanVerifier();
        double[] firstS = new double[TIMES];
        double[] checkS = new double[TIMES];
        double[] betterS = new double[TIMES];
        int refused = 0;
        for (int i = 0; i < TIMES; i++) {
            Standing now = at(plan, i);
            start = System.nanoTime();
            Plan first = day.reorder(plan, now, settings(plan), OpenDay.Effort.FIRST).plan();
            firstS[i] = (System.nanoTime() - start) / 1e9;
            start = System.nanoTime();
            refused += verifier.check(job.job(), job.ground(), first).holds() ? 0 : 1;
            checkS[i] = (System.nanoTime() - start) / 1e9;
            start = System.nanoTime();
            day.reorder(plan, now, settings(plan), new OpenDay.Effort(true, true, () -> false));
            betterS[i] = (System.nanoTime() - start) / 1e9;
        }
        double[] triedS = tried(day, plan);
        return String.format(
                Locale.ROOT,
                "replan: first order %s s, its re-check %s s (%d of %d refused), a search near it with"
                        + " its bound %s s; a moved lift tried %s s; the whole day planned, re-checked"
                        + " and written %.1f s, a day opened %.1f s",
                spread(firstS),
                spread(checkS),
                refused,
                TIMES,
                spread(betterS),
                spread(triedS),
                planS,
                openS);
    }

    private static double[] tried(OpenDay day, Plan plan) {
        List<Rotation> lifts =
                plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();
        double[] times = new double[lifts.size() - 1];
        for (int i = 0; i < times.length; i++) {
            LoadId load = lifts.get(i).loads().get(0);
            LoadId behind = lifts.get(i + 1).loads().get(0);
            long start = System.nanoTime();
            day.tryMove(plan, load, Optional.of(behind), settings(plan));
            times[i] = (System.nanoTime() - start) / 1e9;
        }
        return times;
    }

    /** As planned so far, at so many steps of a part of the day's last two thirds. */
    private static Standing at(Plan plan, int step) {
        Instant from = plan.steps().get(0).startAt();
        Duration whole = Duration.between(from, plan.summary().finishAt());
        Instant now = from.plus(whole.dividedBy(3)).plus(whole.multipliedBy(step).dividedBy(15));
        return new Standing(
                now,
                Standing.Log.AS_PLANNED,
                List.of(),
                OptionalDouble.empty(),
                Map.of(),
                Map.of(),
                Set.of(),
                Set.of());
    }

    private static PlanSettings settings(Plan plan) {
        return new PlanSettings("anew", PLANNED_AT, plan.seed(), plan.program(), () -> false);
    }

    private static String spread(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return String.format(
                Locale.ROOT,
                "%.3f (%.3f to %.3f)",
                sorted[sorted.length / 2],
                sorted[0],
                sorted[sorted.length - 1]);
    }
}
