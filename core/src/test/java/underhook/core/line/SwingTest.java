package underhook.core.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import underhook.core.line.SwingAir.Gust;
import underhook.core.line.SwingResult.End;
import underhook.core.load.Trail;
import underhook.core.unit.Units;

class SwingTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;
    private static final SlungLoad HEAVY = SlungLoad.ofPoint(20, 500, 0);
    private static final SwingAir STILL = SwingAir.still(1.2);
    private static final Swing.Watch MINUTE = new Swing.Watch(60, 1);

    private static SwingState fore(double angleRad) {
        return new SwingState(angleRad, 0, 0, 0);
    }

    /** Time from rest at the far side to the next passage of plumb, by the trace: a quarter period. */
    private static double quarterS(double amplitudeRad) {
        List<Swing.Sample> samples =
                new Swing(HEAVY, STILL).trace(HookPath.steady(0), fore(amplitudeRad), 5, 0.001);
        for (int i = 1; i < samples.size(); i++) {
            double now = samples.get(i).state().foreRad();
            double last = samples.get(i - 1).state().foreRad();
            if (now <= 0) {
                return samples.get(i - 1).timeS() + 0.001 * last / (last - now);
            }
        }
        throw new AssertionError("never plumb");
    }

    @Test
    void a_quarter_of_the_swing_takes_a_quarter_of_the_exact_period() {
        for (double degrees : new double[] {1, 10, 30, 60, 79}) {
            double amplitude = Math.toRadians(degrees);
            // Steps of 1e-7 rad over a rate of 0.01 rad/s and more.
            assertThat(4 * quarterS(amplitude))
                    .isCloseTo(Pendulum.periodS(20, amplitude), within(2e-5));
        }
    }

    @Test
    void a_sudden_stop_swings_the_load_as_energy_says() {
        HookPath abrupt = new HookPath(2, List.of(new HookPath.Part(0.1, -20, 0)));

        SwingResult result = new Swing(HEAVY, STILL).fly(abrupt, MINUTE);

        assertThat(result.end()).isEqualTo(End.WATCHED);
        // A stop that takes 0.1 s of a period of 9 s is not quite sudden: sin(x)/x of 0.035.
        assertThat(result.greatestForeRad()).isCloseTo(HangAngle.afterStopRad(2, 20), within(1e-4));
        assertThat(result.settled()).isFalse();
    }

    @Test
    void the_line_pulls_hardest_at_the_bottom_of_a_swing() {
        for (double degrees : new double[] {10, 30, 45}) {
            double amplitude = Math.toRadians(degrees);
            SwingResult result =
                    new Swing(HEAVY, STILL).fly(HookPath.steady(0), fore(amplitude), MINUTE);

            // Looked at 48 times a period: the peak is missed by 0.2 % of what it adds at most.
            assertThat(result.hookTensionN() / (500 * G))
                    .isCloseTo(HangAngle.bottomPullFactor(amplitude), within(2e-3));
            assertThat(result.leastTensionN() / (500 * G))
                    .isCloseTo(Math.cos(amplitude), within(2e-3));
        }
    }

    @Test
    void a_steady_slow_down_swings_between_plumb_and_twice_the_steady_angle() {
        HookPath braking = new HookPath(60, List.of(new HookPath.Part(30, -2, 0)));

        SwingResult result = new Swing(HEAVY, STILL).fly(braking, new Swing.Watch(0, 1));

        // Row E-AC: the first peak is twice atan(a/g), exactly so in the tilted frame.
        assertThat(result.greatestForeRad()).isCloseTo(2 * HangAngle.steadyRad(2), within(1e-4));
        assertThat(result.greatestAftRad()).isCloseTo(0, within(1e-6));
    }

    @Test
    void long_flight_at_one_speed_ends_in_the_steady_trail() {
        SlungLoad light = SlungLoad.ofPoint(20, 100, 1.28);
        double speed = Units.ktToMPerS(30);
        List<Swing.Sample> samples =
                new Swing(light, SwingAir.still(1.225))
                        .trace(HookPath.steady(speed), SwingState.PLUMB, 300, 1);

        double trail = Trail.of(100, 1.28, speed, 1.225).trailAngleRad();
        SwingState last = samples.get(samples.size() - 1).state();
        // Row E-TR-01: 10.78°. Left over after five minutes of damping.
        assertThat(-last.foreRad()).isCloseTo(trail, within(1e-6));
        assertThat(Math.toDegrees(trail)).isCloseTo(10.78, within(0.01));
        assertThat(light.trailRad(speed, 1.225)).isCloseTo(trail, within(1e-15));
    }

    @Test
    void wind_from_the_side_hangs_the_load_sideways_and_a_gust_swings_it() {
        SlungLoad light = SlungLoad.ofPoint(15, 60, 1.5);
        SwingAir wind = new SwingAir(1.2, 0, 8, Gust.NONE);
        SwingAir gusty = new SwingAir(1.2, 0, 8, new Gust(2, 4, 0, 8));

        SwingResult calm = new Swing(light, wind).fly(HookPath.steady(0), MINUTE);
        SwingResult swung = new Swing(light, gusty).fly(HookPath.steady(0), MINUTE);

        assertThat(calm.greatestSideRad()).isCloseTo(light.trailRad(8, 1.2), within(1e-6));
        assertThat(calm.residualM()).isCloseTo(0, within(1e-4));
        assertThat(calm.settled()).isTrue();
        assertThat(calm.settlingS()).isZero();
        assertThat(swung.greatestSideRad()).isGreaterThan(calm.greatestSideRad() + 0.05);
        assertThat(swung.residualM()).isGreaterThan(1);
    }

    @Test
    void a_line_that_goes_slack_ends_the_run_and_says_so() {
        // Let go of at rest beyond a right angle from the pull in the frame of hard braking.
        HookPath braking = new HookPath(60, List.of(new HookPath.Part(3, -20, 0)));
        SwingResult result = new Swing(HEAVY, STILL).fly(braking, fore(-1.2), MINUTE);

        assertThat(result.end()).isEqualTo(End.SLACK);
        assertThat(result.isWhole()).isFalse();
        assertThat(result.settled()).isFalse();
        assertThat(result.leastTensionN()).isLessThanOrEqualTo(0);
        assertThat(result.timeS()).isLessThan(3);
    }

    @Test
    void a_swing_wider_than_the_model_ends_the_run() {
        HookPath braking = new HookPath(60, List.of(new HookPath.Part(6, -9, 0)));
        SwingResult result = new Swing(HEAVY, STILL).fly(braking, MINUTE);

        assertThat(result.end()).isEqualTo(End.TOO_WIDE);
    }

    @Test
    void a_heavy_line_swings_as_the_rod_it_is() {
        // Nearly all mass in the line: E-PE-08, a rod of 12 m by its end, 5.675 s.
        SlungLoad rod = new SlungLoad(12, 1e-6, 0, 100, 0);

        assertThat(rod.periodS()).isCloseTo(5.675, within(0.0005));
        assertThat(rod.periodS()).isCloseTo(Pendulum.rodPeriodS(12), within(1e-6));
    }

    /** @source HIPPARCHUS its eighth-order integrator on a Cartesian form of the same motion */
    @Test
    void agrees_with_another_integrator_on_other_coordinates() {
        SlungLoad load = new SlungLoad(25, 150, 1.1, 20, 0.6);
        SwingAir air = new SwingAir(1.1, -4, 3, new Gust(1.5, 5, 6, -5));
        HookPath path =
                new HookPath(
                        18,
                        List.of(
                                new HookPath.Part(4, -1.2, 0.4),
                                new HookPath.Part(5, -2, 0),
                                new HookPath.Part(2, 0.5, -0.8)));
        SwingState from = new SwingState(-0.3, 0.2, 0.1, -0.15);

        List<Swing.Sample> ours = new Swing(load, air).trace(path, from, 9, 20);
        double[] theirs = cartesian(load, air, path, from);

        SwingState end = ours.get(1).state();
        assertThat(ours.get(1).timeS()).isEqualTo(20);
        double cosSide = Math.cos(end.sideRad());
        // A tenth of a millimetre and less on 25 m: steps of 1e-7 rad.
        assertThat(25 * Math.sin(end.foreRad()) * cosSide).isCloseTo(theirs[0], within(1e-4));
        assertThat(25 * Math.sin(end.sideRad())).isCloseTo(theirs[1], within(1e-4));
        assertThat(-25 * Math.cos(end.foreRad()) * cosSide).isCloseTo(theirs[2], within(1e-4));
    }

    /** The load from the hook in m, after 20 s: position and speed under a constraint force. */
    private static double[] cartesian(
            SlungLoad load, SwingAir air, HookPath path, SwingState from) {
        double cosFore = Math.cos(from.foreRad());
        double sinFore = Math.sin(from.foreRad());
        double cosSide = Math.cos(from.sideRad());
        double sinSide = Math.sin(from.sideRad());
        double length = load.lengthM();
        double[] state = {
            length * sinFore * cosSide,
            length * sinSide,
            -length * cosFore * cosSide,
            length
                    * (cosFore * cosSide * from.foreRadPerS()
                            - sinFore * sinSide * from.sideRadPerS()),
            length * cosSide * from.sideRadPerS(),
            length
                    * (sinFore * cosSide * from.foreRadPerS()
                            + cosFore * sinSide * from.sideRadPerS())
        };
        double[] hook = {path.startMPerS(), 0};
        double time = 0;
        List<HookPath.Part> parts =
                Stream.concat(path.parts().stream(), List.of(new HookPath.Part(9, 0, 0)).stream())
                        .toList();
        for (HookPath.Part part : parts) {
            state = followPart(load, air, part, new double[][] {state, hook, {time}});
            hook[0] += part.forwardMPerS2() * part.durationS();
            hook[1] += part.rightMPerS2() * part.durationS();
            time += part.durationS();
        }
        return state;
    }

    private static double[] followPart(
            SlungLoad load, SwingAir air, HookPath.Part part, double[][] from) {
        double start = from[2][0];
        return new DormandPrince853Integrator(1e-9, 0.02, 1e-12, 1e-12)
                .integrate(
                        new OrdinaryDifferentialEquation() {
                            @Override
                            public int getDimension() {
                                return 6;
                            }

                            @Override
                            public double[] computeDerivatives(double time, double[] y) {
                                return pulled(
                                        load,
                                        air,
                                        part,
                                        new double[][] {y, from[1], {start, time}});
                            }
                        },
                        new ODEState(start, from[0]),
                        start + part.durationS())
                .getPrimaryState();
    }

    private static double[] pulled(
            SlungLoad load, SwingAir air, HookPath.Part part, double[][] at) {
        double[] y = at[0];
        double inPart = at[2][1] - at[2][0];
        Gust gust = air.gust();
        double phase = (at[2][1] - gust.startS()) / gust.durationS();
        double strength = phase > 0 && phase < 1 ? Math.pow(Math.sin(Math.PI * phase), 2) : 0;
        double[] relative = {
            at[1][0]
                    + part.forwardMPerS2() * inPart
                    + y[3]
                    - air.windForwardMPerS()
                    - strength * gust.forwardMPerS(),
            at[1][1]
                    + part.rightMPerS2() * inPart
                    + y[4]
                    - air.windRightMPerS()
                    - strength * gust.rightMPerS(),
            y[5]
        };
        double speed = Math.hypot(Math.hypot(relative[0], relative[1]), relative[2]);
        double weight = load.massKg() + load.lineMassKg() / 2;
        double inertia = load.massKg() + load.lineMassKg() / 3;
        double area = load.dragAreaM2() + load.lineDragAreaM2() / 2;
        double[] hookPull = {part.forwardMPerS2(), part.rightMPerS2(), G};
        double[] free = new double[3];
        double inward = 0;
        double speed2 = 0;
        for (int i = 0; i < 3; i++) {
            free[i] =
                    -weight / inertia * hookPull[i]
                            - 0.5 * air.densityKgPerM3() * area / inertia * speed * relative[i];
            inward += free[i] * y[i];
            speed2 += y[3 + i] * y[3 + i];
        }
        double multiplier = (inward + speed2) / (load.lengthM() * load.lengthM());
        double[] rates = new double[6];
        for (int i = 0; i < 3; i++) {
            rates[i] = y[3 + i];
            rates[3 + i] = free[i] - multiplier * y[i];
        }
        return rates;
    }

    @Test
    void edges_are_refused() {
        assertThatThrownBy(() -> SlungLoad.ofPoint(20, 0, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SlungLoad.ofPoint(0, 100, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SlungLoad.ofPoint(20, Double.NaN, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SlungLoad.ofPoint(20, 100, -1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SwingAir.still(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SwingAir(1.2, 61, 0, Gust.NONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Gust(0, 0, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> HookPath.steady(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new HookPath.Part(1, 21, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SwingState(Math.PI / 2, 0, 0, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Swing.Watch(-1, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> HangAngle.afterStopRad(30, 20))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
