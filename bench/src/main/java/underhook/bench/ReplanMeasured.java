package underhook.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import underhook.app.PlanDay;
import underhook.app.port.ReadJob;
import underhook.app.replan.Change;
import underhook.app.replan.Now;
import underhook.app.replan.Proposal;
import underhook.app.replan.RestOfDay;
import underhook.app.replan.RestOfDay.Patience;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.job.CrewId;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;

/**
 * The rest of the demo day ordered anew at each of ten times from a third of it on, as planned so far and after each
 * change that a day brings: the first order with its re-check, as whoever flies waits for it. Then the better order
 * and its bound, and each lift tried behind the next. The day is open and was made ready as the day's pages do it;
 * planning the whole day is the baseline.
 */
final class ReplanMeasured implements Measured {
    private static final int TIMES = 10;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final Instant PLANNED_AT = Instant.parse("2026-09-08T05:00:00Z");

    /** A day that brings something. */
    private interface Brings extends BiFunction<Plan, Instant, List<Change>> {}

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
            double planS = secondsSince(start);
            if (result instanceof PlanDay.Planned planned) {
                return String.format(Locale.ROOT, "replan: the whole day planned %.1f s%n", planS)
                        + new Day(
                                        planned.output().readJob(),
                                        planned.output().plan(),
                                        program.planDay()::check)
                                .measure();
            }
            return "replan: the demo day has no plan";
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static double secondsSince(long nanos) {
        return (System.nanoTime() - nanos) / 1e9;
    }

    /** The day that is flown. */
    private record Day(ReadJob job, Plan plan, PlanDay.Checking checking) {
        String measure() {
            long start = System.nanoTime();
            RestOfDay rest = new RestOfDay(job, plan, checking);
            double openS = secondsSince(start);
            start = System.nanoTime();
            rest.prepare(() -> false);
            StringBuilder told = new StringBuilder();
            told.append(
                    String.format(
                            Locale.ROOT,
                            "  a day opened %.2f s, made ready %.1f s%n",
                            openS,
                            secondsSince(start)));
            what().forEach((words, brings) -> told.append(changed(rest, words, brings)));
            told.append(better(rest, Patience.BETTER, "within a second"));
            told.append(better(rest, Patience.BOUND, "with a bound, within ten seconds"));
            told.append("  a moved lift tried ").append(spread(tried())).append(" s");
            return told.toString();
        }

        private Map<String, Brings> what() {
            Map<String, Brings> all = new LinkedHashMap<>();
            all.put("as planned so far", (of, now) -> List.of());
            all.put(
                    "a crew late by 30 min",
                    (of, now) ->
                            List.of(
                                    new Change.CrewLate(
                                            crew(now), now.plus(Duration.ofMinutes(30)))));
            all.put(
                    "a load heavier by 20 kg",
                    (of, now) -> {
                        Load next = job.job().getLoad(next(now));
                        double massKg = next.massKg().orElseThrow() + 20;
                        return List.of(new Change.Weighed(next.id(), massKg));
                    });
            all.put("a place closed", (of, now) -> List.of(new Change.PlaceClosed(place(now))));
            // Another time for each, or the day stays as it was worked out for the first.
            all.put(
                    "the wind about half an hour earlier",
                    (of, now) ->
                            List.of(
                                    new Change.WindEarlier(
                                            Duration.ofMinutes(25 + now.getEpochSecond() % 11))));
            return all;
        }

        private String changed(RestOfDay rest, String words, Brings brings) {
            double[] times = new double[TIMES];
            double[] worked = new double[TIMES];
            int refused = 0;
            int leftOut = 0;
            for (int i = 0; i < TIMES; i++) {
                Instant now = at(i);
                List<Change> changes = brings.apply(plan, now);
                long start = System.nanoTime();
                long before = THREADS.getCurrentThreadCpuTime();
                Proposal first = propose(rest, now, changes, Patience.FIRST);
                times[i] = secondsSince(start);
                worked[i] = (THREADS.getCurrentThreadCpuTime() - before) / 1e9;
                refused += first.isVerified() ? 0 : 1;
                leftOut += first.leftOut().size();
            }
            return String.format(
                    Locale.ROOT,
                    "  %s: first order with its re-check %s s, of one processor %s s; %d of %d refused, %d loads left out in all%n",
                    words,
                    spread(times),
                    spread(worked),
                    refused,
                    TIMES,
                    leftOut);
        }

        private String better(RestOfDay rest, Patience patience, String words) {
            double[] times = new double[TIMES];
            double[] savedS = new double[TIMES];
            double[] overS = new double[TIMES];
            int firstOut = 0;
            int foundOut = 0;
            for (int i = 0; i < TIMES; i++) {
                Instant now = at(i);
                List<Change> late =
                        List.of(new Change.CrewLate(crew(now), now.plus(Duration.ofMinutes(30))));
                Proposal first = propose(rest, now, late, Patience.FIRST);
                long start = System.nanoTime();
                Proposal found = propose(rest, now, late, patience);
                times[i] = secondsSince(start);
                savedS[i] = first.finishS() - found.finishS();
                firstOut += first.leftOut().size();
                foundOut += found.leftOut().size();
                overS[i] =
                        found.boundFinishAt()
                                .map(
                                        at ->
                                                (double)
                                                        Duration.between(
                                                                        at,
                                                                        found.plan()
                                                                                .summary()
                                                                                .finishAt())
                                                                .toSeconds())
                                .orElse(0.0);
            }
            return String.format(
                    Locale.ROOT,
                    "  better order after a late crew, %s: %s s; ends earlier than the first by %s s,"
                            + " over its bound by %s s; %d loads left out in all, %d by the first%n",
                    words,
                    spread(times),
                    spread(savedS),
                    spread(overS),
                    foundOut,
                    firstOut);
        }

        private static Proposal propose(
                RestOfDay rest, Instant now, List<Change> changes, Patience patience) {
            return rest.propose(
                    Now.asPlanned(now, OptionalDouble.empty()), changes, patience, () -> false);
        }

        private double[] tried() {
            OpenDay day = new OpenDay(job.job(), job.ground());
            List<Rotation> lifts =
                    plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();
            PlanSettings settings =
                    new PlanSettings("anew", PLANNED_AT, plan.seed(), plan.program(), () -> false);
            return IntStream.range(0, lifts.size() - 1)
                    .mapToDouble(
                            i -> {
                                LoadId load = lifts.get(i).loads().get(0);
                                LoadId behind = lifts.get(i + 1).loads().get(0);
                                long start = System.nanoTime();
                                day.tryMove(plan, load, Optional.of(behind), settings);
                                return secondsSince(start);
                            })
                    .toArray();
        }

        /** At so many steps of a part of the day's last two thirds. */
        private Instant at(int step) {
            Instant from = plan.steps().get(0).startAt();
            Duration whole = Duration.between(from, plan.summary().finishAt());
            return from.plus(whole.dividedBy(3)).plus(whole.multipliedBy(step).dividedBy(15));
        }

        /** Of the next lift after the one that will have begun by then. */
        private Rotation nextLift(Instant now) {
            return plan.steps().stream()
                    .filter(step -> step.startAt().isAfter(now))
                    .flatMap(step -> step.rotation().stream())
                    .findFirst()
                    .orElseThrow();
        }

        private LoadId next(Instant now) {
            return nextLift(now).loads().get(0);
        }

        private PlaceId place(Instant now) {
            return nextLift(now).drops().get(0).place();
        }

        /** Whoever is to work next somewhere. */
        private CrewId crew(Instant now) {
            PlaceId place = place(now);
            return plan.crews().stream()
                    .filter(stay -> stay.toAt().isAfter(now) && stay.place().equals(place))
                    .map(CrewStay::crew)
                    .findFirst()
                    .orElseThrow();
        }
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
