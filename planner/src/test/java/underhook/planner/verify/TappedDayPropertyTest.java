package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Walk;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.ToldPlace;
import underhook.core.plan.VerifierReport;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.order.Standing;

/**
 * Whatever is tapped, early, late, in another order or not at all: nothing of an order made anew was done quicker than
 * it can be, nobody is anywhere sooner, fuel is not counted as more nor the engine's time as less than they can be.
 */
class TappedDayPropertyTest {
    private static final int DAYS = 150;
    private static final OpenDay.Effort FIRST = OpenDay.Effort.FIRST;

    /** Crew P is flown to H and walks to S2 for ten minutes from there; the pole is for S2. */
    private static SmallDay day() {
        List<Place> places = new ArrayList<>(SmallDay.good().job().places());
        places.add(SmallDay.place("H", PlaceKind.LAYDOWN, 1000, -150));
        return SmallDay.good()
                .inJob("places", places)
                .inJob("walks", List.of(new Walk(pid("H"), pid("S2"), 600)));
    }

    private static PlanSettings settings(Instant at) {
        return new PlanSettings("p", at, 1, "test", () -> false);
    }

    private static Plan planned(SmallDay day) {
        return DayPlanner.plan(
                        day.job(), day.ground(), settings(SmallDay.SEVEN), (what, share) -> {})
                .fold(
                        (made, findings) -> made,
                        refused -> {
                            throw new AssertionError(refused);
                        });
    }

    private static Instant released(Rotation turn) {
        return turn.drops().get(turn.drops().size() - 1).releasedAt();
    }

    /** Taps of a day: each lift up to twenty minutes off, some left out, some told in another order. */
    private static Standing seeded(Plan record, SplittableRandom random) {
        List<Rotation> turns =
                new ArrayList<>(
                        record.steps().stream().flatMap(step -> step.rotation().stream()).toList());
        if (random.nextInt(4) == 0) {
            Collections.swap(turns, random.nextInt(turns.size()), random.nextInt(turns.size()));
        }
        int count = 1 + random.nextInt(turns.size());
        List<Standing.Done> done = new ArrayList<>();
        long offS = random.nextLong(2400) - 1200;
        Instant now = record.steps().get(0).startAt();
        for (Rotation turn : turns.subList(0, count)) {
            offS += random.nextLong(600) - 300;
            if (random.nextInt(6) == 0) {
                continue;
            }
            Instant hooked = turn.hookedAt().plusSeconds(offS);
            long hungS = Duration.between(turn.hookedAt(), released(turn)).toSeconds();
            Instant let = hooked.plusSeconds(hungS + random.nextLong(180) - 60);
            boolean hangs = random.nextInt(8) == 0 && turn.equals(turns.get(count - 1));
            done.add(
                    new Standing.Done(
                            turn.loads(), hooked, hangs ? Optional.empty() : Optional.of(let)));
            Instant last = hangs ? hooked.plusSeconds(30) : let;
            now = last.isAfter(now) ? last : now;
        }
        now = now.plusSeconds(random.nextInt(1200));
        Map<CrewId, Instant> late = new HashMap<>();
        if (random.nextInt(5) == 0) {
            late.put(new CrewId("P"), now.plusSeconds(random.nextInt(3600)));
        }
        Set<PlaceId> closed = random.nextInt(6) == 0 ? Set.of(pid("S1")) : Set.of();
        OptionalDouble readKg =
                random.nextInt(4) == 0
                        ? OptionalDouble.of(60 + random.nextInt(90))
                        : OptionalDouble.empty();
        Standing.Engine engine =
                random.nextInt(4) == 0
                        ? new Standing.Engine(
                                List.of(new Standing.Spell(Instant.EPOCH, now)),
                                List.of(),
                                Optional.empty())
                        : Standing.Engine.UNTOLD;
        return new Standing(
                now,
                Standing.Log.KEPT,
                done,
                readKg,
                said(record, now, random),
                late,
                closed,
                Set.of(),
                engine);
    }

    /** Now and then a crew is said to be somewhere, where it was planned to be or not. */
    private static List<ToldPlace> said(Plan record, Instant now, SplittableRandom random) {
        List<ToldPlace> all = new ArrayList<>();
        List<String> places = List.of("A", "H", "S1", "S2");
        Instant first = record.steps().get(0).startAt();
        long dayS = Math.max(1, Duration.between(first, now).toSeconds());
        while (random.nextInt(3) == 0) {
            all.add(
                    new ToldPlace(
                            new CrewId("P"),
                            pid(places.get(random.nextInt(places.size()))),
                            first.plusSeconds(random.nextLong(dayS))));
        }
        all.sort(Comparator.comparing(ToldPlace::at));
        return all;
    }

    @Test
    void nothing_is_done_sooner_than_it_can_be() {
        SmallDay day = day();
        Plan record = planned(day);
        assertThat(record.steps()).anyMatch(step -> step.kind() == StepKind.CREW_MOVE);
        OpenDay open = new OpenDay(day.job(), day.ground());
        PlanVerifier verifier = new PlanVerifier();
        int cautions = 0;
        int flights = 0;
        int said = 0;
        for (int seed = 0; seed < DAYS; seed++) {
            Standing now = seeded(record, new SplittableRandom(seed));

            Plan plan = open.reorder(record, now, settings(now.at()), OpenDay.Effort.FIRST).plan();

            String name = "seed " + seed;
            waysTakeTheirTime(day, plan, name);
            nobodyIsSoonerThere(day, plan, name);
            fuelIsNoMore(day, plan, name);
            engineRanNoLess(record, plan, now, name);
            newestSaidCounts(plan, now, name);
            said += now.told().size();
            VerifierReport report = verifier.check(day.job(), day.ground(), plan);
            assertThat(report.violations()).as(name).isEmpty();
            cautions +=
                    (int)
                            plan.findings().stream()
                                    .filter(one -> one.code() == FindingCode.STEP_TIME)
                                    .filter(one -> one.severity() == Severity.CAUTION)
                                    .count();
            flights += (int) begun(plan).stream().filter(TappedDayPropertyTest::isUntold).count();
        }
        assertThat(cautions).isPositive();
        assertThat(flights).isPositive();
        assertThat(said).isGreaterThan(20);
    }

    /** From when it was said the plan has the crew there and nowhere else. */
    private static void newestSaidCounts(Plan plan, Standing now, String name) {
        if (now.told().isEmpty()) {
            return;
        }
        ToldPlace newest = now.told().get(now.told().size() - 1);
        List<CrewStay> then =
                plan.crews().stream()
                        .filter(stay -> stay.crew().equals(newest.crew()))
                        .filter(stay -> !stay.isOnTheWay())
                        .filter(stay -> stay.fromAt().isBefore(newest.at().plusSeconds(1)))
                        .filter(stay -> stay.toAt().isAfter(newest.at()))
                        .toList();
        assertThat(then).as(name + " " + newest).isNotEmpty();
        assertThat(then).as(name).allMatch(stay -> stay.place().equals(newest.place()));
        assertThat(plan.summary().anew().orElseThrow().told()).as(name).contains(newest);
    }

    /** All lifts but the last flown as planned, and what was told of the engine. */
    private static Standing butTheLast(Plan record, Standing.Engine engine) {
        List<Rotation> turns =
                record.steps().stream().flatMap(step -> step.rotation().stream()).toList();
        List<Standing.Done> done =
                turns.subList(0, turns.size() - 1).stream()
                        .map(
                                turn ->
                                        new Standing.Done(
                                                turn.loads(),
                                                turn.hookedAt(),
                                                Optional.of(released(turn))))
                        .toList();
        return new Standing(
                released(turns.get(turns.size() - 2)).plusSeconds(1),
                Standing.Log.KEPT,
                done,
                OptionalDouble.empty(),
                List.of(),
                Map.of(),
                Set.of(),
                Set.of(),
                engine);
    }

    /** The engine may run half a minute longer than planned in the day, and is off where the line is changed. */
    @Test
    void the_engine_ran_whenever_nobody_told_that_it_was_off() {
        Plan roomy = planned(day());
        double onS =
                roomy.steps().stream()
                        .filter(Step::engineRunning)
                        .mapToDouble(TappedDayPropertyTest::lastedS)
                        .sum();
        SmallDay day =
                day().rule("duty", with(day().job().rules().duty(), "engineOnDayS", onS + 30));
        List<Standing.Spell> off =
                roomy.steps().stream()
                        .filter(step -> !step.engineRunning())
                        .map(step -> new Standing.Spell(step.startAt(), step.endAt()))
                        .toList();
        assertThat(off).isNotEmpty();
        Standing untold = butTheLast(roomy, Standing.Engine.UNTOLD);
        Standing told = butTheLast(roomy, new Standing.Engine(List.of(), off, Optional.empty()));
        OpenDay open = new OpenDay(day.job(), day.ground());

        Plan without = open.reorder(roomy, untold, settings(untold.at()), FIRST).plan();
        Plan with = open.reorder(roomy, told, settings(told.at()), FIRST).plan();

        assertThat(with.leftOut()).hasSameSizeAs(roomy.leftOut());
        assertThat(without.leftOut()).hasSizeGreaterThan(roomy.leftOut().size());
        assertThat(new PlanVerifier().check(day.job(), day.ground(), with).violations()).isEmpty();
        assertThat(new PlanVerifier().check(day.job(), day.ground(), without).violations())
                .isEmpty();
    }

    /** A flight that nobody told of, cut by half a minute in what is begun, is found by the re-check. */
    @Test
    void a_flight_that_was_too_quick_is_refused_though_it_is_done() {
        SmallDay day = day();
        Plan record = planned(day);
        OpenDay open = new OpenDay(day.job(), day.ground());
        PlanVerifier verifier = new PlanVerifier();
        int found = 0;
        for (int seed = 0; seed < 30; seed++) {
            Standing seeded = seeded(record, new SplittableRandom(seed));
            // An empty way that was planned with people to get in and out may be quicker.
            Standing now = with(seeded, "told", List.of());
            Plan plan = open.reorder(record, now, settings(now.at()), OpenDay.Effort.FIRST).plan();
            List<Step> steps = new ArrayList<>(plan.steps());
            for (int i = 0; i + 1 < begun(plan).size(); i++) {
                if (isUntold(steps.get(i))) {
                    Instant sooner = steps.get(i).endAt().minusSeconds(30);
                    steps.set(i, with(steps.get(i), "endAt", sooner));
                    steps.set(i + 1, with(steps.get(i + 1), "startAt", sooner));
                    String name = "step " + (i + 1);
                    assertThat(
                                    verifier.check(
                                                    day.job(),
                                                    day.ground(),
                                                    with(plan, "steps", steps))
                                            .violations())
                            .as("seed " + seed)
                            .anyMatch(
                                    one ->
                                            one.code() == FindingCode.STEP_TIME
                                                    && one.subject().equals(name));
                    found++;
                    break;
                }
            }
        }
        assertThat(found).isPositive();
    }

    private static List<Step> begun(Plan plan) {
        Instant from = plan.summary().anew().orElseThrow().fromAt();
        return plan.steps().stream().filter(step -> step.startAt().isBefore(from)).toList();
    }

    private static boolean isUntold(Step step) {
        return step.kind() == StepKind.CREW_MOVE || step.kind() == StepKind.POSITION;
    }

    private static double lastedS(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }

    private static double lastedS(Step step) {
        return lastedS(step.startAt(), step.endAt());
    }

    private static void waysTakeTheirTime(SmallDay day, Plan plan, String name) {
        for (Step step : plan.steps()) {
            double legsS = step.legs().stream().mapToDouble(Leg::durationS).sum();
            double boardsS = 2 * day.job().rules().times().boardingS();
            double leastS = legsS + (step.kind() == StepKind.CREW_MOVE ? boardsS : 0);
            if (isUntold(step)) {
                // Whole seconds.
                assertThat(lastedS(step)).as(name).isGreaterThanOrEqualTo(leastS - 1e-3);
            }
        }
    }

    /** One after the other: where a crew is, since when, and how it came there. */
    private static void nobodyIsSoonerThere(SmallDay day, Plan plan, String name) {
        Walks walks = new Walks(day.job().places(), day.job().walks());
        for (Crew crew : day.job().crews()) {
            PlaceId at = crew.start();
            Instant since = crew.availableFrom();
            List<CrewStay> lines =
                    plan.crews().stream()
                            .filter(stay -> stay.crew().equals(crew.id()))
                            .sorted(
                                    Comparator.comparing(CrewStay::fromAt)
                                            .thenComparing(CrewStay::toAt))
                            .toList();
            for (CrewStay line : lines) {
                String which = name + " " + line;
                assertThat(line.fromAt()).as(which).isAfterOrEqualTo(since);
                if (line.doing().startsWith("flown")) {
                    assertThat(plan.steps())
                            .as(which)
                            .anyMatch(
                                    step ->
                                            step.kind() == StepKind.CREW_MOVE
                                                    && step.to().equals(line.place())
                                                    && step.startAt().equals(line.fromAt())
                                                    && step.endAt().equals(line.toAt()));
                } else if (line.isOnTheWay()) {
                    assertThat(lastedS(line.fromAt(), line.toAt()))
                            .as(which)
                            .isGreaterThanOrEqualTo(walks.durationS(at, line.place()) - 1e-3);
                } else if (!wasSaid(plan, line)) {
                    assertThat(line.place()).as(which).isEqualTo(at);
                }
                at = line.place();
                since = line.isOnTheWay() ? line.toAt() : line.fromAt();
            }
        }
    }

    private static boolean wasSaid(Plan plan, CrewStay line) {
        return plan.summary().anew().orElseThrow().told().stream()
                .filter(told -> told.crew().equals(line.crew()))
                .filter(told -> told.place().equals(line.place()))
                .anyMatch(told -> told.at().equals(line.fromAt()));
    }

    private static void fuelIsNoMore(SmallDay day, Plan plan, String name) {
        double flowKgPerS = day.job().machine().burnKgPerS();
        List<Anew.Reading> readings = plan.summary().anew().orElseThrow().readings();
        for (Step step : begun(plan)) {
            boolean read =
                    readings.stream()
                            .anyMatch(
                                    one ->
                                            one.at().isAfter(step.startAt())
                                                    && !one.at().isAfter(step.endAt()));
            double mostKg =
                    step.fuelStartKg() - (step.engineRunning() ? lastedS(step) * flowKgPerS : 0);
            if (step.kind() == StepKind.REFUEL) {
                double pumpsS = lastedS(step) - day.job().rules().refuelling().refuelS();
                mostKg =
                        step.fuelStartKg()
                                + Math.max(0, pumpsS)
                                        * day.job().rules().refuelling().refuelKgPerS();
            }
            // A tank that ran dry by reckoning holds nothing.
            if (!read) {
                assertThat(step.fuelEndKg())
                        .as(name)
                        .isLessThanOrEqualTo(Math.max(0, mostKg) + 1e-6);
            }
        }
    }

    /** The engine stood in what was planned so, no longer than planned, and in nothing in which it was told to run. */
    private static void engineRanNoLess(Plan record, Plan plan, Standing now, String name) {
        for (Step step : begun(plan)) {
            if (step.engineRunning() || lastedS(step) < 1e-3) {
                continue;
            }
            if (!step.endAt().isAfter(now.at())) {
                assertThat(now.engine().ran()).as(name).isEmpty();
            }
            assertThat(record.steps())
                    .as(name + " " + step.startAt())
                    .anyMatch(
                            one ->
                                    one.kind() == step.kind()
                                            && !one.engineRunning()
                                            && one.from().equals(step.from())
                                            && lastedS(one) >= lastedS(step) - 1e-3);
        }
    }
}
