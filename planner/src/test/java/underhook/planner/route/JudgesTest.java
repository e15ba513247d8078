package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.SunPosition;
import underhook.core.site.Cause;
import underhook.core.site.Fit;
import underhook.core.site.Margin;
import underhook.core.site.Part;
import underhook.core.unit.Units;
import underhook.planner.route.Directions.Judge;
import underhook.planner.route.Directions.Said;

/** Each judge alone. Expected figures DERIVED by hand in the tests; prices are the project's own. */
class JudgesTest {
    private static final Judges.Limits LIMITS =
            new Judges.Limits(Units.ktToMPerS(5), Units.ktToMPerS(20));

    private static PlaceWind wind(double fromDeg, double kt) {
        return new PlaceWind(Math.toRadians(fromDeg), Units.ktToMPerS(kt));
    }

    private static Said say(Judge judge, double trackDeg) {
        return judge.judge(Math.toRadians(trackDeg));
    }

    @Test
    void tailwind_has_a_price_up_to_its_limit_and_is_refused_above() {
        Judge judge = Judges.wind(List.of(wind(0, 10)), LIMITS);

        assertThat(say(judge, 0)).isEqualTo(Said.NOTHING);
        // cos 110° = -0.342: 3.4 kt from behind, said as 4.
        assertThat(say(judge, 110).refusal()).isEmpty();
        assertThat(say(judge, 110).priceRatio()).isCloseTo(3.42, within(0.005));
        assertThat(say(judge, 110).words()).isEqualTo("tailwind 4 kt");
        // cos 120° = -0.5: the limit itself is allowed; 121° is not.
        assertThat(say(judge, 120).refusal()).isEmpty();
        assertThat(say(judge, 121).refusal()).contains("tailwind over 5 kt in 10 kt of wind");
    }

    @Test
    void crosswind_is_refused_above_its_limit_on_the_way_in_alone() {
        // sin 53° = 0.7986, sin 54° = 0.809: 19.97 and 20.2 kt of 25.
        Judge judge = Judges.wind(List.of(wind(0, 25)), LIMITS);

        assertThat(say(judge, 53).refusal()).isEmpty();
        assertThat(say(judge, 307).refusal()).isEmpty();
        assertThat(say(judge, 54).refusal()).contains("crosswind over 20 kt in 25 kt of wind");
        assertThat(say(Judges.tailwind(List.of(wind(0, 25)), LIMITS), 54)).isEqualTo(Said.NOTHING);
    }

    @Test
    void limits_hold_in_every_wind_that_may_blow() {
        // Westward is crosswind for the first and 6 kt from behind for the second.
        Judge judge = Judges.wind(List.of(wind(0, 10), wind(90, 6)), LIMITS);

        assertThat(say(judge, 270).refusal()).contains("tailwind over 5 kt in 6 kt of wind");
        assertThat(say(judge, 0).refusal()).isEmpty();
    }

    @Test
    void what_lies_below_is_looked_at_where_it_is_flown() {
        // Closed north of the place: a way in southward comes over it, a way out northward goes
        // there.
        Lies.Below below =
                bearing ->
                        Math.cos(bearing) > 0.9
                                ? new Lies(false, List.of("LL1", "Z3"), List.of())
                                : Math.cos(bearing) < -0.9
                                        ? new Lies(true, List.of(), List.of("RV9", "H1"))
                                        : new Lies(true, List.of(), List.of());

        assertThat(say(Judges.underWayIn(below), 180).refusal()).contains("passes LL1, Z3");
        assertThat(say(Judges.underWayOut(below), 0).refusal()).contains("passes LL1, Z3");
        assertThat(say(Judges.underWayIn(below), 90)).isEqualTo(Said.NOTHING);
        Said guarded = say(Judges.underWayIn(below), 0);
        assertThat(guarded.words()).isEqualTo("passes over RV9, H1 (guards)");
        assertThat(guarded.priceRatio()).isCloseTo(6, within(1e-12));
    }

    /** To the north there is little room, to the south none. */
    private static RoomView room() {
        return new RoomView() {
            @Override
            public Optional<Margin> in(double headingGridRad) {
                double cos = Math.cos(headingGridRad);
                double marginM = cos > 0.9 ? 5.5 : cos < -0.9 ? 4 : 9;
                return Optional.of(
                        new Margin(Part.TAIL, Cause.WIRE, "LV1", headingGridRad, marginM, 5, 2));
            }

            @Override
            public Fit out(double trackGridRad) {
                return in(trackGridRad).orElseThrow().fit();
            }
        };
    }

    @Test
    void room_refuses_and_prices_by_what_decides() {
        Judge judge = Judges.room(room());

        assertThat(say(judge, 180).refusal()).contains("no room, tail to LV1");
        assertThat(say(judge, 0).words()).isEqualTo("little room, tail to LV1");
        assertThat(say(judge, 0).priceRatio()).isPositive();
        assertThat(say(judge, 90)).isEqualTo(Said.NOTHING);
        assertThat(say(Judges.roomOut(room()), 180).refusal()).contains("no room");
        assertThat(say(Judges.roomOut(room()), 90)).isEqualTo(Said.NOTHING);
        assertThat(say(Judges.room(RoomView.NOT_ASKED), 180)).isEqualTo(Said.NOTHING);
    }

    static SunSeen sun(double azimuthDeg, double upDeg, double horizonDeg) {
        double up = Math.toRadians(upDeg);
        return new SunSeen(
                new SunPosition(Math.toRadians(azimuthDeg), up, up), Math.toRadians(horizonDeg));
    }

    static PlaceHour hour(PlaceWind wind, List<SunSeen> suns, RoomView room) {
        return new PlaceHour(
                new PlanePoint(0, 0), List.of(wind), List.of(), List.of("bag"), 0, suns, room);
    }

    @Test
    void the_sun_ahead_has_a_price_and_is_told_from_the_nose() {
        PlaceHour at = hour(wind(0, 5), List.of(sun(235, 24, 0)), RoomView.NOT_ASKED);
        Judge judge = Judges.sun(at, true);

        assertThat(say(judge, 240).words()).isEqualTo("the sun stands 24° up, 5° left of the nose");
        assertThat(say(judge, 230).words())
                .isEqualTo("the sun stands 24° up, 5° right of the nose");
        // cos 24° cos 20° = 0.858: 30.9° off, out of the eyes.
        assertThat(say(judge, 255).priceRatio()).isZero();
        // Leaning out to the right on 145° the pilot looks towards 235°.
        assertThat(say(judge, 145).priceRatio())
                .isPositive()
                .isLessThan(say(judge, 240).priceRatio());
        assertThat(say(Judges.sun(at, false), 145).priceRatio()).isZero();
        assertThat(say(Judges.sun(at, false), 325).priceRatio()).isPositive();
    }

    @Test
    void the_worst_moment_of_the_hour_counts_and_terrain_hides_the_sun() {
        List<SunSeen> hiddenThenSeen = List.of(sun(235, 24, 30), sun(240, 20, 10));
        Judge judge = Judges.sun(hour(wind(0, 5), hiddenThenSeen, RoomView.NOT_ASKED), true);
        Judge hidden =
                Judges.sun(hour(wind(0, 5), List.of(sun(235, 24, 30)), RoomView.NOT_ASKED), true);

        assertThat(say(judge, 240).words()).isEqualTo("the sun stands 20° up, over the nose");
        assertThat(say(hidden, 240).priceRatio()).isZero();
    }

    @Test
    void without_a_way_out_ahead_there_is_a_price() {
        DoublePredicate southOnly = track -> Math.cos(track) < -0.99;

        // Flown eastward, south is square to the right; flown northward it lies behind.
        assertThat(say(Judges.escape(southOnly), 90)).isEqualTo(Said.NOTHING);
        assertThat(say(Judges.escape(southOnly), 0).words())
                .isEqualTo("no way out ahead if it goes wrong");
    }
}
