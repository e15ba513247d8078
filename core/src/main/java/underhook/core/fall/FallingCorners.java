package underhook.core.fall;

import java.util.ArrayList;
import java.util.List;
import underhook.core.unit.Units;

/**
 * Points that fall side by side in steady winds, each with a start, a wind and a drag of its own.
 *
 * <p>Classic Runge-Kutta steps of fourth order, all points by the same: short against the time in which drag turns
 * the fastest into the wind. A landing is known to a centimetre, which is ten times finer than anything that goes in.
 * There are very many of them, so each number of all points lies in one row, which the processor takes several at a
 * time.
 *
 * @source DERIVED equations of motion of a point with quadratic drag
 */
final class FallingCorners {
    private static final double MOST_STEP_S = 0.2;

    /** Of the time in which the drag that acts would stop a point. */
    private static final double STEP_RATIO = 0.25;

    /** A depth is met to this, m. */
    private static final double MET_M = 1e-6;

    private static final int MOST_TRIES = 20;

    /** Where and how one hits; speeds are over the ground, down positive. */
    record Impact(
            double forwardM,
            double rightM,
            double forwardMPerS,
            double rightMPerS,
            double downMPerS) {}

    /**
     * How one is let go.
     *
     * @param retardationCoefficient drag over mass at 1 m/s, 1/m
     */
    record Start(
            double forwardM,
            double rightM,
            double forwardMPerS,
            double rightMPerS,
            double retardationCoefficient) {}

    /** Steady wind along and across the track. */
    record Wind(double forwardMPerS, double rightMPerS) {}

    private final int count;
    private final double[] dragCoefficient;

    /** Drag over speed, 1/s. */
    private final double[] rates;

    private final Axis forward;
    private final Axis right;
    private final Axis down;
    private double stepS;

    FallingCorners(List<Start> starts, List<Wind> winds) {
        this.count = starts.size();
        this.dragCoefficient = new double[count];
        this.rates = new double[count];
        this.forward = new Axis(count);
        this.right = new Axis(count);
        this.down = new Axis(count);
        for (int i = 0; i < count; i++) {
            Start start = starts.get(i);
            dragCoefficient[i] = start.retardationCoefficient();
            forward.atM[i] = start.forwardM();
            forward.speedMPerS[i] = start.forwardMPerS();
            forward.windMPerS[i] = winds.get(i).forwardMPerS();
            right.atM[i] = start.rightM();
            right.speedMPerS[i] = start.rightMPerS();
            right.windMPerS[i] = winds.get(i).rightMPerS();
        }
        pull(forward.speedMPerS, right.speedMPerS, down.speedMPerS);
    }

    /**
     * Follows them.
     *
     * @param depthsM how deep the ground lies below where they are let go, least first, m
     * @return how each hits at each of them
     * @throws ArithmeticException if a number is not finite
     */
    List<Impact> untilGround(List<Double> depthsM) {
        double[] dueM = depthsM.stream().mapToDouble(Double::doubleValue).toArray();
        int[] passed = new int[count];
        List<Impact> hits = new ArrayList<>(count * dueM.length);
        while (hits.size() < count * dueM.length) {
            step();
            for (int i = 0; i < count; i++) {
                while (passed[i] < dueM.length && down.atM[i] >= dueM[passed[i]]) {
                    hits.add(impact(i, partFraction(i, dueM[passed[i]])));
                    passed[i]++;
                }
            }
        }
        return hits;
    }

    private void step() {
        double fastest = 0;
        for (double rate : rates) {
            fastest = Math.max(fastest, rate);
        }
        stepS = Math.min(MOST_STEP_S, STEP_RATIO / fastest);
        if (!(stepS > 0)) {
            throw new ArithmeticException("a fall is not finite.");
        }
        forward.begin();
        right.begin();
        down.begin();
        stage(stepS / 2, 2);
        stage(stepS / 2, 2);
        stage(stepS, 1);
        forward.end(stepS);
        right.end(stepS);
        down.end(stepS);
        pull(forward.speedMPerS, right.speedMPerS, down.speedMPerS);
    }

    private void stage(double timeS, int weight) {
        forward.look(timeS, weight);
        right.look(timeS, weight);
        down.look(timeS, weight);
        pull(forward.trialMPerS, right.trialMPerS, down.trialMPerS);
        forward.count(weight);
        right.count(weight);
        down.count(weight);
    }

    /** How fast they gain speed at such speeds. */
    private void pull(double[] aheadMPerS, double[] asideMPerS, double[] downMPerS) {
        double[] drag = dragCoefficient;
        double[] rate = rates;
        double[] windAhead = forward.windMPerS;
        double[] windAside = right.windMPerS;
        double[] gainAhead = forward.gainMPerS2;
        double[] gainAside = right.gainMPerS2;
        double[] gainDown = down.gainMPerS2;
        for (int i = 0; i < count; i++) {
            double f = aheadMPerS[i] - windAhead[i];
            double r = asideMPerS[i] - windAside[i];
            double d = downMPerS[i];
            double through = drag[i] * Math.sqrt(f * f + r * r + d * d);
            rate[i] = through;
            gainAhead[i] = -through * f;
            gainAside[i] = -through * r;
            gainDown[i] = Units.STANDARD_GRAVITY_M_PER_S2 - through * d;
        }
    }

    /** Which part of the last step brings one to a depth, by Newton's method: it falls all the way, ever less bent. */
    private double partFraction(int i, double depthM) {
        double beforeM = down.atBeforeM[i];
        double part = (depthM - beforeM) / (down.atM[i] - beforeM);
        for (int k = 0; k < MOST_TRIES; k++) {
            double offM = down.withinM(i, Blend.at(part), stepS) - depthM;
            if (Math.abs(offM) <= MET_M) {
                break;
            }
            double wholeStepM = down.withinM(i, Blend.slopeAt(part), stepS);
            part = Math.max(0, Math.min(1, part - offM / wholeStepM));
        }
        return part;
    }

    private Impact impact(int i, double partFraction) {
        Blend blend = Blend.at(partFraction);
        return new Impact(
                forward.withinM(i, blend, stepS),
                right.withinM(i, blend, stepS),
                forward.withinMPerS(i, blend, stepS),
                right.withinMPerS(i, blend, stepS),
                down.withinMPerS(i, blend, stepS));
    }

    /** The cubic through a step: what counts of both ends, and of how fast it goes on there. */
    private record Blend(
            double fromFraction,
            double fromRiseFraction,
            double toFraction,
            double toRiseFraction) {
        static Blend at(double partFraction) {
            double part = partFraction;
            double rest = 1 - part;
            return new Blend(
                    rest * rest * (1 + 2 * part),
                    rest * rest * part,
                    part * part * (3 - 2 * part),
                    -part * part * rest);
        }

        /** Of how fast it goes on within the step, in steps. */
        static Blend slopeAt(double partFraction) {
            double part = partFraction;
            double rest = 1 - part;
            return new Blend(
                    -6 * part * rest,
                    rest * (1 - 3 * part),
                    6 * part * rest,
                    part * (3 * part - 2));
        }
    }

    /** One direction of all points: where they are, how fast, and how fast they gain speed. */
    private static final class Axis {
        private final double[] windMPerS;
        private final double[] atM;
        private final double[] speedMPerS;
        private final double[] gainMPerS2;

        /** Where the last step began. */
        private final double[] atBeforeM;

        private final double[] speedBeforeMPerS;
        private final double[] gainBeforeMPerS2;

        /** Speed within a step, and the weighed sums of speeds and gains over it. */
        private final double[] trialMPerS;

        private final double[] speedsMPerS;
        private final double[] gainsMPerS2;

        Axis(int count) {
            this.windMPerS = new double[count];
            this.atM = new double[count];
            this.speedMPerS = new double[count];
            this.gainMPerS2 = new double[count];
            this.atBeforeM = new double[count];
            this.speedBeforeMPerS = new double[count];
            this.gainBeforeMPerS2 = new double[count];
            this.trialMPerS = new double[count];
            this.speedsMPerS = new double[count];
            this.gainsMPerS2 = new double[count];
        }

        void begin() {
            System.arraycopy(atM, 0, atBeforeM, 0, atM.length);
            System.arraycopy(speedMPerS, 0, speedBeforeMPerS, 0, atM.length);
            System.arraycopy(gainMPerS2, 0, gainBeforeMPerS2, 0, atM.length);
            System.arraycopy(speedMPerS, 0, speedsMPerS, 0, atM.length);
            System.arraycopy(gainMPerS2, 0, gainsMPerS2, 0, atM.length);
        }

        /** On from the beginning with the gain found last. */
        void look(double timeS, int weight) {
            double[] from = speedBeforeMPerS;
            double[] by = gainMPerS2;
            double[] to = trialMPerS;
            double[] sum = speedsMPerS;
            for (int i = 0; i < to.length; i++) {
                double v = from[i] + timeS * by[i];
                to[i] = v;
                sum[i] += weight * v;
            }
        }

        void count(int weight) {
            double[] by = gainMPerS2;
            double[] sum = gainsMPerS2;
            for (int i = 0; i < sum.length; i++) {
                sum[i] += weight * by[i];
            }
        }

        void end(double stepS) {
            double[] at = atM;
            double[] speed = speedMPerS;
            double[] speeds = speedsMPerS;
            double[] gains = gainsMPerS2;
            double partS = stepS / 6;
            for (int i = 0; i < at.length; i++) {
                at[i] += partS * speeds[i];
                speed[i] += partS * gains[i];
            }
        }

        /** Through the last step, by where it began and ended and how fast. */
        double withinM(int i, Blend blend, double stepS) {
            return blend.fromFraction() * atBeforeM[i]
                    + blend.fromRiseFraction() * stepS * speedBeforeMPerS[i]
                    + blend.toFraction() * atM[i]
                    + blend.toRiseFraction() * stepS * speedMPerS[i];
        }

        double withinMPerS(int i, Blend blend, double stepS) {
            return blend.fromFraction() * speedBeforeMPerS[i]
                    + blend.fromRiseFraction() * stepS * gainBeforeMPerS2[i]
                    + blend.toFraction() * speedMPerS[i]
                    + blend.toRiseFraction() * stepS * gainMPerS2[i];
        }
    }
}
