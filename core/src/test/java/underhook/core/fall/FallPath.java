package underhook.core.fall;

import java.util.ArrayList;
import java.util.List;
import underhook.core.ode.DormandPrince;
import underhook.core.ode.Motion;
import underhook.core.unit.Units;

/**
 * A falling point in space in a steady wind, by steps whose error is held: what many falls at once are compared with.
 *
 * @source DERIVED equations of motion of a point with quadratic drag
 */
final class FallPath implements Motion {
    private static final double TOLERANCE_RATIO = 1e-5;
    private static final double FIRST_STEP_S = 0.05;

    /** No fall that may be asked for takes longer. */
    private static final double LONGEST_S = 3600;

    /** A depth is met to this, m. */
    private static final double MET_M = 1e-6;

    private static final int FORWARD = 0;
    private static final int RIGHT = 1;
    private static final int DOWN = 2;
    private static final int SPEEDS = 3;

    private final FallingCorners.Start start;
    private final FallingCorners.Wind wind;

    FallPath(FallingCorners.Start start, FallingCorners.Wind wind) {
        this.start = start;
        this.wind = wind;
    }

    /**
     * Follows the point.
     *
     * @param depthsM how deep the ground lies below where it is let go, least first, m
     * @return how it hits at each of them
     */
    List<FallingCorners.Impact> untilGround(List<Double> depthsM) {
        DormandPrince fall = new DormandPrince(this, 2 * SPEEDS, TOLERANCE_RATIO);
        fall.start(
                0,
                new double[] {
                    start.forwardM(), start.rightM(), 0, start.forwardMPerS(), start.rightMPerS(), 0
                },
                FIRST_STEP_S);
        List<FallingCorners.Impact> hits = new ArrayList<>();
        for (double depthM : depthsM) {
            while (fall.at(DOWN) < depthM) {
                fall.step(LONGEST_S);
            }
            hits.add(impact(fall, passingS(fall, depthM)));
        }
        return hits;
    }

    private static FallingCorners.Impact impact(DormandPrince fall, double whenS) {
        return new FallingCorners.Impact(
                fall.within(whenS, FORWARD),
                fall.within(whenS, RIGHT),
                fall.within(whenS, SPEEDS + FORWARD),
                fall.within(whenS, SPEEDS + RIGHT),
                fall.within(whenS, SPEEDS + DOWN));
    }

    /** When within the last step a depth is passed, by false position: it falls all the way. */
    private static double passingS(DormandPrince fall, double depthM) {
        DormandPrince.Course down = fall.course(DOWN);
        double lowS = fall.timeBefore();
        double highS = fall.time();
        double aboveM = depthM - fall.atBefore(DOWN);
        double belowM = fall.at(DOWN) - depthM;
        double whenS = highS;
        double offM = belowM;
        while (Math.abs(offM) > MET_M) {
            double lastM = offM;
            whenS = lowS + (highS - lowS) * aboveM / (aboveM + belowM);
            offM = down.at(whenS) - depthM;
            // An end that stays twice counts half, so that the other comes nearer too.
            double staysFactor = offM > 0 == lastM > 0 ? 0.5 : 1;
            if (offM > 0) {
                highS = whenS;
                belowM = offM;
                aboveM *= staysFactor;
            } else {
                lowS = whenS;
                aboveM = -offM;
                belowM *= staysFactor;
            }
        }
        return whenS;
    }

    @Override
    public void rates(double timeS, double[] state, double[] rates) {
        double forward = state[SPEEDS + FORWARD] - wind.forwardMPerS();
        double right = state[SPEEDS + RIGHT] - wind.rightMPerS();
        double down = state[SPEEDS + DOWN];
        double through =
                start.retardationCoefficient()
                        * Math.sqrt(forward * forward + right * right + down * down);
        rates[FORWARD] = state[SPEEDS + FORWARD];
        rates[RIGHT] = state[SPEEDS + RIGHT];
        rates[DOWN] = down;
        rates[SPEEDS + FORWARD] = -through * forward;
        rates[SPEEDS + RIGHT] = -through * right;
        rates[SPEEDS + DOWN] = Units.STANDARD_GRAVITY_M_PER_S2 - through * down;
    }
}
