package underhook.core.fall;

import underhook.core.unit.Units;

/**
 * Adaptive Runge-Kutta integration of a falling point, fifth order with fourth-order error.
 *
 * <p>State: x forward, z up, vx, vz.
 *
 * @source DORMAND-PRINCE-1980 table 2, RK5(4)7M
 */
final class DormandPrince {
    private static final double[][] A = {
        {},
        {1.0 / 5},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}
    };
    private static final double[] FOURTH = {
        5179.0 / 57600, 0, 7571.0 / 16695, 393.0 / 640, -92097.0 / 339200, 187.0 / 2100, 1.0 / 40
    };
    private static final double TOLERANCE = 1e-10;

    private final double drag;
    private final double wind;

    private DormandPrince(double drag, double wind) {
        this.drag = drag;
        this.wind = wind;
    }

    /** Time, x, z, vx and vz when z passes 0. */
    static double[] untilGround(double drag, double wind, double height, double speed) {
        return new DormandPrince(drag, wind).untilGround(height, speed);
    }

    private double[] untilGround(double height, double speed) {
        double[] state = {0, height, speed, 0};
        double[] next = new double[4];
        double time = 0;
        double step = 0.01;
        while (true) {
            double error = step(state, step, next);
            if (error > 1) {
                step *= Math.max(0.2, 0.9 * Math.pow(error, -0.2));
                continue;
            }
            if (next[1] <= 0) {
                double last = landingStep(state, step);
                step(state, last, next);
                return new double[] {time + last, next[0], next[1], next[2], next[3]};
            }
            time += step;
            System.arraycopy(next, 0, state, 0, 4);
            step *= Math.min(5, 0.9 * Math.pow(Math.max(error, 1e-10), -0.2));
        }
    }

    /** The part of a good step that ends on the ground, by bisection: height falls all the way. */
    private double landingStep(double[] state, double step) {
        double low = 0;
        double high = step;
        double[] next = new double[4];
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            step(state, middle, next);
            if (next[1] > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Fills next and returns the error over the tolerance. */
    private double step(double[] state, double step, double[] next) {
        double[][] slope = new double[7][4];
        double[] at = state.clone();
        for (int stage = 0; stage < 7; stage++) {
            for (int i = 0; i < 4; i++) {
                double sum = 0;
                for (int j = 0; j < stage; j++) {
                    sum += A[stage][j] * slope[j][i];
                }
                at[i] = state[i] + step * sum;
            }
            double air = at[2] - wind;
            double through = drag * Math.hypot(air, at[3]);
            slope[stage][0] = at[2];
            slope[stage][1] = at[3];
            slope[stage][2] = -through * air;
            slope[stage][3] = -through * at[3] - Units.STANDARD_GRAVITY_M_PER_S2;
        }
        double worst = 0;
        for (int i = 0; i < 4; i++) {
            double fourth = 0;
            for (int j = 0; j < 7; j++) {
                fourth += FOURTH[j] * slope[j][i];
            }
            next[i] = at[i];
            double difference = Math.abs(at[i] - (state[i] + step * fourth));
            worst = Math.max(worst, difference / (TOLERANCE * Math.max(1, Math.abs(at[i]))));
        }
        return worst;
    }
}
