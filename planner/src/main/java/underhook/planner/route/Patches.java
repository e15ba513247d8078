package underhook.planner.route;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import underhook.core.fall.Landings;
import underhook.core.fall.Patch;
import underhook.core.fall.Release;
import underhook.core.fall.Runout;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;
import underhook.core.unit.Units;

/**
 * The ground that may be hit from a station.
 *
 * <p>Not safe for threads: what was once worked out is kept. For that heights are counted in steps of
 * {@value #HEIGHT_STEP_M} m, speeds in whole m/s and angles in whole degrees, each widened by it.
 */
final class Patches {
    private static final double HEIGHT_STEP_M = 5;

    /** Ground speed is known to this part of it. @source PRACTICE */
    private static final double SPEED_SPREAD_RATIO = 0.1;

    /** A load in flight swings this far to any side. @source PRACTICE */
    private static final double SWING_RAD = Math.toRadians(10);

    /** Rounding an angle to a degree moves the wind across by less than this part of it. */
    private static final double ANGLE_SLACK_RATIO = 0.02;

    /** What whole steps may miss of the longest fall. */
    private static final double STEP_SLACK_FACTOR = 1.05;

    /** Landings are large: only the last ones asked for are kept. */
    private static final int KEPT_LANDINGS = 512;

    private final HeightField terrain;
    private final Map<String, Patch> patches = new HashMap<>();
    private final Map<String, Landings> landings =
            new LinkedHashMap<>(16, 0.75f, true) {
                private static final long serialVersionUID = 1;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Landings> eldest) {
                    return size() > KEPT_LANDINGS;
                }
            };

    Patches(HeightField terrain) {
        this.terrain = terrain;
    }

    /**
     * Ground under a station.
     *
     * @param mostM most height of the load's lower end above where it may land, m
     * @param leastM least height, m
     * @param slope how the ground falls there
     */
    record Below(double mostM, double leastM, Slope slope) {
        /** How it falls away along a track and to its right, away from level in steps of 0.05 rad. */
        Patch.Ground along(double trackGridRad) {
            double falls = slope.fallsTowardsGridRad() - trackGridRad;
            double steep = Math.tan(slope.slopeRad());
            return new Patch.Ground(
                    coarseRad(Math.atan(steep * Math.cos(falls))),
                    coarseRad(Math.atan(steep * Math.sin(falls))));
        }

        private static double coarseRad(double slopeRad) {
            double step = 0.05;
            return Math.signum(slopeRad)
                    * Math.min(1.5, Math.ceil(Math.abs(slopeRad) / step) * step);
        }
    }

    /** The ground below; empty where part of it is not known. */
    Optional<Below> below(Station station, Cargo cargo) {
        double lowEndAmslM = station.hookAmslM() - cargo.underHookM();
        double guessM =
                station.fastMPerS() * Math.sqrt(2 * Math.max(1, heightM(station, lowEndAmslM)) / 9);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= 4; i++) {
            PlanePoint at = station.under().towards(station.trackGridRad(), guessM * i / 3);
            if (!terrain.covers(at.eastM(), at.northM())) {
                return Optional.empty();
            }
            double groundM = terrain.heightM(at.eastM(), at.northM());
            lowest = Math.min(lowest, groundM);
            highest = Math.max(highest, groundM);
        }
        double mostM = Math.max(1, lowEndAmslM - lowest);
        double leastM = Math.max(0.5, Math.min(mostM, lowEndAmslM - highest));
        PlanePoint landing = station.under().towards(station.trackGridRad(), guessM);
        return Slope.find(terrain, landing, terrain.cellSizeM())
                .map(
                        slope ->
                                new Below(
                                        Math.ceil(mostM / HEIGHT_STEP_M) * HEIGHT_STEP_M,
                                        Math.max(
                                                0.5,
                                                Math.floor(leastM / HEIGHT_STEP_M) * HEIGHT_STEP_M),
                                        slope));
    }

    private double heightM(Station station, double lowEndAmslM) {
        PlanePoint at = station.under();
        return terrain.covers(at.eastM(), at.northM())
                ? lowEndAmslM - terrain.heightM(at.eastM(), at.northM())
                : 1;
    }

    /** The patch of a release there, however far it runs. */
    Patch patch(Station station, Cargo cargo, LegWind wind, Below below) {
        return patch(new At(station, below), cargo, wind, below.along(station.trackGridRad()));
    }

    /**
     * The same without what it runs for being on ground steeper than friction holds: nothing but our own
     * cap would end that run, so it is told and not refused. The run of its own speed stays.
     */
    Patch heldPatch(Station station, Cargo cargo, LegWind wind, Below below) {
        return patch(
                new At(station, below),
                cargo,
                wind,
                held(cargo, below.along(station.trackGridRad())));
    }

    /** Level where it is too steep; then its run uphill is longer than it would be, never shorter. */
    private static Patch.Ground held(Cargo cargo, Patch.Ground ground) {
        return new Patch.Ground(
                heldRad(cargo, ground.fallsForwardRad()), heldRad(cargo, ground.fallsRightRad()));
    }

    private static double heldRad(Cargo cargo, double fallRad) {
        return Runout.runsAway(cargo.shape(), Math.abs(fallRad)) ? 0 : fallRad;
    }

    private record At(Station station, Below below) {}

    private Patch patch(At at, Cargo cargo, LegWind wind, Patch.Ground ground) {
        Station station = at.station();
        Below below = at.below();
        double fastMPerS = Math.ceil(station.fastMPerS());
        double slowMPerS = Math.floor(station.slowMPerS());
        double offDeg = Math.rint(Math.toDegrees(offRad(station, wind)));
        String key =
                below.mostM()
                        + "|"
                        + below.leastM()
                        + "|"
                        + fastMPerS
                        + "|"
                        + slowMPerS
                        + "|"
                        + offDeg
                        + wind
                        + cargo;
        return patches.computeIfAbsent(
                key + ground,
                unused ->
                        landings.computeIfAbsent(
                                        key,
                                        none -> Landings.of(release(station, cargo, wind, below)))
                                .patch(cargo.shape(), ground));
    }

    /** Where the wind blows to, from the track, rad in [-π, π]. */
    private static double offRad(Station station, LegWind wind) {
        return Math.IEEEremainder(
                wind.fromGridRad() + Math.PI - station.trackGridRad(), 2 * Math.PI);
    }

    private static Release release(Station station, Cargo cargo, LegWind wind, Below below) {
        double fastMPerS = Math.ceil(station.fastMPerS()) * (1 + SPEED_SPREAD_RATIO);
        double slowMPerS = Math.floor(station.slowMPerS()) * (1 - SPEED_SPREAD_RATIO);
        double offRad = Math.toRadians(Math.rint(Math.toDegrees(offRad(station, wind))));
        return new Release(
                (below.mostM() + below.leastM()) / 2,
                (below.mostM() - below.leastM()) / 2,
                (fastMPerS + slowMPerS) / 2,
                (fastMPerS - slowMPerS) / 2,
                new Release.Drift(
                        wind.speedMPerS() * Math.cos(offRad),
                        wind.speedMPerS() * Math.sin(offRad),
                        1,
                        wind.spreadMPerS() + ANGLE_SLACK_RATIO * wind.speedMPerS()),
                hanging(cargo, Math.ceil(station.fastMPerS())));
    }

    private static Release.Hanging hanging(Cargo cargo, double speedMPerS) {
        double share = Math.min(1, speedMPerS / cargo.speedMPerS());
        double trail = Math.atan(Math.tan(cargo.trailRad()) * share * share);
        return new Release.Hanging(
                cargo.light(), cargo.heavy(), cargo.lineM(), trail, swingRad(trail));
    }

    private static double swingRad(double trailRad) {
        return Math.min(SWING_RAD, Math.PI / 2 - trailRad - 1e-3);
    }

    /**
     * A box that surely holds the {@link #heldPatch}, without following any fall.
     *
     * <p>Drag only brings the speeds along and across nearer to the wind's, so neither leaves what lies
     * between the two; and no fall takes longer than one whose air passes at the largest speed there is.
     */
    Patch outer(Station station, Cargo cargo, LegWind wind, Below below) {
        Release release = release(station, cargo, wind, below);
        Release.Drift drift = release.drift();
        double swing = release.hanging().swingRad();
        double swingMPerS =
                Math.sqrt(
                        2
                                * Units.STANDARD_GRAVITY_M_PER_S2
                                * cargo.lineM()
                                * (1 - Math.cos(swing)));
        double fastest = release.groundSpeedMPerS() + release.speedSpreadMPerS() + swingMPerS;
        double aheadMPerS = Math.max(fastest, drift.forwardMPerS() + drift.spreadMPerS());
        double slowest =
                Math.max(0, release.groundSpeedMPerS() - release.speedSpreadMPerS()) - swingMPerS;
        double behindMPerS = -Math.min(slowest, drift.forwardMPerS() - drift.spreadMPerS());
        double rightMPerS = Math.max(swingMPerS, drift.rightMPerS() + drift.spreadMPerS());
        double leftMPerS = Math.max(swingMPerS, drift.spreadMPerS() - drift.rightMPerS());
        double windMPerS = wind.speedMPerS() + 2 * drift.spreadMPerS();
        double s = longestS(cargo, below.mostM(), fastest + swingMPerS + windMPerS);
        double lineM = cargo.lineM() * Math.sin(swing + release.hanging().trailRad());
        Patch.Ground ground = held(cargo, below.along(station.trackGridRad()));
        double downMPerS = Math.sqrt(2 * Units.STANDARD_GRAVITY_M_PER_S2 * below.mostM());
        double padM = 10;
        return new Patch(
                -(lineM
                        + Math.max(0, behindMPerS) * s
                        + runM(cargo, behindMPerS, downMPerS, -ground.fallsForwardRad())
                        + padM),
                lineM
                        + aheadMPerS * s
                        + runM(cargo, aheadMPerS, downMPerS, ground.fallsForwardRad())
                        + padM,
                lineM
                        + leftMPerS * s
                        + runM(cargo, leftMPerS, downMPerS, -ground.fallsRightRad())
                        + padM,
                lineM
                        + rightMPerS * s
                        + runM(cargo, rightMPerS, downMPerS, ground.fallsRightRad())
                        + padM);
    }

    /** More speed down runs less far, except where the ground is steeper than friction holds. */
    private static double runM(Cargo cargo, double alongMPerS, double downMPerS, double fallRad) {
        double along = Math.max(0, alongMPerS);
        return Math.max(
                Runout.runM(cargo.shape(), along, 0, fallRad),
                Runout.runM(cargo.shape(), along, downMPerS, fallRad));
    }

    /** Longest a fall can take, s: the steady speed down under the drag of the fastest air throughout. */
    private static double longestS(Cargo cargo, double heightM, double airMPerS) {
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
