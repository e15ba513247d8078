package underhook.core.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The closed form against the equation it solves, integrated step by step: y'' = √(1 + y'²) / a, the
 * balance of level tension and weight, shot from the first support until it meets the second.
 */
class CatenaryTest {
    private static final int STEPS = 20_000;

    /** Fourth order with 20,000 steps: below a hundred-millionth of the span for these curves. */
    private static final double STEPPING = 1e-8;

    /** A curve: rise reached, length, lowest point and mid-span height, all m. */
    private record Shot(double riseM, double lengthM, double middleM, double lowestM) {}

    @ParameterizedTest
    @CsvSource({
        "200, 0, 1500",
        "200, 0, 90",
        "300, 40, 800",
        "120, -90, 400",
        "100, 60, 1000",
        "400, 300, 220",
        "50, -45, 30"
    })
    void is_what_step_by_step_integration_gives(double spanM, double riseM, double parameterM) {
        double low = -50;
        double high = 50;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (shoot(spanM, parameterM, Math.tan(Math.atan(middle))).riseM() < riseM) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Shot shot = shoot(spanM, parameterM, low);

        Catenary wire = Catenary.ofParameter(spanM, riseM, parameterM);

        double room = STEPPING * spanM * 10;
        assertThat(wire.heightAboveFirstM(spanM / 2)).isCloseTo(shot.middleM(), within(room));
        assertThat(wire.lengthM()).isCloseTo(shot.lengthM(), within(room));
        // The lowest point on steep spans lies outside; then the shot does not pass it.
        if (wire.lowestAtM() > 0 && wire.lowestAtM() < spanM) {
            assertThat(wire.lowestAtM()).isCloseTo(shot.lowestM(), within(2 * spanM / STEPS));
        } else {
            assertThat(shot.lowestM()).isNegative();
        }
    }

    private static Shot shoot(double spanM, double parameterM, double firstSlope) {
        double h = spanM / STEPS;
        double y = 0;
        double slope = firstSlope;
        double length = 0;
        double middle = 0;
        double lowest = -1;
        for (int i = 0; i < STEPS; i++) {
            double a1 = Math.hypot(1, slope) / parameterM;
            double s2 = slope + h / 2 * a1;
            double a2 = Math.hypot(1, s2) / parameterM;
            double s3 = slope + h / 2 * a2;
            double a3 = Math.hypot(1, s3) / parameterM;
            double s4 = slope + h * a3;
            double a4 = Math.hypot(1, s4) / parameterM;
            y += h / 6 * (slope + 2 * s2 + 2 * s3 + s4);
            length +=
                    h
                            / 6
                            * (Math.hypot(1, slope)
                                    + 2 * Math.hypot(1, s2)
                                    + 2 * Math.hypot(1, s3)
                                    + Math.hypot(1, s4));
            double next = slope + h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
            lowest = slope < 0 && next >= 0 ? (i + 0.5) * h : lowest;
            slope = next;
            middle = i + 1 == STEPS / 2 ? y : middle;
            if (!(slope < 1e6)) {
                return new Shot(1e9, length, middle, lowest);
            }
        }
        return new Shot(y, length, middle, lowest);
    }

    @Test
    void finds_the_tension_that_fits_a_sag_or_a_length() {
        // A parabola of 200 m with 4 m of sag: a = 200² / (8 · 4) = 1250 m; the catenary of that
        // parameter hangs by (S/a)²/48 more, a twentieth of a percent.
        double bySagM = Catenary.parameterForSagM(200, 0, 4);
        // Its length is 200 + 8 · 4² / (3 · 200) = 200.213 m.
        double byLengthM = Catenary.parameterForLengthM(200, 0, 200.2133);

        assertThat(bySagM).isCloseTo(1250, within(1.5));
        assertThat(byLengthM).isCloseTo(1250, within(3.0));
        assertThat(Catenary.ofParameter(200, 30, Catenary.parameterForSagM(200, 30, 9)).sagM())
                .isCloseTo(9, within(1e-9));
        assertThat(Catenary.parameterForLengthM(200, 0, 200)).isInfinite();
        assertThatThrownBy(() -> Catenary.parameterForSagM(200, 0, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("sagM");
    }
}
