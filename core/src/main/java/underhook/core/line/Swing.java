package underhook.core.line;

import java.util.ArrayList;
import java.util.List;
import underhook.core.ode.DormandPrince;
import underhook.core.unit.Ranges;

/**
 * Follows a slung load while the belly hook moves on a stated path.
 *
 * <p>A taut straight line with a point at its end, swinging fore, aft and sideways, with drag against
 * steady wind and a gust. The machine follows its path whatever the load does, and nobody steers against
 * the swing. Where the line would go slack, or the load rise beyond 80°, the run ends and says so.
 *
 * <p>Steps are held to an error of 1e-7 rad and a twelfth of a period. Changeable; one thread at a time.
 * A run makes no objects but its result.
 *
 * @source DERIVED see SwingMotion; docs/calculations/swing.md
 */
public final class Swing {
    /** Error of a step, rad and rad/s. @source PRACTICE far below what anything else is known to */
    private static final double TOLERANCE_RATIO = 1e-7;

    /** Steps in a small swing at the least, so that no turning point is stepped over. */
    private static final int STEPS_PER_PERIOD = 12;

    /**
     * How long to look, and what is called still.
     *
     * @param afterS how long after the path's end, s, not negative
     * @param stillM farthest from rest that is called still, m, above 0
     */
    public record Watch(double afterS, double stillM) {
        public Watch {
            Ranges.requireNotNegative(afterS, "afterS");
            Ranges.requirePositive(stillM, "stillM");
        }
    }

    /**
     * A moment of a run.
     *
     * @param timeS s from the start of the path
     */
    public record Sample(double timeS, SwingState state) {}

    private final SwingAir air;
    private final SwingMotion motion;
    private final DormandPrince course;
    private final SwingExtremes extremes;
    private final double periodS;
    private final double[] state = new double[4];

    /** For one load in one air. */
    public Swing(SlungLoad load, SwingAir air) {
        this.air = air;
        motion = new SwingMotion(load, air);
        course = new DormandPrince(motion, 4, TOLERANCE_RATIO);
        extremes = new SwingExtremes(motion, course, load.lengthM());
        periodS = load.periodS();
        course.limitStep(periodS / STEPS_PER_PERIOD);
    }

    /** Flies the path from where the load hangs steady at its first speed. */
    public SwingResult fly(HookPath path, Watch watch) {
        return fly(path, hang(path), watch);
    }

    /** Flies the path from a stated state. */
    public SwingResult fly(HookPath path, SwingState from, Watch watch) {
        SwingState rest = rest(path);
        begin(path, from);
        extremes.begin(rest, watch.stillM());
        double ends = path.durationS();
        if (follow(path, Double.POSITIVE_INFINITY)) {
            extremes.beginResidual();
            followTo(ends + watch.afterS());
        }
        return extremes.result(ends, periodS);
    }

    /** The state at the end of a path flown from the steady hang; where it broke off if it did. */
    public SwingState endOf(HookPath path) {
        begin(path, hang(path));
        extremes.begin(SwingState.PLUMB, 1);
        follow(path, Double.POSITIVE_INFINITY);
        return state();
    }

    /** How the load hangs at rest in the speed and wind at the end of a path. */
    public SwingState rest(HookPath path) {
        double right = 0;
        for (HookPath.Part part : path.parts()) {
            right += part.rightMPerS2() * part.durationS();
        }
        motion.setSpeed(0, path.endMPerS(), right);
        return motion.resting();
    }

    /**
     * The swing over time, for drawing: at even times from the start of the path, to the end or to where
     * the run had to end.
     *
     * @param afterS how long after the path's end, s, not negative
     * @param everyS between samples, s, above 0
     */
    public List<Sample> trace(HookPath path, SwingState from, double afterS, double everyS) {
        Ranges.requireNotNegative(afterS, "afterS");
        Ranges.requirePositive(everyS, "everyS");
        begin(path, from);
        extremes.begin(SwingState.PLUMB, 1);
        double last = path.durationS() + afterS;
        List<Sample> samples = new ArrayList<>();
        samples.add(new Sample(0, from));
        boolean whole = true;
        for (int i = 1; whole && i * everyS <= last; i++) {
            whole = follow(path, i * everyS) && followTo(i * everyS);
            samples.add(new Sample(course.time(), state()));
        }
        return samples;
    }

    /** How the load hangs steady in the path's first speed. */
    public SwingState hang(HookPath path) {
        motion.setSpeed(0, path.startMPerS(), 0);
        return motion.resting();
    }

    private void begin(HookPath path, SwingState from) {
        state[SwingMotion.FORE] = from.foreRad();
        state[SwingMotion.SIDE] = from.sideRad();
        state[SwingMotion.FORE_RATE] = from.foreRadPerS();
        state[SwingMotion.SIDE_RATE] = from.sideRadPerS();
        motion.setSpeed(0, path.startMPerS(), 0);
        motion.setAcceleration(0, 0);
        course.start(0, state, periodS / 40);
    }

    /** Goes on along the path's parts, at most to a time; false if the run must end. */
    private boolean follow(HookPath path, double untilS) {
        double partStart = 0;
        double forward = path.startMPerS();
        double right = 0;
        for (int i = 0; i < path.parts().size(); i++) {
            HookPath.Part part = path.parts().get(i);
            double partEnd = partStart + part.durationS();
            if (course.time() < partEnd && course.time() < untilS) {
                enter(partStart, forward, right);
                motion.setAcceleration(part.forwardMPerS2(), part.rightMPerS2());
                course.renewRates();
                if (!followTo(Math.min(partEnd, untilS))) {
                    return false;
                }
            }
            forward += part.forwardMPerS2() * part.durationS();
            right += part.rightMPerS2() * part.durationS();
            partStart = partEnd;
        }
        if (course.time() >= partStart) {
            enter(partStart, forward, right);
        }
        return true;
    }

    private void enter(double startS, double forwardMPerS, double rightMPerS) {
        motion.setSpeed(startS, forwardMPerS, rightMPerS);
        motion.setAcceleration(0, 0);
        course.renewRates();
    }

    /** Goes on to a time without a change of the path; false if the run must end. */
    private boolean followTo(double untilS) {
        while (course.time() < untilS) {
            course.step(nextBreakS(untilS));
            if (!extremes.see()) {
                return false;
            }
        }
        return true;
    }

    /** The gust's ends are corners in the rates: a step must not run over them. */
    private double nextBreakS(double untilS) {
        double next = untilS;
        double gustStart = air.gust().startS();
        double gustEnd = air.gust().endS();
        if (course.time() < gustStart) {
            next = Math.min(next, gustStart);
        } else if (course.time() < gustEnd) {
            next = Math.min(next, gustEnd);
        }
        return next;
    }

    private SwingState state() {
        return new SwingState(
                course.at(SwingMotion.FORE),
                course.at(SwingMotion.SIDE),
                course.at(SwingMotion.FORE_RATE),
                course.at(SwingMotion.SIDE_RATE));
    }
}
