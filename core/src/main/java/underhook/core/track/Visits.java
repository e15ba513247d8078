package underhook.core.track;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import underhook.core.geo.PlanePoint;
import underhook.core.job.PlaceId;

/** Finds the stays over known places in a track. */
public final class Visits {
    /**
     * How a stay is told from flying past.
     *
     * @param enterM nearer than this to a place begins a stay, m
     * @param leaveM farther than this ends it, m, not less than enterM
     * @param leastS shorter stays are passes, s
     * @param holeS no point for longer than this is a hole in the track, s
     */
    public record Settings(double enterM, double leaveM, double leastS, double holeS) {
        /** Usual settings. @source PRACTICE twice the error of a handheld receiver, and a slow pass */
        public static final Settings USUAL = new Settings(35, 50, 15, 10);

        public Settings {
            if (!(enterM > 0 && leaveM >= enterM && leastS >= 0 && holeS > 0)) {
                throw new IllegalArgumentException("settings are out of range.");
            }
        }
    }

    private final Map<PlaceId, PlanePoint> places;
    private final Settings settings;
    private final List<Visit> found = new ArrayList<>();
    private Optional<PlaceId> at = Optional.empty();
    private Instant from = Instant.MIN;
    private Instant lastIn = Instant.MIN;
    private boolean certain = true;

    private Visits(Map<PlaceId, PlanePoint> places, Settings settings) {
        this.places = places;
        this.settings = settings;
    }

    /**
     * The stays, in time order.
     *
     * @param points in any order; of two at the same moment the first counts
     * @param places where loads are hooked and set down, in the same plane
     */
    public static List<Visit> find(
            List<TrackPoint> points, Map<PlaceId, PlanePoint> places, Settings settings) {
        List<TrackPoint> ordered = new ArrayList<>(points);
        ordered.sort(Comparator.comparing(TrackPoint::at));
        Visits visits = new Visits(new TreeMap<>(places), settings);
        Optional<Instant> before = Optional.empty();
        for (TrackPoint point : ordered) {
            if (before.isPresent() && !point.at().isAfter(before.get())) {
                continue;
            }
            boolean hole = before.isPresent() && spanS(before.get(), point.at()) > settings.holeS();
            visits.take(point, hole);
            before = Optional.of(point.at());
        }
        visits.end(true);
        return List.copyOf(visits.found);
    }

    private void take(TrackPoint point, boolean afterHole) {
        if (at.isPresent()) {
            boolean here = offM(point, at.get()) <= settings.leaveM();
            if (here) {
                // It may have been elsewhere and come back: nobody saw.
                certain &= !afterHole;
                lastIn = point.at();
                return;
            }
            end(!afterHole);
        }
        Optional<PlaceId> nearest =
                places.keySet().stream()
                        .min(
                                Comparator.<PlaceId>comparingDouble(place -> offM(point, place))
                                        .thenComparing(Comparator.naturalOrder()));
        if (nearest.isPresent() && offM(point, nearest.get()) <= settings.enterM()) {
            at = nearest;
            from = point.at();
            lastIn = point.at();
            certain = !afterHole;
        }
    }

    private void end(boolean seen) {
        if (at.isPresent() && spanS(from, lastIn) >= settings.leastS()) {
            found.add(new Visit(at.get(), from, lastIn, certain && seen));
        }
        at = Optional.empty();
    }

    private double offM(TrackPoint point, PlaceId place) {
        PlanePoint there = Objects.requireNonNull(places.get(place));
        return Math.hypot(
                point.point().eastM() - there.eastM(), point.point().northM() - there.northM());
    }

    private static double spanS(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }
}
