package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.planner.order.PlaceRooms;

/** The planner's table of room over the day whose figures the verifier's tests work out by hand. */
class PlaceRoomsTest {
    private static PlaceRoom atS2(SmallDay day) {
        List<PlaceRoom> rooms = PlaceRooms.of(day.job(), day.ground(), List.of(pid("S2")));
        assertThat(rooms).hasSize(1);
        return rooms.get(0);
    }

    private static SmallDay over(HeightField terrain) {
        return with(
                SmallDay.good(),
                "ground",
                new Ground(SmallDay.FRAME, terrain, Optional.empty(), 0));
    }

    /** The row of a line for loads that hang. */
    private static LineRoom row(PlaceRoom room, String line) {
        return room.lines().stream()
                .filter(one -> one.line().equals(line) && one.standsM() <= 0)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void over_level_trees_the_shortest_line_that_clears_them_is_advised() {
        // Trees of 12 m and 5 m of margin: 20 m leave 3 m, all round.
        PlaceRoom room = atS2(SmallDay.good());

        assertThat(room.advisedLine()).contains("20 m");
        assertThat(row(room, "20 m").sectors())
                .containsExactly(new PlaceRoom.Sector(Fit.FREE, 0, 2 * Math.PI));
        assertThat(row(room, "20 m").tightest().marginM()).isCloseTo(8, within(1e-6));
    }

    @Test
    void a_line_that_is_too_short_all_round_gives_way_to_the_next() {
        PlaceRoom room = atS2(SmallDay.good().place("S2", "canopyM", OptionalDouble.of(16)));

        assertThat(row(room, "20 m").fitAt(1)).isEqualTo(Fit.REFUSED);
        assertThat(room.advisedLine()).contains("30 m");
    }

    @Test
    void where_no_line_has_room_none_is_advised() {
        PlaceRoom room = atS2(SmallDay.good().place("S2", "canopyM", OptionalDouble.of(40)));

        assertThat(room.advisedLine()).isEmpty();
    }

    @Test
    void a_place_inside_a_wide_hall_has_no_room() {
        // No edge is within 100 m of the place.
        List<MapFeature> features = new ArrayList<>(SmallDay.good().job().features());
        features.add(
                new MapFeature(
                        "F1",
                        MapFeature.Kind.FOREST,
                        MapFeature.Shape.AREA,
                        List.of(
                                SmallDay.geo(900, -100),
                                SmallDay.geo(1100, -100),
                                SmallDay.geo(1100, 100),
                                SmallDay.geo(900, 100)),
                        0,
                        CrossingRule.ALLOWED,
                        OptionalDouble.of(4),
                        false,
                        "map"));

        PlaceRoom room = atS2(SmallDay.good().inJob("features", features));

        assertThat(room.advisedLine()).isEmpty();
        assertThat(row(room, "20 m").tightest().cause()).isEqualTo("F1");
    }

    @Test
    void only_headings_that_put_the_tail_over_the_bank_are_refused() {
        // The bank lies north from 9.5 m on: southward headings have the tail's end over it. The
        // rotor
        // keeps √(4.29² + 3²) = 5.23 m: its first cell's middle is 10 m off, less 5 m and 0.71 m.
        LineRoom row = row(atS2(over(SmallDay.bankAtS2(9.5))), "20 m");

        assertThat(row.fitAt(Math.PI)).isEqualTo(Fit.REFUSED);
        assertThat(row.fitAt(0)).isNotEqualTo(Fit.REFUSED);
        List<PlaceRoom.Sector> refused =
                row.sectors().stream().filter(one -> one.fit() == Fit.REFUSED).toList();
        assertThat(refused).hasSize(1);
        // Alike to both sides; convergence at S2 is a hundredth of a degree.
        assertThat(refused.get(0).fromTrueRad() + refused.get(0).toTrueRad())
                .isCloseTo(2 * Math.PI, within(0.001));
    }

    @Test
    void says_what_a_line_costs() {
        // Induced speed at 2000 kg under 5 m: p = 100129 Pa at 100 m, 10 °C, density 1.2319 kg/m³,
        // √(19613.3/(2·1.2319·78.54)) = 10.07 m/s; the wake twice that.
        LineRoom row = row(atS2(SmallDay.good()), "20 m");

        assertThat(row.cost().downwashMPerS()).isCloseTo(20.14, within(0.02));
        // Three periods 2π√(L/g) of 20 m and half the load: 26.9 s of 20 m alone, 0.2 % more at
        // 10°.
        assertThat(row.cost().settleS()).isBetween(26.9, 28.5);
        assertThat(row.cost().reachM()).isGreaterThan(20);
    }

    @Test
    void a_place_that_no_load_uses_has_no_table() {
        SmallDay day = SmallDay.good();
        assertThat(PlaceRooms.of(with(day.job(), "loads", List.of()), day.ground(), List.of()))
                .isEmpty();
    }
}
