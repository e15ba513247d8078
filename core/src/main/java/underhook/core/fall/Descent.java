package underhook.core.fall;

import underhook.core.ode.DormandPrince;
import underhook.core.unit.Units;

/** Follows a falling point with quadratic drag in a steady wind until it meets the ground. */
final class Descent {
    private static final int FORWARD = 0;
    private static final int HEIGHT = 1;
    private static final int FORWARD_SPEED = 2;
    private static final int UP_SPEED = 3;

    /** Error of a step over the larger of the value and 1 m or 1 m/s. */
    private static final double TOLERANCE_RATIO = 1e-10;

    private final double retardationCoefficient;
    private final double tailwindMPerS;
    private final DormandPrince course = new DormandPrince(this::rates, 4, TOLERANCE_RATIO);

    /**
     * For one body in one wind.
     *
     * @param retardationCoefficient drag over mass at 1 m/s, 1/m
     */
    Descent(double retardationCoefficient, double tailwindMPerS) {
        this.retardationCoefficient = retardationCoefficient;
        this.tailwindMPerS = tailwindMPerS;
    }

    /** Follows the point until its height is 0. */
    Fall untilGround(double heightM, double groundSpeedMPerS) {
        course.start(0, new double[] {0, heightM, groundSpeedMPerS, 0}, 0.01);
        while (course.at(HEIGHT) > 0) {
            course.step(Double.POSITIVE_INFINITY);
        }
        // A step that ends on the ground is truer than the interpolant within one that goes
        // through.
        double landing = landingS();
        course.stepBack();
        while (course.time() < landing) {
            course.step(landing);
        }
        return Fall.hit(
                landing, course.at(FORWARD), course.at(FORWARD_SPEED), -course.at(UP_SPEED));
    }

    /** When within the last step the height passes 0, by bisection: it falls all the way. */
    private double landingS() {
        DormandPrince.Course height = course.course(HEIGHT);
        double low = course.timeBefore();
        double high = course.time();
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (height.at(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        // Never the start of the step itself: there the point is still above the ground.
        return high;
    }

    @SuppressWarnings("UnusedVariable") // A falling body's rates do not depend on the time.
    private void rates(double timeS, double[] state, double[] rates) {
        double air = state[FORWARD_SPEED] - tailwindMPerS;
        double up = state[UP_SPEED];
        double through = retardationCoefficient * Math.sqrt(air * air + up * up);
        rates[FORWARD] = state[FORWARD_SPEED];
        rates[HEIGHT] = up;
        rates[FORWARD_SPEED] = -through * air;
        rates[UP_SPEED] = -through * up - Units.STANDARD_GRAVITY_M_PER_S2;
    }
}
