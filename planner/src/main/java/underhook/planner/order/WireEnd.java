package underhook.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
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

    private static List<PlanePoint> plane(List<GeoPoint> points, LocalFrame frame) {
        return points.stream().map(frame::toPlane).toList();
    }

    private boolean isHeldBy(List<PlanePoint> outline) {
        PlanePoint from = outline.get(0);
        for (PlanePoint to : outline) {
            if (fromPieceM(from, to) <= HELD_M) {
                return true;
            }
            from = to;
        }
        return false;
    }

    private double fromPieceM(PlanePoint from, PlanePoint to) {
        double east = to.eastM() - from.eastM();
        double north = to.northM() - from.northM();
        double squareM2 = east * east + north * north;
        double along =
                squareM2 == 0
                        ? 0
                        : ((last.eastM() - from.eastM()) * east
                                        + (last.northM() - from.northM()) * north)
                                / squareM2;
        double inside = Math.max(0, Math.min(1, along));
        return last.distanceToM(
                new PlanePoint(from.eastM() + inside * east, from.northM() + inside * north));
    }

    /** How far beyond this end a way first crosses the wire carried straight on, m; infinite when nowhere. */
    double beyondM(List<PlanePoint> way) {
        double spanM = before.distanceToM(last);
        double east = (last.eastM() - before.eastM()) / spanM;
        double north = (last.northM() - before.northM()) / spanM;
        double leastM = Double.POSITIVE_INFINITY;
        for (int i = 1; i < way.size(); i++) {
            PlanePoint a = way.get(i - 1);
            PlanePoint b = way.get(i);
            double asideAM = aside(a, east, north);
            double asideBM = aside(b, east, north);
            if (asideAM == asideBM || asideAM * asideBM > 0) {
                continue;
            }
            double part = asideAM / (asideAM - asideBM);
            double aheadM =
                    (a.eastM() + part * (b.eastM() - a.eastM()) - last.eastM()) * east
                            + (a.northM() + part * (b.northM() - a.northM()) - last.northM())
                                    * north;
            if (aheadM >= 0) {
                leastM = Math.min(leastM, aheadM);
            }
        }
        return leastM;
    }

    private double aside(PlanePoint point, double east, double north) {
        return (point.eastM() - last.eastM()) * north - (point.northM() - last.northM()) * east;
    }
}
