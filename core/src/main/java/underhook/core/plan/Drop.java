package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * A load set down.
 *
 * @param approachFromTrueRad bearing from the place to where the way in comes from, rad from true north
 * @param departureTrackTrueRad track of the way out, rad from true north
 * @param headMPerS least headwind on the last part in any wind that may hold, m/s; a tailwind is negative
 * @param crossMPerS most crosswind on the last part in any wind that may hold, m/s, from the right positive
 * @param reasons why this way in, in words
 */
public record Drop(
        LoadId load,
        PlaceId place,
        Instant releasedAt,
        double approachFromTrueRad,
        double departureTrackTrueRad,
        double headMPerS,
        double crossMPerS,
        List<String> reasons) {
    public Drop {
        reasons = List.copyOf(reasons);
    }
}
