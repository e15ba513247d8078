package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * One leg of one step.
 *
 * @param number number of the step, from 1
 * @param loads what hangs on the hook
 * @param track the path in the plane
 * @param from no later than it is begun
 * @param until no earlier than it is flown
 */
record Flight(
        int number,
        Step step,
        Leg leg,
        List<Load> loads,
        List<PlanePoint> track,
        Instant from,
        Instant until) {
    /** What a finding calls it. */
    String subject() {
        return leg.from() + "-" + leg.to();
    }

    /** Ballast with the loads, kg. */
    double ballastKg() {
        return step.rotation().map(Rotation::ballastKg).orElse(0.0);
    }

    /** How far a point lies off the path in plan, m. */
    double apartM(PlanePoint point) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < track.size(); i++) {
            least = Math.min(least, Plane.toSegmentM(point, track.get(i - 1), track.get(i)));
        }
        return least;
    }

    /** Whether the path comes nearer to a thing than so. */
    boolean isWithinM(Shape shape, double nearM) {
        return IntStream.range(1, track.size())
                .mapToObj(i -> new Plane.Stretch(track.get(i - 1), track.get(i)))
                .anyMatch(piece -> shape.distanceM(piece) < nearM);
    }

    /** How far the lowest load reaches below the line's end, m. */
    double hangingM(Day day) {
        double most = 0;
        for (Load load : loads) {
            boolean stands = day.kindOf(load).standsUp();
            most = Math.max(most, stands ? load.lengthM() : load.heightM());
        }
        return most;
    }
}
