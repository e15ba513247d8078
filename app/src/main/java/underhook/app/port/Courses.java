package underhook.app.port;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.unit.Units;

/**
 * A way that is not straight, told in courses, on paper and on devices: bearing and distance of its ends alone
 * would lead over what it goes round.
 */
public final class Courses {
    /**
     * The turns into and out of a leg lie within the straight parts at its ends and so much more, m. They are told
     * by the ways in and out.
     *
     * @source PRACTICE a slow turn
     */
    private static final double TURN_M = 100;

    /**
     * One straight piece.
     *
     * @param bearingTrueRad from its beginning, rad from true north, in [0, 2π)
     * @param distanceM its length, m, above 0
     */
    public record Course(double bearingTrueRad, double distanceM) {}

    private Courses() {}

    /**
     * The courses of a leg, in the order flown, from place to place. No point of its path but the turns at its ends is
     * farther from them than the strip that it was checked over is wide: nobody keeps a course better by the eye.
     *
     * @return empty for a leg that is straight so far
     */
    public static List<Course> of(Job job, Leg leg) {
        if (leg.path().size() < 3 || leg.from().equals(leg.to())) {
            return List.of();
        }
        LocalFrame frame = LocalFrame.of(leg.path().get(0).position());
        List<PlanePoint> path =
                leg.path().stream().map(PathPoint::position).map(frame::toPlane).toList();
        double stripM = 2 * job.rules().distances().stripHalfWidthM();
        List<PlanePoint> corners =
                corners(betweenTurns(path, job.rules().flying().finalM() + TURN_M), stripM);
        if (corners.size() < 3) {
            return List.of();
        }
        List<Course> courses = new ArrayList<>();
        for (int i = 1; i < corners.size(); i++) {
            PlanePoint from = corners.get(i - 1);
            double bearingRad = from.bearingToGridRad(corners.get(i)) + frame.convergenceRad(from);
            courses.add(
                    new Course(Units.wrapTwoPiRad(bearingRad), from.distanceToM(corners.get(i))));
        }
        return courses;
    }

    private static List<PlanePoint> betweenTurns(List<PlanePoint> path, double reachM) {
        PlanePoint first = path.get(0);
        PlanePoint last = path.get(path.size() - 1);
        List<PlanePoint> kept = new ArrayList<>();
        kept.add(first);
        path.stream()
                .filter(point -> point.distanceToM(first) > reachM)
                .filter(point -> point.distanceToM(last) > reachM)
                .forEach(kept::add);
        kept.add(last);
        return kept;
    }

    /** The fewest of the points that splitting at the farthest one finds, none of the others farther off. */
    private static List<PlanePoint> corners(List<PlanePoint> path, double offM) {
        PlanePoint first = path.get(0);
        PlanePoint last = path.get(path.size() - 1);
        PlaneLine straight = new PlaneLine(first, last);
        int farthest = 0;
        for (int i = 1; i < path.size() - 1; i++) {
            double distanceM = straight.distanceToM(path.get(i));
            if (distanceM > offM
                    && (farthest == 0 || distanceM > straight.distanceToM(path.get(farthest)))) {
                farthest = i;
            }
        }
        if (farthest == 0) {
            return List.of(first, last);
        }
        List<PlanePoint> all = new ArrayList<>(corners(path.subList(0, farthest + 1), offM));
        List<PlanePoint> rest = corners(path.subList(farthest, path.size()), offM);
        all.addAll(rest.subList(1, rest.size()));
        return all;
    }
}
