package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/** 25 m/s; climbs 5 m/s, descends 4 m/s; 30 m of line and load, 20 m clear below. */
class LegBoundTest {
    /** The bound gives way to rounding by a ten-millionth. */
    private static final double ROUNDING_S = 1e-4;

    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final PlanePoint WEST = new PlanePoint(0, 0);
    private static final PlanePoint EAST = new PlanePoint(2500, 0);
    private static final HeightProfile.Need NEED =
            new HeightProfile.Need(30, 20, 5 / 25.0, 4 / 25.0, 0);
    private static final WayMap.Wind CALM = new WayMap.Wind(0, 0, 25, false);

    @Test
    void is_the_way_and_the_clearance_at_both_ends_over_a_plane() {
        // Hooks hover 30 m up and fly 50 m up: 2500 / 25 + 20 / 5 + 20 / 4 = 109 s.
        assertThat(boundS(eastM -> 500, ends(530, 530), CALM, List.of()))
                .isCloseTo(109, within(ROUNDING_S));
    }

    @Test
    void climbs_along_the_way_as_far_as_the_way_is_long_enough() {
        // A rise of 200 m takes 40 s of the 100 s of the way: nothing is added. Cells of 10 m round
        // the start, 30 m off at most, lie up to 2.4 m higher, half a second of climb.
        DoubleUnaryOperator rise = eastM -> 500 + 200 * Math.min(1, Math.max(0, eastM / 2500));
        double gentleS = boundS(rise, ends(530, 730), CALM, List.of());
        // A rise of 1000 m takes (1000 + 20) / 5 = 204 s, more than the way; then 20 m down in 5 s.
        // The ground is level behind the end, so cells round it are no higher.
        DoubleUnaryOperator steep = eastM -> 500 + 1000 * Math.min(1, Math.max(0, eastM / 2500));
        double steepS = boundS(steep, ends(530, 1530), CALM, List.of());

        assertThat(gentleS).isBetween(109.0 - ROUNDING_S, 109.5);
        assertThat(steepS).isCloseTo(209, within(ROUNDING_S));
    }

    @Test
    void goes_round_closed_ground_by_the_shortest_way() {
        // A square from 1000 to 1500, 500 m to each side: 2 sqrt(1000² + 500²) + 500 = 2736.07 m.
        List<Geometry> square = List.of(FACTORY.toGeometry(new Envelope(1000, 1500, -500, 500)));

        assertThat(boundS(eastM -> 500, ends(530, 530), CALM, square))
                .isCloseTo(2736.06798 / 25 + 9, within(ROUNDING_S));
    }

    @Test
    void counts_a_headwind_and_no_tailwind() {
        // 10 m/s from the east: 2500 / 15 there, 2500 / 25 back.
        WayMap.Wind east = new WayMap.Wind(-10, 0, 25, false);
        WayMap.Wind west = new WayMap.Wind(10, 0, 25, false);

        assertThat(boundS(eastM -> 500, ends(530, 530), east, List.of()))
                .isCloseTo(2500 / 15.0 + 9, within(ROUNDING_S));
        assertThat(boundS(eastM -> 500, ends(530, 530), west, List.of()))
                .isCloseTo(109, within(ROUNDING_S));
    }

    @Test
    void is_never_above_a_leg_over_random_hills_and_blocks() {
        // Ways as found, flown over a profile as planned, timed by the plan's own rule.
        SplittableRandom random = new SplittableRandom(3);
        int compared = 0;
        for (int k = 0; k < 60; k++) {
            double a = random.nextDouble(0, 150);
            double b = random.nextDouble(100, 900);
            double c = random.nextDouble(-0.15, 0.15);
            DoubleUnaryOperator hills = eastM -> 500 + a * Math.sin(eastM / b) + c * eastM;
            List<Geometry> blocks = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                Coordinate at =
                        new Coordinate(random.nextDouble(400, 2100), random.nextDouble(-300, 300));
                blocks.add(FACTORY.createPoint(at).buffer(random.nextDouble(50, 250), 8));
            }
            WayMap map = WayMap.around(blocks);
            WayMap.Wind wind =
                    new WayMap.Wind(random.nextDouble(-9, 9), random.nextDouble(-9, 9), 25, false);
            HeightProfile profile = new HeightProfile(ground(hills), List.of());
            LegFinder.Request ends =
                    ends(hills.applyAsDouble(0) + 30, hills.applyAsDouble(2500) + 30);
            double boundS = bound(profile).leastS(ends, NEED, new LegBound.Air(wind, map));
            // Away to the south-west and back from the north-west, as finals may want it.
            PlanePoint out = new PlanePoint(-100, -100);
            Optional<List<PlanePoint>> middle = map.findWay(out, EAST);
            if (middle.isEmpty()) {
                continue;
            }
            List<PlanePoint> way = new ArrayList<>(List.of(WEST));
            way.addAll(middle.get());
            HeightProfile.Profile flown = profile.find(way, NEED).orElseThrow();
            assertThat(boundS).isLessThanOrEqualTo(flownS(way, flown, ends, wind));
            compared++;
        }
        assertThat(compared).isGreaterThan(40);
    }

    @Test
    void as_directed_is_never_above_a_leg_with_its_finals_and_turns() {
        SplittableRandom random = new SplittableRandom(8);
        double closest = Double.POSITIVE_INFINITY;
        int compared = 0;
        for (int k = 0; k < 120; k++) {
            double a = random.nextDouble(0, 100);
            double b = random.nextDouble(100, 900);
            DoubleUnaryOperator hills = eastM -> 500 + a * Math.sin(eastM / b);
            WayMap map = WayMap.around(List.of(block(random), block(random)));
            WayMap.Wind wind =
                    new WayMap.Wind(random.nextDouble(-7, 7), random.nextDouble(-7, 7), 25, false);
            RoundedWay.Turning turning =
                    new RoundedWay.Turning(25, 35, 10.3, Math.toRadians(20), 150);
            HeightProfile profile = new HeightProfile(ground(hills), List.of());
            LegFinder.Request ends =
                    directed(random.nextDouble(2 * Math.PI), random.nextDouble(2 * Math.PI), hills);
            PlanePoint out = WEST.towards(ends.from().bearingGridRad(), 150);
            PlanePoint in = EAST.towards(ends.to().bearingGridRad(), 150);
            Optional<List<PlanePoint>> middle = map.findWay(out, in);
            if (middle.isEmpty() || !map.isFree(WEST, out) || !map.isFree(in, EAST)) {
                continue;
            }
            List<PlanePoint> way = new ArrayList<>(List.of(WEST));
            way.addAll(middle.get());
            way.add(EAST);
            RoundedWay rounded =
                    RoundedWay.of(way, Set.of(0, way.size() - 2), turning, map::isFree);
            HeightProfile.Profile flown = profile.find(rounded.points(), NEED).orElseThrow();
            double flownS = flownS(rounded.points(), flown, ends, wind) + rounded.turnLossS();

            double boundS = bound(profile).leastS(ends, NEED, new LegBound.Air(wind, map), turning);

            assertThat(boundS).isLessThanOrEqualTo(flownS);
            assertThat(boundS)
                    .isGreaterThanOrEqualTo(
                            bound(profile).leastS(ends, NEED, new LegBound.Air(wind, map)) - 1e-3);
            closest = Math.min(closest, flownS - boundS);
            compared++;
        }
        assertThat(compared).isGreaterThan(60);
        // Some leg comes near its bound: it is no empty one.
        assertThat(closest).isLessThan(3);
    }

    private static Geometry block(SplittableRandom random) {
        Coordinate at = new Coordinate(random.nextDouble(600, 1900), random.nextDouble(-300, 300));
        return FACTORY.createPoint(at).buffer(random.nextDouble(30, 150), 8);
    }

    private static LegFinder.Request directed(
            double outRad, double inRad, DoubleUnaryOperator hills) {
        return new LegFinder.Request(
                new LegFinder.End(WEST, outRad, hills.applyAsDouble(0) + 30),
                new LegFinder.End(EAST, inRad, hills.applyAsDouble(2500) + 30),
                List.of(),
                30,
                25,
                true);
    }

    private static double flownS(
            List<PlanePoint> way,
            HeightProfile.Profile flown,
            LegFinder.Request ends,
            WayMap.Wind wind) {
        double sumS = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumS +=
                    wind.durationS(
                            way.get(i + 1).eastM() - way.get(i).eastM(),
                            way.get(i + 1).northM() - way.get(i).northM());
        }
        double firstM = flown.hookAmslM().get(0);
        double lastM = flown.hookAmslM().get(flown.hookAmslM().size() - 1);
        return sumS
                + Math.max(0, firstM - ends.from().hookAmslM()) / 5
                + Math.max(0, lastM - ends.to().hookAmslM()) / 4;
    }

    private static double boundS(
            DoubleUnaryOperator heightAmslM,
            LegFinder.Request ends,
            WayMap.Wind wind,
            List<Geometry> closed) {
        return bound(new HeightProfile(ground(heightAmslM), List.of()))
                .leastS(ends, NEED, new LegBound.Air(wind, WayMap.around(closed)));
    }

    private static LegBound bound(HeightProfile profile) {
        return new LegBound(profile, new LegBound.Rates(5, 4));
    }

    private static LegFinder.Request ends(double fromHookAmslM, double toHookAmslM) {
        return new LegFinder.Request(
                new LegFinder.End(WEST, 0, fromHookAmslM),
                new LegFinder.End(EAST, 0, toHookAmslM),
                List.of(),
                30,
                25,
                true);
    }

    /** Cells of 10 m, from 500 m west to 3500 m east and 1500 m to the north and south. */
    private static Ground ground(DoubleUnaryOperator heightAmslM) {
        return new Ground(
                LocalFrame.of(new GeoPoint(46.8, -12.0)),
                GridHeightField.of(
                        new GridShape(-500, -1500, 10, 400, 300),
                        (eastM, northM) -> heightAmslM.applyAsDouble(eastM)),
                Optional.empty(),
                0);
    }
}
