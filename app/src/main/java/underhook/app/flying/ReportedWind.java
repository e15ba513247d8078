package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.job.PlaceId;
import underhook.core.unit.Units;

/**
 * A wind that somebody reported from a place: {@code wind 230 14 22}, degrees true, knots, gust.
 *
 * @param place where it was seen
 */
public record ReportedWind(
        PlaceId place, double fromTrueRad, double meanMPerS, double gustMPerS, Instant at) {
    /** An older report says nothing of the wind now. @source PRACTICE an hour, as forecasts step */
    static final Duration GOOD_FOR = Duration.ofHours(1);

    private static final Pattern SAID =
            Pattern.compile("wind ([0-9]{1,3}) ([0-9]{1,2}) ([0-9]{1,3})");

    /** What a report says of the wind; empty when it is about something else. */
    static Optional<ReportedWind> of(Tap tap) {
        Matcher said = SAID.matcher(tap.note());
        if (!said.matches() || tap.place().isEmpty()) {
            return Optional.empty();
        }
        double meanKt = Double.parseDouble(said.group(2));
        double gustKt = Math.max(meanKt, Double.parseDouble(said.group(3)));
        return Optional.of(
                new ReportedWind(
                        tap.place().get(),
                        Units.degToRad(Double.parseDouble(said.group(1)) % 360),
                        Units.ktToMPerS(meanKt),
                        Units.ktToMPerS(gustKt),
                        tap.at()));
    }

    /** The newest report from a place that still counts. */
    static Optional<ReportedWind> find(FlownDay flown, PlaceId place, Instant now) {
        return FlyingDay.findNewest(
                        flown, tap -> of(tap).filter(wind -> wind.place().equals(place)))
                .filter(wind -> !wind.at().plus(GOOD_FOR).isBefore(now));
    }
}
