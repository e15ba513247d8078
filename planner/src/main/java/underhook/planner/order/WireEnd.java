package underhook.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;

/**
 * An end of a wire in the files. A map that was cut out ends wires where they go on, and a way round such
 * an end leads through the wire.
 *
 * @param before the support before the last
 * @param last the last support
 */
record WireEnd(PlanePoint before, PlanePoint last) {
    /** So far straight on a wire is taken to go. @source PRACTICE no source: a few spans */
    static final double GOES_ON_M = 1000;

    /** With a building, mast or other wire so near, a wire may well end. @source PRACTICE no source */
    private static final double HELD_M = 50;

    /** The ends of a wire at which nothing is that it could end at. */
    static List<WireEnd> listOpen(Wire wire, Job job, LocalFrame frame) {
        List<List<PlanePoint>> holds =
                Stream.concat(
                                job.features().stream()
                                        .filter(
                                                one ->
                                                        one.kind() == MapFeature.Kind.HOUSE
                                                                || one.kind()
                                                                        == MapFeature.Kind.MAST)
                                        .map(MapFeature::outline),
                                job.wires().stream()
                                        .filter(other -> !other.id().equals(wire.id()))
                                        .map(Wire::supports))
                        .map(outline -> plane(outline, frame))
                        .toList();
        return listOpen(plane(wire.supports(), frame), holds);
    }

    static List<WireEnd> listOpen(List<PlanePoint> supports, List<List<PlanePoint>> holds) {
        int count = supports.size();
        List<WireEnd> ends =
                Arrays.asList(
                        new WireEnd(supports.get(1), supports.get(0)),
                        new WireEnd(supports.get(count - 2), supports.get(count - 1)));
        List<WireEnd> open = new ArrayList<>(ends);
        open.removeIf(end -> holds.stream().anyMatch(end::isHeldBy));
        return List.copyOf(open);
    }

    /** How far beyond one of some ends a way first crosses its wire carried straight on, m; infinite when nowhere. */
    static double leastBeyondM(List<WireEnd> ends, List<PlanePoint> way) {
        return ends.stream()
                .mapToDouble(end -> end.beyondM(way))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static List<PlanePoint> plane(List<GeoPoint> points, LocalFrame frame) {
        return points.stream().map(frame::toPlane).toList();
    }

    private boolean isHeldBy(List<PlanePoint> outline) {
        PlanePoint from = outline.get(0);
        for (PlanePoint to : outline) {
            if (new PlaneLine(from, to).distanceToM(last) <= HELD_M) {
                return true;
            }
            from = to;
        }
        return false;
    }

    /** How far beyond this end a way first crosses the wire carried straight on, m; infinite when nowhere. */
    double beyondM(List<PlanePoint> way) {
        double leastM = Double.POSITIVE_INFINITY;
        for (int i = 1; i < way.size(); i++) {
            double asideFromM = asideM(way.get(i - 1));
            double asideToM = asideM(way.get(i));
            if (asideFromM == asideToM || asideFromM * asideToM > 0) {
                continue;
            }
            double crossedRatio = asideFromM / (asideFromM - asideToM);
            double fromM = aheadM(way.get(i - 1));
            double aheadM = fromM + crossedRatio * (aheadM(way.get(i)) - fromM);
            if (aheadM >= 0) {
                leastM = Math.min(leastM, aheadM);
            }
        }
        return leastM;
    }

    /** How far a point lies beyond the end, along the wire's last piece. */
    private double aheadM(PlanePoint point) {
        return turnedM(point, bearingGridRad());
    }

    /** How far to the right of it. */
    private double asideM(PlanePoint point) {
        return turnedM(point, bearingGridRad() + Math.PI / 2);
    }

    private double bearingGridRad() {
        return before.bearingToGridRad(last);
    }

    private double turnedM(PlanePoint point, double bearingGridRad) {
        return (point.eastM() - last.eastM()) * Math.sin(bearingGridRad)
                + (point.northM() - last.northM()) * Math.cos(bearingGridRad);
    }
}
