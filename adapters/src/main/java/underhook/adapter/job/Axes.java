package underhook.adapter.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;

/** Finds coordinates that lie far off, and whether swapping them brings them home. */
final class Axes {
    /** No day's job is wider than this. */
    private static final double FAR_M = 50_000;

    private static final double M_PER_DEGREE = 111_320;

    /** The plane's own bound: {@link LocalFrame#of}. */
    private static final double MOST_LAT_DEG = 84;

    private Axes() {}

    /** The middle of the places: half of them lie on either side, so that one far off moves nothing. */
    static GeoPoint middle(List<Position> places) {
        double lonDeg = places.get(0).point().lonDeg();
        List<Double> lats = new ArrayList<>();
        List<Double> eastDegs = new ArrayList<>();
        for (Position place : places) {
            lats.add(place.point().latDeg());
            eastDegs.add(Math.IEEEremainder(place.point().lonDeg() - lonDeg, 360));
        }
        double east = eastDegs.stream().sorted().toList().get(eastDegs.size() / 2);
        double lat = lats.stream().sorted().toList().get(lats.size() / 2);
        return new GeoPoint(lat, Math.IEEEremainder(lonDeg + east, 360));
    }

    /** Mean of the places' positions, rounded to a thousandth of a degree. */
    static GeoPoint origin(List<Position> places) {
        double lonDeg = places.get(0).point().lonDeg();
        double east = 0;
        double lat = 0;
        for (Position place : places) {
            lat += place.point().latDeg() / places.size();
            east += Math.IEEEremainder(place.point().lonDeg() - lonDeg, 360) / places.size();
        }
        double mean = Math.IEEEremainder(lonDeg + east, 360);
        return new GeoPoint(Math.rint(lat * 1000) / 1000, Math.rint(mean * 1000) / 1000);
    }

    /** Faults for places far from the others, and for those too near a pole. */
    static void checkPlaces(List<Position> places) {
        GeoPoint middle = middle(places);
        for (Position place : places) {
            if (!isFar(place.point(), middle)) {
                if (!hasPlane(place.point())) {
                    report(place, "is too near the pole", "84° north to 84° south");
                }
                continue;
            }
            Optional<GeoPoint> swapped = place.pair().swapped().toGeo();
            if (swapped.isPresent() && !isFar(swapped.get(), middle)) {
                Position.reportSwapped(place.source(), place.at(), place.pair());
            } else {
                reportFar(place, "within 50 km of the other places");
            }
        }
    }

    /** A fault for a file of which nothing lies near the places. */
    static void checkFile(List<Position> positions, GeoPoint middle) {
        if (positions.isEmpty()
                || positions.stream().anyMatch(each -> !isFar(each.point(), middle))) {
            return;
        }
        Position first = positions.get(0);
        boolean isSwapped =
                positions.stream()
                        .map(each -> each.pair().swapped().toGeo())
                        .anyMatch(point -> point.isPresent() && !isFar(point.get(), middle));
        if (isSwapped) {
            Position.reportSwapped(first.source(), first.at(), first.pair());
        } else {
            reportFar(first, "something within 50 km of the places in this file");
        }
    }

    private static void reportFar(Position position, String allowed) {
        report(position, "is far off", allowed);
    }

    private static void report(Position position, String what, String allowed) {
        position.source()
                .fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        position.at(),
                        what,
                        new Found(position.pair().typed(), allowed));
    }

    /** Whether a job can lie there. */
    static boolean hasPlane(GeoPoint point) {
        return Math.abs(point.latDeg()) <= MOST_LAT_DEG;
    }

    static boolean isFar(GeoPoint point, GeoPoint middle) {
        double northM = (point.latDeg() - middle.latDeg()) * M_PER_DEGREE;
        double east = Math.IEEEremainder(point.lonDeg() - middle.lonDeg(), 360);
        double eastM = east * M_PER_DEGREE * Math.cos(Math.toRadians(middle.latDeg()));
        return !(Math.hypot(northM, eastM) <= FAR_M);
    }

    /** The plane that the job lies on. */
    static LocalFrame frame(List<Position> places) {
        return LocalFrame.of(origin(places));
    }
}
