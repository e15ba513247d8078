package underhook.core.fall;

import underhook.core.unit.Units;

/**
 * A falling point in space with wind that changes straight with height, by the classical fourth-order
 * method in equal steps: some centimetres are enough here, and there are very many of them.
 *
 * @source DERIVED equations of motion of a point with quadratic drag
 */
final class FallPath {
    private static final double LONGEST_STEP_S = 0.1;

    /** The drag takes at most this part of the speed away in a step. */
    private static final double STEP_FRACTION = 0.3;

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
        double[] at = {
            start.forwardM(),
            start.rightM(),
            start.heightM(),
            start.forwardMPerS(),
            start.rightMPerS(),
            0
        };
        double stepS = stepS();
        double[] before = at.clone();
        while (at[2] > 0) {
            System.arraycopy(at, 0, before, 0, at.length);
            step(at, stepS);
        }
        // The last piece is short: straight between its ends, its curve below a millimetre at 0.1 s
        // in height and far below in plan.
        double share = before[2] / (before[2] - at[2]);
        return new Impact(
                mixed(before[0], at[0], share),
                mixed(before[1], at[1], share),
                mixed(before[3], at[3], share),
                mixed(before[4], at[4], share),
                -mixed(before[5], at[5], share));
    }

    private static double mixed(double fromM, double toM, double shareRatio) {
        return fromM + shareRatio * (toM - fromM);
    }

    private double stepS() {
        double fastest =
                Math.hypot(start.forwardMPerS(), start.rightMPerS())
                        + Math.hypot(drift.forwardMPerS(), drift.rightMPerS())
                        + Math.sqrt(2 * Units.STANDARD_GRAVITY_M_PER_S2 * start.heightM());
        double rate = start.retardationCoefficient() * fastest;
        return rate * LONGEST_STEP_S > STEP_FRACTION ? STEP_FRACTION / rate : LONGEST_STEP_S;
    }

    private final double[][] slopes = new double[4][6];
    private final double[] probe = new double[6];

    private void step(double[] at, double stepS) {
        slope(at, slopes[0]);
        slope(along(at, slopes[0], stepS / 2), slopes[1]);
        slope(along(at, slopes[1], stepS / 2), slopes[2]);
        slope(along(at, slopes[2], stepS), slopes[3]);
        for (int i = 0; i < at.length; i++) {
            at[i] +=
                    stepS / 6 * (slopes[0][i] + 2 * slopes[1][i] + 2 * slopes[2][i] + slopes[3][i]);
        }
    }

    private double[] along(double[] at, double[] slope, double stepS) {
        for (int i = 0; i < at.length; i++) {
            probe[i] = at[i] + stepS * slope[i];
        }
        return probe;
    }

    private void slope(double[] at, double[] slope) {
        double share = Math.max(0, Math.min(1, at[2] / start.heightM()));
        double factor = drift.groundFactor() + (1 - drift.groundFactor()) * share;
        double forward = at[3] - factor * drift.forwardMPerS();
        double right = at[4] - factor * drift.rightMPerS();
        double through =
                start.retardationCoefficient()
                        * Math.sqrt(forward * forward + right * right + at[5] * at[5]);
        slope[0] = at[3];
        slope[1] = at[4];
        slope[2] = at[5];
        slope[3] = -through * forward;
        slope[4] = -through * right;
        slope[5] = -through * at[5] - Units.STANDARD_GRAVITY_M_PER_S2;
    }
}
