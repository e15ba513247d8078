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
    /** Room for the middle step, in first steps, so that the fit can move both ends. */
    private static final double MIDDLE_RATIO = 1.3;

    private final SlowDownLimits limits;
    private final Swing.Watch watch;
    private final double periodS;
    private final List<Swing> spread;
    private final Swing asComputed;
    private final Swing withoutGust;

    /** For one load in one air. */
    public Approach(SlungLoad load, SwingAir air, SlowDownLimits limits, Swing.Watch watch) {
        this.limits = limits;
        this.watch = watch;
        periodS = load.periodS();
        double lengthM = load.lengthM();
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

    private SlowDown tune(double speedMPerS) {
        double full = Math.min(limits.mostMPerS2(), speedMPerS / (MIDDLE_RATIO * periodS / 2));
        return new EndsFit(periodS, ends -> SlowDown.steps(speedMPerS, full, ends), this::miss)
                .best();
    }

    private SwingState miss(SlowDown slowDown) {
        SwingState rest = withoutGust.rest(slowDown.path());
        SwingState end = withoutGust.endOf(slowDown.path());
        return new SwingState(
                end.foreRad() - rest.foreRad(), 0, end.foreRadPerS() - rest.foreRadPerS(), 0);
    }

    private static void requireSpeed(double speedMPerS) {
        Ranges.requirePositive(speedMPerS, "speedMPerS");
        if (!(speedMPerS <= 100)) {
            throw new IllegalArgumentException(
                    "speedMPerS (" + speedMPerS + ") must be at most 100.");
        }
    }
}
