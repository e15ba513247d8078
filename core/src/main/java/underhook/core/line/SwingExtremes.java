package underhook.core.line;

import underhook.core.ode.DormandPrince;

/** Looks at each step of a run and keeps the extremes. Changeable; one thread at a time. */
final class SwingExtremes {
    /** Looks within each step; with twelve steps a period a peak is missed by 0.1 % at most. */
    private static final int LOOKS = 4;

    private final SwingMotion motion;
    private final DormandPrince course;
    private final double lengthM;
    private final double[] state = new double[4];
    private final double[] rates = new double[4];

    private double restAheadRatio;
    private double restAsideRatio;
    private double restAboveRatio;
    private double stillM;
    private boolean afterPath;
    private SwingResult.End end = SwingResult.End.WATCHED;
    private double greatestForeRad;
    private double greatestAftRad;
    private double greatestSideRad;
    private double overshootM;
    private double residualM;
    private double lastRestlessS;
    private double hookTensionN;
    private double leastTensionN;

    SwingExtremes(SwingMotion motion, DormandPrince course, double lengthM) {
        this.motion = motion;
        this.course = course;
        this.lengthM = lengthM;
    }

    /** Forgets the run before and looks at where this one starts. */
    void begin(SwingState rest, double newStillM) {
        restAheadRatio = Math.sin(rest.foreRad()) * Math.cos(rest.sideRad());
        restAsideRatio = Math.sin(rest.sideRad());
        restAboveRatio = -Math.cos(rest.foreRad()) * Math.cos(rest.sideRad());
        stillM = newStillM;
        afterPath = false;
        end = SwingResult.End.WATCHED;
        greatestForeRad = Double.NEGATIVE_INFINITY;
        greatestAftRad = Double.NEGATIVE_INFINITY;
        greatestSideRad = 0;
        overshootM = 0;
        residualM = 0;
        lastRestlessS = Double.NEGATIVE_INFINITY;
        hookTensionN = 0;
        leastTensionN = Double.POSITIVE_INFINITY;
        look(course.time());
    }

    /** From here on the path has ended and distances from rest are residual swing. */
    void beginResidual() {
        afterPath = true;
        look(course.time());
    }

    /** Looks at the last step; false if the run must end. */
    boolean see() {
        double from = course.timeBefore();
        double step = course.time() - from;
        for (int i = 1; i <= LOOKS; i++) {
            look(i == LOOKS ? course.time() : from + step * i / LOOKS);
            if (end != SwingResult.End.WATCHED) {
                return false;
            }
        }
        return true;
    }

    private void look(double timeS) {
        for (int place = 0; place < state.length; place++) {
            state[place] = course.within(timeS, place);
        }
        double fore = state[SwingMotion.FORE];
        double side = state[SwingMotion.SIDE];
        greatestForeRad = Math.max(greatestForeRad, fore);
        greatestAftRad = Math.max(greatestAftRad, -fore);
        greatestSideRad = Math.max(greatestSideRad, Math.abs(side));
        motion.rates(timeS, state, rates);
        measure(timeS);
        double pull = motion.loadTensionN();
        leastTensionN = Math.min(leastTensionN, pull);
        hookTensionN = Math.max(hookTensionN, pull + motion.lineTensionN());
        if (!(pull > 0)) {
            end = SwingResult.End.SLACK;
        } else if (Math.abs(fore) > SwingState.WIDEST_RAD
                || Math.abs(side) > SwingState.WIDEST_RAD) {
            end = SwingResult.End.TOO_WIDE;
        }
    }

    /** Distance from rest, straight through the air. */
    private void measure(double timeS) {
        double ahead = motion.aheadRatio() - restAheadRatio;
        overshootM = Math.max(overshootM, lengthM * ahead);
        if (!afterPath) {
            return;
        }
        double right = motion.asideRatio() - restAsideRatio;
        double up = motion.aboveRatio() - restAboveRatio;
        double away = lengthM * Math.sqrt(ahead * ahead + right * right + up * up);
        residualM = Math.max(residualM, away);
        if (away > stillM) {
            lastRestlessS = timeS;
        }
    }

    SwingResult result(double pathEndS, double periodS) {
        double now = course.time();
        boolean seenToTheEnd = end == SwingResult.End.WATCHED;
        boolean restless = lastRestlessS > Double.NEGATIVE_INFINITY;
        double settled = restless ? lastRestlessS - pathEndS : 0;
        return new SwingResult(
                end,
                now,
                greatestForeRad,
                greatestAftRad,
                greatestSideRad,
                overshootM,
                residualM,
                settled,
                seenToTheEnd && afterPath && now - pathEndS - settled >= periodS,
                hookTensionN,
                leastTensionN);
    }
}
