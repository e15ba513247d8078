package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;
import underhook.core.geo.PlanePoint;

/**
 * Bends a way where it crosses what has a price, so that it crosses lines square and areas where they are
 * short. Points slide along the line, or the edge of the area, as long as that takes less in time and prices
 * together.
 */
final class CrossingBends {
    /** A square crossing is straight for so far to either side of the line, m. @source PRACTICE */
    private static final double STRAIGHT_M = 30;

    /** Crossings nearer to square than this are left as they are. */
    private static final double SQUARE_RATIO = 1.03;

    private static final double FIRST_STEP_M = 128;
    private static final double LAST_STEP_M = 0.1;
    private static final int ROUNDS = 4;

    private final Exposures exposures;
    private final WayMap map;
    private final WayMap.Wind wind;

    CrossingBends(Exposures exposures, WayMap map, WayMap.Wind wind) {
        this.exposures = exposures;
        this.map = map;
        this.wind = wind;
    }

    /** One point or two that slide along a line. */
    private static final class Knot {
        final LengthIndexedLine line;
        final List<Double> offsetsM;
        double alongM;

        Knot(LengthIndexedLine line, double alongM, List<Double> offsetsM) {
            this.line = line;
            this.alongM = alongM;
            this.offsetsM = offsetsM;
        }

        Stream<PlanePoint> points() {
            return offsetsM.stream()
                    .map(
                            offM -> {
                                Coordinate at =
                                        offM.equals(0.0)
                                                ? line.extractPoint(alongM)
                                                : line.extractPoint(alongM, offM);
                                return new PlanePoint(at.x, at.y);
                            });
        }
    }

    /** A point of the way that stays, or a knot. */
    private record Joint(PlanePoint at, List<Knot> after) {}

    /** The way bent; the same where bending gains nothing. */
    List<PlanePoint> bend(List<PlanePoint> way) {
        List<Joint> joints = new ArrayList<>();
        List<Knot> knots = new ArrayList<>();
        for (int i = 0; i < way.size(); i++) {
            List<Knot> after = i + 1 < way.size() ? edges(way.get(i), way.get(i + 1)) : List.of();
            joints.add(new Joint(way.get(i), new ArrayList<>(after)));
            knots.addAll(after);
        }
        for (int round = 0; round < ROUNDS; round++) {
            knots.forEach(knot -> slide(joints, knot));
        }
        for (int i = 0; i + 1 < way.size(); i++) {
            squares(joints, i);
        }
        List<PlanePoint> bent = points(joints);
        return costS(bent) < costS(way) - 1e-6 ? bent : way;
    }

    /** Tries a square crossing of each line that a piece crosses at a slant. */
    private void squares(List<Joint> joints, int at) {
        Joint joint = joints.get(at);
        if (!joint.after().isEmpty()) {
            return;
        }
        PlanePoint a = joint.at();
        PlanePoint b = joints.get(at + 1).at();
        for (Exposures.Hit hit : exposures.hits(List.of(a, b))) {
            if (hit.lengthRatio() <= SQUARE_RATIO) {
                continue;
            }
            double beforeS = costS(points(joints));
            Coordinate cross = coordinate(Plane.between(a, b, hit.alongM() / a.distanceToM(b)));
            LengthIndexedLine line = new LengthIndexedLine(hit.line().shape());
            double alongM = line.project(cross);
            Coordinate left = line.extractPoint(alongM, STRAIGHT_M);
            boolean leftFirst = left.distance(coordinate(a)) < left.distance(coordinate(b));
            double firstM = leftFirst ? STRAIGHT_M : -STRAIGHT_M;
            Knot knot = new Knot(line, alongM, List.of(firstM, -firstM));
            joint.after().add(knot);
            slide(joints, knot);
            if (!(costS(points(joints)) < beforeS - 1e-6)) {
                joint.after().remove(knot);
            } else {
                // One square crossing for each piece: what is left of it is a new piece.
                return;
            }
        }
    }

    private void slide(List<Joint> joints, Knot knot) {
        double bestS = costS(points(joints));
        for (double stepM = FIRST_STEP_M; stepM >= LAST_STEP_M; ) {
            double startM = knot.alongM;
            double betterM = startM;
            for (double tryM : new double[] {startM - stepM, startM + stepM}) {
                knot.alongM =
                        Math.max(
                                knot.line.getStartIndex(), Math.min(knot.line.getEndIndex(), tryM));
                double nowS = costS(points(joints));
                if (nowS < bestS - 1e-9) {
                    bestS = nowS;
                    betterM = knot.alongM;
                }
            }
            knot.alongM = betterM;
            stepM = Math.abs(betterM - startM) > 0 ? stepM : stepM / 2;
        }
    }

    /** Where a piece enters and leaves areas. */
    private List<Knot> edges(PlanePoint a, PlanePoint b) {
        LineString piece = Exposures.line(List.of(a, b));
        List<Knot> all = new ArrayList<>();
        List<Double> along = new ArrayList<>();
        for (Exposed area : exposures.areasNear(piece)) {
            Geometry edge = area.shape().getBoundary();
            for (Coordinate cross : edge.intersection(piece).getCoordinates()) {
                double fromM = cross.distance(coordinate(a));
                int at = 0;
                while (at < along.size() && along.get(at) <= fromM) {
                    at++;
                }
                LengthIndexedLine line = new LengthIndexedLine(edge);
                along.add(at, fromM);
                all.add(at, new Knot(line, line.project(cross), List.of(0.0)));
            }
        }
        return all;
    }

    private static List<PlanePoint> points(List<Joint> joints) {
        List<PlanePoint> all = new ArrayList<>();
        for (Joint joint : joints) {
            all.add(joint.at());
            joint.after().forEach(knot -> knot.points().forEach(all::add));
        }
        return all;
    }

    /** Infinite where a piece may not be flown. */
    private double costS(List<PlanePoint> way) {
        for (int i = 0; i + 1 < way.size(); i++) {
            if (!map.isFree(way.get(i), way.get(i + 1))) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return CheapestWay.timeS(way, wind) + exposures.priceS(way);
    }

    private static Coordinate coordinate(PlanePoint at) {
        return new Coordinate(at.eastM(), at.northM());
    }
}
