package underhook.core.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

class ApproachTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;
    private static final Swing.Watch WATCH = new Swing.Watch(40, 1);
    private static final SlowDownLimits LIMITS = new SlowDownLimits(1.5, Math.toRadians(12), 0.1);
    private static final SlungLoad POINT = SlungLoad.ofPoint(25, 400, 0);

    @Test
    void ways_to_slow_down_are_as_long_as_worked_by_hand() {
        // 20 m/s at 1.5 m/s²; T = 2 pi sqrt(25/9.80665) = 10.032 s.
        double period = POINT.periodS();
        assertThat(period).isCloseTo(10.032, within(0.001));

        SlowDown abrupt = SlowDown.abrupt(20, 1.5);
        SlowDown constant = SlowDown.constant(20, 1.5, period);
        SlowDown shaped = SlowDown.shaped(20, 1.5, period);

        // v²/2a = 133.3 m; two periods, 20.06 s at 0.9969 m/s², 200.6 m; 13.33 s and half a period,
        // symmetric, so half the speed on average: 183.5 m.
        assertThat(abrupt.path().distanceM()).isCloseTo(133.33, within(0.01));
        assertThat(constant.path().distanceM()).isCloseTo(200.64, within(0.02));
        assertThat(constant.path().hardestMPerS2()).isCloseTo(0.9968, within(0.0002));
        assertThat(shaped.path().durationS()).isCloseTo(18.349, within(0.001));
        assertThat(shaped.path().distanceM()).isCloseTo(183.49, within(0.01));
        for (SlowDown way : List.of(abrupt, constant, shaped)) {
            assertThat(way.path().endMPerS()).isCloseTo(0, within(1e-12));
        }
    }

    @Test
    void the_swing_left_by_a_sudden_end_is_as_the_straight_equation_says() {
        // Residual 2 L a/g |sin(w d/2)| while angles are small.
        double slowing = 0.4;
        double lasts = 7.0;
        SlowDownLimits gentle = new SlowDownLimits(slowing, 0.3, 0);
        Arrival abrupt =
                new Approach(POINT, SwingAir.still(1.2), gentle, WATCH)
                        .compare(slowing * lasts)
                        .get(0);
        double expected =
                2 * 25 * slowing / G * Math.abs(Math.sin(Math.PI * lasts / POINT.periodS()));
        // Half a percent for the second order of an angle of 0.08 rad.
        assertThat(abrupt.residualM()).isCloseTo(expected, within(0.005 * expected));
    }

    @Test
    void shaped_ways_leave_little_swing_and_the_fitted_one_next_to_none() {
        List<Arrival> ways = new Approach(POINT, SwingAir.still(1.2), LIMITS, WATCH).compare(20);

        assertThat(ways)
                .extracting(way -> way.slowDown().kind())
                .containsExactly(SlowDown.Kind.values());
        assertThat(ways.get(0).residualM()).isGreaterThan(3);
        assertThat(ways.get(1).residualM()).isLessThan(0.3);
        assertThat(ways.get(2).residualM()).isLessThan(0.3);
        assertThat(ways.get(3).residualM()).isLessThan(0.02);
        // In the middle the load hangs still at a/g; a sudden start swings it to twice that.
        assertThat(ways.get(2).swing().greatestForeRad())
                .isCloseTo(HangAngle.steadyRad(1.5), within(0.02));
        assertThat(ways.get(0).swing().greatestForeRad())
                .isCloseTo(2 * HangAngle.steadyRad(1.5), within(0.01));
        assertThat(ways)
                .allSatisfy(
                        way ->
                                assertThat(way.worstResidualM())
                                        .isGreaterThanOrEqualTo(way.residualM()));
    }

    @Test
    void the_nose_limits_the_deceleration_before_the_pilot_does() {
        SlowDownLimits low = new SlowDownLimits(3, Math.toRadians(5), 0);

        assertThat(low.mostMPerS2()).isCloseTo(G * Math.tan(Math.toRadians(5)), within(1e-12));
        assertThat(new SlowDownLimits(0.5, Math.toRadians(5), 0).mostMPerS2()).isEqualTo(0.5);
        // 8 m of tail at 5°: 8 sin 5° = 0.697 m.
        assertThat(SlowDownLimits.tailDropM(8, low.mostMPerS2())).isCloseTo(0.697, within(0.001));
    }

    @Test
    void the_fit_takes_out_what_drag_leaves() {
        SlungLoad draggy = new SlungLoad(30, 150, 1.2, 25, 0.7);
        SwingAir headwind = new SwingAir(1.1, -5, 0, SwingAir.Gust.NONE);
        List<Arrival> ways = new Approach(draggy, headwind, LIMITS, WATCH).compare(22);

        assertThat(ways.get(3).residualM())
                .isLessThan(0.02)
                .isLessThan(ways.get(2).residualM())
                .isLessThan(ways.get(0).residualM());
    }

    @Test
    void no_way_brakes_harder_than_allowed_or_stops_short() {
        SeededSamples.of(111)
                .forEach(
                        60,
                        sample -> {
                            SlungLoad load =
                                    new SlungLoad(
                                            sample.between(8, 60),
                                            sample.between(40, 900),
                                            sample.between(0, 2),
                                            sample.between(0, 40),
                                            sample.between(0, 0.8));
                            SlowDownLimits limits =
                                    new SlowDownLimits(sample.between(0.4, 3), 0.2, 0);
                            double speed = sample.between(4, 35);
                            Approach approach =
                                    new Approach(load, SwingAir.still(1.1), limits, WATCH);
                            for (Arrival way : approach.compare(speed)) {
                                assertThat(way.hardestMPerS2())
                                        .isLessThanOrEqualTo(limits.mostMPerS2() + 1e-9);
                                assertThat(way.slowDown().path().endMPerS())
                                        .isCloseTo(0, within(1e-6));
                                assertThat(way.beginM())
                                        .isGreaterThanOrEqualTo(
                                                speed * speed / (2 * limits.mostMPerS2()) - 1e-6);
                            }
                        });
    }

    @Test
    void ranges_are_held() {
        Approach approach = new Approach(POINT, SwingAir.still(1.2), LIMITS, WATCH);
        assertThatThrownBy(() -> approach.compare(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> approach.tuned(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> approach.tuned(101)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SlowDownLimits(0, 0.1, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SlowDownLimits(11, 0.1, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SlowDownLimits(1, 0, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SlowDownLimits(1, 0.1, 0.5))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
