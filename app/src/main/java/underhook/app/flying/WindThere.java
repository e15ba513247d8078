package underhook.app.flying;

import java.time.Instant;
import java.util.Optional;
import underhook.app.desk.DayLooks.Look;
import underhook.core.air.Wind;
import underhook.core.flown.FlownDay;
import underhook.core.job.PlaceId;
import underhook.planner.order.DayLook.AirThere;

/**
 * The wind at a place as it counts now: of forecast and report the stronger, from where it was reported.
 *
 * @param reportedAt when somebody reported it; empty when it is the forecast's alone
 */
public record WindThere(
        double fromTrueRad, double meanMPerS, double gustMPerS, Optional<Instant> reportedAt) {
    /** The wind at a place; empty when no weather is known then and nobody reported. */
    static Optional<WindThere> find(Look look, FlownDay flown, PlaceId place, Instant now) {
        Optional<AirThere> forecast = look.day().findAir(place, now);
        Optional<ReportedWind> report = ReportedWind.find(flown, place, now);
        if (report.isEmpty()) {
            return forecast.map(
                    air ->
                            new WindThere(
                                    air.windFromTrueRad(),
                                    air.windMPerS(),
                                    air.gustMPerS(),
                                    Optional.empty()));
        }
        ReportedWind said = report.get();
        return Optional.of(
                new WindThere(
                        said.fromTrueRad(),
                        Math.max(said.meanMPerS(), forecast.map(AirThere::windMPerS).orElse(0.0)),
                        Math.max(said.gustMPerS(), forecast.map(AirThere::gustMPerS).orElse(0.0)),
                        Optional.of(said.at())));
    }

    /** The mean wind as a vector. */
    Wind mean() {
        return new Wind(fromTrueRad, meanMPerS);
    }
}
