package underhook.core.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.core.job.WireBufferRule;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;

/** Closed forms are worked by hand in the comments; no source outside. */
class RoomTest {
    /** Heights of some hundred metres and a dozen operations. */
    static final double ROUNDING = 1e-9;

    /** Half a cell's diagonal: a cell counts as the circle around its square. */
    static final double PAD = Math.sqrt(0.5);

    static final LocalFrame FRAME = LocalFrame.of(new GeoPoint(46.8, -12));

    /** Middles of the cells of 1 m lie on whole metres, so that each is one of the room's cells. */
    static final GridShape SHAPE = new GridShape(-90.5, -90.5, 1, 181, 181);

    static final Craft CRAFT = new Craft(5, 7.5, new Machine.Body(5, 1, 1, 0));

    static final Rules.Margins MARGINS = new Rules.Margins(2, 2, Math.PI / 2, WireBufferRule.CRANE);

    static final Needs NEEDS = new Needs(5, 30, 0, MARGINS);

    static Place place(OptionalDouble canopyM, double spreadM, double clearingM) {
        return new Place(
                new PlaceId("S"),
                PlaceKind.SITE,
                "S",
                FRAME.toGeo(new PlanePoint(0, 0)),
                OptionalDouble.empty(),
                canopyM,
                spreadM,
                clearingM,
                1,
                true,
                false,
                false,
                false,
                List.of(),
                "");
    }

    static final Place BARE = place(OptionalDouble.of(0), 0, 1e6);

    static Ground ground(DoubleBinaryOperator heightsM) {
        return new Ground(FRAME, GridHeightField.of(SHAPE, heightsM), Optional.empty(), 0);
    }

    static Room room(Ground ground, Place place, List<Wall> walls) {
        return Room.of(
                Surroundings.of(ground, place, Room.view(CRAFT, NEEDS), walls), CRAFT, NEEDS);
    }

    static Room room(DoubleBinaryOperator heightsM) {
        return room(ground(heightsM), BARE, List.of());
    }

    static Margin of(HeadingRoom room, Part part) {
        return room.margins().stream()
                .filter(margin -> margin.part() == part)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void over_level_ground_every_margin_is_the_line() {
        HeadingRoom found = room((e, n) -> 100).at(1, Rig.empty(20));

        assertThat(of(found, Part.ROTOR).marginM()).isCloseTo(20, within(ROUNDING));
        assertThat(of(found, Part.TAIL).marginM()).isCloseTo(20, within(ROUNDING));
        assertThat(of(found, Part.FUSELAGE).marginM()).isCloseTo(20, within(ROUNDING));
        // Level ground is what the load is set down on: line and load have nothing near.
        assertThat(found.margins()).hasSize(3);
        assertThat(found.fit()).isEqualTo(Fit.FREE);
    }

    @Test
    void over_a_plane_the_rotor_is_nearest_in_space_uphill() {
        // Rises 1 in 2 eastwards. Cell (i, j) has its top at i/2 and is nearer by PAD. Seen from
        // the
        // disc's rim at 5 m east the nearest cell on the axis is the one for which
        // (i - 5 - PAD)² + (20 - i/2)² is least: i = 12.565 without the grid, so 12 or 13.
        HeadingRoom found = room((e, n) -> 100 + e / 2).at(0, Rig.empty(20));

        double twelve = Math.hypot(12 - 5 - PAD, 20 - 6);
        double thirteen = Math.hypot(13 - 5 - PAD, 20 - 6.5);
        assertThat(of(found, Part.ROTOR).marginM())
                .isCloseTo(Math.min(twelve, thirteen), within(ROUNDING));
        assertThat(of(found, Part.ROTOR).cause()).isEqualTo(Cause.GROUND);
    }

    @Test
    void on_a_plane_the_tail_uphill_needs_the_rise_ten_metres_behind() {
        // 7.5 m of tail and 2.5 m behind it on 1 in 2 rise 5 m; heading west, the tail is east.
        Room room = room((e, n) -> 100 + e / 2);

        assertThat(room.lineNeedM(3 * Math.PI / 2)).isCloseTo(10, within(ROUNDING));
        assertThat(room.lineNeedM(Math.PI / 2)).isCloseTo(5, within(ROUNDING));
        assertThat(of(room.at(3 * Math.PI / 2, Rig.empty(9.9)), Part.TAIL).fit())
                .isEqualTo(Fit.REFUSED);
    }

    /** The hole begins 10 m east; from the rotor's rim at 5 m that is 5 m and less. */
    @Test
    void a_hole_of_the_raster_is_named_as_what_comes_too_near() {
        GridHeightField heights = GridHeightField.of(SHAPE, (e, n) -> 100);
        for (int row = 0; row < SHAPE.rows(); row++) {
            heights = heights.withUnknown(100, row).withUnknown(101, row).withUnknown(102, row);
        }
        Ground holed = new Ground(FRAME, heights, Optional.empty(), 0);
        for (Place place : List.of(BARE, place(OptionalDouble.of(6), 0, 30))) {
            Margin found = of(room(holed, place, List.of()).at(0, Rig.empty(20)), Part.ROTOR);

            assertThat(found.id()).isEqualTo("ground of unknown height");
            assertThat(found.marginM()).isLessThanOrEqualTo(5);
        }
    }

    /** A tail of 24 ft: 7.3152 and 2.5 m are no whole number of half metres, and 1 in 2 of 9.8152 m is 4.9076 m. */
    @Test
    void the_rise_is_looked_at_up_to_its_very_end() {
        Craft craft = new Craft(5, 7.3152, new Machine.Body(5, 1, 1, 0));
        Surroundings around =
                Surroundings.of(
                        ground((e, n) -> 100 + e / 2), BARE, Room.view(craft, NEEDS), List.of());

        assertThat(Room.of(around, craft, NEEDS).riseBehindM(3 * Math.PI / 2))
                .isCloseTo(4.9076, within(ROUNDING));
    }

    @Test
    void at_the_foot_of_a_cone_line_and_load_keep_off_what_rises_out_of_the_level() {
        // h = r. More than 2 m over the level (the slope at the tip is 0) from r above 2; on whole
        // metres the first such cell is 2.236 m away, (1, 2); cells that reach into the load's 1 m
        // and
        // the place's 2 m do not count: r - PAD > 3, so 4 m is not beyond 3.707 but (4, 0) is.
        HeadingRoom found = room((e, n) -> 100 + Math.hypot(e, n)).at(0, new Rig(30, 0, 1, 1));
        double firstM = 6;
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                double r = Math.hypot(i, j);
                firstM = r > 2 && r - PAD > 3 ? Math.min(firstM, r) : firstM;
            }
        }

        assertThat(firstM).isCloseTo(Math.sqrt(16), within(ROUNDING));
        assertThat(of(found, Part.LOAD).marginM()).isCloseTo(firstM - PAD - 1, within(ROUNDING));
        assertThat(of(found, Part.LINE).marginM()).isCloseTo(firstM - PAD, within(ROUNDING));
        // 0.293 m to spare over 2 m; the place may be off by 2 m.
        assertThat(of(found, Part.LOAD).fit()).isEqualTo(Fit.NEAR);
    }

    @Test
    void a_step_is_as_far_as_its_first_cell() {
        // From 12 m east on 40 m higher than the hook: only the level distance counts.
        HeadingRoom found = room((e, n) -> e >= 12 ? 160 : 100).at(0, Rig.empty(20));

        assertThat(of(found, Part.ROTOR).marginM()).isCloseTo(12 - PAD - 5, within(ROUNDING));
        assertThat(of(found, Part.TAIL).marginM()).isCloseTo(12 - PAD - 1, within(ROUNDING));
        assertThat(of(found, Part.LINE).marginM()).isCloseTo(12 - PAD, within(ROUNDING));
        // 1.29 m over the needed 5, but the place may be off by 2.
        assertThat(found.tightest().part()).isEqualTo(Part.ROTOR);
        assertThat(found.tightest().unknownM()).isCloseTo(2, within(ROUNDING));
        assertThat(found.fit()).isEqualTo(Fit.NEAR);
    }

    @Test
    void between_two_walls_only_headings_along_them_are_left() {
        // A valley 26 m wide between walls 50 m high, along north: the rotor keeps 13 - 5 - PAD =
        // 7.29,
        // the tail of 7.5 + 1 across it only 13 - 8.5 - PAD = 3.79, less than 5. Oblique, the
        // tail's
        // end is 7.5 sin(heading) aside: 13 - PAD - 1 - 7.5 sin = 5 at 57.15°.
        Room room = room((e, n) -> Math.abs(e) >= 13 ? 150 : 100);
        List<HeadingRoom> table = room.table(List.of(Rig.empty(20))).get(0);

        assertThat(of(table.get(18), Part.TAIL).marginM())
                .isCloseTo(13 - PAD - 8.5, within(ROUNDING));
        for (HeadingRoom found : table) {
            double aside = Math.abs(Math.sin(found.headingGridRad()));
            boolean refused = found.fit() == Fit.REFUSED;
            assertThat(refused).isEqualTo(13 - PAD - 1 - 7.5 * aside < 5);
        }
        assertThat(table.stream().filter(one -> one.fit() == Fit.REFUSED).count()).isEqualTo(26);
    }

    @Test
    void inside_a_column_the_margin_is_negative_by_the_lesser_depth() {
        // A tower of ground 1 m across, 3 m east, 4 m higher than the rotors: in by
        // min(5 + PAD - 3, 4) = 2.71 m.
        HeadingRoom found =
                room((e, n) -> Math.hypot(e - 3, n) < 0.5 ? 124 : 100).at(0, Rig.empty(20));

        assertThat(of(found, Part.ROTOR).marginM()).isCloseTo(-(5 + PAD - 3), within(ROUNDING));
        assertThat(found.fit()).isEqualTo(Fit.REFUSED);
    }

    @Test
    void surveyed_trees_stand_everywhere_for_the_rotor_and_beyond_the_clearing_for_the_line() {
        // Canopy 19.2 m, clearing 14 m, level: the demo's rule gives 24.2 m.
        Room room = room(ground((e, n) -> 100), place(OptionalDouble.of(19.2), 2, 14), List.of());
        HeadingRoom found = room.at(0, Rig.empty(25));

        assertThat(room.lineNeedM(0)).isCloseTo(24.2, within(ROUNDING));
        assertThat(of(found, Part.ROTOR).marginM()).isCloseTo(5.8, within(ROUNDING));
        assertThat(of(found, Part.ROTOR).cause()).isEqualTo(Cause.TREES);
        assertThat(found.fit()).isEqualTo(Fit.NEAR);
        // The first cell that is not wholly within 14 m: its middle is more than 14 - PAD away.
        double firstM = 20;
        for (int i = 0; i < 20; i++) {
            for (int j = 0; j < 20; j++) {
                double r = Math.hypot(i, j);
                firstM = r + PAD > 14 ? Math.min(firstM, r) : firstM;
            }
        }
        assertThat(of(found, Part.LINE).marginM()).isCloseTo(firstM - PAD, within(ROUNDING));
    }

    @Test
    void a_mast_and_a_wire_are_walls() {
        Wall mast =
                new Wall(
                        "M1",
                        Cause.THING,
                        new PlanePoint(0, 20),
                        new PlanePoint(0, 20),
                        140,
                        140,
                        0);
        // A wire 25 m east, along north, 5 m uncertain: in reach of the 30 m that wires ask for.
        Wall wire =
                new Wall(
                        "W1",
                        Cause.WIRE,
                        new PlanePoint(25, -100),
                        new PlanePoint(25, 100),
                        118,
                        118,
                        5);
        HeadingRoom found =
                room(ground((e, n) -> 100), BARE, List.of(mast, wire)).at(0, Rig.empty(20));

        // Hook at 120: 2 m over the wire's top, its nearest piece of 0.5 m counts as reaching 5.25
        // m.
        Margin tightest = found.tightest();
        assertThat(tightest.id()).isEqualTo("W1");
        assertThat(tightest.cause()).isEqualTo(Cause.WIRE);
        assertThat(tightest.fit()).isEqualTo(Fit.REFUSED);
        assertThat(of(found, Part.ROTOR).marginM())
                .isCloseTo(Math.hypot(25 - 5.25 - 5, 2), within(0.01));
        HeadingRoom mastOnly =
                room(ground((e, n) -> 100), BARE, List.of(mast)).at(0, Rig.empty(20));
        assertThat(of(mastOnly, Part.ROTOR).marginM()).isCloseTo(15, within(ROUNDING));
        assertThat(of(mastOnly, Part.ROTOR).id()).isEqualTo("M1");
    }

    @Test
    void rotors_above_the_hook_are_credited_in_space_but_not_in_the_reach() {
        Craft high = new Craft(5, 7.5, new Machine.Body(5, 1, 1, 3));
        Surroundings around =
                Surroundings.of(ground((e, n) -> 100), BARE, Room.view(high, NEEDS), List.of());
        HeadingRoom found = Room.of(around, high, NEEDS).at(0, Rig.empty(20));

        assertThat(of(found, Part.ROTOR).marginM()).isCloseTo(23, within(ROUNDING));
        assertThat(of(found, Part.FUSELAGE).marginM()).isCloseTo(20, within(ROUNDING));
        assertThat(of(found, Part.TAIL).marginM()).isCloseTo(20, within(ROUNDING));
    }

    @Test
    void unknown_ground_near_by_is_refused_and_far_off_is_not() {
        GridHeightField flat = GridHeightField.of(SHAPE, (e, n) -> 100);
        Ground near = new Ground(FRAME, flat.withUnknown(90 + 6, 90), Optional.empty(), 0);
        Ground far = new Ground(FRAME, flat.withUnknown(90 + 40, 90), Optional.empty(), 0);

        assertThat(room(near, BARE, List.of()).at(0, Rig.empty(20)).fit()).isEqualTo(Fit.REFUSED);
        assertThat(room(far, BARE, List.of()).at(0, Rig.empty(20)).fit()).isEqualTo(Fit.FREE);
    }

    @Test
    void a_place_off_the_terrain_has_no_room() {
        Ground ground =
                new Ground(
                        FRAME,
                        GridHeightField.of(new GridShape(500, 500, 1, 10, 10), (e, n) -> 100),
                        Optional.empty(),
                        0);
        Room room = room(ground, BARE, List.of());

        assertThat(room.at(0, Rig.empty(20)).fit()).isEqualTo(Fit.REFUSED);
        assertThat(room.lineNeedM(0)).isInfinite();
        assertThat(room.straightIn(0, Rig.empty(20)).leastRad()).isEqualTo(Math.PI / 2);
    }

    @Test
    void the_least_steepness_is_that_of_the_edge_it_must_clear() {
        // A step of 60 m from 40 m ahead on the way out north. The line's end starts on the ground
        // and
        // must keep 2 m to the step's corner, from which the first cell is PAD nearer.
        Room room = room((e, n) -> n >= 40 ? 160 : 100);
        Straight out = room.straightOut(0, Rig.empty(20));
        double least = 0;
        for (double t = 0.01; t < 60; t += 0.01) {
            double levelM = Math.max(0, 40 - PAD - t);
            if (levelM < 2) {
                least = Math.max(least, (60 + Math.sqrt(4 - levelM * levelM)) / t);
            }
        }

        // Steps of half a metre err steep by at most a metre in the forty.
        assertThat(out.leastRad()).isBetween(Math.atan(least), Math.atan(least) + 0.02);
        assertThat(out.part()).contains(Part.LINE);
        assertThat(out.cause()).contains(Cause.GROUND);
        assertThat(room.straightIn(0, Rig.empty(20)).leastRad()).isEqualTo(0);
    }

    @Test
    void a_rule_of_a_flatter_way_refuses_what_straight_down_allows() {
        Needs flat =
                new Needs(
                        5,
                        30,
                        0,
                        new Rules.Margins(2, 2, Math.toRadians(30), WireBufferRule.CRANE));
        // The way in northwards comes from the south, over a step 60 m higher from 30 m on.
        Ground ground = ground((e, n) -> n <= -30 ? 160 : 100);
        Room steep = room(ground, BARE, List.of());
        Room low =
                Room.of(
                        Surroundings.of(ground, BARE, Room.view(CRAFT, flat), List.of()),
                        CRAFT,
                        flat);

        assertThat(steep.at(0, Rig.empty(20)).fit()).isEqualTo(Fit.FREE);
        assertThat(low.at(0, Rig.empty(20)).fit()).isEqualTo(Fit.REFUSED);
        assertThat(low.at(Math.PI, Rig.empty(20)).fit()).isEqualTo(Fit.FREE);
        assertThat(low.wayOut(Math.PI, Rig.empty(20))).isEqualTo(Fit.REFUSED);
        assertThat(low.wayOut(0, Rig.empty(20))).isEqualTo(Fit.FREE);
    }

    @Test
    void impossible_values_are_refused() {
        assertThatThrownBy(() -> Rig.empty(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("lineLengthM");
        assertThatThrownBy(() -> new Rig(20, 12, 0.2, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Craft(Double.NaN, 7, CRAFT.body()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("rotorRadiusM");
        assertThatThrownBy(() -> new Needs(Double.NaN, 30, 0, MARGINS))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(
                        () ->
                                new Wall(
                                        "W",
                                        Cause.GROUND,
                                        new PlanePoint(0, 0),
                                        new PlanePoint(0, 0),
                                        1,
                                        1,
                                        0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("cause");
    }

    @Test
    void a_wire_that_needs_more_is_higher_by_it_as_well_as_wider() {
        // 14.5 m east, 13.7 m needed: 8.7 m wider than the usual 5 m. The rim is 9.5 m off, so 0.8
        // m are
        // left. A top 5 m under the rotors is far within 13.7 m in space; one 15 m under them is
        // 6.3 m
        // under once raised.
        assertThat(of(besideWire(115), Part.ROTOR).fit()).isEqualTo(Fit.REFUSED);
        assertThat(of(besideWire(105), Part.ROTOR).marginM()).isBetween(6.3, 6.4);
    }

    private static HeadingRoom besideWire(double topAmslM) {
        Curtain span =
                new Curtain(new PlanePoint(14.5, -80), new PlanePoint(14.5, 80), topAmslM, 0);
        List<Wall> walls = Walls.wire("W", Tube.of(List.of(List.of(span)), false), 8.7);
        Needs needs = new Needs(5, 5, 0, MARGINS);
        Surroundings around =
                Surroundings.of(ground((e, n) -> 100), BARE, Room.view(CRAFT, needs), walls);
        return Room.of(around, CRAFT, needs).at(0, Rig.empty(20));
    }
}
