package underhook.core.load;

import underhook.core.unit.Ranges;

/**
 * Where a density may lie.
 *
 * <p>The heaviest counts for lifting, the lightest for flying.
 *
 * @param lightestKgPerM3 kg/m³, above 0
 * @param likelyKgPerM3 kg/m³
 * @param heaviestKgPerM3 kg/m³
 */
public record DensityBand(double lightestKgPerM3, double likelyKgPerM3, double heaviestKgPerM3) {
    /** How far single pieces of one wood spread about its mean. @source FPL-WOOD-HANDBOOK from memory */
    private static final double WOOD_SPREAD_FRACTION = 0.1;

    private static final double WATER_KG_PER_M3 = 1000;

    public DensityBand {
        Ranges.requirePositive(lightestKgPerM3, "lightestKgPerM3");
        if (!(lightestKgPerM3 <= likelyKgPerM3
                && likelyKgPerM3 <= heaviestKgPerM3
                && heaviestKgPerM3 < 25000)) {
            throw new IllegalArgumentException("densities must ascend and stay below 25000 kg/m³.");
        }
    }

    /** Nothing but one value. */
    public static DensityBand ofExactly(double densityKgPerM3) {
        return new DensityBand(densityKgPerM3, densityKgPerM3, densityKgPerM3);
    }

    /**
     * Wood of a known moisture.
     *
     * @param gravityRatio oven-dry mass over that of water in the wood's volume at that moisture, in
     *     (0, 1.3]
     * @param moistureFraction water over oven-dry wood by mass, in [0, 2.5]
     * @source FPL-WOOD-HANDBOOK chapter 4: density = 1000 G (1 + MC)
     */
    public static DensityBand ofWood(double gravityRatio, double moistureFraction) {
        if (!(gravityRatio > 0 && gravityRatio <= 1.3)) {
            throw new IllegalArgumentException(
                    "gravityRatio (" + gravityRatio + ") must lie in (0, 1.3].");
        }
        if (!(moistureFraction >= 0 && moistureFraction <= 2.5)) {
            throw new IllegalArgumentException(
                    "moistureFraction (" + moistureFraction + ") must lie in [0, 2.5].");
        }
        double mean = WATER_KG_PER_M3 * gravityRatio * (1 + moistureFraction);
        return new DensityBand(
                mean * (1 - WOOD_SPREAD_FRACTION), mean, mean * (1 + WOOD_SPREAD_FRACTION));
    }
}
