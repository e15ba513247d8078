package underhook.core.fall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.testkit.SeededSamples;

class FallingCornersTest {
    private static final FallingCorners.Wind CALM = new FallingCorners.Wind(0, 0);

    @Test
    void without_drag_they_land_where_the_closed_form_has_it() {
        // DERIVED uniform acceleration, t = √(2h/g): 30 m/s from 80 m.
        Fall fall = Fall.vacuum(80, 30);

        FallingCorners.Impact hit = land(new FallingCorners.Start(0, 0, 30, 0, 0), CALM, 80);

        assertThat(hit.forwardM()).isCloseTo(fall.throwM(), within(1e-5));
        assertThat(hit.downMPerS()).isCloseTo(fall.impactDownMPerS(), within(1e-5));
    }

    @Test
    void plumb_in_still_air_they_hit_as_fast_as_the_closed_form_has_it() {
        // DERIVED v = vt √(1 − exp(−2 g h/vt²)), from bags that weigh much to sheets of foam.
        for (double massKg : new double[] {0.5, 5, 50, 500}) {
            Fall.Body body = new Fall.Body(massKg, 1.5, 1.2);
            FallingCorners.Start start =
                    new FallingCorners.Start(0, 0, 0, 0, body.retardationCoefficient());

            FallingCorners.Impact hit = land(start, CALM, 120);

            double exact = Fall.plumb(body, 120).impactDownMPerS();
            assertThat(hit.downMPerS()).isCloseTo(exact, within(1e-3));
            assertThat(hit.forwardM()).isZero();
        }
    }

    /** The other integrator holds the error of each step to 1e-5; it follows one point at a time. */
    @Test
    void many_land_where_each_does_by_steps_whose_error_is_held() {
        SeededSamples.of(43)
                .forEach(
                        300,
                        samples -> {
                            List<FallingCorners.Start> starts = new ArrayList<>();
                            List<FallingCorners.Wind> winds = new ArrayList<>();
                            for (int i = 0; i < 5; i++) {
                                starts.add(start(samples));
                                winds.add(
                                        new FallingCorners.Wind(
                                                samples.between(-20, 20),
                                                samples.between(-20, 20)));
                            }
                            double leastM = samples.between(0.3, 200);
                            List<Double> depths = List.of(leastM, leastM + samples.between(0, 100));

                            List<FallingCorners.Impact> hits =
                                    new FallingCorners(starts, winds).untilGround(depths);

                            List<FallingCorners.Impact> others = new ArrayList<>();
                            for (int i = 0; i < starts.size(); i++) {
                                others.addAll(
                                        new FallPath(starts.get(i), winds.get(i))
                                                .untilGround(depths));
                            }
                            assertThat(hits).hasSameSizeAs(others);
                            for (FallingCorners.Impact other : others) {
                                assertThat(hits).anyMatch(hit -> isAlike(hit, other));
                            }
                        });
    }

    @Test
    void a_number_that_is_none_ends_it() {
        FallingCorners.Start start = new FallingCorners.Start(0, 0, Double.NaN, 0, 0.01);

        assertThatThrownBy(() -> land(start, CALM, 10)).isInstanceOf(ArithmeticException.class);
    }

    /** From steel to what falls at 2 m/s. */
    private static FallingCorners.Start start(SeededSamples samples) {
        return new FallingCorners.Start(
                samples.between(-20, 20),
                samples.between(-20, 20),
                samples.between(0, 40),
                samples.between(-5, 5),
                Math.pow(10, samples.between(-4, 0.4)));
    }

    private static FallingCorners.Impact land(
            FallingCorners.Start start, FallingCorners.Wind wind, double depthM) {
        return new FallingCorners(List.of(start), List.of(wind))
                .untilGround(List.of(depthM))
                .get(0);
    }

    private static boolean isAlike(FallingCorners.Impact one, FallingCorners.Impact other) {
        return Math.abs(one.forwardM() - other.forwardM()) < 0.01
                && Math.abs(one.rightM() - other.rightM()) < 0.01
                && Math.abs(one.forwardMPerS() - other.forwardMPerS()) < 0.02
                && Math.abs(one.rightMPerS() - other.rightMPerS()) < 0.02
                && Math.abs(one.downMPerS() - other.downMPerS()) < 0.02;
    }
}
