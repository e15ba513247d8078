package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.job.PlaceId;

/**
 * A wind that somebody reported from a place.
 *
 * @param place where it was seen
 */
public record ReportedWind(
        PlaceId place, double fromTrueRad, double meanMPerS, double gustMPerS, Instant at) {
    /** An older report says nothing of the wind now. @source PRACTICE an hour, as forecasts step */
    static final Duration GOOD_FOR = Duration.ofHours(1);

    /** What a report says of the wind; empty when it is about something else. */
    static Optional<ReportedWind> of(Tap tap) {
        return Report.of(tap)
                .filter(report -> report instanceof Report.WindSeen && tap.place().isPresent())
                .map(report -> of(tap, (Report.WindSeen) report));
    }

    private static ReportedWind of(Tap tap, Report.WindSeen seen) {
        return new ReportedWind(
                tap.place().orElseThrow(),
                seen.fromTrueRad(),
                seen.meanMPerS(),
                seen.gustMPerS(),
                tap.at());
    }

    /** The newest report from a place that still counts. */
    static Optional<ReportedWind> find(FlownDay flown, PlaceId place, Instant now) {
        return FlyingDay.findNewest(
                        flown, tap -> of(tap).filter(wind -> wind.place().equals(place)))
                .filter(wind -> !wind.at().plus(GOOD_FOR).isBefore(now));
    }
}
