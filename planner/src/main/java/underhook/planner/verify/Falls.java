package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a load that is let go in one way hits the ground, however deep that lies: how it falls does not hang on it.
 *
 * <p>All corners of the spreads fall side by side by the midpoint rule, as deep as was asked for. The spreads are
 * somewhat smaller than those a plan is made with, so that only a plan that is wrong is refused: mass half as far off,
 * drag 0.6 to 1.2 of its area, swing 6°, speed 3 in 100, half the gusts. Not safe for threads.
 */
final class Falls {
    /** Ground that lies less deep counts as so deep, m. */
    private static final double LEAST_M = 1;

    private static final double MOST_STEP_S = 0.1;

    /** A step is no longer than this part of the time in which drag alone would stop the fastest. */
    private static final double STEP_RATIO = 0.3;

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

    /** One direction of all corners. */
    private static final class Axis {
        private final double pullMPerS2;
        private final double[] windMPerS = new double[CORNERS];
        private final double[] atM = new double[CORNERS];
        private final double[] speedMPerS = new double[CORNERS];

        /** Half way through the last step: at this speed it was gone. */
        private final double[] midMPerS = new double[CORNERS];

        Axis(double pullMPerS2) {
            this.pullMPerS2 = pullMPerS2;
        }

        /** Sets speeds on from where they were: by the drag over speed at some speeds. */
        void gain(double[] toMPerS, double[] byMPerS, double[] rates, double timeS) {
            double[] from = speedMPerS;
            double[] wind = windMPerS;
            for (int i = 0; i < CORNERS; i++) {
                toMPerS[i] = from[i] + timeS * (pullMPerS2 - rates[i] * (byMPerS[i] - wind[i]));
            }
        }

        void move(double timeS) {
            double[] by = midMPerS;
            double[] to = atM;
            for (int i = 0; i < CORNERS; i++) {
                to[i] += timeS * by[i];
            }
        }

        /** Where one was so long ago, within the last step. */
        double beforeM(int i, double agoS) {
            return atM[i] - agoS * midMPerS[i];
        }
    }

    private final double apartM;
    private final double[] dragCoefficient = new double[CORNERS];

    /** Drag over speed, 1/s. */
    private final double[] rates = new double[CORNERS];

    private final Axis ahead = new Axis(0);
    private final Axis right = new Axis(0);
    private final Axis down = new Axis(GRAVITY_M_PER_S2);

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
            ahead.windMPerS[i] = toss.aheadMPerS() + side(i, 1) * toss.gustMPerS();
            right.windMPerS[i] = toss.rightMPerS() + side(i, 2) * toss.gustMPerS();
            ahead.atM[i] = body.lineM() * Math.sin(side(i, 3) * SWING_RAD - body.trailRad());
            right.atM[i] = side(i, 4) * body.lineM() * Math.sin(SWING_RAD);
            ahead.speedMPerS[i] =
                    toss.speedMPerS() * (1 + side(i, 5) * SPEED_SPREAD_RATIO) + side(i, 3) * swing;
            right.speedMPerS[i] = side(i, 4) * swing;
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
     * @throws ArithmeticException if a number is not finite
     */
    FallBox at(int depth) {
        while (depths.size() <= depth || depths.get(depth).landed < CORNERS) {
            step();
            land();
        }
        return boxes.computeIfAbsent(depth, unused -> depths.get(depth).toBox());
    }

    private void step() {
        drag(ahead.speedMPerS, right.speedMPerS, down.speedMPerS);
        double fastest = 0;
        for (double rate : rates) {
            fastest = Math.max(fastest, rate);
        }
        double stepS = Math.min(MOST_STEP_S, STEP_RATIO / fastest);
        if (!(stepS > 0)) {
            throw new ArithmeticException("a fall is not finite.");
        }
        for (Axis axis : List.of(ahead, right, down)) {
            axis.gain(axis.midMPerS, axis.speedMPerS, rates, stepS / 2);
        }
        drag(ahead.midMPerS, right.midMPerS, down.midMPerS);
        for (Axis axis : List.of(ahead, right, down)) {
            axis.gain(axis.speedMPerS, axis.midMPerS, rates, stepS);
            axis.move(stepS);
        }
    }

    /** Drag over speed at such speeds. */
    private void drag(double[] aheadMPerS, double[] rightMPerS, double[] downMPerS) {
        double[] to = rates;
        double[] windAhead = ahead.windMPerS;
        double[] windRight = right.windMPerS;
        for (int i = 0; i < CORNERS; i++) {
            double a = aheadMPerS[i] - windAhead[i];
            double r = rightMPerS[i] - windRight[i];
            double d = downMPerS[i];
            to[i] = dragCoefficient[i] * Math.sqrt(a * a + r * r + d * d);
        }
    }

    /** Enters where each corner was at the depths that it has passed. */
    private void land() {
        double[] at = down.atM;
        double[] due = nextM;
        for (int i = 0; i < CORNERS; i++) {
            while (at[i] >= due[i]) {
                if (depths.size() == next[i]) {
                    depths.add(new Depth());
                }
                depths.get(next[i]).hold(i, (at[i] - due[i]) / down.midMPerS[i]);
                next[i]++;
                due[i] = Math.max(LEAST_M, next[i] * apartM);
            }
        }
    }

    /** Landings at one depth, of the corners that have come to it. */
    private final class Depth {
        private int landed;
        private final Farthest toFront = new Farthest();
        private final Farthest toBack = new Farthest();
        private final Farthest toRight = new Farthest();
        private final Farthest toLeft = new Farthest();

        void hold(int i, double agoS) {
            landed++;
            double aheadM = ahead.beforeM(i, agoS);
            double rightM = right.beforeM(i, agoS);
            double downMPerS = down.midMPerS[i];
            toFront.hold(aheadM, ahead.midMPerS[i], downMPerS);
            toBack.hold(-aheadM, -ahead.midMPerS[i], downMPerS);
            toRight.hold(rightM, right.midMPerS[i], downMPerS);
            toLeft.hold(-rightM, -right.midMPerS[i], downMPerS);
        }

        FallBox toBox() {
            return new FallBox(
                    -toBack.outM,
                    toFront.outM,
                    toLeft.outM,
                    toRight.outM,
                    List.of(toFront.blow(), toBack.blow(), toRight.blow(), toLeft.blow()));
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
