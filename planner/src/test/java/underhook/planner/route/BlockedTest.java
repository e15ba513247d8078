package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import underhook.core.geo.PlanePoint;
import underhook.planner.route.Blocked.Found;
import underhook.planner.route.Blocked.Thing;
import underhook.planner.route.Blocked.Why;

class BlockedTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final PlanePoint START = new PlanePoint(0, 0);
    private static final PlanePoint END = new PlanePoint(3000, 0);

    @Test
    void names_each_house_of_a_ring_that_alone_opens_it() {
        // Twelve houses with buffers of 150 m on a circle of 500 m: neighbours lie 259 m apart.
        List<Thing> ring = ring(12, 150);

        Found found = Blocked.between(START, END, ring);

        assertThat(found.why()).isEqualTo(Why.EACH_ALONE);
        assertThat(found.ids()).hasSize(12);
        assertThat(found.openers()).containsExactly("nobody there");
        for (Thing thing : found.things()) {
            List<Thing> others = new ArrayList<>(ring);
            others.remove(thing);
            assertThat(wayIsThere(others)).as("without " + thing.id()).isTrue();
        }
    }

    @Test
    void says_that_a_thick_ring_closes_it_together() {
        // Twenty-four, 131 m apart: without one the next but one still overlap (261 m < 300 m).
        List<Thing> ring = ring(24, 150);

        Found found = Blocked.between(START, END, ring);

        assertThat(found.why()).isEqualTo(Why.TOGETHER);
        assertThat(found.things()).hasSize(2);
        assertThat(wayIsThere(ring)).isFalse();
        List<Thing> others = new ArrayList<>(ring);
        others.removeAll(found.things());
        assertThat(wayIsThere(others)).isTrue();
    }

    @Test
    void finds_the_one_thing_that_cuts_the_land_in_two() {
        // A wire never to be crossed between a zone and the southern side of a closed frame.
        // Without
        // the south or the north of it there is a way round the outside; not so without west or
        // east.
        List<Thing> things =
                List.of(
                        new Thing("Z9", disc(1500, 3000, 900), "from 2026-09-16"),
                        new Thing("far", disc(4000, 500, 150), "nobody there"),
                        new Thing("W1", box(1450, -2500, 1550, 2500), "the line owner's word"),
                        new Thing("south", box(-3000, -3000, 5000, -2400), "a guard"),
                        new Thing("west", box(-3000, -3000, -2500, 4000), "a guard"),
                        new Thing("north", box(-3000, 3500, 5000, 4000), "a guard"),
                        new Thing("east", box(4500, -3000, 5000, 4000), "a guard"));

        Found found = Blocked.between(START, END, things);

        assertThat(found.why()).isEqualTo(Why.EACH_ALONE);
        assertThat(found.ids()).containsExactlyInAnyOrder("W1", "Z9", "south", "north");
        assertThat(found.openers())
                .containsExactlyInAnyOrder("the line owner's word", "from 2026-09-16", "a guard");
    }

    @Test
    void says_which_end_lies_on_closed_ground() {
        Thing house = new Thing("house", disc(20, 0, 150), "nobody there");
        Thing zone = new Thing("zone", disc(3000, 100, 350), "from 2026-08-16");

        assertThat(Blocked.between(START, END, List.of(zone, house)))
                .isEqualTo(new Found(Why.START_CLOSED, List.of(house)));
        assertThat(Blocked.between(START, END, List.of(zone)))
                .isEqualTo(new Found(Why.END_CLOSED, List.of(zone)));
    }

    @Test
    void does_not_blame_what_is_not_in_the_way() {
        Found found = Blocked.between(START, END, List.of(new Thing("a", disc(1000, 0, 150), "x")));

        assertThat(found.why()).isEqualTo(Why.NOT_IN_PLAN);
        assertThat(found.things()).isEmpty();
    }

    private static boolean wayIsThere(List<Thing> things) {
        return WayMap.around(things.stream().map(Thing::area).toList())
                .findWay(START, END)
                .isPresent();
    }

    private static List<Thing> ring(int count, double radiusM) {
        List<Thing> ring = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double turn = 2 * Math.PI * i / count;
            ring.add(
                    new Thing(
                            "H" + i,
                            disc(500 * Math.cos(turn), 500 * Math.sin(turn), radiusM),
                            "nobody there"));
        }
        return ring;
    }

    private static Polygon disc(double eastM, double northM, double radiusM) {
        return (Polygon) FACTORY.createPoint(new Coordinate(eastM, northM)).buffer(radiusM);
    }

    private static Polygon box(double westM, double southM, double eastM, double northM) {
        return (Polygon)
                FACTORY.toGeometry(
                        new org.locationtech.jts.geom.Envelope(westM, eastM, southM, northM));
    }
}
