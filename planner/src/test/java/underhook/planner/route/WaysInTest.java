package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Machine;
import underhook.core.unit.Units;

/** The choice as a whole on small fields. Expected bearings DERIVED by hand from the prices. */
class WaysInTest {
    private static final WaysIn WAYS =
            new WaysIn(
                    new Judges.Limits(Units.ktToMPerS(5), Units.ktToMPerS(20)),
                    Machine.PilotSide.RIGHT);
    private static final PlaceWind WIND = new PlaceWind(Math.toRadians(240), Units.ktToMPerS(10));
    private static final Lies OPEN = new Lies(true, List.of(), List.of());

    private static WayIn find(List<SunSeen> suns, Lies.Below below) {
        return WAYS.rank(JudgesTest.hour(WIND, suns, RoomView.NOT_ASKED), below)
                .orElseThrow()
                .best();
    }

    private static double degrees(double rad) {
        return Math.toDegrees(rad);
    }

    @Test
    void goes_straight_in_and_out_into_the_wind() {
        WayIn way = find(List.of(), bearing -> OPEN);

        assertThat(degrees(way.approachFromGridRad())).isCloseTo(60, within(1e-9));
        assertThat(degrees(way.departureTrackGridRad())).isCloseTo(240, within(1e-9));
        assertThat(Units.mPerSToKt(way.headMPerS())).isCloseTo(10, within(1e-9));
        assertThat(Units.mPerSToKt(way.outTailMPerS())).isCloseTo(-10, within(1e-9));
        assertThat(way.reasons())
                .containsExactly(
                        "straight into the wind",
                        "second best: track 230°, 10° off the wind",
                        "tracks 010° to 110°: tailwind over 5 kt in 10 kt of wind",
                        "next to tracks 010° to 110°: 000°, 120° off the wind (tailwind 5 kt), worse"
                                + " like 170° off the wind; 120°, 120° off the wind (tailwind 5 kt),"
                                + " worse like 170° off the wind");
        assertThat(way.outReasons())
                .containsExactly(
                        "track 240°, straight into the wind",
                        "second best: track 230°, 10° off the wind",
                        "tracks 010° to 110°: tailwind over 5 kt in 10 kt of wind",
                        "next to tracks 010° to 110°: 000°, 120° off the wind (tailwind 5 kt), worse"
                                + " like 170° off the wind; 120°, 120° off the wind (tailwind 5 kt),"
                                + " worse like 170° off the wind");
    }

    /** 10 kt from 240° or 6 kt from 290° may hold: coming in on 240°, 6 cos 50° = 3.86 kt ahead, 6 sin 50° = 4.60 kt beside. */
    @Test
    void states_the_least_head_and_the_most_cross_of_the_winds_that_may_hold() {
        PlaceWind other = new PlaceWind(Math.toRadians(290), Units.ktToMPerS(6));
        PlaceHour one = JudgesTest.hour(WIND, List.of(), RoomView.NOT_ASKED);
        PlaceHour both =
                new PlaceHour(
                        one.place(),
                        List.of(WIND, other),
                        List.of(),
                        List.of("bag"),
                        0,
                        List.of(),
                        one.room());

        WayIn way = WAYS.rank(both, bearing -> OPEN).orElseThrow().best();

        assertThat(degrees(way.approachFromGridRad())).isCloseTo(60, within(1e-9));
        assertThat(Units.mPerSToKt(way.headMPerS())).isCloseTo(3.86, within(0.005));
        assertThat(Units.mPerSToKt(way.crossMPerS())).isCloseTo(4.60, within(0.005));
    }

    @Test
    void turns_from_the_sun_as_far_as_it_must() {
        // 20° beside a sun 25° up: cos 25° cos 20° = 0.852, 31.6°. At 10° it is 26.8°.
        WayIn way = find(List.of(JudgesTest.sun(240, 25, 0)), bearing -> OPEN);

        assertThat(degrees(way.approachFromGridRad())).isCloseTo(40, within(1e-9));
        assertThat(way.reasons().get(0))
                .isEqualTo(
                        "20° off the wind; straight into it: the sun stands 25° up, over the nose");
        assertThat(way.refusedInto()).isEmpty();
    }

    @Test
    void goes_round_a_wire_and_names_it() {
        // A wire in the way from 030° to 090°: tracks 210° to 270°.
        Lies.Below below =
                bearing ->
                        Math.cos(bearing - Math.toRadians(60)) > Math.cos(Math.toRadians(31))
                                ? new Lies(false, List.of("LL1"), List.of())
                                : OPEN;

        WayIn way = find(List.of(), below);

        assertThat(degrees(way.approachFromGridRad())).isCloseTo(20, within(1e-9));
        assertThat(way.refusedInto()).containsExactly("LL1");
        assertThat(way.reasons())
                .contains("40° off the wind; straight into it: passes LL1")
                .contains("tracks 210° to 270°: passes LL1")
                .contains(
                        "next to tracks 210° to 270°: 200° is taken; 280°, 40° off the wind, no worse");
        // Out the way into the wind is not touched.
        assertThat(degrees(way.departureTrackGridRad())).isCloseTo(240, within(1e-9));
    }

    @Test
    void tells_what_lies_below_from_where_what_is_let_go_could_come_down() {
        Lies.Below below =
                bearing ->
                        Math.cos(bearing - Math.toRadians(60)) > 0.999
                                ? Lies.hitting(List.of("H1"))
                                : OPEN;

        WayIn way = find(List.of(), below);

        assertThat(way.reasons())
                .contains(
                        "10° off the wind; straight into it: let go there it could come down on H1",
                        "tracks 240°: let go there it could come down on H1",
                        "next to tracks 240°: 230° is taken; 250°, 10° off the wind, no worse");
    }

    @Test
    void says_how_much_better_the_place_alone_would_have_another() {
        RankedWays ways =
                WAYS.rank(
                                JudgesTest.hour(WIND, List.of(), RoomView.NOT_ASKED),
                                bearing ->
                                        Math.cos(bearing - Math.toRadians(90)) > 0.999
                                                ? new Lies(false, List.of("C1"), List.of())
                                                : OPEN)
                        .orElseThrow();

        // Of 260° and 280° beside the refused 270° the second is 20° further off the wind.
        WayIn way = ways.in(ways.findIn(Math.toRadians(100)), "the leg would pass over RV9");

        assertThat(way.reasons())
                .contains(
                        "40° off the wind; on track 240° the leg would pass over RV9",
                        "else: track 240°, straight into the wind",
                        "next to tracks 270°: 260°, 20° off the wind, better like 20° off the wind;"
                                + " 280° is taken");
    }

    @Test
    void leaves_with_a_tailwind_when_nothing_else_is_open() {
        // Open from 000° to 120° only: at its ends cos 120° of 10 kt is the limit of 5.
        Lies.Below below =
                bearing -> {
                    double off = Math.abs(Units.wrapPiRad(bearing - Math.toRadians(60)));
                    return off < Math.toRadians(61) ? OPEN : new Lies(false, List.of(), List.of());
                };

        WayIn way = find(List.of(), below);

        // In from 060°, straight into the wind; of two ways out alike the left one.
        assertThat(degrees(way.departureTrackGridRad())).isCloseTo(120, within(1e-9));
        assertThat(Units.mPerSToKt(way.outTailMPerS())).isCloseTo(5, within(1e-9));
        assertThat(degrees(way.approachFromGridRad())).isCloseTo(60, within(1e-9));
    }

    @Test
    void has_none_when_every_way_out_is_refused() {
        Lies.Below onlyBehind =
                bearing ->
                        Math.cos(bearing - Math.toRadians(60)) > 0.999
                                ? OPEN
                                : new Lies(false, List.of("Z3"), List.of());
        PlaceHour at = JudgesTest.hour(WIND, List.of(), RoomView.NOT_ASKED);

        assertThat(WAYS.rank(at, onlyBehind)).isEmpty();
    }

    @Test
    void speaks_of_true_bearings() {
        PlaceHour at =
                new PlaceHour(
                        new PlanePoint(0, 0),
                        List.of(WIND),
                        List.of(),
                        List.of(),
                        Math.toRadians(-3),
                        List.of(),
                        RoomView.NOT_ASKED);

        assertThat(WAYS.rank(at, bearing -> OPEN).orElseThrow().best().reasons().get(1))
                .startsWith("second best: track 227°");
    }
}
