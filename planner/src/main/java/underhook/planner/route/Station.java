package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.PlanePoint;
import underhook.core.plan.ReleaseLook;

/**
 * A piece of a leg, short enough to be one release.
 *
 * @param under its middle
 * @param fastMPerS fastest speed over the ground there, m/s: a tail wind helps, a head wind does not
 * @param slowMPerS slowest, m/s: a head wind counts, a tail wind does not
 * @param durationS time to fly it, s: a head wind counts, a tail wind does not
 * @param fromM start along the leg, m
 * @param toM end along the leg, m
 */
record Station(
        PlanePoint under,
        double trackGridRad,
        double hookAmslM,
        double fastMPerS,
        double slowMPerS,
        double durationS,
        double fromM,
        double toM) {
    private static final double STEP_M = 10;

    /** Slowest speed near a place that is counted, m/s. */
    private static final double LEAST_SPEED_M_PER_S = 3;

    /**
     * What decides the speed.
     *
     * @param finalM whoever slows down late or gains speed early does so over this, m
     * @param slowsOverM whoever does so gently, over this, m; less than the other counts as it
     */
    record Pace(double airspeedMPerS, LegWind wind, double finalM, double slowsOverM) {
        double fastMPerS(double endM) {
            return speedMPerS(endM, finalM);
        }

        double slowMPerS(double endM) {
            return speedMPerS(endM, Math.max(finalM, slowsOverM));
        }

        /** Even slowing over the last part, even gain over the first. */
        private double speedMPerS(double endM, double overM) {
            double share = overM <= 0 ? 1 : Math.min(1, Math.sqrt(Math.max(0, endM) / overM));
            return Math.max(LEAST_SPEED_M_PER_S, airspeedMPerS * share);
        }
    }

    /** Every {@value #STEP_M} m, away from the ends of the leg. */
    static List<Station> along(FlownLeg leg, Pace pace) {
        List<Station> stations = new ArrayList<>();
        double doneM = 0;
        double lastM = leg.distanceM() - ReleaseLook.END_M;
        for (int i = 0; i + 1 < leg.points().size(); i++) {
            PlanePoint a = leg.points().get(i);
            double lengthM = a.distanceToM(leg.points().get(i + 1));
            double fromM = Math.max(doneM, ReleaseLook.END_M);
            double toM = Math.min(doneM + lengthM, lastM);
            int count = fromM < toM ? (int) Math.ceil((toM - fromM) / STEP_M) : 0;
            for (int k = 0; k < count; k++) {
                double startM = fromM + (toM - fromM) * k / count;
                double endM = fromM + (toM - fromM) * (k + 1) / count;
                double t = ((startM + endM) / 2 - doneM) / lengthM;
                stations.add(at(new Piece(leg, i, t), pace, startM, endM));
            }
            doneM += lengthM;
        }
        return stations;
    }

    private record Piece(FlownLeg leg, int index, double shareFraction) {}

    private static Station at(Piece piece, Pace pace, double fromM, double toM) {
        FlownLeg leg = piece.leg();
        PlanePoint a = leg.points().get(piece.index());
        PlanePoint b = leg.points().get(piece.index() + 1);
        double fromAmslM = leg.hookAmslM().get(piece.index());
        double toAmslM = leg.hookAmslM().get(piece.index() + 1);
        double track = a.bearingToGridRad(b);
        double middleM = (fromM + toM) / 2;
        double endM = Math.min(middleM, leg.distanceM() - middleM);
        double flown = pace.fastMPerS(endM);
        LegWind wind = pace.wind();
        double tail = -wind.speedMPerS() * Math.cos(wind.fromGridRad() - track);
        return new Station(
                Plane.between(a, b, piece.shareFraction()),
                track,
                fromAmslM + piece.shareFraction() * (toAmslM - fromAmslM),
                flown + Math.max(0, tail),
                Math.max(0, pace.slowMPerS(endM) + Math.min(0, tail)),
                (toM - fromM) / Math.max(LEAST_SPEED_M_PER_S, flown + Math.min(0, tail)),
                fromM,
                toM);
    }
}
