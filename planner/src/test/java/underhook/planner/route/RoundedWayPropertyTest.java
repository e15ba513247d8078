package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.PlanePoint;

class RoundedWayPropertyTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    @Test
    void a_smaller_radius_never_makes_one_corner_longer() {
        SplittableRandom random = new SplittableRandom(5);
        for (int k = 0; k < 400; k++) {
            List<PlanePoint> way =
                    List.of(
                            at(-2000, 0),
                            at(0, 0),
                            at(random.nextDouble(-900, 2000), random.nextDouble(-2000, 2000)));
            if (way.get(1).distanceToM(way.get(2)) < 800) {
                continue;
            }
            double beforeM = RoundedWayTest.lengthM(way) - 1e-6;
            for (double speed = 11; speed <= 26; speed += 3) {
                RoundedWay.Turning turning = RoundedWayTest.turning(speed, 0);
                double nowM =
                        RoundedWayTest.lengthM(
                                RoundedWay.of(
                                                way,
                                                Set.of(),
                                                turning,
                                                WayMap.around(List.of())::isFree)
                                        .points());
                assertThat(nowM).as(way + " at " + speed).isGreaterThanOrEqualTo(beforeM);
                // The arc is written outside by a share that steps with the number of its pieces.
                beforeM = nowM - 0.003 * turning.radiusM(speed) * Math.PI;
            }
        }
    }

    @Test
    void rounded_ways_are_legal_smooth_and_no_shorter_than_the_shortest() {
        SplittableRandom random = new SplittableRandom(11);
        int rounded = 0;
        int kept = 0;
        for (int k = 0; k < 60; k++) {
            List<Geometry> blocks = new ArrayList<>();
            for (int i = 0; i < 25; i++) {
                blocks.add(
                        FACTORY.createPoint(
                                        new Coordinate(
                                                random.nextDouble(300, 3700),
                                                random.nextDouble(-1500, 1500)))
                                .buffer(random.nextDouble(20, 200), 8));
            }
            WayMap map = WayMap.around(blocks);
            Optional<List<PlanePoint>> way = map.findWay(at(0, 0), at(4000, 0));
            if (way.isEmpty() || way.get().size() < 3) {
                continue;
            }
            double airspeed = random.nextDouble(15, 35);
            RoundedWay found =
                    RoundedWay.of(
                            way.get(), Set.of(), RoundedWayTest.turning(airspeed, 0), map::isFree);
            boolean whole = found.turns().stream().noneMatch(RoundedWay.Turn::isKept);
            assertThat(found.points()).startsWith(at(0, 0)).endsWith(at(4000, 0));
            assertThat(RoundedWayTest.lengthM(found.points()))
                    .isGreaterThanOrEqualTo(RoundedWayTest.lengthM(way.get()) - 1e-6);
            assertThat(found.turnLossS()).isGreaterThanOrEqualTo(0);
            if (!found.points().equals(way.get())) {
                for (int i = 0; i + 1 < found.points().size(); i++) {
                    assertThat(map.isFree(found.points().get(i), found.points().get(i + 1)))
                            .isTrue();
                }
                assertThat(RoundedWayTest.sharpestRad(found.points()))
                        .isLessThanOrEqualTo(Math.toRadians(RoundedWay.STEP_DEG) + 0.01);
                rounded += whole ? 1 : 0;
            }
            kept += whole ? 0 : 1;
        }
        assertThat(rounded).as("kept " + kept).isGreaterThan(30);
    }

    private static PlanePoint at(double eastM, double northM) {
        return new PlanePoint(eastM, northM);
    }
}
