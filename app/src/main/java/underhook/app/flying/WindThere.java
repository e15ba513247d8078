package underhook.app.flying;

import java.time.Instant;
import java.util.Optional;
import underhook.app.desk.DayLooks.Look;
import underhook.app.replan.Change;
import underhook.core.air.Wind;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.job.PlaceId;
import underhook.planner.order.DayLook.AirThere;

/**
 * The wind at a place as it counts now: of forecast and report the stronger, from where it was reported.
 *
 * @param other the less windy of two forecast winds that may hold; the same where only one may or somebody
 *     reported one
 * @param reportedAt when somebody reported it; empty when it is the forecast's alone
 */
public record WindThere(
        double fromTrueRad,
        double meanMPerS,
        double gustMPerS,
        Wind other,
        Optional<Instant> reportedAt) {
    /** The wind at a place; empty when no weather is known then and nobody reported. */
    static Optional<WindThere> find(Look look, FlownDay flown, PlaceId place, Instant now) {
        Optional<AirThere> forecast = look.day().findAir(place, now);
        Optional<Change.WindSeen> report = findSeen(flown, place, now);
        if (report.isEmpty()) {
            return forecast.map(
                    air ->
                            new WindThere(
                                    air.windFromTrueRad(),
                                    air.windMPerS(),
                                    air.gustMPerS(),
                                    air.otherWind(),
                                    Optional.empty()));
        }
        Change.WindSeen said = report.get();
        double meanMPerS =
                Math.max(said.meanMPerS(), forecast.map(AirThere::windMPerS).orElse(0.0));
        return Optional.of(
                new WindThere(
                        said.fromTrueRad(),
                        meanMPerS,
                        Math.max(said.gustMPerS(), forecast.map(AirThere::gustMPerS).orElse(0.0)),
                        new Wind(said.fromTrueRad(), meanMPerS),
                        Optional.of(said.at())));
    }

    /** The newest wind that was seen at a place, if it still counts. */
    private static Optional<Change.WindSeen> findSeen(FlownDay flown, PlaceId place, Instant now) {
        return FlyingDay.findNewest(
                        flown, tap -> seen(tap).filter(wind -> wind.place().equals(place)))
                .filter(wind -> wind.isNew(now));
    }

    /** What a tap tells of the wind; empty when it is about something else, or nobody knows where. */
    static Optional<Change.WindSeen> seen(Tap tap) {
        if (!(Report.of(tap).orElse(null) instanceof Report.WindSeen wind)) {
            return Optional.empty();
        }
        return tap.place()
                .map(
                        place ->
                                new Change.WindSeen(
                                        place,
                                        wind.fromTrueRad(),
                                        wind.meanMPerS(),
                                        wind.gustMPerS(),
                                        tap.at()));
    }

    /** Least headwind on a track in any mean wind that may hold, m/s; a tailwind is negative. */
    double headMPerS(double trackTrueRad) {
        return Math.min(mean().headMPerS(trackTrueRad), other.headMPerS(trackTrueRad));
    }

    /** Most crosswind on a track in any mean wind that may hold, m/s, from the right positive. */
    double crossMPerS(double trackTrueRad) {
        double one = mean().crossMPerS(trackTrueRad);
        double another = other.crossMPerS(trackTrueRad);
        return Math.abs(another) > Math.abs(one) ? another : one;
    }

    private Wind mean() {
        return new Wind(fromTrueRad, meanMPerS);
    }
}
