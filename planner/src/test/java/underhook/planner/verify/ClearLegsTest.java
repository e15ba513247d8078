package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.fall.Fall;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadShape;
import underhook.core.job.MapFeature;
import underhook.core.job.ReleaseArea;
import underhook.core.plan.ReleaseLook.Use;
import underhook.planner.route.Cargo;
import underhook.planner.route.ClearLegs;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.route.LegWind;
import underhook.planner.route.WayMap;

class ClearLegsTest {
    /** 300 kg on 20 m of line at 20 m/s: from the 5 m that clearance asks for it is thrown 20 m. */
    private static final ClearLegs.Carried STONE =
            new ClearLegs.Carried(
                    List.of(
                            new Cargo(
                                    new Fall.Body(300, 0.1, 1.2),
                                    new Fall.Body(300, 0, 1.2),
                                    LoadShape.BAG,
                                    20,
                                    21,
                                    20,
                                    0,
                                    0)),
                    LegWind.CALM);

    private static final LegFinder.Request EAST =
            new LegFinder.Request(
                    new LegFinder.End(new PlanePoint(0, 0), Math.PI / 2, 121),
                    new LegFinder.End(new PlanePoint(1000, 0), 3 * Math.PI / 2, 121),
                    List.of("bag"),
                    21,
                    20,
                    true);

    private static SmallDay house(double eastM, double northM) {
        SmallDay day = SmallDay.good();
        MapFeature house = SmallDay.with(day.job().features().get(1), "bufferM", 0.0);
        return day.inJob(
                "features", List.of(SmallDay.with(house, "outline", List.of(geo(eastM, northM)))));
    }

    private static ClearLegs legs(SmallDay day) {
        return new ClearLegs(day.job(), day.ground(), new LegFinder(day.job(), day.ground()));
    }

    private static double leastM(FlownLeg leg, double eastM, double northM) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < leg.points().size(); i++) {
            least =
                    Math.min(
                            least,
                            Plane.toSegmentM(
                                    new PlanePoint(eastM, northM),
                                    leg.points().get(i - 1),
                                    leg.points().get(i)));
        }
        return least;
    }

    @Test
    void with_a_line_on_near_places_too_are_left_and_reached_on_the_tracks_asked_for() {
        // 80 m apart, and both tracks into a wind from the north: out and in again by a circuit.
        LegFinder.Request near =
                new LegFinder.Request(
                        new LegFinder.End(new PlanePoint(0, 0), 0, 121),
                        new LegFinder.End(new PlanePoint(80, 0), Math.PI, 121),
                        List.of("bag"),
                        21,
                        20,
                        true);
        SmallDay day = SmallDay.good();
        LegFinder finder = new LegFinder(day.job(), day.ground());

        List<PlanePoint> points = finder.findLeg(near).orElseThrow().points();

        assertThat(points).contains(new PlanePoint(0, 0), new PlanePoint(80, 0));
        assertThat(points.stream().mapToDouble(PlanePoint::northM).max().orElseThrow())
                .isGreaterThan(100);
        assertThat(points.stream().mapToDouble(PlanePoint::northM).min().orElseThrow())
                .isLessThan(-100);
        // Straight across are 4 s and a climb over 5 m; the circuit's 600 m take 30 s.
        assertThat(finder.least().leastAsDirectedS(near, new WayMap.Wind(0, 0, 20))).isLessThan(10);
        LegFinder.Request cabin =
                new LegFinder.Request(near.from(), near.to(), List.of(), 25, 20, false);
        assertThat(finder.findLeg(cabin).orElseThrow().distanceM()).isLessThan(80.01);
    }

    @Test
    void what_lies_aside_of_the_throw_moves_no_way() {
        ClearLegs.Found found = legs(house(500, 60)).find(EAST, STONE);

        assertThat(found.inReach()).isEmpty();
        assertThat(found.leg().orElseThrow().distanceM()).isLessThan(1000.01);
    }

    @Test
    void a_way_from_which_a_house_could_be_hit_is_found_anew_further_off() {
        SmallDay day = house(500, 12);
        FlownLeg straight = new LegFinder(day.job(), day.ground()).findLeg(EAST).orElseThrow();

        ClearLegs.Found found = legs(day).find(EAST, STONE);

        assertThat(straight.distanceM()).isLessThan(1000.01);
        // 10 m of house and the 25 m step that holds swing and pad to the side
        assertThat(leastM(found.leg().orElseThrow(), 500, 12)).isGreaterThan(30);
        assertThat(found.inReach()).isEmpty();
    }

    @Test
    void where_the_last_part_itself_could_hit_a_house_there_is_no_leg_and_it_is_said_why() {
        ClearLegs.Found found = legs(house(940, 8)).find(EAST, STONE);

        assertThat(found.leg()).isEmpty();
        assertThat(found.inReach()).containsExactly("H1");
    }

    @Test
    void areas_count_when_agreed_and_are_candidates_until_then() {
        SmallDay day = house(500, 300);
        ReleaseArea wide = area("J1", true, 200);
        ReleaseArea offered = area("J2", false, 600);
        SmallDay named = day.inJob("releaseAreas", List.of(wide, offered));
        ClearLegs legs = legs(named);
        FlownLeg leg = legs.find(EAST, STONE).leg().orElseThrow();

        ClearLegs.Seen seen = legs.look(leg, List.of("bag"), STONE).orElseThrow();

        assertThat(seen.near()).containsExactly("J1");
        assertThat(seen.candidates()).containsExactly("J2");
        assertThat(seen.look().stretches())
                .filteredOn(part -> part.use() == Use.NAMED)
                .singleElement()
                .satisfies(part -> assertThat(part.what()).containsExactly("J1"));
    }

    private static ReleaseArea area(String id, boolean agreed, double fromM) {
        return new ReleaseArea(
                id,
                List.of(
                        geo(fromM, -100),
                        geo(fromM + 200, -100),
                        geo(fromM + 200, 100),
                        geo(fromM, 100)),
                agreed,
                "areas");
    }
}
