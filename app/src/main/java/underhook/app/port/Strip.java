package underhook.app.port;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;

/**
 * The ground within a distance of some lines in the local plane.
 *
 * <p>Each line is noted in the squares that it can reach, so that a question looks at few of them.
 * Mutable while lines are added.
 */
final class Strip {
    private final double halfWidthM;
    private final Map<Square, List<PlaneLine>> squares = new HashMap<>();
    private final List<PlanePoint> ends = new ArrayList<>();

    private record Square(long column, long row) {}

    Strip(double halfWidthM) {
        this.halfWidthM = halfWidthM;
    }

    /** Adds the lines between points; of one point the point itself. */
    void add(List<PlanePoint> path) {
        for (int i = 0; i < path.size(); i++) {
            PlaneLine line = new PlaneLine(path.get(Math.max(0, i - 1)), path.get(i));
            if (i > 0 || path.size() == 1) {
                for (Square square : squaresOf(line, halfWidthM)) {
                    squares.computeIfAbsent(square, any -> new ArrayList<>()).add(line);
                }
            }
        }
        ends.add(path.get(0));
    }

    private List<Square> squaresOf(PlaneLine line, double marginM) {
        List<Square> found = new ArrayList<>();
        long west = square(Math.min(line.from().eastM(), line.to().eastM()) - marginM);
        long east = square(Math.max(line.from().eastM(), line.to().eastM()) + marginM);
        long south = square(Math.min(line.from().northM(), line.to().northM()) - marginM);
        long north = square(Math.max(line.from().northM(), line.to().northM()) + marginM);
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
            PlaneLine side = new PlaneLine(outline.get(Math.max(0, i - 1)), outline.get(i));
            for (Square square : squaresOf(side, 0)) {
                for (PlaneLine line : squares.getOrDefault(square, List.of())) {
                    if (line.distanceToM(side) <= halfWidthM) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** Whether a ring that no line comes near has any of them inside. */
    boolean isAnyInside(List<PlanePoint> ring) {
        return ends.stream().anyMatch(end -> PlaneLine.isInside(end, ring));
    }
}
