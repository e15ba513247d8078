package underhook.app.port;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import underhook.core.geo.PlanePoint;

/**
 * The ground within a distance of some lines in the local plane.
 *
 * <p>Each line is noted in the squares that it can reach, so that a question looks at few of them.
 * Mutable while lines are added.
 */
final class Strip {
    private final double halfWidthM;
    private final Map<Square, List<Line>> squares = new HashMap<>();
    private final Set<Line> lines = new HashSet<>();
    private final Set<PlanePoint> ends = new HashSet<>();

    private record Square(long column, long row) {}

    private record Line(PlanePoint from, PlanePoint to) {}

    Strip(double halfWidthM) {
        this.halfWidthM = halfWidthM;
    }

    /** Adds the lines between points; of one point the point itself. */
    void add(List<PlanePoint> path) {
        for (int i = 0; i < path.size(); i++) {
            Line line = new Line(path.get(Math.max(0, i - 1)), path.get(i));
            boolean isNew = (i > 0 || path.size() == 1) && lines.add(line);
            if (isNew) {
                for (Square square : squaresOf(line, halfWidthM)) {
                    squares.computeIfAbsent(square, any -> new ArrayList<>()).add(line);
                }
            }
        }
        ends.add(path.get(0));
    }

    private List<Square> squaresOf(Line line, double marginM) {
        List<Square> found = new ArrayList<>();
        long west = square(Math.min(line.from.eastM(), line.to.eastM()) - marginM);
        long east = square(Math.max(line.from.eastM(), line.to.eastM()) + marginM);
        long south = square(Math.min(line.from.northM(), line.to.northM()) - marginM);
        long north = square(Math.max(line.from.northM(), line.to.northM()) + marginM);
        for (long column = west; column <= east; column++) {
            for (long row = south; row <= north; row++) {
                found.add(new Square(column, row));
            }
        }
        return found;
    }

    private long square(double coordinateM) {
        return (long) Math.floor(coordinateM / halfWidthM);
    }

    /** Whether any of an outline's lines comes within the distance. */
    boolean touches(List<PlanePoint> outline) {
        for (int i = 0; i < outline.size(); i++) {
            Line side = new Line(outline.get(Math.max(0, i - 1)), outline.get(i));
            for (Square square : squaresOf(side, 0)) {
                for (Line line : squares.getOrDefault(square, List.of())) {
                    if (distanceM(line, side) <= halfWidthM) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** Whether a ring that no line comes near has any of them inside. */
    boolean isAnyInside(List<PlanePoint> ring) {
        return ends.stream().anyMatch(end -> isInside(end, ring));
    }

    /** Counts how often a ray to the east meets the ring. */
    private static boolean isInside(PlanePoint point, List<PlanePoint> ring) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            PlanePoint a = ring.get(i);
            PlanePoint b = ring.get((i + 1) % ring.size());
            if (a.northM() > point.northM() != b.northM() > point.northM()) {
                double share = (point.northM() - a.northM()) / (b.northM() - a.northM());
                inside ^= point.eastM() < a.eastM() + share * (b.eastM() - a.eastM());
            }
        }
        return inside;
    }

    private static double distanceM(Line one, Line other) {
        if (isCrossed(one, other)) {
            return 0;
        }
        return Math.min(
                Math.min(distanceM(one.from, other), distanceM(one.to, other)),
                Math.min(distanceM(other.from, one), distanceM(other.to, one)));
    }

    private static boolean isCrossed(Line one, Line other) {
        double a = turn(one, other.from);
        double b = turn(one, other.to);
        double c = turn(other, one.from);
        double d = turn(other, one.to);
        return a * b < 0 && c * d < 0;
    }

    private static double turn(Line line, PlanePoint point) {
        return (line.to.eastM() - line.from.eastM()) * (point.northM() - line.from.northM())
                - (line.to.northM() - line.from.northM()) * (point.eastM() - line.from.eastM());
    }

    private static double distanceM(PlanePoint point, Line line) {
        double east = line.to.eastM() - line.from.eastM();
        double north = line.to.northM() - line.from.northM();
        double square = east * east + north * north;
        double along =
                square <= 0
                        ? 0
                        : ((point.eastM() - line.from.eastM()) * east
                                        + (point.northM() - line.from.northM()) * north)
                                / square;
        double share = Math.max(0, Math.min(1, along));
        return Math.hypot(
                line.from.eastM() + share * east - point.eastM(),
                line.from.northM() + share * north - point.northM());
    }
}
