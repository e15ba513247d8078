package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a load that is let go in one way hits the ground, however deep that lies: how it falls does not hang on it.
 *
 * <p>All corners of the spreads fall side by side in small even steps, as deep as was asked for. The spreads are
 * somewhat smaller than those a plan is made with, so that only a plan that is wrong is refused: mass half as far off,
 * drag 0.6 to 1.2 of its area, swing 6°, speed 3 in 100, half the gusts. Not safe for threads.
 */
final class Falls {
    /** Ground that lies less deep counts as so deep, m. */
    private static final double LEAST_M = 1;

    private static final double STEP_S = 0.02;
    private static final double GRAVITY_M_PER_S2 = 9.80665;
    private static final double SWING_RAD = Math.toRadians(6);
    private static final double SPEED_SPREAD_RATIO = 0.03;

    /** Each of six things has two values. */
    private static final int CORNERS = 64;

    /**
     * How it is let go.
     *
     * @param speedMPerS over the ground, m/s
     * @param aheadMPerS wind along the track, m/s; from behind is positive
     * @param rightMPerS wind across, m/s; from the left is positive
     * @param gustMPerS how far the wind may be off, m/s
     */
    record Toss(double speedMPerS, double aheadMPerS, double rightMPerS, double gustMPerS) {}

    /**
     * What is let go.
     *
     * @param lightCoefficient drag over mass at 1 m/s at its lightest and largest, 1/m
     * @param heavyCoefficient the same at its heaviest and smallest, 1/m
     * @param lineM from hook to load, m
     * @param trailRad how far it hangs back, rad
     */
    record Body(double lightCoefficient, double heavyCoefficient, double lineM, double trailRad) {}

    private final double apartM;
    private final double[] dragCoefficient = new double[CORNERS];
    private final double[] windAheadMPerS = new double[CORNERS];
    private final double[] windRightMPerS = new double[CORNERS];
    private final double[] aheadM = new double[CORNERS];
    private final double[] rightM = new double[CORNERS];
    private final double[] downM = new double[CORNERS];
    private final double[] aheadMPerS = new double[CORNERS];
    private final double[] rightMPerS = new double[CORNERS];
    private final double[] downMPerS = new double[CORNERS];

    /** For each corner the depth that it comes to next, and its number. */
    private final double[] nextM = new double[CORNERS];

    private final int[] next = new int[CORNERS];
    private final List<Depth> depths = new ArrayList<>();
    private final Map<Integer, FallBox> boxes = new HashMap<>();

    /**
     * @param apartM depths at which landings are looked at lie so far apart, m
     */
    Falls(Body body, Toss toss, double apartM) {
        this.apartM = apartM;
        double swing = Math.sqrt(2 * GRAVITY_M_PER_S2 * body.lineM() * (1 - Math.cos(SWING_RAD)));
        for (int i = 0; i < CORNERS; i++) {
            dragCoefficient[i] = side(i, 0) > 0 ? body.heavyCoefficient() : body.lightCoefficient();
            windAheadMPerS[i] = toss.aheadMPerS() + side(i, 1) * toss.gustMPerS();
            windRightMPerS[i] = toss.rightMPerS() + side(i, 2) * toss.gustMPerS();
            aheadM[i] = body.lineM() * Math.sin(side(i, 3) * SWING_RAD - body.trailRad());
            rightM[i] = side(i, 4) * body.lineM() * Math.sin(SWING_RAD);
            aheadMPerS[i] =
                    toss.speedMPerS() * (1 + side(i, 5) * SPEED_SPREAD_RATIO) + side(i, 3) * swing;
            rightMPerS[i] = side(i, 4) * swing;
        }
        Arrays.fill(nextM, LEAST_M);
    }

    private static int side(int corner, int bit) {
        return (corner >> bit & 1) == 0 ? -1 : 1;
    }

    /**
     * The box of all landings.
     *
     * @param depth how deep the ground lies below what is let go, in depths apart; 0 is {@link #LEAST_M}
     */
    FallBox at(int depth) {
        while (depths.size() <= depth || depths.get(depth).landed < CORNERS) {
            step();
            land();
        }
        return boxes.computeIfAbsent(depth, unused -> depths.get(depth).toBox());
    }

    private void step() {
        double[] drag = dragCoefficient;
        double[] windAhead = windAheadMPerS;
        double[] windRight = windRightMPerS;
        double[] vAhead = aheadMPerS;
        double[] vRight = rightMPerS;
        double[] vDown = downMPerS;
        for (int i = 0; i < CORNERS; i++) {
            double ahead = vAhead[i] - windAhead[i];
            double right = vRight[i] - windRight[i];
            double down = vDown[i];
            double through = drag[i] * Math.sqrt(ahead * ahead + right * right + down * down);
            vAhead[i] -= through * ahead * STEP_S;
            vRight[i] -= through * right * STEP_S;
            vDown[i] += (GRAVITY_M_PER_S2 - through * down) * STEP_S;
        }
        move(aheadM, vAhead);
        move(rightM, vRight);
        move(downM, vDown);
    }

    private static void move(double[] atM, double[] speedMPerS) {
        for (int i = 0; i < CORNERS; i++) {
            atM[i] += speedMPerS[i] * STEP_S;
        }
    }

    /** Enters where each corner is at the depths that it has come to. */
    private void land() {
        double[] down = downM;
        double[] due = nextM;
        for (int i = 0; i < CORNERS; i++) {
            while (down[i] >= due[i]) {
                if (depths.size() == next[i]) {
                    depths.add(new Depth());
                }
                depths.get(next[i]).hold(i);
                next[i]++;
                due[i] = Math.max(LEAST_M, next[i] * apartM);
            }
        }
    }

    /** Landings at one depth, of the corners that have come to it. */
    private final class Depth {
        private int landed;
        private final Farthest ahead = new Farthest();
        private final Farthest back = new Farthest();
        private final Farthest right = new Farthest();
        private final Farthest left = new Farthest();

        void hold(int i) {
            landed++;
            ahead.hold(aheadM[i], aheadMPerS[i], downMPerS[i]);
            back.hold(-aheadM[i], -aheadMPerS[i], downMPerS[i]);
            right.hold(rightM[i], rightMPerS[i], downMPerS[i]);
            left.hold(-rightM[i], -rightMPerS[i], downMPerS[i]);
        }

        FallBox toBox() {
            return new FallBox(
                    -back.outM,
                    ahead.outM,
                    left.outM,
                    right.outM,
                    List.of(ahead.blow(), back.blow(), right.blow(), left.blow()));
        }
    }

    /** What lands farthest to one side. */
    private static final class Farthest {
        private double outM = Double.NEGATIVE_INFINITY;
        private double outMPerS;
        private double downMPerS;

        void hold(double oneM, double oneOutMPerS, double oneDownMPerS) {
            if (oneM > outM) {
                outM = oneM;
                outMPerS = oneOutMPerS;
                downMPerS = oneDownMPerS;
            }
        }

        FallBox.Blow blow() {
            return new FallBox.Blow(Math.max(0, outMPerS), downMPerS);
        }
    }
}
