package underhook.core.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.line.LineTrail.Flow;
import underhook.core.load.Trail;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

class LineTrailTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;

    @Test
    void a_line_without_mass_and_width_hangs_straight_as_the_load_trails() {
        SeededSamples.of(121)
                .forEach(
                        100,
                        sample -> {
                            double mass = sample.between(20, 800);
                            double area = sample.between(0, 3);
                            double speed = sample.between(0, 45);
                            LineTrail line =
                                    LineTrail.of(
                                            new HangingLine(30, 0, 0),
                                            mass,
                                            area,
                                            new Flow(speed, 1.15));
                            Trail load = Trail.of(mass, area, speed, 1.15);
                            double angle = load.trailAngleRad();
                            assertThat(line.loadAngleRad()).isCloseTo(angle, within(1e-12));
                            assertThat(line.hookAngleRad()).isCloseTo(angle, within(1e-9));
                            assertThat(line.hookTensionN())
                                    .isCloseTo(load.lineTensionN(), within(1e-6));
                            assertThat(line.aftM()).isCloseTo(30 * Math.sin(angle), within(1e-7));
                            assertThat(line.belowM()).isCloseTo(30 * Math.cos(angle), within(1e-7));
                        });
    }

    /** Without weight the pull stays the same and tan(angle) grows evenly: T dt/ds = n cos² t. */
    @Test
    void a_wide_line_without_mass_bends_as_the_closed_form_says() {
        double speed = 30;
        double push = 0.5 * 1.2 * speed * speed * 1.2 * 0.02;
        LineTrail line = LineTrail.of(new HangingLine(40, 0, 0.02), 50, 0.2, new Flow(speed, 1.2));

        double tangent = Math.tan(line.loadAngleRad()) + push * 40 / line.loadTensionN();
        assertThat(line.hookTensionN()).isCloseTo(line.loadTensionN(), within(1e-6));
        assertThat(Math.tan(line.hookAngleRad())).isCloseTo(tangent, within(1e-7));
    }

    @Test
    void a_heavy_line_hangs_plumb_in_still_air_and_adds_its_weight() {
        LineTrail line = LineTrail.of(new HangingLine(30, 25, 0.016), 300, 1, new Flow(0, 1.2));

        assertThat(line.aftM()).isZero();
        assertThat(line.hookTensionN()).isCloseTo(325 * G, within(1e-6));
    }

    /** The hook pulls up what weighs, and back what the air pushes: the line's part by the trapezium. */
    @Test
    void all_forces_on_line_and_load_balance() {
        SeededSamples.of(122)
                .forEach(
                        60,
                        sample -> {
                            double mass = sample.between(10, 400);
                            double lineMass = sample.between(2, 40);
                            double speed = sample.between(0, 40);
                            HangingLine line = new HangingLine(30, lineMass, 0.018);
                            LineTrail trail = LineTrail.of(line, mass, 0.3, new Flow(speed, 1.1));
                            double level = trail.hookTensionN() * Math.sin(trail.hookAngleRad());
                            double up = trail.hookTensionN() * Math.cos(trail.hookAngleRad());
                            double pressure = 0.5 * 1.1 * speed * speed;
                            // The push across the line is at most its whole drag area's, and lifts.
                            assertThat(level)
                                    .isBetween(
                                            pressure * 0.3 - 1e-6,
                                            pressure * (0.3 + line.dragAreaM2()) + 1e-6);
                            assertThat(up).isLessThanOrEqualTo((mass + lineMass) * G + 1e-6);
                        });
    }

    @Test
    void line_drag_makes_a_light_load_trail_farther_than_the_load_alone() {
        // An empty hook of 12 kg on 40 m of 18 mm rope, 60 kt: the load alone would trail 7.6°.
        Flow flow = new Flow(Units.ktToMPerS(60), 1.1);
        LineTrail line = LineTrail.of(new HangingLine(40, 16, 0.018), 12, 0.03, flow);
        double alone = Trail.of(12, 0.03, flow.airspeedMPerS(), 1.1).trailAngleRad();

        assertThat(Math.toDegrees(alone)).isCloseTo(7.6, within(0.2));
        assertThat(line.hookAngleRad()).isGreaterThan(4 * alone);
        assertThat(line.nearestM(6, 1, 0)).isLessThan(6.1);
        // The straight line with lumped parts, that swings, stays within 2° of the bent line's
        // chord.
        double chord = Math.atan2(line.aftM(), line.belowM());
        double lumped =
                new HangingLine(40, 16, 0.018)
                        .carrying(12, 0.03)
                        .trailRad(flow.airspeedMPerS(), 1.1);
        assertThat(Math.toDegrees(lumped - chord)).isBetween(-2.0, 8.0);
    }

    @Test
    void ranges_are_held() {
        HangingLine line = new HangingLine(30, 20, 0.016);
        assertThatThrownBy(() -> LineTrail.of(line, 0, 1, new Flow(10, 1.2)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> LineTrail.of(line, 10, Double.NaN, new Flow(10, 1.2)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Flow(-1, 1.2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new HangingLine(0, 1, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
