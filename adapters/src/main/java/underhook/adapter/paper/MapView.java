package underhook.adapter.paper;

import java.util.List;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.geo.PlanePoint;

/** How the local plane lies on the page: north up, a round scale. */
final class MapView {
    private static final double M_PER_POINT = 0.0254 / 72;
    private static final double[] ROUND = {1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5};

    private final Labels.Box frame;
    private final PlanePoint centre;
    private final double scaleNumber;

    /** Shows all points with a little room around them. */
    MapView(Labels.Box frame, List<PlanePoint> points) {
        this.frame = frame;
        double west = points.stream().mapToDouble(PlanePoint::eastM).min().orElse(-500);
        double east = points.stream().mapToDouble(PlanePoint::eastM).max().orElse(500);
        double south = points.stream().mapToDouble(PlanePoint::northM).min().orElse(-500);
        double north = points.stream().mapToDouble(PlanePoint::northM).max().orElse(500);
        centre = new PlanePoint((west + east) / 2, (south + north) / 2);
        double metresPerPoint =
                Math.max(
                        (east - west) / (frame.width() - 60),
                        (north - south) / (frame.height() - 60));
        scaleNumber = roundUp(Math.max(metresPerPoint / M_PER_POINT, 1000));
    }

    private static double roundUp(double number) {
        double power = Math.pow(10, Math.floor(Math.log10(number)));
        for (double round : ROUND) {
            if (round * power >= number * (1 - 1e-9)) {
                return round * power;
            }
        }
        return 10 * power;
    }

    /** The n of 1:n. */
    long scaleNumber() {
        return Math.round(scaleNumber);
    }

    double metresPerPoint() {
        return scaleNumber * M_PER_POINT;
    }

    Labels.Box frame() {
        return frame;
    }

    Dot toPage(PlanePoint point) {
        return new Dot(
                frame.x() + frame.width() / 2 + (point.eastM() - centre.eastM()) / metresPerPoint(),
                frame.y()
                        + frame.height() / 2
                        - (point.northM() - centre.northM()) / metresPerPoint());
    }

    PlanePoint toPlane(Dot dot) {
        return new PlanePoint(
                centre.eastM() + (dot.x() - frame.x() - frame.width() / 2) * metresPerPoint(),
                centre.northM() - (dot.y() - frame.y() - frame.height() / 2) * metresPerPoint());
    }

    boolean shows(Dot dot) {
        return dot.x() >= frame.x()
                && dot.x() <= frame.x() + frame.width()
                && dot.y() >= frame.y()
                && dot.y() <= frame.y() + frame.height();
    }
}
