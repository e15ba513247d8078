package underhook.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.core.air.Atmosphere;
import underhook.core.air.Wind;
import underhook.core.air.WindTriangle;
import underhook.core.aircraft.CentreOfGravity;
import underhook.core.aircraft.MomentumHover;
import underhook.core.crew.Daylight;
import underhook.core.fall.Fall;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Sun;
import underhook.core.job.Balance;
import underhook.core.line.Bridle;
import underhook.core.line.LegTension;
import underhook.core.line.Pendulum;
import underhook.core.line.RiggingChain;
import underhook.core.load.Trail;
import underhook.core.pole.GuyedPole;
import underhook.core.pole.Guys;
import underhook.core.unit.Units;
import underhook.core.wire.Catenary;

/** Examples by hand and the edges of each model. */
class ModelsTest {
    private static final GeoPoint VALLEY = new GeoPoint(46.8, -12);
    private static final Balance BALANCE =
            new Balance(
                    3.5,
                    1.6,
                    3.4,
                    2.6,
                    3.4,
                    List.of(
                            new Balance.Limit(1000, 3.2, 3.6),
                            new Balance.Limit(1500, 3.1, 3.5),
                            new Balance.Limit(2000, 3.3, 3.4)));

    static List<ThrowingCallable> mistakes() {
        double nan = Double.NaN;
        Fall.Body body = new Fall.Body(100, 1, 1.2);
        return List.of(
                () -> Atmosphere.isa(11000.1),
                () -> Atmosphere.isa(nan),
                () -> Atmosphere.pressureAltitudeM(0),
                () -> Atmosphere.pressureAltitudeM(22000),
                () -> Atmosphere.pressureAltitudeM(84999, 0),
                () -> Atmosphere.pressureAltitudeM(101325, nan),
                () -> Atmosphere.humid(100000, 293, 293.1),
                () -> Atmosphere.humid(nan, 293, 290),
                () -> Atmosphere.vapourPressurePa(nan),
                () -> Atmosphere.densityAltitudeM(0.3),
                () -> Atmosphere.dry(-1, 288),
                () -> Atmosphere.soundMPerS(0),
                () -> Atmosphere.geopotentialM(20000),
                () -> Atmosphere.trueAirspeedMPerS(171, Atmosphere.isa(0)),
                () -> new Wind(nan, 1),
                () -> new Wind(0, -1),
                () -> WindTriangle.of(0, 0, new Wind(0, 1)),
                () -> WindTriangle.of(nan, 20, new Wind(0, 1)),
                () -> MomentumHover.of(0, 5, 1.2),
                () -> MomentumHover.of(2000, 5, nan),
                () -> LegTension.of(100, 2, 0, false),
                () -> LegTension.of(100, 0, 1, false),
                () -> LegTension.of(100, 2, 1.6, false),
                () -> Bridle.of(100, 0, 0, 1),
                () -> Bridle.of(100, 1, 1, nan),
                () -> Pendulum.periodS(0, 0),
                () -> Pendulum.periodS(10, 1.6),
                () -> RiggingChain.of(100, List.of()),
                () -> RiggingChain.Item.ofUntagged("line", nan, 1, true),
                () -> Trail.of(0, 1, 1, 1),
                () -> Trail.speedAtLimitMPerS(100, 1, Math.PI / 2, 1.2),
                () -> Trail.massForSpeedKg(1, nan, 0.2, 1.2),
                () -> Trail.boxDragAreaM2(1, 1, 0, 1),
                () -> Fall.vacuum(0, 1),
                () -> Fall.inAir(body, 10, 10, 61),
                () -> Fall.inAir(body, nan, 10, 0),
                () -> new Fall.Body(100, -1, 1.2),
                () -> Catenary.of(100, 0, 0, 1000),
                () -> Catenary.of(100, nan, 1, 1000),
                () -> Catenary.of(1000, 0, 10, 200),
                () -> new Guys(List.of()),
                () -> new Guys(List.of(nan)),
                () -> new GuyedPole(380, 6, 9, Math.PI / 2),
                () -> new GuyedPole(380, 6, 9, 0.8).tensionN(0.8),
                () -> CentreOfGravity.of(BALANCE, -1),
                () -> Sun.position(VALLEY, Instant.parse("1949-12-31T23:59:59Z")),
                () -> new GeoPoint(90.1, 0));
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void refuses_what_lies_outside_its_range(ThrowingCallable mistake) {
        assertThatThrownBy(mistake).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_wind_as_fast_as_the_machine_holds_it_off_its_track() {
        var across = WindTriangle.of(0, 20, new Wind(Math.PI / 2, 20));
        var ahead = WindTriangle.of(0, 20, new Wind(0, 20));

        assertThat(across.findings().get(0).code()).isEqualTo(FindingCode.TRACK_NOT_HELD);
        assertThat(ahead.findings().get(0).code()).isEqualTo(FindingCode.TRACK_NOT_HELD);
        assertThat(WindTriangle.of(0, 20, new Wind(0, 19.9)).isDone()).isTrue();
    }

    @Test
    void light_draggy_loads_need_the_ballast_worked_by_hand() {
        // CdA 1.0 m², 40 kt = 20.578 m/s, 15°, 1.225: drag 259.4 N over 9.80665 tan 15° = 98.7 kg,
        // so a load of 46 kg needs 52.7 kg of ballast; with 61 kg the limit is at 31.4 kt.
        double mass = Trail.massForSpeedKg(1.0, Units.ktToMPerS(40), Math.toRadians(15), 1.225);
        double speed = Trail.speedAtLimitMPerS(61, 1.0, Math.toRadians(15), 1.225);

        assertThat(mass - 46).as("to a tenth").isCloseTo(52.7, within(0.05));
        assertThat(Units.mPerSToKt(speed)).as("to a tenth").isCloseTo(31.4, within(0.05));
        assertThat(Trail.boxDragAreaM2(2.4, 1.2, 0.05, 1.2)).isCloseTo(3.456, within(1e-12));
    }

    @Test
    void a_steep_wire_may_have_its_lowest_point_outside() {
        // a = 1000 m, span 100 m, rise 60 m: asinh(60/(2000 sinh 0.05)) = asinh(0.59975) = 0.56861,
        // so the lowest point lies at 50 - 568.6 = -518.6 m.
        Catenary wire = Catenary.of(100, 60, 10, 10000);

        assertThat(wire.lowestAtM()).isCloseTo(-518.6, within(0.1));
        assertThat(wire.highestTensionN()).isGreaterThan(10000);
        assertThat(wire.heightAboveFirstM(100)).isCloseTo(60, within(1e-9));
    }

    @Test
    void a_gap_of_185_degrees_is_refused_and_mended_by_moving_one_guy() {
        Guys staked =
                new Guys(List.of(Math.toRadians(20), Math.toRadians(150), Math.toRadians(195)));

        assertThat(staked.holds()).isFalse();
        assertThat(staked.findWorstFactor()).isEmpty();
        var finding = staked.findings("S08").get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.GUY_GAP);
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(finding.value()).isEqualTo("185.0");
        // 195 moves into the middle of 150 to 020, which is 265.
        assertThat(finding.message()).contains("020°, 150°, 265°");
    }

    @Test
    void gaps_are_judged_at_125_150_and_180_degrees() {
        assertThat(findingsOf(0, 125, 245)).isEmpty();
        assertThat(findingsOf(0, 126, 245).get(0)).isEqualTo(Severity.NOTE);
        assertThat(findingsOf(0, 151, 245).get(0)).isEqualTo(Severity.CAUTION);
        assertThat(findingsOf(0, 180, 270).get(0)).isEqualTo(Severity.STOP);
    }

    private static List<Severity> findingsOf(double... azimuthsDeg) {
        List<Double> azimuths = Arrays.stream(azimuthsDeg).mapToObj(Math::toRadians).toList();
        return new Guys(azimuths).findings("S01").stream().map(f -> f.severity()).toList();
    }

    @Test
    void the_centre_of_gravity_is_moments_over_masses() {
        // 1110 * 3.5 + 95 * 1.6 + 100 * 3.4 = 4377 kg m over 1305 kg = 3.35402 m; the limits at
        // 1305 kg are 3.139 and 3.539 m.
        var centre = CentreOfGravity.of(BALANCE, 0.02);
        var point = centre.at(new CentreOfGravity.Burden(1110, 95, 0, 0), 100).getValue();

        assertThat(point.armM()).isCloseTo(3.35402, within(1e-5));
        assertThat(point.marginM()).isCloseTo(3.539 - 3.35402, within(1e-5));
        assertThat(point.standing()).isEqualTo(CentreOfGravity.Standing.INSIDE);
    }

    @Test
    void a_mass_beyond_the_envelopes_rows_is_refused() {
        var centre = CentreOfGravity.of(BALANCE, 0.02);
        var heavy = new CentreOfGravity.Burden(1110, 95, 0, 750);

        assertThat(centre.worst(heavy, 100, 0).findings().get(0).code())
                .isEqualTo(FindingCode.CHART_RANGE);
        assertThat(centre.worst(heavy, 45, 0).isDone()).isTrue();
    }

    @Test
    void a_centre_of_gravity_outside_says_stop() {
        // Cabin of 400 kg at 2.6 m: (3885 + 152 + 1040) / 1605 = 3.163 m, before 3.1 + 0.2*105/500.
        var centre = CentreOfGravity.of(BALANCE, 0.03);
        var near = centre.worst(new CentreOfGravity.Burden(1110, 95, 400, 0), 0, 0);
        var outside = centre.worst(new CentreOfGravity.Burden(1110, 95, 450, 0), 0, 0);

        assertThat(near.findings().get(0).severity()).isEqualTo(Severity.CAUTION);
        assertThat(outside.findings().get(0).code()).isEqualTo(FindingCode.CENTRE_OF_GRAVITY);
        assertThat(outside.findings().get(0).severity()).isEqualTo(Severity.STOP);
    }

    @Test
    void daylight_knows_polar_day_and_night() {
        GeoPoint cape = new GeoPoint(71, 26);
        Instant summer = Instant.parse("2026-06-21T04:00:00Z");
        Daylight day = Daylight.find(cape, summer).orElseThrow();

        assertThat(day.from()).isEqualTo(summer.minus(Duration.ofDays(1)));
        assertThat(day.until()).isEqualTo(summer.plus(Duration.ofDays(1)));
        assertThat(Daylight.find(cape, Instant.parse("2026-12-21T04:00:00Z"))).isEmpty();
    }

    @Test
    void daylight_is_that_in_which_the_work_begins_though_the_date_of_its_zone_has_two() {
        // 46 N, 177 E, 8 September 2026: noon at 12 - 177/15 - 0.038 = 0.162 h UTC, half a day of
        // 6.47 h (declination 5.6 to 5.9°, as in the next test); so up from 17:41 to 06:38 UTC.
        GeoPoint east = new GeoPoint(46, 177);
        Duration minutes = Duration.ofMinutes(3);
        Daylight morning = Daylight.find(east, Instant.parse("2026-09-08T01:00:00Z")).orElseThrow();
        Daylight evening = Daylight.find(east, Instant.parse("2026-09-08T18:00:00Z")).orElseThrow();
        Daylight waited = Daylight.find(east, Instant.parse("2026-09-08T12:00:00Z")).orElseThrow();

        assertThat(Duration.between(Instant.parse("2026-09-07T17:41:00Z"), morning.from()).abs())
                .isLessThan(minutes);
        assertThat(Duration.between(Instant.parse("2026-09-08T06:38:00Z"), morning.until()).abs())
                .isLessThan(minutes);
        assertThat(Duration.between(Instant.parse("2026-09-08T17:42:00Z"), evening.from()).abs())
                .isLessThan(minutes);
        assertThat(evening.until()).isAfter(Instant.parse("2026-09-09T06:00:00Z"));
        assertThat(waited).isEqualTo(evening);
    }

    @Test
    void daylight_of_an_autumn_day_is_as_worked_by_hand() {
        // 46.80 N, 12.00 W, 8 September 2026: declination 5.6°, equation of time 2.3 min.
        // cos H = (sin(-0.833°) - sin 46.8° sin 5.6°) / (cos 46.8° cos 5.6°) = -0.126, H = 6.482 h;
        // noon at 12 + 12/15 - 0.038 = 12.762 h UTC; so 06:16.8 and 19:14.6 UTC.
        Daylight day = Daylight.find(VALLEY, Instant.parse("2026-09-08T06:45:00Z")).orElseThrow();

        assertThat(Duration.between(Instant.parse("2026-09-08T06:16:48Z"), day.from()).abs())
                .isLessThan(Duration.ofMinutes(2));
        assertThat(Duration.between(Instant.parse("2026-09-08T19:14:36Z"), day.until()).abs())
                .isLessThan(Duration.ofMinutes(2));
    }
}
