package underhook.planner.route;

import java.util.List;
import underhook.core.geo.PlanePoint;

/**
 * A disc that a way goes round.
 *
 * @param radiusM radius, m; 0 for a point that the way passes
 * @param side 1 where the way turns left round it, -1 where right
 * @param corners numbers of the corners of the way that it stands for, in a row
 */
record Disc(PlanePoint centre, double radiusM, int side, List<Integer> corners) {
    Disc {
        corners = List.copyOf(corners);
    }

    static Disc point(PlanePoint at, int corner) {
        return new Disc(at, 0, 1, List.of(corner));
    }

    int first() {
        return corners.get(0);
    }

    int last() {
        return corners.get(corners.size() - 1);
    }
}
