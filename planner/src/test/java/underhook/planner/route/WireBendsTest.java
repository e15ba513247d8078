package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;

/** Ways over one wire that is crossed within 20° of square, where each radian turned counts like 80 m. */
class WireBendsTest {
    private static final double RADIAN_M = 80;
    private static final double WIRE_EAST_M = 500;

    private static final WirePlan WIRE = Wires.northSouth(WIRE_EAST_M, CrossingRule.ALLOWED, 140);
    private static final WayMap MAP = new WayMap(List.of(), List.of(WIRE), 25);
    private static final WireBends BENDS =
            new WireBends(MAP, WireBendsTest::crosses, WireBendsTest::costM);

    @Test
    void one_bend_is_better_than_two_at_gates() {
        // At a pair of gates the way turns twice; it may go straight to the far side within 20° of
        // square.
        PlanePoint from = new PlanePoint(0, 0);
        PlanePoint to = new PlanePoint(1000, 500);
        List<PlanePoint> square =
                List.of(from, new PlanePoint(465, 165), new PlanePoint(535, 165), to);

        List<PlanePoint> bent = BENDS.bend(square, 0);

        assertThat(bent).hasSize(3).startsWith(from).endsWith(to);
        assertThat(costM(bent)).isLessThan(costM(square));
        assertMayBeFlown(bent);
    }

    @Test
    void what_is_kept_at_the_ends_stays() {
        List<PlanePoint> way =
                List.of(
                        new PlanePoint(100, 0),
                        new PlanePoint(250, 0),
                        new PlanePoint(465, 165),
                        new PlanePoint(535, 165),
                        new PlanePoint(700, 500),
                        new PlanePoint(850, 500));

        List<PlanePoint> bent = BENDS.bend(way, 1);

        assertThat(bent).startsWith(way.get(0), way.get(1)).endsWith(way.get(4), way.get(5));
        assertThat(costM(bent)).isLessThan(costM(way));
        assertMayBeFlown(bent);
    }

    @Test
    void no_way_gets_dearer_and_few_could_be_much_cheaper() {
        SplittableRandom random = new SplittableRandom(5);
        double shortM = 0;
        double bentM = 0;
        double leastM = 0;
        for (int i = 0; i < 20; i++) {
            PlanePoint from = new PlanePoint(random.nextInt(400), random.nextInt(-300, 0));
            PlanePoint to = new PlanePoint(1000 - random.nextInt(400), random.nextInt(0, 400));
            List<PlanePoint> way = MAP.findWay(from, to).orElseThrow();

            List<PlanePoint> bent = BENDS.bend(way, 0);

            assertMayBeFlown(bent);
            assertThat(costM(bent)).as("from %s to %s", from, to).isLessThanOrEqualTo(costM(way));
            shortM += costM(way);
            bentM += costM(bent);
            leastM += leastM(from, to);
        }
        assertThat(bentM - leastM).isLessThan((shortM - leastM) / 2);
    }

    /** Of all ways with no more than one bend on either side of the wire, every 15 m. */
    private static double leastM(PlanePoint from, PlanePoint to) {
        double leastM = MAP.isFree(from, to) ? from.distanceToM(to) : Double.POSITIVE_INFINITY;
        for (double northM = -300; northM <= 400; northM += 15) {
            for (double offM = 31; offM < 95; offM += 20) {
                PlanePoint near = new PlanePoint(WIRE_EAST_M - offM, northM);
                PlanePoint far = new PlanePoint(WIRE_EAST_M + offM, northM);
                leastM = Math.min(leastM, ifFree(List.of(from, near, to)));
                leastM = Math.min(leastM, ifFree(List.of(from, far, to)));
                for (double otherM = northM - 60; otherM <= northM + 60; otherM += 15) {
                    PlanePoint beyond = new PlanePoint(WIRE_EAST_M + offM, otherM);
                    leastM = Math.min(leastM, ifFree(List.of(from, near, beyond, to)));
                }
            }
        }
        return leastM;
    }

    private static double ifFree(List<PlanePoint> way) {
        return mayBeFlown(way) ? costM(way) : Double.POSITIVE_INFINITY;
    }

    private static void assertMayBeFlown(List<PlanePoint> way) {
        assertThat(mayBeFlown(way)).as("%s", way).isTrue();
    }

    private static boolean mayBeFlown(List<PlanePoint> way) {
        for (int i = 0; i + 1 < way.size(); i++) {
            if (!MAP.isFree(way.get(i), way.get(i + 1))) {
                return false;
            }
        }
        return true;
    }

    private static boolean crosses(PlanePoint a, PlanePoint b) {
        return (a.eastM() - WIRE_EAST_M) * (b.eastM() - WIRE_EAST_M) < 0;
    }

    private static double costM(List<PlanePoint> way) {
        double sumM = RoundedWay.lengthM(way);
        for (int i = 1; i + 1 < way.size(); i++) {
            double inRad = way.get(i - 1).bearingToGridRad(way.get(i));
            double outRad = way.get(i).bearingToGridRad(way.get(i + 1));
            sumM += RADIAN_M * Math.abs(Circles.turnRad(inRad, outRad));
        }
        return sumM;
    }
}
