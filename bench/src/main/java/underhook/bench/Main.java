package underhook.bench;

import java.util.List;
import java.util.Random;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;

/** {@code bench [NAME]}: runs all comparisons, or the one of that name. */
public final class Main {
    private static final int POINTS = 20_000;
    private static final double EARTH_RADIUS_M = 6_371_000;

    private Main() {}

    public static void main(String[] arguments) {
        List<Measured> all =
                List.of(
                        frame(),
                        RoomBench.room(),
                        RoomBench.ways(),
                        new RasterWindow(),
                        new WaysMeasured(),
                        new TownMeasured(),
                        new DaysMeasured(),
                        new ReplanMeasured(),
                        new DeskMeasured(),
                        new PageMeasured(),
                        new LiveMeasured(),
                        new SwingApproaches().comparison());
        List<Measured> wanted =
                all.stream()
                        .filter(one -> arguments.length == 0 || one.name().equals(arguments[0]))
                        .toList();
        if (wanted.isEmpty() || arguments.length > 1) {
            System.err.println("bench knows: " + all.stream().map(Measured::name).toList());
            System.exit(2);
        }
        wanted.forEach(one -> one.measure(System.out::println));
    }

    /** Turning positions into the plane, against distance and bearing on a sphere. */
    private static Comparison frame() {
        GeoPoint origin = new GeoPoint(46.8, -12);
        LocalFrame frame = LocalFrame.of(origin);
        Random random = new Random(1);
        List<GeoPoint> points =
                random.doubles(POINTS, -0.05, 0.05)
                        .mapToObj(off -> new GeoPoint(46.8 + off, -12 - off))
                        .toList();
        return new Comparison(
                "frame",
                "distance and bearing on a sphere",
                () -> points.stream().mapToDouble(point -> onSphere(origin, point)).sum(),
                () ->
                        points.stream()
                                .map(frame::toPlane)
                                .mapToDouble(point -> point.eastM() + point.northM())
                                .sum());
    }

    private static double onSphere(GeoPoint from, GeoPoint to) {
        double lat1 = Math.toRadians(from.latDeg());
        double lat2 = Math.toRadians(to.latDeg());
        double dLon = Math.toRadians(to.lonDeg() - from.lonDeg());
        double halfChord =
                Math.pow(Math.sin((lat2 - lat1) / 2), 2)
                        + Math.cos(lat1) * Math.cos(lat2) * Math.pow(Math.sin(dLon / 2), 2);
        double distanceM = 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(halfChord));
        double bearing =
                Math.atan2(
                        Math.sin(dLon) * Math.cos(lat2),
                        Math.cos(lat1) * Math.sin(lat2)
                                - Math.sin(lat1) * Math.cos(lat2) * Math.cos(dLon));
        return distanceM * Math.sin(bearing) + distanceM * Math.cos(bearing);
    }
}
