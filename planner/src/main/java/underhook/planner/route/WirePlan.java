package underhook.planner.route;

import java.util.List;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Wire;

/**
 * A wire in the local plane with the highest it can hang.
 *
 * @param supports bends in the plane
 * @param topsAmslM highest wire at each bend, m AMSL
 */
record WirePlan(Wire wire, List<PlanePoint> supports, List<Double> topsAmslM) {
    WirePlan {
        supports = List.copyOf(supports);
        topsAmslM = List.copyOf(topsAmslM);
    }

    static WirePlan of(Wire wire, Ground ground) {
        List<PlanePoint> points =
                wire.supports().stream().map(point -> ground.frame().toPlane(point)).toList();
        List<Double> tops =
                points.stream().map(point -> groundAmslM(ground, point) + wire.highestM()).toList();
        return new WirePlan(wire, points, tops);
    }

    /** Ground under a support; a support outside the terrain does not raise the wire. */
    private static double groundAmslM(Ground ground, PlanePoint point) {
        return ground.terrain().covers(point.eastM(), point.northM())
                ? ground.terrain().heightM(point.eastM(), point.northM())
                : -1000;
    }

    boolean isCrossable() {
        return wire.crossing() != CrossingRule.NEVER;
    }

    /** Half the corridor in which nothing flies along the wire, m. */
    double corridorM(double clearanceM) {
        return clearanceM + wire.lateralM();
    }

    /**
     * The highest the wire can be at its point nearest to {@code point}: the chord between the supports,
     * or the ground there plus the support's height, whichever is higher (bends may not be supports).
     */
    double highestNearAmslM(PlanePoint point, Ground ground) {
        double best = Double.POSITIVE_INFINITY;
        double topAmslM = 0;
        for (int i = 0; i + 1 < supports.size(); i++) {
            PlanePoint a = supports.get(i);
            PlanePoint b = supports.get(i + 1);
            double t = Plane.nearestFraction(a, b, point);
            PlanePoint foot =
                    new PlanePoint(
                            a.eastM() + t * (b.eastM() - a.eastM()),
                            a.northM() + t * (b.northM() - a.northM()));
            double distanceM = foot.distanceToM(point);
            if (distanceM < best) {
                best = distanceM;
                double chordAmslM = topsAmslM.get(i) * (1 - t) + topsAmslM.get(i + 1) * t;
                topAmslM = Math.max(chordAmslM, groundAmslM(ground, foot) + wire.highestM());
            }
        }
        return topAmslM;
    }
}
