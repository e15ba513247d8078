package underhook.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.air.Atmosphere;
import underhook.core.air.Wind;
import underhook.core.air.WindTriangle;
import underhook.core.aircraft.CentreOfGravity;
import underhook.core.aircraft.HoverChart;
import underhook.core.aircraft.MomentumHover;
import underhook.core.crew.Daylight;
import underhook.core.fall.Fall;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Sun;
import underhook.core.geo.SunEvent;
import underhook.core.job.Balance;
import underhook.core.job.HoverTable;
import underhook.core.line.Bridle;
import underhook.core.line.LegTension;
import underhook.core.line.Pendulum;
import underhook.core.load.Trail;
import underhook.core.pole.GuyedPole;
import underhook.core.pole.Guys;
import underhook.core.unit.Units;
import underhook.core.wire.Catenary;
import underhook.testkit.SeededSamples;

/** Laws that hold over whole ranges: round trips, order, balance, symmetry. */
class ModelsPropertyTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;

    @Test
    void pressure_altitude_and_density_altitude_undo_the_standard_air() {
        SeededSamples.of(1)
                .forEach(
                        2000,
                        sample -> {
                            double height = sample.between(-5000, 11000);
                            var air = Atmosphere.isa(height);
                            // A micrometre: rounding of two powers.
                            assertThat(Atmosphere.pressureAltitudeM(air.pressurePa()))
                                    .isCloseTo(height, within(1e-6));
                            assertThat(Atmosphere.densityAltitudeM(air.densityKgPerM3()))
                                    .isCloseTo(height, within(1e-6));
                            assertThat(Atmosphere.geopotentialM(Atmosphere.geometricM(height)))
                                    .isCloseTo(height, within(1e-6));
                        });
    }

    @Test
    void a_higher_qnh_never_raises_the_pressure_altitude() {
        SeededSamples.of(2)
                .forEach(
                        1000,
                        sample -> {
                            double elevation = sample.between(-400, 5000);
                            double qnh = sample.between(90000, 105000);
                            assertThat(Atmosphere.pressureAltitudeM(qnh + 100, elevation))
                                    .isLessThan(Atmosphere.pressureAltitudeM(qnh, elevation));
                        });
    }

    @Test
    void humid_air_is_lighter_and_near_the_weather_services_rule() {
        SeededSamples.of(3)
                .forEach(
                        1000,
                        sample -> {
                            double pressure = sample.between(70000, 104000);
                            double temperature = sample.between(273.15, 308.15);
                            double dewPoint = temperature - sample.between(0.01, 20);
                            double humid =
                                    Atmosphere.humid(pressure, temperature, dewPoint)
                                            .densityKgPerM3();
                            assertThat(humid)
                                    .isLessThan(
                                            Atmosphere.dry(pressure, temperature).densityKgPerM3());
                            // The service's printed rule differs from the exact form by less than
                            // 30 ft: its constants are rounded, and so is its zero of Rankine.
                            assertThat(
                                            Units.mToFt(Atmosphere.densityAltitudeM(humid))
                                                    - weatherServiceFt(
                                                            pressure, temperature, dewPoint))
                                    .isCloseTo(0, within(30.0));
                        });
    }

    /** DA = 145366 (1 − (17.326 p/Tr)^0.235), p in inHg, Tr in degrees Rankine. @source NWS-VAPOUR */
    private static double weatherServiceFt(double pressurePa, double temperatureK, double dewK) {
        double vapour = Atmosphere.vapourPressurePa(dewK);
        double virtualK = temperatureK / (1 - vapour / pressurePa * (1 - 0.622));
        double rankine = 9.0 / 5 * (virtualK - 273.15) + 32 + 459.69;
        double inHg = pressurePa / 3386.389;
        return 145366 * (1 - Math.pow(17.326 * inHg / rankine, 0.235));
    }

    @Test
    void wind_parts_keep_its_speed_and_turn_over_with_the_track() {
        SeededSamples.of(4)
                .forEach(
                        1000,
                        sample -> {
                            double track = sample.between(-7, 7);
                            Wind wind = new Wind(sample.between(-7, 7), sample.between(0, 40));
                            double head = wind.headMPerS(track);
                            double cross = wind.crossMPerS(track);
                            assertThat(Math.hypot(head, cross))
                                    .isCloseTo(wind.speedMPerS(), within(1e-9));
                            assertThat(wind.headMPerS(track + Math.PI))
                                    .isCloseTo(-head, within(1e-9));
                            assertThat(wind.crossMPerS(track + Math.PI))
                                    .isCloseTo(-cross, within(1e-9));
                        });
    }

    @Test
    void the_wind_triangle_closes_or_is_refused() {
        SeededSamples.of(5)
                .forEach(
                        1000,
                        sample -> {
                            double track = sample.between(0, 6.28);
                            double tas = sample.between(5, 40);
                            Wind wind = new Wind(sample.between(0, 6.28), sample.between(0, 45));
                            var outcome = WindTriangle.of(track, tas, wind);
                            double bare = WindTriangle.groundSpeedOrZeroMPerS(track, tas, wind);
                            if (!outcome.isDone()) {
                                assertThat(bare).isZero();
                                return;
                            }
                            WindTriangle triangle = outcome.getValue();
                            double heading = track + triangle.correctionRad();
                            double east =
                                    tas * Math.sin(heading)
                                            - wind.speedMPerS() * Math.sin(wind.fromTrueRad());
                            double north =
                                    tas * Math.cos(heading)
                                            - wind.speedMPerS() * Math.cos(wind.fromTrueRad());
                            assertThat(east).isCloseTo(bare * Math.sin(track), within(1e-9));
                            assertThat(north).isCloseTo(bare * Math.cos(track), within(1e-9));
                        });
    }

    @Test
    void the_hover_chart_never_gains_with_heat_or_height_and_never_passes_the_cap() {
        HoverTable table =
                new HoverTable(
                        List.of(0.0, 500.0, 1000.0),
                        List.of(273.0, 283.0, 293.0),
                        List.of(
                                List.of(2300.0, 2160.0, 2025.0),
                                List.of(2220.0, 2080.0, 1950.0),
                                List.of(2130.0, 1995.0, 1875.0)),
                        5,
                        "invented");
        HoverChart capped = HoverChart.of(table, 2050);
        HoverChart open = HoverChart.of(table, 9999);
        SeededSamples.of(6)
                .forEach(
                        3000,
                        sample -> {
                            double height = sample.between(0, 990);
                            double temperature = sample.between(273, 292);
                            double mass = capped.tableMassKg(height, temperature);
                            assertThat(mass)
                                    .isLessThanOrEqualTo(2050)
                                    .isLessThanOrEqualTo(open.tableMassKg(height, temperature))
                                    .isGreaterThanOrEqualTo(
                                            capped.tableMassKg(height + 10, temperature))
                                    .isGreaterThanOrEqualTo(
                                            capped.tableMassKg(height, temperature + 1));
                            assertThat(mass % 1).isZero();
                        });
    }

    @Test
    void thinner_air_needs_more_speed_and_power_by_the_root_of_the_density() {
        SeededSamples.of(7)
                .forEach(
                        500,
                        sample -> {
                            double mass = sample.between(500, 5000);
                            MomentumHover thick = MomentumHover.of(mass, 5.1, 1.225);
                            MomentumHover thin = MomentumHover.of(mass, 5.1, 1.225 / 4);
                            assertThat(thin.inducedMPerS() / thick.inducedMPerS())
                                    .isCloseTo(2, within(1e-12));
                            assertThat(thin.idealPowerW() / thick.idealPowerW())
                                    .isCloseTo(2, within(1e-12));
                        });
    }

    @Test
    void bridle_legs_carry_the_weight_and_pull_level_against_each_other() {
        SeededSamples.of(8)
                .forEach(
                        1000,
                        sample -> {
                            double d1 = sample.between(0.1, 6);
                            double d2 = sample.between(0.1, 6);
                            double height = sample.between(0.5, 8);
                            Bridle bridle = Bridle.of(300, d1, d2, height);
                            double up =
                                    bridle.tension1N() * height / bridle.length1M()
                                            + bridle.tension2N() * height / bridle.length2M();
                            assertThat(up).isCloseTo(300 * G, within(1e-8));
                            assertThat(bridle.tension1N() * d1 / bridle.length1M())
                                    .isCloseTo(
                                            bridle.tension2N() * d2 / bridle.length2M(),
                                            within(1e-8));
                        });
    }

    @Test
    void even_legs_lift_the_weight_and_a_flatter_leg_pulls_harder() {
        SeededSamples.of(9)
                .forEach(
                        500,
                        sample -> {
                            double angle = sample.between(0.2, 1.5);
                            LegTension legs = LegTension.of(400, 4, angle, false);
                            assertThat(4 * legs.legTensionN() * Math.sin(angle))
                                    .isCloseTo(400 * G, within(1e-8));
                            assertThat(LegTension.of(400, 4, angle - 0.05, false).legTensionN())
                                    .isGreaterThan(legs.legTensionN());
                            assertThat(LegTension.of(400, 4, angle, true).legTensionN())
                                    .isCloseTo(2 * legs.legTensionN(), within(1e-8));
                        });
    }

    @Test
    void a_wider_swing_takes_longer_and_a_fourfold_line_twice_as_long() {
        SeededSamples.of(10)
                .forEach(
                        500,
                        sample -> {
                            double length = sample.between(1, 60);
                            double amplitude = sample.between(0, 1.4);
                            double period = Pendulum.periodS(length, amplitude);
                            assertThat(Pendulum.periodS(length, amplitude + 0.1))
                                    .isGreaterThan(period);
                            assertThat(Pendulum.periodS(4 * length, amplitude))
                                    .isCloseTo(2 * period, within(1e-9));
                        });
    }

    @Test
    void trail_speed_and_mass_limits_undo_the_trail_angle() {
        SeededSamples.of(11)
                .forEach(
                        1000,
                        sample -> {
                            double mass = sample.between(20, 800);
                            double area = sample.between(0.05, 4);
                            double limit = sample.between(0.05, 1.2);
                            double speed = Trail.speedAtLimitMPerS(mass, area, limit, 1.1);
                            assertThat(Trail.of(mass, area, speed, 1.1).trailAngleRad())
                                    .isCloseTo(limit, within(1e-12));
                            assertThat(Trail.massForSpeedKg(area, speed, limit, 1.1))
                                    .isCloseTo(mass, within(1e-9));
                            double twice = Trail.of(mass, area, 2 * speed, 1.1).trailAngleRad();
                            assertThat(Math.tan(twice) / Math.tan(limit))
                                    .isCloseTo(4, within(1e-9));
                        });
    }

    @Test
    void the_integrated_fall_agrees_with_both_closed_forms() {
        SeededSamples.of(12)
                .forEach(
                        300,
                        sample -> {
                            double height = sample.between(1, 500);
                            double speed = sample.between(0, 60);
                            Fall.Body body =
                                    new Fall.Body(
                                            sample.between(20, 800), sample.between(0.05, 4), 1.2);
                            Fall plumb = Fall.plumb(body, height);
                            Fall still = Fall.inAir(body, height, 0, 0);
                            // A relative error of 1e-10 at each of some hundred steps.
                            assertThat(still.timeS()).isCloseTo(plumb.timeS(), within(1e-6));
                            assertThat(still.impactMPerS())
                                    .isCloseTo(plumb.impactMPerS(), within(1e-6));
                            Fall free = Fall.inAir(new Fall.Body(100, 0, 1.2), height, speed, 30);
                            Fall vacuum = Fall.vacuum(height, speed);
                            assertThat(free.timeS()).isCloseTo(vacuum.timeS(), within(1e-8));
                            assertThat(free.throwM()).isCloseTo(vacuum.throwM(), within(1e-7));
                            Fall dragged = Fall.inAir(body, height, speed, 0);
                            assertThat(dragged.impactMPerS()).isLessThan(vacuum.impactMPerS());
                            assertThat(dragged.timeS()).isGreaterThan(vacuum.timeS());
                        });
    }

    @Test
    void a_wire_hangs_the_same_seen_from_either_end() {
        SeededSamples.of(13)
                .forEach(
                        1000,
                        sample -> {
                            double span = sample.between(5, 1500);
                            double rise = sample.between(-900, 900);
                            double weight = sample.between(0.5, 30);
                            double tension = weight * span * sample.between(0.1, 20);
                            Catenary wire = Catenary.of(span, rise, weight, tension);
                            Catenary back = Catenary.of(span, -rise, weight, tension);
                            assertThat(back.sagM()).isCloseTo(wire.sagM(), within(1e-9 * span));
                            assertThat(back.lengthM())
                                    .isCloseTo(wire.lengthM(), within(1e-9 * span));
                            assertThat(span - back.lowestAtM())
                                    .isCloseTo(wire.lowestAtM(), within(1e-6 * span));
                            // Ends and middle lie where supports and sag say.
                            double room = 1e-8 * (span + Math.abs(rise) + wire.sagM());
                            assertThat(wire.heightAboveFirstM(0)).isCloseTo(0, within(room));
                            assertThat(wire.heightAboveFirstM(span)).isCloseTo(rise, within(room));
                            assertThat(rise / 2 - wire.heightAboveFirstM(span / 2))
                                    .isCloseTo(wire.sagM(), within(room));
                            assertThat(wire.lengthM())
                                    .isGreaterThanOrEqualTo(Math.hypot(span, rise));
                        });
    }

    @Test
    void guys_hold_just_when_no_half_turn_is_open_whatever_the_order() {
        SeededSamples.of(14)
                .forEach(
                        1000,
                        sample -> {
                            List<Double> azimuths = new ArrayList<>();
                            int count = sample.wholeBetween(1, 5);
                            for (int i = 0; i < count; i++) {
                                azimuths.add(sample.between(0, 6.28));
                            }
                            Guys guys = new Guys(azimuths);
                            Collections.reverse(azimuths);
                            assertThat(new Guys(azimuths)).isEqualTo(guys);
                            boolean openHalf = false;
                            for (double push = 0; push < 6.283; push += 0.001) {
                                double at = push;
                                openHalf |=
                                        azimuths.stream()
                                                .allMatch(each -> Math.cos(each - at) <= 0);
                            }
                            if (Math.abs(guys.largestGapRad() - Math.PI) > 0.01) {
                                assertThat(guys.holds()).isEqualTo(!openHalf);
                            }
                            Guys better = guys.proposeHolding();
                            assertThat(better.holds()).isTrue();
                            assertThat(better.largestGapRad())
                                    .isLessThanOrEqualTo(Math.toRadians(150) + 1e-9);
                        });
    }

    @Test
    void a_pole_pulls_harder_on_its_guy_the_more_it_leans() {
        GuyedPole pole = new GuyedPole(380, 6, 9, Math.PI / 4);
        SeededSamples.of(15)
                .forEach(
                        300,
                        sample -> {
                            double lean = sample.between(0, 0.7);
                            assertThat(pole.tensionN(lean + 0.01))
                                    .isGreaterThan(pole.tensionN(lean));
                        });
        assertThat(pole.tensionN(0)).isZero();
    }

    @Test
    void the_worst_centre_of_gravity_is_no_better_than_any_on_the_way() {
        SeededSamples.of(16)
                .forEach(
                        500,
                        sample -> {
                            Balance balance =
                                    new Balance(
                                            sample.between(3.3, 3.6),
                                            1.6,
                                            sample.between(2.5, 4.5),
                                            2.6,
                                            3.4,
                                            List.of(
                                                    new Balance.Limit(1000, 3.2, 3.6),
                                                    new Balance.Limit(1600, 3.15, 3.55),
                                                    new Balance.Limit(2300, 3.25, 3.45)));
                            CentreOfGravity centre = CentreOfGravity.of(balance, 0.02);
                            var burden =
                                    new CentreOfGravity.Burden(1110, 95, 0, sample.between(0, 500));
                            double full = sample.between(100, 340);
                            double worst = centre.worst(burden, full, 10).getValue().marginM();
                            for (double fuel = 10; fuel <= full; fuel += 1) {
                                assertThat(centre.at(burden, fuel).getValue().marginM())
                                        .isGreaterThanOrEqualTo(worst - 1e-12);
                            }
                        });
    }

    private static boolean isInside(
            CentreOfGravity centre, CentreOfGravity.Burden burden, double fuelKg) {
        return centre.at(burden, fuelKg)
                .fold(
                        (point, said) -> point.standing() != CentreOfGravity.Standing.OUTSIDE,
                        said -> false);
    }

    /** Against each whole kilogram looked at alone: between two of them the limits are met within a kilogram. */
    @Test
    void from_the_most_fuel_down_the_centre_of_gravity_is_inside() {
        int[] bound = {0};
        SeededSamples.of(31)
                .forEach(
                        500,
                        sample -> {
                            Balance balance =
                                    new Balance(
                                            sample.between(3.2, 3.5),
                                            1.6,
                                            sample.between(2.5, 4.5),
                                            2.6,
                                            3.4,
                                            List.of(
                                                    new Balance.Limit(1210, 3.2, 3.6),
                                                    new Balance.Limit(1600, 3.15, 3.55),
                                                    new Balance.Limit(1900, 3.25, 3.45)));
                            CentreOfGravity centre = CentreOfGravity.of(balance, 0);
                            var burden =
                                    new CentreOfGravity.Burden(1110, 95, 0, sample.between(0, 500));
                            int most = 9;
                            while (most < 340 && isInside(centre, burden, most + 1)) {
                                most++;
                            }
                            assertThat(centre.mostFuelKg(burden, 340, 10).orElse(9))
                                    .isEqualTo(most);
                            bound[0] += most > 10 && most < 340 ? 1 : 0;
                        });
        assertThat(bound[0]).isGreaterThan(50);
    }

    @Test
    void the_sun_stands_at_the_events_depth_when_the_event_comes() {
        SeededSamples.of(17)
                .forEach(
                        400,
                        sample -> {
                            GeoPoint place =
                                    new GeoPoint(
                                            sample.between(-70, 70), sample.between(-170, 170));
                            LocalDate date =
                                    LocalDate.of(2026, 1, 1).plusDays(sample.wholeBetween(0, 364));
                            ZoneOffset zone =
                                    ZoneOffset.ofHours((int) Math.round(place.lonDeg() / 15));
                            for (SunEvent event : SunEvent.values()) {
                                Sun.find(event, place, date, zone)
                                        .ifPresent(
                                                when -> {
                                                    double height =
                                                            Sun.position(place, when)
                                                                    .elevationGeometricRad();
                                                    // Parallax 0.0025° and a second of time
                                                    // 0.0042°.
                                                    assertThat(Math.toDegrees(height))
                                                            .isCloseTo(
                                                                    Math.toDegrees(
                                                                            event
                                                                                    .elevationGeometricRad()),
                                                                    within(0.008));
                                                    assertThat(when.atOffset(zone).toLocalDate())
                                                            .isEqualTo(date);
                                                });
                            }
                            Daylight.find(place, date.atStartOfDay(zone).toInstant())
                                    .ifPresent(
                                            day ->
                                                    assertThat(
                                                                    Sun.isAbove(
                                                                            SunEvent.SUNRISE,
                                                                            place,
                                                                            day.from()
                                                                                    .plusSeconds(
                                                                                            2)))
                                                            .isTrue());
                        });
    }
}
