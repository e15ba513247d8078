package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.Ground;
import underhook.core.job.CrossingRule;
import underhook.core.job.Machine;
import underhook.core.job.MapFeature;
import underhook.core.job.Rules;

/**
 * Each part of a hover against each thing that may stand at a place. Distances are worked by hand; no
 * source outside. Half a metre is allowed for two sets of samples.
 */
class HoverRoomTest {
    /** Rotors 4 m over the hook, so that the fuselage is lowest; a tail 1 m wide. */
    private static final Machine.Body TALL = new Machine.Body(5, 1.5, 0.5, 4);

    /** What the re-check says of room: "subject: part to what". */
    private static List<String> said(SmallDay day) {
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .filter(found -> found.code() == FindingCode.ROOM_REFUSED)
                        .map(HoverRoomTest::shortly)
                        .toList();
    }

    private static String shortly(Finding found) {
        return found.subject()
                + ": "
                + found.message()
                        .replace("The ", "")
                        .replace("comes too near ", "")
                        .replaceAll(" at \\w+\\.", "");
    }

    private static SmallDay standing(MapFeature.Shape shape, double heightM, double[]... corners) {
        List<MapFeature> features = new ArrayList<>(SmallDay.good().job().features());
        features.add(
                new MapFeature(
                        "F1",
                        MapFeature.Kind.FOREST,
                        shape,
                        java.util.Arrays.stream(corners).map(c -> geo(c[0], c[1])).toList(),
                        0,
                        CrossingRule.ALLOWED,
                        OptionalDouble.of(heightM),
                        false,
                        "map"));
        return SmallDay.good().inJob("features", features);
    }

    private static double[] at(double eastM, double northM) {
        return new double[] {eastM, northM};
    }

    private static SmallDay bank(double northM) {
        return with(
                SmallDay.good(),
                "ground",
                new Ground(SmallDay.FRAME, SmallDay.bankAtS2(northM), Optional.empty(), 0));
    }

    @Test
    void nothing_is_too_near_on_the_good_day() {
        assertThat(said(SmallDay.good())).isEmpty();
    }

    @Test
    void trees_beside_a_small_clearing_are_too_near_to_the_load() {
        // The bag is 0.71 m wide from its middle, the pole 0.21 m: trees from 1.5 m on leave 0.8 m
        // and 1.3 m of the 2 m.
        assertThat(said(SmallDay.good().place("S2", "clearingRadiusM", 1.5)))
                .containsExactly("B1: load to ground or trees", "P1: load to ground or trees");
        // At 4 m they leave 3.3 m.
        assertThat(said(SmallDay.good().place("S2", "clearingRadiusM", 4.0))).isEmpty();
    }

    @Test
    void what_hangs_beside_each_other_needs_more_of_a_clearing() {
        // Trees from 3 m on: B2 alone leaves 2.3 m; with B3 at its side 1.6 m, and 1.8 m by
        // samples.
        SmallDay trees =
                SmallDay.good()
                        .place("S1", "canopyM", OptionalDouble.of(3))
                        .place("S1", "clearingRadiusM", 2.5);

        assertThat(said(trees)).containsExactly("B2: load to ground or trees");
    }

    @Test
    void a_standing_thing_is_too_near_to_the_load() {
        assertThat(said(standing(MapFeature.Shape.POINT, 3, at(1001.5, 0))))
                .containsExactly("B1: load to F1", "P1: load to F1");
    }

    @Test
    void a_low_thing_is_too_near_to_the_load_only() {
        // 1.9 m aside the line over a pole of 10 m is far above it, the load is not: 1.2 m.
        assertThat(said(standing(MapFeature.Shape.POINT, 0.5, at(1001.9, 0))))
                .containsExactly("B1: load to F1");
    }

    @Test
    void an_edge_between_two_corners_counts_as_well_as_its_ends() {
        assertThat(
                        said(
                                standing(
                                        MapFeature.Shape.AREA,
                                        16,
                                        at(1006, -60),
                                        at(1040, -60),
                                        at(1040, 60),
                                        at(1006, 60))))
                // The rotor's rim is 1 m off the edge and 4 m over its top: 4.1 m of 5 m.
                .containsExactly("B1: rotor to F1");
    }

    @Test
    void a_place_inside_something_has_no_room() {
        assertThat(
                        said(
                                standing(
                                        MapFeature.Shape.AREA,
                                        4,
                                        at(900, -100),
                                        at(1100, -100),
                                        at(1100, 100),
                                        at(900, 100))))
                .containsExactly("B1: line to F1", "P1: load to F1");
    }

    @Test
    void a_bank_under_the_fuselage_is_too_near_although_rotor_and_tail_clear_it() {
        // Eastward: 1 m aside of the fuselage and 3 m below its floor, 3.2 m of 5 m. The rotor is 7
        // m
        // over it.
        assertThat(said(bank(2.5).machine("body", TALL)))
                .containsExactly("B1: fuselage to ground or trees");
    }

    @Test
    void the_tail_is_looked_at_where_the_heading_puts_it() {
        // Surveyed trees of 12 m stand on the bank too: its top is 3 m under the tail at 20 m.
        SmallDay eastward = bank(8.5).machine("body", new Machine.Body(4, 1, 0.5, 0));
        SmallDay southward = eastward.turn(4, PlanVerifierTest::fromNorth);

        assertThat(said(southward)).containsExactly("B1: tail to ground or trees");
        assertThat(said(eastward)).isEmpty();
    }

    @Test
    void a_wire_beside_a_place_is_too_near_to_whatever_reaches_out_to_it() {
        // A span of 400 m that may swing by 6 percent of it, 24 m, 56 m north of S2 and higher than
        // all:
        // 32 m from the mast, 27 m from the rotor's rim; 30 m are asked for.
        SmallDay day =
                SmallDay.good()
                        .wire("supports", List.of(geo(800, 56), geo(1200, 56)))
                        .wire("highestM", 60.0)
                        .wire("lateralM", 0.0);

        assertThat(said(day)).containsExactly("B1: rotor to W1", "P1: rotor to W1");
        assertThat(said(day.wire("supports", List.of(geo(800, 62), geo(1200, 62))))).isEmpty();
    }

    @Test
    void a_hook_up_may_take_any_heading_and_none_is_left_beside_a_thing() {
        // A thing of 30 m is 8 m north of A, 3 m from the rotor's rim on every heading. W1 comes in
        // from
        // the north: its tail stands over it.
        assertThat(said(standing(MapFeature.Shape.POINT, 30, at(0, 8))))
                .containsExactly(
                        "B1: rotor to F1", "B2: rotor to F1", "P1: rotor to F1", "W1: tail to F1");
        // 11 m north leave 6 m to the rotor, and to the tail of who may turn away.
        assertThat(said(standing(MapFeature.Shape.POINT, 30, at(0, 11))))
                .containsExactly("W1: tail to F1");
    }

    /** A wall so many metres west of S2, whence the bag comes in on 270, and the pole. */
    private static SmallDay wall(double westM, double heightM, double angleDeg) {
        SmallDay day =
                standing(
                                MapFeature.Shape.LINE,
                                heightM,
                                at(1000 - westM, -40),
                                at(1000 - westM, 40))
                        .place("S2", "canopyM", OptionalDouble.of(0));
        Rules rules = day.job().rules();
        return day.rule(
                "margins", with(rules.margins(), "finalAngleRad", Math.toRadians(angleDeg)));
    }

    @Test
    void a_wall_on_a_shallow_way_in_is_too_near_though_the_hover_is_clear() {
        // 20 m off and 8 m high: straight down the load is 20 m away. At 30 degrees it is 11.5 m up
        // over the wall, 3.5 m clear of the 2 m asked for; at 20 degrees 7.3 m, into the wall.
        assertThat(said(wall(20, 8, 90))).isEmpty();
        assertThat(said(wall(20, 8, 30))).isEmpty();
        assertThat(said(wall(20, 8, 20))).contains("B1: load to F1");
    }

    @Test
    void the_way_out_is_looked_at_with_the_empty_line() {
        // Only the way out leads west: in from the east nothing stands.
        SmallDay day = wall(20, 8, 20);
        SmallDay turned = day.drop(4, 0, drop -> with(drop, "approachFromTrueRad", Math.PI / 2));

        assertThat(said(turned)).contains("B1: line to F1");
        assertThat(said(turned)).doesNotContain("B1: load to F1");
    }
}
