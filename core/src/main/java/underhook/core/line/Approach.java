package underhook.core.line;

import java.util.ArrayList;
import java.util.List;
import underhook.core.line.SwingAir.Gust;
import underhook.core.unit.Ranges;

/**
 * Works out how to slow down over a place so that the load arrives with little swing.
 *
 * <p>Each way is flown by {@link Swing}, also with the period shorter and longer by the stated spread.
 * Changeable; one thread at a time.
 */
public final class Approach {
    /** Fits end here; more does not change the third digit. */
    private static final int FITS = 8;

    private static final double NUDGE_FRACTION = 1e-4;

    /** Room for the middle step, in first steps, so that the fit can move both ends. */
    private static final double MIDDLE_RATIO = 1.3;

    private final SlowDownLimits limits;
    private final Swing.Watch watch;
    private final double periodS;
    private final double lengthM;
    private final List<Swing> spread;
    private final Swing asComputed;
    private final Swing withoutGust;

    /** For one load in one air. */
    public Approach(SlungLoad load, SwingAir air, SlowDownLimits limits, Swing.Watch watch) {
        this.limits = limits;
        this.watch = watch;
        periodS = load.periodS();
        lengthM = load.lengthM();
        asComputed = new Swing(load, air);
        withoutGust =
                new Swing(
                        load,
                        new SwingAir(
                                air.densityKgPerM3(),
                                air.windForwardMPerS(),
                                air.windRightMPerS(),
                                Gust.NONE));
        double off = limits.periodSpreadFraction();
        spread =
                off > 0
                        ? List.of(
                                new Swing(load.withLengthM(lengthM * (1 - off) * (1 - off)), air),
                                new Swing(load.withLengthM(lengthM * (1 + off) * (1 + off)), air))
                        : List.of();
    }

    /**
     * All ways to slow down from a speed, in the order of {@link SlowDown.Kind}.
     *
     * @param speedMPerS over the ground, m/s, in (0, 100]
     * @throws IllegalArgumentException if the speed is out of range
     */
    public List<Arrival> compare(double speedMPerS) {
        requireSpeed(speedMPerS);
        double most = limits.mostMPerS2();
        List<Arrival> ways = new ArrayList<>();
        ways.add(fly(SlowDown.abrupt(speedMPerS, most)));
        ways.add(fly(SlowDown.constant(speedMPerS, most, periodS)));
        ways.add(fly(SlowDown.shaped(speedMPerS, most, periodS)));
        ways.add(fly(tune(speedMPerS)));
        return ways;
    }

    /** The fitted way alone: least swing for what is known of the load. */
    public Arrival tuned(double speedMPerS) {
        requireSpeed(speedMPerS);
        return fly(tune(speedMPerS));
    }

    private Arrival fly(SlowDown slowDown) {
        HookPath path = slowDown.path();
        SwingResult swing = asComputed.fly(path, watch);
        double worst = swing.isWhole() ? swing.residualM() : Double.POSITIVE_INFINITY;
        for (Swing other : spread) {
            SwingResult result = other.fly(path, watch);
            worst =
                    Math.max(
                            worst,
                            result.isWhole() ? result.residualM() : Double.POSITIVE_INFINITY);
        }
        double hardest = path.hardestMPerS2();
        return new Arrival(
                slowDown,
                swing,
                path.distanceM(),
                path.durationS(),
                hardest,
                HangAngle.steadyRad(hardest),
                swing.residualM(),
                worst);
    }

    /** Fits both ends by Newton's method until offset and rate at the place are gone. */
    private SlowDown tune(double speedMPerS) {
        double step = periodS / 2;
        double full = Math.min(limits.mostMPerS2(), speedMPerS / (MIDDLE_RATIO * step));
        SlowDown.Ends ends = new SlowDown.Ends(step, 0.5, 0.5);
        SlowDown best = SlowDown.steps(speedMPerS, full, ends);
        double least = missM(best);
        for (int i = 0; i < FITS && least > 1e-4; i++) {
            ends = better(speedMPerS, full, ends);
            SlowDown candidate = SlowDown.steps(speedMPerS, full, ends);
            double miss = missM(candidate);
            if (!(candidate.path().endMPerS() <= 1e-6) || !(miss < least)) {
                break;
            }
            best = candidate;
            least = miss;
        }
        return best;
    }

    /** One step of Newton's method in the heights of first and last step. */
    private SlowDown.Ends better(double speedMPerS, double fullMPerS2, SlowDown.Ends at) {
        double first = at.firstFraction();
        double last = at.lastFraction();
        SwingState here = miss(SlowDown.steps(speedMPerS, fullMPerS2, at));
        SwingState byFirst =
                miss(
                        SlowDown.steps(
                                speedMPerS,
                                fullMPerS2,
                                new SlowDown.Ends(at.stepS(), first + NUDGE_FRACTION, last)));
        SwingState byLast =
                miss(
                        SlowDown.steps(
                                speedMPerS,
                                fullMPerS2,
                                new SlowDown.Ends(at.stepS(), first, last + NUDGE_FRACTION)));
        double a = (byFirst.foreRad() - here.foreRad()) / NUDGE_FRACTION;
        double b = (byLast.foreRad() - here.foreRad()) / NUDGE_FRACTION;
        double c = (byFirst.foreRadPerS() - here.foreRadPerS()) / NUDGE_FRACTION;
        double d = (byLast.foreRadPerS() - here.foreRadPerS()) / NUDGE_FRACTION;
        double determinant = a * d - b * c;
        double moveFirst = (b * here.foreRadPerS() - d * here.foreRad()) / determinant;
        double moveLast = (c * here.foreRad() - a * here.foreRadPerS()) / determinant;
        return new SlowDown.Ends(
                at.stepS(), allowedFraction(first + moveFirst), allowedFraction(last + moveLast));
    }

    /** Neither speeding up nor slowing harder than allowed. */
    private static double allowedFraction(double anyFraction) {
        return Double.isFinite(anyFraction) ? Math.max(0, Math.min(1, anyFraction)) : 0.5;
    }

    private SwingState miss(SlowDown slowDown) {
        SwingState rest = withoutGust.rest(slowDown.path());
        SwingState end = withoutGust.endOf(slowDown.path());
        return new SwingState(
                end.foreRad() - rest.foreRad(), 0, end.foreRadPerS() - rest.foreRadPerS(), 0);
    }

    private double missM(SlowDown slowDown) {
        SwingState miss = miss(slowDown);
        return lengthM * Math.hypot(miss.foreRad(), miss.foreRadPerS() * periodS / (2 * Math.PI));
    }

    private static void requireSpeed(double speedMPerS) {
        Ranges.requirePositive(speedMPerS, "speedMPerS");
        if (!(speedMPerS <= 100)) {
            throw new IllegalArgumentException(
                    "speedMPerS (" + speedMPerS + ") must be at most 100.");
        }
    }
}
