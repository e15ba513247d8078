package underhook.planner.route;

import underhook.core.fall.Landings;
import underhook.core.fall.Patch;
import underhook.core.fall.Release;
import underhook.core.fall.Runout;
import underhook.core.unit.Units;
import underhook.planner.route.Patches.Below;

/**
 * The ground that one thing may hit, let go in one wind.
 *
 * <p>What was once worked out is kept. For that heights are counted in steps,
 * speeds in whole m/s and angles in whole degrees, each widened by it.
 */
final class Releases {
    /** Ground speed is known to this part of it. @source PRACTICE */
    private static final double SPEED_SPREAD_RATIO = 0.1;

    /** A load in flight swings this far to any side. @source PRACTICE */
    private static final double SWING_RAD = Math.toRadians(10);

    /** Rounding an angle to a degree moves the wind across by less than this part of it. */
    private static final double ANGLE_SLACK_RATIO = 0.02;

    /** What whole steps may miss of the longest fall. */
    private static final double STEP_SLACK_FACTOR = 1.05;

    /** The box without falls is so much larger on each side, m. */
    private static final double OUTER_PAD_M = 10;

    private final Cargo cargo;
    private final LegWind wind;
    private final Memo<Known, Landings> landings;
    private final Memo<Steps, Known> known = Memo.of();

    /**
     * @param landings where landings are kept, which are large
     */
    Releases(Cargo cargo, LegWind wind, Memo<Known, Landings> landings) {
        this.cargo = cargo;
        this.wind = wind;
        this.landings = landings;
    }

    /** All that tells one release from another, in whole steps. */
    private record Steps(int most, int least, int fast, int slow, int offDeg) {}

    /** How the ground falls forward and to the right, in whole steps. */
    private record Slopes(long forward, long right) {}

    /** One release, and what is known of it by the ground below. */
    static final class Known {
        private final Release release;
        private final Reach reach;
        private final Memo<Slopes, Patch> patches = Memo.of();

        private Known(Release release, Reach reach) {
            this.release = release;
            this.reach = reach;
        }
    }

    /**
     * What surely holds the landings of a release, without following any fall: speeds over the ground to
     * each side that are not passed, for a time that no fall passes, from the line's far end.
     *
     * <p>Drag only brings the speeds along and across nearer to the wind's, so neither leaves what lies
     * between the two; and no fall takes longer than one whose air passes at the largest speed there is.
     */
    private record Reach(
            double behindMPerS,
            double aheadMPerS,
            double leftMPerS,
            double rightMPerS,
            double fallS,
            double lineM) {
        double sideM(double speedMPerS) {
            return lineM + speedMPerS * fallS;
        }
    }

    /** The patch of a release, however far it runs. */
    Patch patch(Station station, Below below) {
        return patch(known(station, below), below.along(station.trackGridRad()));
    }

    /**
     * The same without what it runs for being on ground steeper than friction holds: nothing but our own
     * cap would end that run, so it is told and not refused. The run of its own speed stays.
     */
    Patch heldPatch(Station station, Below below) {
        return patch(known(station, below), held(below.along(station.trackGridRad())));
    }

    /** A box that surely holds the {@link #heldPatch}, without following any fall. */
    Patch outer(Station station, Below below) {
        Reach reach = known(station, below).reach;
        Patch.Ground ground = held(below.along(station.trackGridRad()));
        double downMPerS = Math.sqrt(2 * Units.STANDARD_GRAVITY_M_PER_S2 * below.mostM());
        return new Patch(
                -(reach.sideM(Math.max(0, reach.behindMPerS()))
                        + runM(reach.behindMPerS(), downMPerS, -ground.fallsForwardRad())
                        + OUTER_PAD_M),
                reach.sideM(reach.aheadMPerS())
                        + runM(reach.aheadMPerS(), downMPerS, ground.fallsForwardRad())
                        + OUTER_PAD_M,
                reach.sideM(reach.leftMPerS())
                        + runM(reach.leftMPerS(), downMPerS, -ground.fallsRightRad())
                        + OUTER_PAD_M,
                reach.sideM(reach.rightMPerS())
                        + runM(reach.rightMPerS(), downMPerS, ground.fallsRightRad())
                        + OUTER_PAD_M);
    }

    /** Level where it is too steep; then its run uphill is longer than it would be, never shorter. */
    private Patch.Ground held(Patch.Ground ground) {
        return new Patch.Ground(heldRad(ground.fallsForwardRad()), heldRad(ground.fallsRightRad()));
    }

    private double heldRad(double fallRad) {
        return Runout.runsAway(cargo.shape(), Math.abs(fallRad)) ? 0 : fallRad;
    }

    private Patch patch(Known at, Patch.Ground ground) {
        return at.patches.get(
                new Slopes(
                        Math.round(ground.fallsForwardRad() / Below.SLOPE_STEP_RAD),
                        Math.round(ground.fallsRightRad() / Below.SLOPE_STEP_RAD)),
                unused ->
                        landings.get(at, none -> Landings.of(at.release))
                                .patch(cargo.shape(), ground));
    }

    private Known known(Station station, Below below) {
        Steps steps =
                new Steps(
                        (int) Math.rint(below.mostM() / Patches.HEIGHT_STEP_M),
                        // The least of all is no whole step.
                        (int) Math.floor(below.leastM() / Patches.HEIGHT_STEP_M),
                        (int) Math.ceil(station.fastMPerS()),
                        (int) Math.floor(station.slowMPerS()),
                        (int) Math.rint(Math.toDegrees(offRad(station))));
        return known.get(
                steps,
                unused -> {
                    Release release = release(steps, below);
                    return new Known(release, reach(release, below));
                });
    }

    /** Where the wind blows to, from the track, rad in [-π, π]. */
    private double offRad(Station station) {
        return Math.IEEEremainder(
                wind.fromGridRad() + Math.PI - station.trackGridRad(), 2 * Math.PI);
    }

    private Release release(Steps steps, Below below) {
        double fastMPerS = steps.fast() * (1 + SPEED_SPREAD_RATIO);
        double slowMPerS = steps.slow() * (1 - SPEED_SPREAD_RATIO);
        double offRad = Math.toRadians(steps.offDeg());
        return new Release(
                (below.mostM() + below.leastM()) / 2,
                (below.mostM() - below.leastM()) / 2,
                (fastMPerS + slowMPerS) / 2,
                (fastMPerS - slowMPerS) / 2,
                new Release.Drift(
                        wind.speedMPerS() * Math.cos(offRad),
                        wind.speedMPerS() * Math.sin(offRad),
                        wind.spreadMPerS() + ANGLE_SLACK_RATIO * wind.speedMPerS()),
                hanging(steps.fast()));
    }

    private Release.Hanging hanging(double speedMPerS) {
        double share = Math.min(1, speedMPerS / cargo.speedMPerS());
        double trail = Math.atan(Math.tan(cargo.trailRad()) * share * share);
        return new Release.Hanging(
                cargo.light(), cargo.heavy(), cargo.lineM(), trail, swingRad(trail));
    }

    private static double swingRad(double trailRad) {
        return Math.min(SWING_RAD, Math.PI / 2 - trailRad - 1e-3);
    }

    private Reach reach(Release release, Below below) {
        Release.Drift drift = release.drift();
        double swing = release.hanging().swingRad();
        double swingMPerS =
                Math.sqrt(
                        2
                                * Units.STANDARD_GRAVITY_M_PER_S2
                                * cargo.lineM()
                                * (1 - Math.cos(swing)));
        double fastest = release.groundSpeedMPerS() + release.speedSpreadMPerS() + swingMPerS;
        double slowest =
                Math.max(0, release.groundSpeedMPerS() - release.speedSpreadMPerS()) - swingMPerS;
        double windMPerS = wind.speedMPerS() + 2 * drift.spreadMPerS();
        return new Reach(
                -Math.min(slowest, drift.forwardMPerS() - drift.spreadMPerS()),
                Math.max(fastest, drift.forwardMPerS() + drift.spreadMPerS()),
                Math.max(swingMPerS, drift.spreadMPerS() - drift.rightMPerS()),
                Math.max(swingMPerS, drift.rightMPerS() + drift.spreadMPerS()),
                longestS(below.mostM(), fastest + swingMPerS + windMPerS),
                cargo.lineM() * Math.sin(swing + release.hanging().trailRad()));
    }

    /** More speed down runs less far, except where the ground is steeper than friction holds. */
    private double runM(double alongMPerS, double downMPerS, double fallRad) {
        double along = Math.max(0, alongMPerS);
        Runout runout = Runout.on(cargo.shape(), fallRad);
        return Math.max(runout.runM(along, 0), runout.runM(along, downMPerS));
    }

    /** Longest a fall can take, s: the steady speed down under the drag of the fastest air throughout. */
    private double longestS(double heightM, double airMPerS) {
        double k = cargo.light().retardationCoefficient();
        double step = 0.1;
        double down = 0;
        double fallen = 0;
        double s = 0;
        while (fallen < heightM) {
            double gain = Units.STANDARD_GRAVITY_M_PER_S2 - k * (airMPerS + down) * down;
            down = Math.max(down, down + gain * step);
            // The speed at the step's start, so that less is fallen than truly is.
            fallen += Math.max(0.01, down - gain * step) * step;
            s += step;
        }
        return STEP_SLACK_FACTOR * s;
    }
}
