package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;

/**
 * The least time by turning, against flights found in two ways that share nothing with it: the four ways
 * of circle, tangent and circle, worked out here with circles of any speed, and random ways flown as
 * rounded ones.
 */
class TurnBoundPropertyTest {
    private static final double BANK_RAD = Math.toRadians(20);

    /** 9.80665 tan 20°. */
    private static final double GRIP_M_PER_S2 = 3.569329;

    private static RoundedWay.Turning turning(double airspeed, double least) {
        return new RoundedWay.Turning(airspeed, airspeed + 10, least, BANK_RAD, 150);
    }

    private static TurnBound.Pose pose(double eastM, double northM, double trackRad) {
        return new TurnBound.Pose(new PlanePoint(eastM, northM), trackRad);
    }

    @Test
    void a_quarter_turn_by_hand() {
        // 20 m/s, least 10 m/s, start square to the way: each radian takes the less of 20 (1 - cos)
        // and 10 - 5 cos over the grip, which are alike at cos = 2/3, 0.8411 rad, sin = 0.7454:
        // (20 (0.8411 - 0.7454) + 10 (1.5708 - 0.8411) - 5 (1 - 0.7454)) / 3.5693 = 2.224 s.
        double foundS =
                new TurnBound(new WayMap.Wind(0, 0, 20), turning(20, 10))
                        .leastS(pose(0, 0, Math.PI / 2), pose(0, 1000, 0));

        // Steps count with their least, about 5 ms each way.
        assertThat(foundS).isCloseTo(50 + 2.224, within(0.05));
    }

    @Test
    void straight_on_nothing_is_turned() {
        double foundS =
                new TurnBound(new WayMap.Wind(0, -5, 20, false), turning(20, 10))
                        .leastS(pose(0, 0, 0), pose(0, 1000, 0));

        assertThat(foundS).isCloseTo(1000.0 / 15, within(1e-6));
    }

    @Test
    void no_circle_tangent_and_circle_is_quicker() {
        SplittableRandom random = new SplittableRandom(21);
        double closest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 2000; k++) {
            double airspeed = random.nextDouble(12, 35);
            double least = random.nextDouble(6, 12);
            TurnBound.Pose from = pose(0, 0, random.nextDouble(2 * Math.PI));
            TurnBound.Pose to =
                    pose(
                            random.nextDouble(-1500, 1500),
                            random.nextDouble(-1500, 1500),
                            random.nextDouble(2 * Math.PI));
            double boundS =
                    new TurnBound(new WayMap.Wind(0, 0, airspeed), turning(airspeed, least))
                            .leastS(from, to);
            double bestS = Double.POSITIVE_INFINITY;
            for (double share = 0; share <= 1; share += 0.5) {
                for (double otherShare = 0; otherShare <= 1; otherShare += 0.5) {
                    double one = least + (airspeed - least) * share;
                    double other = least + (airspeed - least) * otherShare;
                    double[] speeds = {one, other, airspeed};
                    bestS = Math.min(bestS, quickestS(from, to, speeds));
                }
            }

            assertThat(boundS).as(from + " " + to).isLessThanOrEqualTo(bestS + 1e-6);
            closest = Math.min(closest, bestS - boundS);
        }
        assertThat(closest).isLessThan(1);
    }

    /** Least of the four, each circle at its own speed; infinite where no tangent joins them. */
    private static double quickestS(TurnBound.Pose from, TurnBound.Pose to, double[] speeds) {
        double r1 = speeds[0] * speeds[0] / GRIP_M_PER_S2;
        double r2 = speeds[1] * speeds[1] / GRIP_M_PER_S2;
        double bestS = Double.POSITIVE_INFINITY;
        for (int s1 = -1; s1 <= 1; s1 += 2) {
            for (int s2 = -1; s2 <= 1; s2 += 2) {
                // Centres lie to the right (1) or left (-1); tracks are clockwise from north.
                double[] c1 = centre(from, s1 * r1);
                double[] c2 = centre(to, s2 * r2);
                double dx = c2[0] - c1[0];
                double dy = c2[1] - c1[1];
                double apart = Math.hypot(dx, dy);
                double across = s1 * r1 - s2 * r2;
                if (apart <= Math.abs(across)) {
                    continue;
                }
                double straight = Math.sqrt(apart * apart - across * across);
                double track = Math.atan2(dx, dy) + Math.atan2(across, straight);
                double first = turn(track - from.trackGridRad(), s1);
                double second = turn(to.trackGridRad() - track, s2);
                bestS =
                        Math.min(
                                bestS,
                                first * r1 / speeds[0]
                                        + straight / speeds[2]
                                        + second * r2 / speeds[1]);
            }
        }
        return bestS;
    }

    private static double[] centre(TurnBound.Pose pose, double rightM) {
        return new double[] {
            pose.at().eastM() + rightM * Math.cos(pose.trackGridRad()),
            pose.at().northM() - rightM * Math.sin(pose.trackGridRad())
        };
    }

    private static double turn(double rad, int side) {
        double whole = 2 * Math.PI;
        return ((side * rad % whole) + whole) % whole;
    }

    @Test
    void the_circles_end_where_they_must() {
        // Half circles by hand: from the origin north to 200 m east, back south, circles of 50 m:
        // quarter, 100 m straight east, quarter.
        double speed = Math.sqrt(50 * GRIP_M_PER_S2);
        double foundS =
                quickestS(pose(0, 0, 0), pose(200, 0, Math.PI), new double[] {speed, speed, speed});

        assertThat(foundS).isCloseTo((50 * Math.PI + 100) / speed, within(1e-9));
    }

    @Test
    void no_rounded_way_in_wind_is_quicker() {
        SplittableRandom random = new SplittableRandom(22);
        for (int k = 0; k < 600; k++) {
            double airspeed = random.nextDouble(15, 35);
            WayMap.Wind wind =
                    new WayMap.Wind(
                            random.nextDouble(-7, 7),
                            random.nextDouble(-7, 7),
                            airspeed,
                            random.nextBoolean());
            double outRad = random.nextDouble(2 * Math.PI);
            double inRad = random.nextDouble(2 * Math.PI);
            PlanePoint start = new PlanePoint(0, 0);
            PlanePoint end =
                    new PlanePoint(random.nextDouble(300, 2000), random.nextDouble(-500, 500));
            List<PlanePoint> way = new ArrayList<>(List.of(start, start.towards(outRad, 150)));
            for (int i = random.nextInt(3); i > 0; i--) {
                way.add(
                        new PlanePoint(
                                random.nextDouble(-500, 2500), random.nextDouble(-900, 900)));
            }
            PlanePoint in = end.towards(inRad, 150);
            way.add(in);
            way.add(end);
            RoundedWay rounded =
                    RoundedWay.of(
                            way,
                            Set.of(0, way.size() - 2),
                            turning(airspeed, 10),
                            WayMap.around(List.of())::isFree);
            double flownS = rounded.turnLossS();
            for (int i = 0; i + 1 < rounded.points().size(); i++) {
                flownS += pieceS(wind, rounded.points().get(i), rounded.points().get(i + 1));
            }
            double boundS =
                    pieceS(wind, start, way.get(1))
                            + new TurnBound(wind, turning(airspeed, 10))
                                    .leastS(
                                            new TurnBound.Pose(way.get(1), outRad),
                                            new TurnBound.Pose(in, inRad + Math.PI))
                            + pieceS(wind, in, end);

            assertThat(boundS).as(way + " " + wind).isLessThanOrEqualTo(flownS + 1e-6);
        }
    }

    private static double pieceS(WayMap.Wind wind, PlanePoint a, PlanePoint b) {
        return wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
    }
}
