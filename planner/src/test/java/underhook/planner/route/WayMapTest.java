package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;

class WayMapTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double WIRE_CLEARANCE_M = 25;
    private static final PlanePoint START = new PlanePoint(0, 0);

    @Test
    void flies_straight_where_nothing_stands_between() {
        PlanePoint end = new PlanePoint(300, 400);

        assertThat(around(List.of()).findWay(START, end)).contains(List.of(START, end));
        assertThat(around(List.of(square(500, 600))).findWay(START, end))
                .as("with a square far off")
                .contains(List.of(START, end));
    }

    @Test
    void flies_the_shortest_way_round_a_square() {
        // Over the corners (100, 50) and (200, 50): 2 sqrt(100² + 50²) + 100 = 323.6068.
        PlanePoint end = new PlanePoint(300, 0);

        List<PlanePoint> way = around(List.of(square(100, 200))).findWay(START, end).orElseThrow();

        assertThat(lengthM(way)).isCloseTo(100 + 100 * Math.sqrt(5), within(1e-9));
        assertThat(way).hasSize(4).startsWith(START).endsWith(end);
    }

    @Test
    void takes_the_longer_way_where_the_wind_makes_it_quicker() {
        // A triangle on its point. Over the top 100 + 300 + 100 = 500 m, round the point
        // 2 sqrt(150² + 199²) = 498.401 m. With 10 m/s from the north and 25 m/s through the air
        // the
        // top takes 100 / (25 - 10) + 300 / sqrt(25² - 10²) + 100 / (25 + 10) = 22.6169 s; a piece
        // (e, n) takes the t with e² + (n + 10 t)² = 625 t², the two round the point 23.0352 s.
        Coordinate[] corners = {
            new Coordinate(0, 100),
            new Coordinate(150, -199),
            new Coordinate(300, 100),
            new Coordinate(0, 100)
        };
        WayMap map = around(List.of(FACTORY.createPolygon(corners)));
        PlanePoint end = new PlanePoint(300, 0);

        List<PlanePoint> still = map.findWay(START, end).orElseThrow();
        List<PlanePoint> windy = map.findWay(START, end, new WayMap.Wind(0, -10, 25)).orElseThrow();

        assertThat(still).containsExactly(START, new PlanePoint(150, -199), end);
        assertThat(windy)
                .containsExactly(START, new PlanePoint(0, 100), new PlanePoint(300, 100), end);
    }

    @Test
    void flies_no_piece_that_the_wind_does_not_allow() {
        // 30 m/s from the west, 25 m/s through the air: only east within asin(25 / 30) = 56.4°.
        WayMap map = around(List.of(square(100, 200)));
        WayMap.Wind storm = new WayMap.Wind(30, 0, 25);

        assertThat(map.findWay(START, new PlanePoint(300, 0), storm)).isPresent();
        assertThat(map.findWay(START, new PlanePoint(-300, 0), storm)).isEmpty();
        assertThat(map.findWay(START, new PlanePoint(99, 160), storm)).as("too steep").isEmpty();
        assertThat(map.findWay(START, new PlanePoint(99, 140), storm)).isPresent();
    }

    @Test
    void has_no_way_into_or_out_of_what_is_closed() {
        // A ring, 10 m wide, round the start.
        Geometry disc = FACTORY.createPoint(new Coordinate(0, 0)).buffer(100);
        WayMap ring = around(List.of(disc.difference(disc.buffer(-10))));
        PlanePoint outside = new PlanePoint(300, 0);

        assertThat(ring.findWay(START, outside)).isEmpty();
        assertThat(ring.findWay(outside, START)).isEmpty();
        assertThat(ring.findWay(START, new PlanePoint(50, 0))).as("inside the ring").isPresent();
        assertThat(around(List.of(square(100, 200))).findWay(START, new PlanePoint(150, 0)))
                .as("an end on closed ground")
                .isEmpty();
        assertThat(around(List.of(square(100, 200))).findWay(START, new PlanePoint(100, 0)))
                .as("an end on its edge")
                .isEmpty();
    }

    @Test
    void crosses_a_wire_straight_only_near_square() {
        WayMap map = overWire(CrossingRule.ALLOWED);

        // Over the wire at 100 m east: 200 east and 72 north is 19.8° off square, 74 north 20.3°.
        assertThat(map.isFree(START, new PlanePoint(200, 72))).isTrue();
        assertThat(map.isFree(START, new PlanePoint(200, 74))).isFalse();
        // The corridor is 25 + 5 = 30 m to each side.
        assertThat(map.isFree(new PlanePoint(69, 0), new PlanePoint(69, 300))).isTrue();
        assertThat(map.isFree(new PlanePoint(71, 0), new PlanePoint(71, 300))).isFalse();
        assertThat(map.isFree(START, new PlanePoint(120, 0))).as("ends beside it").isFalse();
    }

    /** Two spans that meet 20 m north of the way, whose corridors reach 30 m; the second may turn off by 20° and no more. */
    @Test
    void crosses_a_span_beside_the_next_but_not_along_above_it() {
        PlanePoint end = new PlanePoint(200, 0);

        assertThat(overTwo(20, 0).isFree(START, end)).isTrue();
        assertThat(overTwo(20, 0).isFree(START, new PlanePoint(200, 80))).as("aslant").isFalse();
        assertThat(overTwo(20, 19).isFree(START, end)).isTrue();
        assertThat(overTwo(20, 21).isFree(START, end)).isFalse();
        assertThat(overTwo(20, 90).isFree(START, end)).as("along a branch").isFalse();
        assertThat(overTwo(31, 90).isFree(START, end)).as("its corridor ends before").isTrue();
    }

    /** A line that comes back beside itself: where its other end lies 60 m on, it is passed for itself. */
    @Test
    void passes_a_line_that_it_crosses_elsewhere_as_any_other() {
        assertThat(returning(110).isFree(START, new PlanePoint(300, 0))).isTrue();
        // 21 m beside the end from 139 to 181 m; a crossing at 100 reaches 30 / cos 20° (1 + tan
        // 20°) = 43.5 m.
        assertThat(returning(160).isFree(START, new PlanePoint(300, 0))).isFalse();
    }

    private static WayMap returning(double eastM) {
        WirePlan first = Wires.northSouth(100, CrossingRule.ALLOWED, 540);
        List<PlanePoint> back = List.of(new PlanePoint(eastM, 21), new PlanePoint(eastM, 1000));
        Curtain curtain = new Curtain(back.get(0), back.get(1), 540, 5);
        WirePlan second =
                new WirePlan(
                        first.wire(),
                        first.chain(),
                        back,
                        Tube.of(List.of(List.of(curtain)), false),
                        0,
                        25,
                        0);
        return new WayMap(List.of(), List.of(first, second), WIRE_CLEARANCE_M);
    }

    /** A span up to so far north, and one that goes on there, turned to the east by so much. */
    private static WayMap overTwo(double northM, double turnDeg) {
        PlanePoint meet = new PlanePoint(100, northM);
        List<WirePlan> two = new ArrayList<>();
        for (PlanePoint other :
                List.of(
                        new PlanePoint(100, northM - 500),
                        meet.towards(Math.toRadians(turnDeg), 500))) {
            WirePlan like = Wires.northSouth(100, CrossingRule.ALLOWED, 540);
            Curtain curtain = new Curtain(meet, other, 540, 5);
            two.add(
                    new WirePlan(
                            like.wire(),
                            0,
                            List.of(meet, other),
                            Tube.of(List.of(List.of(curtain)), false),
                            0,
                            25,
                            0));
        }
        return new WayMap(List.of(), two, WIRE_CLEARANCE_M);
    }

    @Test
    void goes_to_a_gate_to_cross_a_wire_that_lies_askew() {
        // 2000 m of wire hold 33 gates, 60.606 m apart, 31 m to each side; the one at
        // -1000 + 18.5 * 60.606 = 121.212 north is best:
        // sqrt(69² + 121.212²) + 62 + sqrt(69² + 78.788²) = 139.475 + 62 + 104.730 = 306.205.
        // Its neighbour at 60.606 gives 91.835 + 62 + 155.543 = 309.378.
        PlanePoint end = new PlanePoint(200, 200);

        List<PlanePoint> way = overWire(CrossingRule.ALLOWED).findWay(START, end).orElseThrow();

        assertThat(lengthM(way)).isCloseTo(306.205, within(0.005));
        assertThat(way).hasSize(4);
        assertThat(way.get(1).northM()).isCloseTo(way.get(2).northM(), within(1e-6));
    }

    @Test
    void goes_round_a_wire_that_may_not_be_crossed() {
        // Its corridor ends 30 m beyond the supports, 1000 m north and south. From the start, 100 m
        // beside it, no way is shorter than to the end of the wire and back: 2 sqrt(100² + 1000²) =
        // 2009.98; round the corridor's end, 30 m further on, at most
        // 2 (1031 + 100) = 2262.
        PlanePoint end = new PlanePoint(200, 0);

        List<PlanePoint> way = overWire(CrossingRule.NEVER).findWay(START, end).orElseThrow();

        assertThat(lengthM(way)).isBetween(2009.98, 2262.0);
    }

    private static WayMap around(List<Geometry> areas) {
        return WayMap.around(areas);
    }

    private static WayMap overWire(CrossingRule rule) {
        return new WayMap(List.of(), List.of(Wires.northSouth(100, rule, 540)), WIRE_CLEARANCE_M);
    }

    /** 50 m north and south of the line from the start to the east. */
    private static Geometry square(double westM, double eastM) {
        return FACTORY.toGeometry(new Envelope(westM, eastM, -50, 50));
    }

    private static double lengthM(List<PlanePoint> way) {
        double sumM = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            sumM += way.get(i).distanceToM(way.get(i + 1));
        }
        return sumM;
    }
}
