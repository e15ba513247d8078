package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Handling;
import underhook.core.job.Handling.Exposure;
import underhook.core.job.Handling.Exposure.Poor;
import underhook.core.job.MapFeature;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;

/**
 * Ground where a load let go would do poorly, over invented ground: a ridge of 1 in 2 across the straight way
 * from A to S1, 240 m wide and 500 m long. Round it 136 m more are flown, 6.8 s at 20 m/s.
 */
class PlannedPoorGroundTest {
    private static double ridgeM(double east, double north) {
        return 100
                + Math.max(
                        0,
                        60 - 0.5 * Math.abs(north - 500) - 0.5 * Math.max(0, Math.abs(east) - 150));
    }

    private static Ground ground(DoubleBinaryOperator heightM) {
        return new Ground(
                SmallDay.FRAME,
                GridHeightField.of(new GridShape(-3000, -3000, 10, 600, 600), heightM),
                Optional.empty(),
                0);
    }

    private static SmallDay day(Poor poor, List<MapFeature> features) {
        SmallDay day = with(SmallDay.good(), "ground", ground(PlannedPoorGroundTest::ridgeM));
        Exposure prices = new Exposure(30, 15, 45, 2, 4, poor);
        Handling handling = day.job().rules().handling().withExposure(prices);
        return day.rule("handling", handling).inJob("features", features).inJob("zones", List.of());
    }

    private static Plan planned(SmallDay day) {
        Plan plan =
                DayPlanner.plan(
                                day.job(),
                                day.ground(),
                                new PlanSettings(
                                        "p", SmallDay.SEVEN, 1, "test", () -> false, () -> false),
                                (what, share) -> {})
                        .fold(
                                (made, findings) -> made,
                                refused -> {
                                    throw new AssertionError(refused);
                                });
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
        return plan;
    }

    private static Leg loadedToS1(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(rotation -> rotation.legs().stream())
                .filter(leg -> !leg.carrying().isEmpty() && leg.to().equals(pid("S1")))
                .findFirst()
                .orElseThrow();
    }

    private static double priceS(Plan plan) {
        return loadedToS1(plan).exposure().priceS();
    }

    @Test
    void without_a_price_the_way_over_a_ridge_is_straight() {
        Leg leg = loadedToS1(planned(day(Poor.NONE, List.of())));

        assertThat(leg.distanceM()).isLessThan(1060);
        assertThat(leg.exposure().priceS()).isZero();
        assertThat(leg.exposure().overM()).isZero();
    }

    @Test
    void steep_ground_is_flown_round_where_that_takes_less_than_its_price() {
        // 200 m and more at 20 s for each 100 m are 40 s and more; round it is 7 s and two turns.
        Leg leg = loadedToS1(planned(day(new Poor(0, 0, 20), List.of())));

        assertThat(leg.distanceM()).isGreaterThan(1100);
        assertThat(leg.exposure().overM()).isLessThan(60);
    }

    @Test
    void cheap_steep_ground_is_flown_over_and_told() {
        // 1 s for each 100 m: less than the 7 s of the way round. Squares of 50 m from 400 to 600 m
        // and, of those outside, none as steep as 0.3 on the average: by hand 200 m.
        Plan plan = planned(day(new Poor(0, 0, 1), List.of()));
        Leg leg = loadedToS1(plan);

        assertThat(leg.distanceM()).isLessThan(1060);
        assertThat(leg.exposure().overM()).isBetween(190.0, 230.0);
        assertThat(leg.exposure().priceS()).isCloseTo(leg.exposure().overM() / 100, within(0.01));
        assertThat(reasons(plan)).anyMatch(reason -> reason.contains("steep ground 2 s"));
    }

    private static List<String> reasons(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(rotation -> rotation.drops().stream())
                .flatMap(drop -> drop.reasons().stream())
                .toList();
    }

    @Test
    void a_way_beside_a_trail_pays_for_its_length_and_not_only_for_crossings() {
        // The trail runs along the straight way from 200 m to 800 m, 20 m beside it.
        MapFeature trail = feature(MapFeature.Kind.TRAIL, MapFeature.Shape.LINE, trailLine());

        double withoutS = priceS(planned(day(Poor.NONE, List.of(trail))));
        Leg leg = loadedToS1(planned(day(new Poor(0, 2, 0), List.of(trail))));

        assertThat(withoutS).isZero();
        // 600 m and the rounded ends; a way 50 m off is hardly longer.
        assertThat(leg.exposure().overM()).isLessThan(200);
    }

    @Test
    void forest_has_the_price_that_the_job_gives_it() {
        MapFeature forest =
                feature(
                        MapFeature.Kind.FOREST,
                        MapFeature.Shape.AREA,
                        List.of(geo(-2000, 450), geo(-2000, 550), geo(2000, 550), geo(2000, 450)));

        // Nothing leads round it: 100 m, crossed square.
        assertThat(priceS(planned(day(new Poor(3, 0, 0), List.of(forest)))))
                .isCloseTo(3, within(0.1));
        assertThat(priceS(planned(day(Poor.NONE, List.of(forest))))).isZero();
    }

    private static List<GeoPoint> trailLine() {
        return List.of(geo(20, 200), geo(20, 800));
    }

    private static MapFeature feature(
            MapFeature.Kind kind, MapFeature.Shape shape, List<GeoPoint> outline) {
        return new MapFeature(
                "F1",
                kind,
                shape,
                outline,
                0,
                CrossingRule.ALLOWED,
                OptionalDouble.empty(),
                false,
                "map");
    }

    @Test
    void a_plan_that_tells_less_of_poor_ground_than_there_is_is_refused() {
        SmallDay day = day(new Poor(0, 0, 1), List.of());
        Plan plan = planned(day);
        Exposure all = day.job().rules().handling().exposure();
        SmallDay dearer =
                day.rule(
                        "handling",
                        day.job()
                                .rules()
                                .handling()
                                .withExposure(
                                        new Exposure(
                                                all.guardedS(),
                                                all.openS(),
                                                all.wireS(),
                                                all.waterS(),
                                                all.quietS(),
                                                new Poor(0, 0, 20))));

        assertThat(new PlanVerifier().check(dearer.job(), dearer.ground(), plan).violations())
                .anyMatch(one -> one.code() == FindingCode.LEG_CROSSINGS);
    }

    /**
     * Where level ground goes over into a slope along a straight edge the way that is cheapest in time and
     * prices is broken by the law of refraction; turns are flown, so a little more is paid.
     *
     * @source MITCHELL-PAPADIMITRIOU-1991
     */
    @Test
    void into_steep_ground_the_way_is_broken_as_light_is() {
        SmallDay day = day(new Poor(0, 0, 12), List.of()).rule("flying.finalM", 2000.0);
        Ground slope = ground((east, north) -> 100 + 0.5 * Math.max(0, north));
        LegFinder finder = new LegFinder(with(day.job(), "wires", List.of()), slope);
        PlanePoint from = new PlanePoint(0, -300);
        PlanePoint to = new PlanePoint(800, 250);
        LegFinder.Request request =
                new LegFinder.Request(
                        new LegFinder.End(from, 0, 150),
                        new LegFinder.End(to, 0, 300),
                        List.of("bag"),
                        30,
                        20,
                        false);

        FlownLeg leg = finder.findLeg(request).orElseThrow();

        double costS =
                leg.distanceM() / 20
                        + leg.turnLossS()
                        + finder.prices().priceS(leg, List.of("bag"));
        double expectedS = refractedS(1 / 20.0, 1 / 20.0 + 12 / 100.0);
        double straightS = from.distanceToM(to) * (1 / 20.0 + 250 / 550.0 * 12 / 100.0);
        assertThat(straightS).isGreaterThan(expectedS + 8);
        assertThat(costS).isBetween(expectedS * (1 - 1e-6), expectedS + 2);
    }

    /** From 300 m before the edge to 250 m behind it, 800 m along it; weights in seconds a metre. */
    private static double refractedS(double before, double behind) {
        double low = 0;
        double high = 800;
        for (int i = 0; i < 200; i++) {
            double x = (low + high) / 2;
            boolean isLeft =
                    before * x / Math.hypot(x, 300) < behind * (800 - x) / Math.hypot(800 - x, 250);
            low = isLeft ? x : low;
            high = isLeft ? high : x;
        }
        return before * Math.hypot(low, 300) + behind * Math.hypot(800 - low, 250);
    }
}
