package underhook.core.fall;

import underhook.core.ode.DormandPrince;
import underhook.core.ode.Motion;
import underhook.core.unit.Units;

/**
 * A falling point in space with wind that changes straight with height.
 *
 * <p>A landing is known to a centimetre, which is ten times finer than anything that goes in: there are
 * very many of them.
 *
 * @source DERIVED equations of motion of a point with quadratic drag
 */
final class FallPath implements Motion {
    private static final double TOLERANCE_RATIO = 1e-5;
    private static final double FIRST_STEP_S = 0.05;

    /** No fall that may be asked for takes longer. */
    private static final double LONGEST_S = 3600;

    private static final int FORWARD = 0;
    private static final int RIGHT = 1;
    private static final int HEIGHT = 2;
    private static final int SPEEDS = 3;

    /** How it is let go. */
    record Start(
            double heightM,
            double forwardM,
            double rightM,
            double forwardMPerS,
            double rightMPerS,
            double retardationCoefficient) {}

    /** Where and how it hits; speeds are over the ground, down positive. */
    record Impact(
            double forwardM,
            double rightM,
            double forwardMPerS,
            double rightMPerS,
            double downMPerS) {}

    private final Start start;
    private final Release.Drift drift;

    FallPath(Start start, Release.Drift drift) {
        this.start = start;
        this.drift = drift;
    }

    /** Follows the point until it is on the ground. */
    Impact untilGround() {
        DormandPrince fall = new DormandPrince(this, 2 * SPEEDS, TOLERANCE_RATIO);
        fall.start(
                0,
                new double[] {
                    start.forwardM(),
                    start.rightM(),
                    start.heightM(),
                    start.forwardMPerS(),
                    start.rightMPerS(),
                    0
                },
                FIRST_STEP_S);
        while (fall.at(HEIGHT) > 0) {
            fall.step(LONGEST_S);
        }
        double whenS = landingS(fall);
        return new Impact(
                fall.within(whenS, FORWARD),
                fall.within(whenS, RIGHT),
                fall.within(whenS, SPEEDS + FORWARD),
                fall.within(whenS, SPEEDS + RIGHT),
                -fall.within(whenS, SPEEDS + HEIGHT));
    }

    /** Height falls all the way, so halving finds the ground. */
    private static double landingS(DormandPrince fall) {
        double lowS = fall.timeBefore();
        double highS = fall.time();
        for (int i = 0; i < 30; i++) {
            double middleS = (lowS + highS) / 2;
            if (fall.within(middleS, HEIGHT) > 0) {
                lowS = middleS;
            } else {
                highS = middleS;
            }
        }
        return (lowS + highS) / 2;
    }

    @Override
    public void rates(double timeS, double[] state, double[] rates) {
        double share = Math.max(0, Math.min(1, state[HEIGHT] / start.heightM()));
        double factor = drift.groundFactor() + (1 - drift.groundFactor()) * share;
        double forward = state[SPEEDS + FORWARD] - factor * drift.forwardMPerS();
        double right = state[SPEEDS + RIGHT] - factor * drift.rightMPerS();
        double up = state[SPEEDS + HEIGHT];
        double through =
                start.retardationCoefficient()
                        * Math.sqrt(forward * forward + right * right + up * up);
        rates[FORWARD] = state[SPEEDS + FORWARD];
        rates[RIGHT] = state[SPEEDS + RIGHT];
        rates[HEIGHT] = up;
        rates[SPEEDS + FORWARD] = -through * forward;
        rates[SPEEDS + RIGHT] = -through * right;
        rates[SPEEDS + HEIGHT] = -through * up - Units.STANDARD_GRAVITY_M_PER_S2;
    }
}
