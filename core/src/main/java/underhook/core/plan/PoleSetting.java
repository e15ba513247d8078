package underhook.core.plan;

import java.util.List;
import java.util.Objects;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * How a pole is held up while its guys are made fast.
 *
 * @param massKg heaviest it may be, kg
 * @param centreM centre of gravity from the butt, m
 * @param attachM attachment of the guys from the butt, m
 * @param guys in the order of the place's azimuths
 * @param largestGapRad largest angle between neighbours, rad
 * @param gustMPerS wind from any side that the pulls are for, m/s
 * @param leanRad lean to any side that the pulls are for, rad
 * @param handLeanRad largest lean in calm air at which one person holds each guy, rad, rounded down
 * @param hoverS hover from arrival to release, s
 * @param hoverFuelKg fuel for it, kg, rounded up
 * @param spareKg hover mass less the machine with the pole on arrival, kg, rounded down
 * @param readingKg load reading when nothing but the line hangs there, kg
 * @param sidePullN most level pull that the line may give at the pole's top, N, rounded down
 * @param topMPerS speed of the top of the falling pole at the ground, m/s, rounded up
 */
public record PoleSetting(
        LoadId load,
        PlaceId place,
        double massKg,
        double centreM,
        double attachM,
        List<GuyPull> guys,
        double largestGapRad,
        double gustMPerS,
        double leanRad,
        double handLeanRad,
        double hoverS,
        double hoverFuelKg,
        double spareKg,
        double readingKg,
        double sidePullN,
        double topMPerS) {
    /**
     * One guy.
     *
     * @param azimuthTrueRad from the pole to the anchor, rad from true north
     * @param anchorDistanceM level distance from butt to anchor, m
     * @param anchorAboveButtM height of the anchor over the butt, m; negative below
     * @param windN hardest pull by wind alone, N, rounded up
     * @param leanN hardest pull by lean alone, N, rounded up
     * @param worstN hardest pull by both from one side, N, rounded up
     * @param anchorUsedRatio of what the anchor holds
     * @param byHand whether one person holds the hardest pull
     */
    public record GuyPull(
            double azimuthTrueRad,
            double anchorDistanceM,
            double anchorAboveButtM,
            double windN,
            double leanN,
            double worstN,
            double anchorUsedRatio,
            boolean byHand) {
        public GuyPull {
            if (!(anchorDistanceM > 0 && windN >= 0 && leanN >= 0 && worstN >= 0)) {
                throw new IllegalArgumentException("a guy's pull is out of range.");
            }
        }
    }

    public PoleSetting {
        Objects.requireNonNull(load, "load");
        Objects.requireNonNull(place, "place");
        guys = List.copyOf(guys);
        if (guys.isEmpty() || !(massKg > 0 && centreM > 0 && attachM > 0 && hoverS >= 0)) {
            throw new IllegalArgumentException("the setting of " + load + " is out of range.");
        }
    }

    /** Index of the guy whose anchor is used furthest. */
    public int weakest() {
        int weakest = 0;
        for (int i = 1; i < guys.size(); i++) {
            if (guys.get(i).anchorUsedRatio() > guys.get(weakest).anchorUsedRatio()) {
                weakest = i;
            }
        }
        return weakest;
    }
}
