package underhook.planner.route;

import java.util.List;

/**
 * The way in to a place and the way out of it at one hour.
 *
 * @param approachFromGridRad bearing from the place to where the way in comes from, rad from grid north
 * @param departureTrackGridRad track of the way out, rad from grid north
 * @param headMPerS least headwind on the last part in any wind that may hold, m/s; negative is a tailwind
 * @param crossMPerS most crosswind on the last part in any wind that may hold, m/s, from the right positive
 * @param outTailMPerS most tailwind on the way out in any wind that may hold, m/s; negative is a headwind
 * @param reasons why this way in, the second best, why not the others, in words
 * @param outReasons the same of the way out, its track first
 * @param refusedInto what refuses the way straight into the wind; empty when nothing does
 */
public record WayIn(
        double approachFromGridRad,
        double departureTrackGridRad,
        double headMPerS,
        double crossMPerS,
        double outTailMPerS,
        List<String> reasons,
        List<String> outReasons,
        List<String> refusedInto) {
    public WayIn {
        reasons = List.copyOf(reasons);
        outReasons = List.copyOf(outReasons);
        refusedInto = List.copyOf(refusedInto);
    }
}
