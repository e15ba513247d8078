package underhook.core.fall;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * Adaptive Runge-Kutta integration of a falling point, fifth order with fourth-order error.
 *
 * @source DORMAND-PRINCE-1980 table 2, RK5(4)7M
 */
final class DormandPrince {
    private static final double[][] STAGE_COEFFICIENT = {
        {},
        {1.0 / 5},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}
    };
    private static final double[] FOURTH_COEFFICIENT = {
        5179.0 / 57600, 0, 7571.0 / 16695, 393.0 / 640, -92097.0 / 339200, 187.0 / 2100, 1.0 / 40
    };

    /** Error of a step over the larger of the value and 1 m or 1 m/s. */
    private static final double TOLERANCE_RATIO = 1e-10;

    /** Where the point is and how it moves. */
    record State(double forwardM, double heightM, double forwardMPerS, double upMPerS) {
        private State along(double stepS, Slope[] slopes, double[] weightCoefficient) {
            State at = this;
            for (int i = 0; i < weightCoefficient.length; i++) {
                double part = stepS * weightCoefficient[i];
                at =
                        new State(
                                at.forwardM + part * slopes[i].forwardMPerS,
                                at.heightM + part * slopes[i].upMPerS,
                                at.forwardMPerS + part * slopes[i].forwardMPerS2,
                                at.upMPerS + part * slopes[i].upMPerS2);
            }
            return at;
        }

        private double errorRatio(State other) {
            double worst = Ranges.differenceRatio(forwardM, other.forwardM);
            worst = Math.max(worst, Ranges.differenceRatio(heightM, other.heightM));
            worst = Math.max(worst, Ranges.differenceRatio(forwardMPerS, other.forwardMPerS));
            return Math.max(worst, Ranges.differenceRatio(upMPerS, other.upMPerS))
                    / TOLERANCE_RATIO;
        }
    }

    private record Slope(
            double forwardMPerS, double upMPerS, double forwardMPerS2, double upMPerS2) {}

    private record Step(State end, double errorRatio) {}

    /** The end of a fall. */
    record Landing(double timeS, State state) {}

    private final double retardationCoefficient;
    private final double tailwindMPerS;

    /**
     * For one body in one wind.
     *
     * @param retardationCoefficient drag over mass at 1 m/s, 1/m
     */
    DormandPrince(double retardationCoefficient, double tailwindMPerS) {
        this.retardationCoefficient = retardationCoefficient;
        this.tailwindMPerS = tailwindMPerS;
    }

    /** Follows the point until its height passes 0. */
    Landing untilGround(double heightM, double groundSpeedMPerS) {
        State state = new State(0, heightM, groundSpeedMPerS, 0);
        double timeS = 0;
        double stepS = 0.01;
        while (true) {
            Step step = step(state, stepS);
            if (step.errorRatio() > 1) {
                stepS *= Math.max(0.2, 0.9 * Math.pow(step.errorRatio(), -0.2));
                continue;
            }
            if (step.end().heightM() <= 0) {
                double lastS = landingStepS(state, stepS);
                return new Landing(timeS + lastS, step(state, lastS).end());
            }
            timeS += stepS;
            state = step.end();
            stepS *= Math.min(5, 0.9 * Math.pow(Math.max(step.errorRatio(), 1e-10), -0.2));
        }
    }

    /** The part of a good step that ends on the ground, by bisection: height falls all the way. */
    private double landingStepS(State state, double stepS) {
        double low = 0;
        double high = stepS;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (step(state, middle).end().heightM() > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private Step step(State state, double stepS) {
        Slope[] slopes = new Slope[STAGE_COEFFICIENT.length];
        State at = state;
        for (int stage = 0; stage < slopes.length; stage++) {
            at = state.along(stepS, slopes, STAGE_COEFFICIENT[stage]);
            slopes[stage] = slope(at);
        }
        State fourth = state.along(stepS, slopes, FOURTH_COEFFICIENT);
        return new Step(at, at.errorRatio(fourth));
    }

    private Slope slope(State at) {
        double airMPerS = at.forwardMPerS() - tailwindMPerS;
        double through = retardationCoefficient * Math.hypot(airMPerS, at.upMPerS());
        return new Slope(
                at.forwardMPerS(),
                at.upMPerS(),
                -through * airMPerS,
                -through * at.upMPerS() - Units.STANDARD_GRAVITY_M_PER_S2);
    }
}
