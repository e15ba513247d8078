package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.PlanePoint;

/** Lengths in double arithmetic unless a tolerance says otherwise. */
class RoundedWayTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double BANK_RAD = Math.toRadians(20);

    @Test
    void turns_with_the_radius_of_a_level_turn() {
        // tan(20°) = 0.363970; 30² / (9.80665 * 0.363970) = 252.15 m. Balance of forces, from the
        // textbook formula r = V² / (g tan bank).
        assertThat(turning(30, 0).radiusM(30)).isCloseTo(252.15, within(0.01));
        assertThat(turning(30, 0).radiusM(15)).isCloseTo(252.15 / 4, within(0.01));
    }

    @Test
    void adds_to_a_square_corner_what_the_closed_form_says() {
        // The disc has the corner on its edge, inwards on the bisector. From 100 km off the string
        // is
        // longer than the corner by r (pi / 2 - 2 sin(pi / 4)); the corner lies 1 cm inside, the
        // arc
        // is written outside the circle, longer by 10 parts in 4000, and the tangents lean by less
        // than r² / 100 km.
        List<PlanePoint> way = List.of(at(-100_000, 0), at(0, 0), at(0, -100_000));
        double r = turning(30, 0).radiusM(30);

        RoundedWay rounded =
                RoundedWay.of(way, Set.of(), turning(30, 0), WayMap.around(List.of())::isFree);

        double extraM = r * (Math.PI / 2 - 2 * Math.sin(Math.PI / 4));
        double outsideM = r * 9 * 2 * (Math.tan(Math.PI / 36) - Math.PI / 36);
        assertThat(lengthM(rounded.points()) - lengthM(way))
                .isCloseTo(extraM + outsideM, within(0.35));
        assertThat(rounded.turns()).hasSize(1);
        assertThat(rounded.turns().get(0).radiusM()).isCloseTo(r, within(1e-9));
        assertThat(rounded.turnLossS()).as("at full speed nothing is lost").isZero();
    }

    @Test
    void passes_outside_of_its_corner_and_turns_little_at_each_point() {
        List<PlanePoint> way = List.of(at(-2000, 0), at(0, 0), at(500, -2000));

        List<PlanePoint> flown =
                RoundedWay.of(way, Set.of(), turning(30, 0), WayMap.around(List.of())::isFree)
                        .points();

        // The corner lies on the inner side of every piece.
        for (int i = 0; i + 1 < flown.size(); i++) {
            assertThat(leftM(flown.get(i), flown.get(i + 1), at(0, 0))).isLessThan(0);
        }
        assertThat(sharpestRad(flown)).isLessThanOrEqualTo(Math.toRadians(10) + 1e-9);
    }

    @Test
    void is_the_way_itself_where_turns_need_no_room() {
        List<PlanePoint> way = List.of(at(-2000, 0), at(0, 0), at(0, -2000));
        RoundedWay.Turning spot = new RoundedWay.Turning(30, 30, 10, Math.PI / 2, 0);

        RoundedWay rounded = RoundedWay.of(way, Set.of(), spot, WayMap.around(List.of())::isFree);

        assertThat(rounded.points()).isEqualTo(way);
        assertThat(rounded.turnLossS()).isZero();
        assertThat(rounded.turns()).isEmpty();
    }

    @Test
    void goes_round_corners_near_to_each_other_in_one_turn() {
        // Two corners of 45° in 40 m: one disc of 252 m holds both.
        List<PlanePoint> way = List.of(at(-3000, 0), at(0, 0), at(28.3, -28.3), at(28.3, -3000));

        RoundedWay rounded =
                RoundedWay.of(way, Set.of(), turning(30, 0), WayMap.around(List.of())::isFree);

        assertThat(rounded.turns()).hasSize(1);
        assertThat(rounded.turns().get(0).radiusM()).isCloseTo(252.15, within(0.01));
        for (int i = 0; i + 1 < rounded.points().size(); i++) {
            PlanePoint a = rounded.points().get(i);
            PlanePoint b = rounded.points().get(i + 1);
            assertThat(leftM(a, b, at(0, 0))).isLessThan(0);
            assertThat(leftM(a, b, at(28.3, -28.3))).isLessThan(0);
        }
    }

    @Test
    void keeps_a_final_straight_and_turns_behind_it() {
        // Out to the east for 150 m, then back west: 150 m from a hover at 1 m/s² are left at no
        // more than sqrt(2 * 150) = 17.3 m/s; slower turns are quicker here.
        List<PlanePoint> way = List.of(at(0, 0), at(150, 0), at(-2000, 300));

        RoundedWay rounded =
                RoundedWay.of(way, Set.of(0), turning(30, 150), WayMap.around(List.of())::isFree);

        assertThat(rounded.points().get(1).eastM()).isCloseTo(150, within(1e-6));
        assertThat(rounded.points().get(1).northM()).isCloseTo(0, within(1e-6));
        RoundedWay.Turn turn = rounded.turns().get(0);
        assertThat(turn.speedMPerS()).isBetween(10.0, Math.sqrt(300));
        double r = turning(30, 150).radiusM(turn.speedMPerS());
        // All of the turn is flown at its own speed: from 30 m/s to it, over about half a circle.
        double arcM = r * (Math.PI - Math.atan2(300, 2150));
        assertThat(rounded.turnLossS())
                .isCloseTo(
                        arcM / turn.speedMPerS() - arcM / 30, within(0.05 * rounded.turnLossS()));
    }

    @Test
    void turns_slower_where_there_is_less_room_and_says_so_where_there_is_none() {
        // A wall beyond the corner, 20 m off its tip along the bisector.
        List<PlanePoint> way = List.of(at(-2000, 0), at(0, 0), at(0, -2000));
        WayMap wide = wallsAt(20);
        WayMap narrow = wallsAt(1.2);

        RoundedWay slower = RoundedWay.of(way, Set.of(), turning(30, 0), wide::isFree);
        RoundedWay kept = RoundedWay.of(way, Set.of(), turning(30, 0), narrow::isFree);

        assertThat(slower.turns().get(0).radiusM()).isBetween(20.0, 200.0);
        assertThat(slower.turns().get(0).isKept()).isFalse();
        assertThat(slower.turnLossS()).isGreaterThan(0);
        assertLegal(slower.points(), wide);
        RoundedWay.Turn tight = kept.turns().get(0);
        assertThat(tight.isKept()).isTrue();
        // 0.25 m cut off a square corner leave a radius of 0.25 / (sqrt(2) - 1) = 0.6036 m:
        // tan(bank) = 10² / (9.80665 * 0.6036) = 16.9.
        assertThat(Math.tan(tight.bankRad())).isCloseTo(16.9, within(0.05));
        assertThat(kept.turnLossS()).isGreaterThan(slower.turnLossS());
        assertLegal(kept.points(), narrow);
    }

    /** Open ground north of -20 km, walled in two bands beyond both arms of the corner. */
    private static WayMap wallsAt(double offM) {
        double far = 10_000;
        Coordinate[] north = {
            new Coordinate(-far, offM),
            new Coordinate(far, offM),
            new Coordinate(far, far),
            new Coordinate(-far, far),
            new Coordinate(-far, offM)
        };
        Geometry wall = FACTORY.createPolygon(north);
        return WayMap.around(List.of(wall));
    }

    private static void assertLegal(List<PlanePoint> points, WayMap map) {
        for (int i = 0; i + 1 < points.size(); i++) {
            assertThat(map.isFree(points.get(i), points.get(i + 1))).isTrue();
        }
    }

    static RoundedWay.Turning turning(double speedMPerS, double finalM) {
        return new RoundedWay.Turning(speedMPerS, speedMPerS, 10, BANK_RAD, finalM);
    }

    static double lengthM(List<PlanePoint> way) {
        double sumM = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumM += way.get(i).distanceToM(way.get(i + 1));
        }
        return sumM;
    }

    static double sharpestRad(List<PlanePoint> way) {
        double most = 0;
        for (int i = 1; i + 1 < way.size(); i++) {
            double in = Circles.directionRad(way.get(i - 1), way.get(i));
            double out = Circles.directionRad(way.get(i), way.get(i + 1));
            most = Math.max(most, Math.abs(Circles.turnRad(in, out)));
        }
        return most;
    }

    /** How far left of a line a point lies. */
    private static double leftM(PlanePoint a, PlanePoint b, PlanePoint point) {
        double east = b.eastM() - a.eastM();
        double north = b.northM() - a.northM();
        return (east * (point.northM() - a.northM()) - north * (point.eastM() - a.eastM()))
                / Math.hypot(east, north);
    }

    private static PlanePoint at(double eastM, double northM) {
        return new PlanePoint(eastM, northM);
    }
}
