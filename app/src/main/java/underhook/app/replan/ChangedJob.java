package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;

/** A job as it is after what was told of it. */
public final class ChangedJob {
    /** A height judged by eye may be so much too low. @source PRACTICE a fifth */
    private static final double JUDGED_HEIGHT_FACTOR = 1.2;

    /** Something paced off from a place lies within this share of the distance. @source PRACTICE */
    private static final double PACED_OFF_RATIO = 0.1;

    private static final double LEAST_BUFFER_M = 5;

    private ChangedJob() {}

    /**
     * The job after all changes that it can hold; changes of crews and of what is flown are not of the job.
     *
     * @param now what is of the time to come begins here
     */
    public static Job after(Job asRead, Instant now, List<Change> changes) {
        Job changed = asRead;
        for (Change change : changes) {
            if (change instanceof Change.Weighed one) {
                changed = changed.withLoads(weighed(changed, one));
            } else if (change instanceof Change.WindEarlier one) {
                changed = changed.withWeather(earlier(changed.weather(), now, one.by()));
            } else if (change instanceof Change.WindSeen one) {
                SeenWind wind = new SeenWind(one, asRead.getPlace(one.place()).exposureFactor());
                changed = changed.withWeather(wind.over(changed.weather(), now));
            } else if (change instanceof Change.LoadAdded one) {
                List<Load> loads = new ArrayList<>(changed.loads());
                loads.add(one.load());
                changed = changed.withLoads(loads);
            } else if (change instanceof Change.PlaceMoved one) {
                changed = changed.withPlaces(moved(changed, asRead.getPlace(one.place()), one));
            } else if (change instanceof Change.StandsThere one) {
                List<MapFeature> features = new ArrayList<>(changed.features());
                features.add(thing(asRead.getPlace(one.place()), one));
                changed = changed.withFeatures(features);
            }
        }
        return changed;
    }

    private static List<Place> moved(Job job, Place asRead, Change.PlaceMoved moved) {
        Place there =
                new Place(
                        asRead.id(),
                        asRead.kind(),
                        asRead.name(),
                        from(asRead, moved.towardsTrueRad(), moved.byM()),
                        // What was stated and surveyed holds for where it was.
                        OptionalDouble.empty(),
                        asRead.canopyM(),
                        asRead.canopySpreadM(),
                        moved.clearM(),
                        asRead.exposureFactor(),
                        asRead.agreed(),
                        asRead.standing(),
                        asRead.fuel(),
                        asRead.landingAsked(),
                        asRead.guyAzimuthsTrueRad(),
                        asRead.remarks());
        return job.places().stream()
                .map(place -> place.id().equals(asRead.id()) ? there : place)
                .toList();
    }

    private static MapFeature thing(Place near, Change.StandsThere told) {
        return new MapFeature(
                near.id()
                        + "-"
                        + Math.round(Math.toDegrees(told.towardsTrueRad()))
                        + "-"
                        + Math.round(told.atM()),
                MapFeature.Kind.MAST,
                MapFeature.Shape.POINT,
                List.of(from(near, told.towardsTrueRad(), told.atM())),
                Math.max(LEAST_BUFFER_M, PACED_OFF_RATIO * told.atM()),
                CrossingRule.NEVER,
                OptionalDouble.of(Math.ceil(JUDGED_HEIGHT_FACTOR * told.heightM())),
                true,
                "told on the day");
    }

    private static GeoPoint from(Place place, double towardsTrueRad, double distanceM) {
        return LocalFrame.of(place.position())
                .toGeo(
                        new PlanePoint(
                                distanceM * Math.sin(towardsTrueRad),
                                distanceM * Math.cos(towardsTrueRad)));
    }

    private static List<Load> weighed(Job job, Change.Weighed weighed) {
        job.getLoad(weighed.load());
        return job.loads().stream()
                .map(
                        load ->
                                load.id().equals(weighed.load())
                                        ? load.weighing(weighed.massKg())
                                        : load)
                .toList();
    }

    /** Rows that begin after now begin earlier, but none before now; the forecast ends when it ended. */
    private static Weather earlier(Weather weather, Instant now, Duration by) {
        List<WeatherHour> rows = new ArrayList<>();
        for (WeatherHour row : weather.hours()) {
            Instant from = row.from();
            if (from.isAfter(now)) {
                from = from.minus(by).isAfter(now) ? from.minus(by) : now;
            }
            if (!rows.isEmpty() && !rows.get(rows.size() - 1).from().isBefore(from)) {
                rows.remove(rows.size() - 1);
            }
            if (from.isBefore(weather.until())) {
                rows.add(
                        new WeatherHour(
                                from,
                                row.qnhPa(),
                                row.temperatureK(),
                                row.windFromTrueRad(),
                                row.windMPerS(),
                                row.gustMPerS(),
                                row.remarks()));
            }
        }
        return weather.withHours(rows);
    }
}
