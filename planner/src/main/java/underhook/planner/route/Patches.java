package underhook.planner.route;

import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.fall.Landings;
import underhook.core.fall.Patch;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;

/**
 * The ground that may be hit from a station.
 *
 * <p>What was once worked out is kept. For that heights are counted in steps of
 * {@value #HEIGHT_STEP_M} m.
 */
final class Patches {
    static final double HEIGHT_STEP_M = 5;

    /** Landings are large: only the last ones asked for are kept. */
    private static final int KEPT_LANDINGS = 512;

    private final HeightField terrain;
    private final Memo<Let, Releases> releases = Memo.of();
    private final Memo<Releases.Known, Landings> landings = Memo.ofLast(KEPT_LANDINGS);

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
        static final double SLOPE_STEP_RAD = 0.05;

        /** How it falls away along a track and to its right, in steps away from level. */
        Patch.Ground along(double trackGridRad) {
            double falls = slope.fallsTowardsGridRad() - trackGridRad;
            double steep = Math.tan(slope.slopeRad());
            return new Patch.Ground(
                    coarseRad(Math.atan(steep * Math.cos(falls))),
                    coarseRad(Math.atan(steep * Math.sin(falls))));
        }

        private static double coarseRad(double slopeRad) {
            return Math.signum(slopeRad)
                    * Math.min(
                            1.5, Math.ceil(Math.abs(slopeRad) / SLOPE_STEP_RAD) * SLOPE_STEP_RAD);
        }
    }

    /** What is let go, and in which wind. */
    private record Let(Cargo cargo, LegWind wind) {}

    /** Releases of one thing in one wind. */
    Releases of(Cargo cargo, LegWind wind) {
        return releases.get(new Let(cargo, wind), unused -> new Releases(cargo, wind, landings));
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
            OptionalDouble groundM = terrain.findHeightM(at.eastM(), at.northM());
            if (groundM.isEmpty()) {
                return Optional.empty();
            }
            lowest = Math.min(lowest, groundM.getAsDouble());
            highest = Math.max(highest, groundM.getAsDouble());
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
        OptionalDouble groundM = terrain.findHeightM(at.eastM(), at.northM());
        return groundM.isPresent() ? lowEndAmslM - groundM.getAsDouble() : 1;
    }
}
