package underhook.core.ode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

class DormandPrinceTest {
    /** Orbit of two places and two speeds round a centre: no closed motion is simpler and curved. */
    private static void orbit(double[] state, double[] rates) {
        double radius3 = Math.pow(Math.hypot(state[0], state[1]), 3);
        rates[0] = state[2];
        rates[1] = state[3];
        rates[2] = -state[0] / radius3;
        rates[3] = -state[1] / radius3;
    }

    private static DormandPrince decay(double toleranceRatio) {
        return new DormandPrince((time, state, rates) -> rates[0] = -state[0], 1, toleranceRatio);
    }

    private static void run(DormandPrince course, double until) {
        while (course.time() < until) {
            course.step(until);
        }
    }

    @Test
    void follows_a_decay_as_the_exponential_does() {
        DormandPrince course = decay(1e-11);
        course.start(0, new double[] {1}, 0.1);

        run(course, 5);

        // Some hundred steps with an error of 1e-11 each.
        assertThat(course.at(0)).isCloseTo(Math.exp(-5), within(1e-9));
        assertThat(course.time()).isEqualTo(5);
    }

    @Test
    void a_tighter_tolerance_comes_nearer() {
        double coarse = errorOfDecay(1e-5);
        double fine = errorOfDecay(1e-9);

        assertThat(fine).isLessThan(coarse / 100);
    }

    private static double errorOfDecay(double toleranceRatio) {
        DormandPrince course = decay(toleranceRatio);
        course.start(0, new double[] {1}, 0.1);
        run(course, 3);
        return Math.abs(course.at(0) - Math.exp(-3));
    }

    @Test
    void the_interpolant_meets_both_ends_and_the_curve_between() {
        DormandPrince course = decay(1e-8);
        course.start(0, new double[] {1}, 0.05);
        course.step(9);

        assertThat(course.within(course.timeBefore(), 0)).isCloseTo(1, within(1e-15));
        assertThat(course.within(course.time(), 0)).isCloseTo(course.at(0), within(1e-15));
        double middle = (course.timeBefore() + course.time()) / 2;
        // Fourth order over a step of 0.05: 0.05^5 times a small number.
        assertThat(course.within(middle, 0)).isCloseTo(Math.exp(-middle), within(1e-9));
    }

    /** @source HIPPARCHUS its eighth-order integrator, independent of ours */
    @Test
    void agrees_with_an_eighth_order_integrator_of_another_hand() {
        double[] start = {1, 0, 0, 1.2};
        DormandPrince course =
                new DormandPrince((time, state, rates) -> orbit(state, rates), 4, 1e-11);
        course.start(0, start, 0.01);
        run(course, 20);
        var reference =
                new DormandPrince853Integrator(1e-8, 1, 1e-13, 1e-13)
                        .integrate(
                                new OrdinaryDifferentialEquation() {
                                    @Override
                                    public int getDimension() {
                                        return 4;
                                    }

                                    @Override
                                    public double[] computeDerivatives(
                                            double time, double[] state) {
                                        double[] rates = new double[4];
                                        orbit(state, rates);
                                        return rates;
                                    }
                                },
                                new ODEState(0, start),
                                20);

        // Some thousand steps with an error of 1e-11 each, growing along the orbit.
        for (int place = 0; place < 4; place++) {
            assertThat(course.at(place))
                    .isCloseTo(reference.getPrimaryState()[place], within(1e-7));
        }
    }

    @Test
    void goes_back_to_the_start_of_a_step_and_arrives_at_the_same_place() {
        DormandPrince course = decay(1e-10);
        course.start(0, new double[] {1}, 0.1);
        course.step(9);
        double end = course.time();
        double there = course.at(0);

        course.stepBack();
        assertThat(course.at(0)).isEqualTo(1);
        run(course, end);

        assertThat(course.at(0)).isCloseTo(there, within(1e-15));
    }

    @Test
    void keeps_steps_below_what_is_stated() {
        DormandPrince course = decay(1e-3);
        course.limitStep(0.25);
        course.start(0, new double[] {1}, 1);

        course.step(9);

        assertThat(course.time()).isEqualTo(0.25);
    }

    @Test
    void refuses_rates_that_are_no_numbers_and_arguments_out_of_range() {
        DormandPrince lost =
                new DormandPrince((time, state, rates) -> rates[0] = Math.sqrt(-time), 1, 1e-6);
        lost.start(0, new double[] {1}, 0.1);

        assertThatThrownBy(() -> lost.step(1)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> decay(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> decay(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> decay(1e-6).step(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> decay(1e-6).start(0, new double[2], 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
