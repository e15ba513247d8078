package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hours;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;
import underhook.planner.search.Effort;
import underhook.planner.search.TimeGone;

/**
 * Ways of a planned day, over invented ground: what is expected is worked out by hand, and each plan is
 * re-checked.
 */
class PlannedWaysTest {
    private static Outcome<Plan> outcome(
            SmallDay day, BooleanSupplier stop, BooleanSupplier enough) {
        return DayPlanner.plan(
                day.job(),
                day.ground(),
                new PlanSettings("p", SmallDay.SEVEN, 1, "test", stop, enough),
                (what, share) -> {});
    }

    private static Plan planned(SmallDay day) {
        return checked(day, outcome(day, () -> false, () -> false));
    }

    private static Plan checked(SmallDay day, Outcome<Plan> outcome) {
        Plan plan = outcome.fold((made, findings) -> made, refused -> fail(refused));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
        return plan;
    }

    private static Plan fail(List<Finding> refused) {
        throw new AssertionError(refused);
    }

    private static List<Finding> found(List<Finding> findings, FindingCode code) {
        return findings.stream().filter(finding -> finding.code() == code).toList();
    }

    private static List<Leg> loadedFromA(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(rotation -> rotation.legs().stream())
                .filter(leg -> !leg.carrying().isEmpty() && leg.from().equals(pid("A")))
                .toList();
    }

    /** The leg's first point that is not over its start. */
    private static PlanePoint firstOut(Leg leg) {
        return leg.path().stream()
                .map(point -> SmallDay.FRAME.toPlane(point.position()))
                .filter(point -> Math.hypot(point.eastM(), point.northM()) > 20)
                .findFirst()
                .orElseThrow();
    }

    private static SmallDay houseAt(double eastM, double northM) {
        SmallDay day = SmallDay.good();
        MapFeature house = with(day.job().features().get(1), "bufferM", 0.0);
        return day.inJob(
                "features",
                List.of(
                        day.job().features().get(0),
                        with(house, "outline", List.of(geo(eastM, northM)))));
    }

    /** True from the nth time it is asked on. */
    private static BooleanSupplier after(int asked) {
        int[] left = {asked};
        return () -> left[0]-- <= 0;
    }

    @Test
    void however_little_time_there_is_a_day_is_flown() {
        SmallDay day = SmallDay.good();

        Plan plan = checked(day, outcome(day, () -> true, () -> true));

        assertThat(loads(plan)).isNotEmpty();
        assertThat(plan.summary().cutShort()).isTrue();
    }

    /** Ended as soon as there is a day: what is left out is told of, the plan is re-checked. */
    @Test
    void who_ends_it_has_the_day_that_is_there() {
        SmallDay day = SmallDay.good();
        AtomicBoolean hasDay = new AtomicBoolean();

        Outcome<Plan> outcome = ended(day, hasDay::get, () -> hasDay.set(true));

        Plan plan = checked(day, outcome);
        assertThat(loads(plan)).containsExactlyInAnyOrderElementsOf(loads(planned(day)).toList());
        assertThat(plan.summary().cutShort()).isTrue();
    }

    @Test
    void who_ends_it_before_there_is_a_day_has_none() {
        AtomicBoolean hasDay = new AtomicBoolean();

        Outcome<Plan> outcome = ended(SmallDay.good(), () -> true, () -> hasDay.set(true));

        assertThat(found(outcome.findings(), FindingCode.SEARCH_CUT)).isNotEmpty();
        assertThat(outcome.isDone()).isFalse();
        assertThat(hasDay).isFalse();
    }

    private static Outcome<Plan> ended(SmallDay day, BooleanSupplier ended, Runnable hasDay) {
        return DayPlanner.plan(
                day.job(),
                day.ground(),
                new PlanSettings(
                        "p",
                        SmallDay.SEVEN,
                        Effort.usual(1),
                        "test",
                        ended,
                        ended,
                        TimeGone.once(ended),
                        ended),
                new DayPlanner.Progress() {
                    @Override
                    public void step(String doing, double doneFraction) {}

                    @Override
                    public void hasDay() {
                        hasDay.run();
                    }
                });
    }

    @Test
    void whenever_the_time_runs_out_every_load_is_flown_or_told_of() {
        SmallDay day = SmallDay.good();
        List<String> all = day.job().loads().stream().map(load -> load.id().value()).toList();
        int cut = 0;
        for (int asked = 0; asked < 60; asked += 4) {
            BooleanSupplier stop = after(asked);
            Outcome<Plan> outcome = outcome(day, stop, stop);
            Plan plan = checked(day, outcome);
            assertThat(plan.summary().cutShort()).isTrue();
            List<String> told = new ArrayList<>();
            plan.leftOut().forEach(one -> told.add(one.load().value()));
            loads(plan).forEach(told::add);
            assertThat(new TreeSet<>(told)).containsExactlyElementsOf(new TreeSet<>(all));
            cut +=
                    (int)
                            plan.leftOut().stream()
                                    .map(LeftOut::code)
                                    .filter(code -> code == FindingCode.SEARCH_CUT)
                                    .count();
        }
        assertThat(cut).isPositive();
    }

    private static Stream<String> loads(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(rotation -> rotation.loads().stream())
                .map(load -> load.value());
    }

    @Test
    void without_a_cut_the_plan_is_the_same_each_time_and_says_so() {
        Plan one = planned(SmallDay.good());
        Plan other = planned(SmallDay.good());

        assertThat(one).isEqualTo(other);
        assertThat(one.summary().cutShort()).isFalse();
    }

    @Test
    void a_load_leaves_another_way_where_let_go_it_could_hit_a_house_beside_the_best_way_out() {
        // Wind from north, so the best way out is north. The house is 10 m round, so its wall
        // stands
        // 3 m beside that way: a load that swings 10 degrees under 20 m of line is 3.5 m off.
        Plan plan = planned(houseAt(13, 75));

        assertThat(loads(plan)).contains("B2");
        assertThat(loadedFromA(plan))
                .isNotEmpty()
                .allSatisfy(
                        leg -> {
                            PlanePoint out = firstOut(leg);
                            double offRad = Math.atan2(out.eastM(), out.northM());
                            assertThat(Math.abs(offRad)).isGreaterThan(Math.toRadians(9));
                        });
    }

    @Test
    void the_neighbour_of_a_way_out_that_is_shut_is_flown_where_it_is_clear() {
        // The house stands east of the way north. Ten degrees west of it the way's end is 15 m
        // further
        // off; twenty degrees would do too and cost more.
        Plan plan = planned(houseAt(13, 75));

        assertThat(loadedFromA(plan))
                .isNotEmpty()
                .allSatisfy(
                        leg -> {
                            PlanePoint out = firstOut(leg);
                            double offRad = Math.atan2(out.eastM(), out.northM());
                            assertThat(Math.toDegrees(offRad)).isBetween(-11.0, -9.0);
                        });
    }

    @Test
    void a_load_leaves_another_way_where_the_best_way_out_has_no_ground_below() {
        // Wind from south: the best way out ends 100 m south of A, where the raster ends at 60 m.
        SmallDay good = SmallDay.good();
        SmallDay south =
                good.inJob(
                        "weather",
                        with(
                                good.job().weather(),
                                "hours",
                                good.job().weather().hours().stream()
                                        .map(row -> with(row, "windFromTrueRad", Math.PI))
                                        .toList()));
        SmallDay day =
                with(
                        south,
                        "ground",
                        new Ground(
                                SmallDay.FRAME,
                                GridHeightField.of(
                                        new GridShape(-2500, -60, 10, 500, 300),
                                        (east, north) -> 100),
                                Optional.empty(),
                                0));

        Plan plan = planned(day);

        assertThat(loads(plan)).contains("B2");
        assertThat(loadedFromA(plan))
                .isNotEmpty()
                .allSatisfy(leg -> assertThat(firstOut(leg).northM()).isGreaterThan(-60));
    }

    @Test
    void a_way_in_from_which_a_house_could_be_hit_is_told_with_what_is_taken_beside_it() {
        // 14 m beside the last part into the wind: passed, but not out of reach of what falls.
        Plan plan = planned(houseAt(14, 930));

        List<String> reasons =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.drops().stream())
                        .filter(drop -> drop.place().equals(pid("S1")))
                        .flatMap(drop -> drop.reasons().stream())
                        .distinct()
                        .toList();
        assertThat(reasons)
                .anyMatch(
                        reason ->
                                reason.startsWith("tracks ")
                                        && reason.endsWith("let go there it could come down on H1"))
                .anyMatch(
                        reason ->
                                reason.startsWith("next to tracks ")
                                        && reason.contains(" is taken"))
                .noneMatch(reason -> reason.contains("10° beside"));
    }

    @Test
    void houses_that_any_way_out_could_hit_are_named_and_none_is_said_to_be_enough() {
        SmallDay day = SmallDay.good();
        List<MapFeature> round = housesRound(day.job().features().get(1));

        assertThat(noWay(day.inJob("features", round)))
                .hasValueSatisfying(
                        message ->
                                assertThat(message)
                                        .contains("let go near A with the load it could hit N0")
                                        .contains("Perhaps nobody at N")
                                        .contains("and then another look: more may come into reach")
                                        .contains("another place, further from what could be hit")
                                        .doesNotContain(" or nobody at ")
                                        .doesNotContain("wires are crossed"));
    }

    /** Sixteen houses 60 m from the laydown. */
    private static List<MapFeature> housesRound(MapFeature likeRoof) {
        MapFeature house = with(likeRoof, "bufferM", 0.0);
        List<MapFeature> round = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            double bearingRad = (i + 0.5) * Math.PI / 8;
            GeoPoint at = geo(60 * Math.sin(bearingRad), 60 * Math.cos(bearingRad));
            round.add(with(with(house, "id", "N" + i), "outline", List.of(at)));
        }
        return round;
    }

    /** What is said where there is no way. */
    private static Optional<String> noWay(SmallDay day) {
        List<Finding> all =
                outcome(day, () -> false, () -> false)
                        .fold((plan, findings) -> plan.findings(), refused -> refused);
        return found(all, FindingCode.NO_WAY).stream().map(Finding::message).findFirst();
    }

    private static Zone zone(Zone.Rule rule, double eastM, double northM) {
        return new Zone(
                "Z9",
                "Z9",
                List.of(geo(eastM, northM)),
                60,
                rule,
                List.of(),
                150,
                Optional.empty(),
                Optional.empty(),
                Hours.ALL_DAY,
                "zones");
    }

    @Test
    void a_least_height_over_a_place_is_told_as_such() {
        for (Zone.Rule rule : List.of(Zone.Rule.MIN_HEIGHT, Zone.Rule.NO_HOVER_BELOW)) {
            Plan plan = planned(SmallDay.good().zone(zone(rule, 1000, 0)));

            assertThat(found(plan.findings(), FindingCode.NO_LINE_LONG_ENOUGH)).isEmpty();
            assertThat(found(plan.findings(), FindingCode.HOVER_IN_ZONE))
                    .anySatisfy(
                            finding -> {
                                assertThat(finding.subject()).isEqualTo("B1");
                                assertThat(finding.severity()).isEqualTo(Severity.STOP);
                                assertThat(finding.limit()).isEqualTo("150");
                                assertThat(finding.message()).contains("S2 lies in zone Z9");
                            });
            assertThat(loads(plan)).contains("B2").doesNotContain("B1");
        }
    }

    @Test
    void nobody_refuels_in_a_zone_without_fuel() {
        // A has the only fuel: what was aboard in the morning is all there is.
        Outcome<Plan> outcome =
                outcome(
                        SmallDay.good().zone(zone(Zone.Rule.NO_FUEL, 0, 0)),
                        () -> false,
                        () -> false);

        List<Finding> told = outcome.fold((plan, findings) -> plan.findings(), list -> list);
        List<Step> steps = outcome.fold((plan, findings) -> plan.steps(), list -> List.of());
        assertThat(steps).noneMatch(step -> step.kind() == StepKind.REFUEL);
        assertThat(found(told, FindingCode.FUEL_PLACE))
                .singleElement()
                .satisfies(
                        finding -> {
                            assertThat(finding.subject()).isEqualTo("A");
                            assertThat(finding.message()).contains("lies in zone Z9");
                        });
    }

    /** Whoever owns the wire has somebody there while a load passes: that is told with the crossing. By thought, no source. */
    @Test
    void a_wire_crossed_under_guard_is_told_as_such() {
        SmallDay day = SmallDay.good();
        for (CrossingRule rule : List.of(CrossingRule.GUARDED, CrossingRule.ALLOWED)) {
            Plan plan =
                    planned(
                            day.wire("supports", List.of(geo(-800, 500), geo(800, 500)))
                                    .wire("crossing", rule));

            List<Finding> told = found(plan.findings(), FindingCode.WIRE_CROSSING);
            assertThat(told).isNotEmpty();
            assertThat(told)
                    .allMatch(
                            one ->
                                    one.message().contains("only while it is guarded")
                                            == (rule == CrossingRule.GUARDED));
        }
    }

    /**
     * Many files have a feature for each span. A line of them is crossed where the same line in one feature is: the ways
     * are alike but for where gates stand, 60 m apart. By thought, no source.
     */
    @Test
    void a_wire_drawn_span_by_span_is_crossed_like_one() {
        SmallDay one =
                SmallDay.good()
                        .wire("supports", List.of(geo(-800, 500), geo(800, 500)))
                        .wire("crossing", CrossingRule.ALLOWED)
                        .wire("crossingAboveM", 20.0);
        Wire whole = one.job().wires().get(0);
        List<Wire> spans = new ArrayList<>();
        for (int eastM = -800; eastM < 800; eastM += 80) {
            List<GeoPoint> ends = List.of(geo(eastM, 500), geo(eastM + 80, 500));
            spans.add(with(with(whole, "supports", ends), "id", "W" + spans.size()));
        }

        Plan plan = planned(one);
        Plan split = planned(one.inJob("wires", spans));

        assertThat(crossings(plan)).isPositive();
        assertThat(crossings(split)).isEqualTo(crossings(plan));
        assertThat(split.leftOut()).isEqualTo(plan.leftOut());
        assertThat(longestM(split)).isBetween(longestM(plan) - 60, longestM(plan) + 60);
        // Beside the span that is crossed lie its neighbours, 20 m below as agreed.
        assertThat(split.steps().stream().flatMap(PlannedWaysTest::legs))
                .flatExtracting(Leg::wires)
                .allMatch(pass -> pass.leastM() >= pass.needM());
    }

    /** The crane table ends at 1000 kV. @source OSHA-1926.1408 table A */
    @ParameterizedTest
    @CsvSource({
        "66000, Its voltage counts by the crane table",
        "1000000, Its voltage counts by the crane table",
        "1100000, 'Its voltage is above the last class, which counts by the crane table'",
        "0, 'Its voltage is not stated, so the largest class counts by the crane table'"
    })
    void a_wire_near_a_way_says_by_which_class_its_voltage_counts(double voltageV, String said) {
        Plan plan =
                planned(
                        SmallDay.good()
                                .wire("supports", List.of(geo(-100, -300), geo(-100, 300)))
                                .wire("voltageV", voltageV));

        assertThat(found(plan.findings(), FindingCode.WIRE_NEAR))
                .singleElement()
                .satisfies(one -> assertThat(one.message()).contains(said));
    }

    private static Stream<Leg> legs(Step step) {
        return Stream.concat(
                step.legs().stream(),
                step.rotation().stream().flatMap(rotation -> rotation.legs().stream()));
    }

    private static long crossings(Plan plan) {
        return loadedFromA(plan).stream()
                .flatMap(leg -> leg.crossings().stream())
                .filter(crossing -> crossing.feature().startsWith("W"))
                .count();
    }

    private static double longestM(Plan plan) {
        return loadedFromA(plan).stream().mapToDouble(Leg::distanceM).max().orElseThrow();
    }
}
