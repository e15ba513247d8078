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
    private final double[] retardation;

    /** Drag over speed, 1/s. */
    private final double[] rates;

    private final Axis forward;
    private final Axis right;
    private final Axis down;
    private double stepS;

    FallingCorners(List<Start> starts, List<Wind> winds) {
        this.count = starts.size();
        this.retardation = new double[count];
        this.rates = new double[count];
        this.forward = new Axis(count);
        this.right = new Axis(count);
        this.down = new Axis(count);
        for (int i = 0; i < count; i++) {
            Start start = starts.get(i);
            retardation[i] = start.retardationCoefficient();
            forward.at[i] = start.forwardM();
            forward.speed[i] = start.forwardMPerS();
            forward.wind[i] = winds.get(i).forwardMPerS();
            right.at[i] = start.rightM();
            right.speed[i] = start.rightMPerS();
            right.wind[i] = winds.get(i).rightMPerS();
        }
        pull(forward.speed, right.speed, down.speed);
    }

    /**
     * Follows them.
     *
     * @param depthsM how deep the ground lies below where they are let go, least first, m
     * @return how each hits at each of them
     * @throws ArithmeticException if a number is not finite
     */
    List<Impact> untilGround(List<Double> depthsM) {
        double[] depths = depthsM.stream().mapToDouble(Double::doubleValue).toArray();
        int[] passed = new int[count];
        List<Impact> hits = new ArrayList<>(count * depths.length);
        while (hits.size() < count * depths.length) {
            step();
            for (int i = 0; i < count; i++) {
                while (passed[i] < depths.length && down.at[i] >= depths[passed[i]]) {
                    hits.add(impact(i, part(i, depths[passed[i]])));
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
        pull(forward.speed, right.speed, down.speed);
    }

    private void stage(double timeS, double weight) {
        forward.look(timeS, weight);
        right.look(timeS, weight);
        down.look(timeS, weight);
        pull(forward.trial, right.trial, down.trial);
        forward.count(weight);
        right.count(weight);
        down.count(weight);
    }

    /** How fast they gain speed at such speeds. */
    private void pull(double[] ahead, double[] aside, double[] downward) {
        double[] drag = retardation;
        double[] rate = rates;
        double[] windAhead = forward.wind;
        double[] windAside = right.wind;
        double[] gainAhead = forward.gain;
        double[] gainAside = right.gain;
        double[] gainDown = down.gain;
        for (int i = 0; i < count; i++) {
            double f = ahead[i] - windAhead[i];
            double r = aside[i] - windAside[i];
            double d = downward[i];
            double through = drag[i] * Math.sqrt(f * f + r * r + d * d);
            rate[i] = through;
            gainAhead[i] = -through * f;
            gainAside[i] = -through * r;
            gainDown[i] = Units.STANDARD_GRAVITY_M_PER_S2 - through * d;
        }
    }

    /** Which part of the last step brings one to a depth, by Newton's method: it falls all the way, ever less bent. */
    private double part(int i, double depthM) {
        double aboveM = depthM - down.atBefore[i];
        double part = aboveM / (down.at[i] - down.atBefore[i]);
        for (int k = 0; k < MOST_TRIES; k++) {
            double offM = down.atWithin(i, part, stepS) - depthM;
            if (Math.abs(offM) <= MET_M) {
                break;
            }
            part = Math.max(0, Math.min(1, part - offM / down.riseWithin(i, part, stepS)));
        }
        return part;
    }

    private Impact impact(int i, double part) {
        return new Impact(
                forward.atWithin(i, part, stepS),
                right.atWithin(i, part, stepS),
                forward.speedWithin(i, part, stepS),
                right.speedWithin(i, part, stepS),
                down.speedWithin(i, part, stepS));
    }

    /** One direction of all points: where they are, how fast, and how fast they gain speed. */
    private static final class Axis {
        private final double[] wind;
        private final double[] at;
        private final double[] speed;
        private final double[] gain;

        /** Where the last step began. */
        private final double[] atBefore;

        private final double[] speedBefore;
        private final double[] gainBefore;

        /** Speed within a step, and the weighed sums of speeds and gains over it. */
        private final double[] trial;

        private final double[] speeds;
        private final double[] gains;

        Axis(int count) {
            this.wind = new double[count];
            this.at = new double[count];
            this.speed = new double[count];
            this.gain = new double[count];
            this.atBefore = new double[count];
            this.speedBefore = new double[count];
            this.gainBefore = new double[count];
            this.trial = new double[count];
            this.speeds = new double[count];
            this.gains = new double[count];
        }

        void begin() {
            System.arraycopy(at, 0, atBefore, 0, at.length);
            System.arraycopy(speed, 0, speedBefore, 0, at.length);
            System.arraycopy(gain, 0, gainBefore, 0, at.length);
            System.arraycopy(speed, 0, speeds, 0, at.length);
            System.arraycopy(gain, 0, gains, 0, at.length);
        }

        /** On from the beginning with the gain found last. */
        void look(double timeS, double weight) {
            double[] from = speedBefore;
            double[] by = gain;
            double[] to = trial;
            double[] sum = speeds;
            for (int i = 0; i < to.length; i++) {
                double v = from[i] + timeS * by[i];
                to[i] = v;
                sum[i] += weight * v;
            }
        }

        void count(double weight) {
            double[] by = gain;
            double[] sum = gains;
            for (int i = 0; i < sum.length; i++) {
                sum[i] += weight * by[i];
            }
        }

        void end(double stepS) {
            add(at, speeds, stepS / 6);
            add(speed, gains, stepS / 6);
        }

        private static void add(double[] to, double[] sum, double weight) {
            for (int i = 0; i < to.length; i++) {
                to[i] += weight * sum[i];
            }
        }

        /** Through the last step, by where it began and ended and how fast. */
        double atWithin(int i, double part, double stepS) {
            return hermite(part, atBefore[i], stepS * speedBefore[i], at[i], stepS * speed[i]);
        }

        /** How much further in a whole step, as it goes there. */
        double riseWithin(int i, double part, double stepS) {
            double rest = 1 - part;
            return 6 * part * rest * (at[i] - atBefore[i])
                    + stepS
                            * (rest * (1 - 3 * part) * speedBefore[i]
                                    + part * (3 * part - 2) * speed[i]);
        }

        double speedWithin(int i, double part, double stepS) {
            return hermite(part, speedBefore[i], stepS * gainBefore[i], speed[i], stepS * gain[i]);
        }

        /** The cubic between two values with their rises. */
        private static double hermite(
                double part, double from, double fromRise, double to, double toRise) {
            double rest = 1 - part;
            return rest * rest * ((1 + 2 * part) * from + part * fromRise)
                    + part * part * ((3 - 2 * part) * to - rest * toRise);
        }
    }
}
