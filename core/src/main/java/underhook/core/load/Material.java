package underhook.core.load;

import underhook.core.unit.Units;

/**
 * What loads are made of, with the band its density may lie in.
 *
 * <p>Wood: oven dry to wet as printed; the likely value is that of wood that lay outside, two thirds up
 * the band, unless its moisture is known. The last number of a wood is its oven-dry mass over that of water
 * in its green volume.
 *
 * @source FPL-WOOD-HANDBOOK table 4-3 from memory, for that last number
 */
public enum Material {
    /** @source WOOD-DENSITY-TABLE .35 to .60 g/cm³ */
    SPRUCE(350, 550, 600, 0.37),
    /** @source WOOD-DENSITY-TABLE .31 to .74 g/cm³ */
    PINE(310, 600, 740, 0.43),
    /** @source WOOD-DENSITY-TABLE .44 to .80 g/cm³ */
    LARCH(440, 680, 800, 0.47),
    /** @source WOOD-DENSITY-TABLE .69 to 1.03 g/cm³ */
    OAK(690, 920, 1030, 0.57),
    /** @source POLE-SHEET-DOUGLAS-FIR treated poles: 48.9 to 49.2 lb/ft³; PRACTICE the ends of the band */
    TREATED_FIR(700, 793, 900, 0.45),
    /** @source DENSITY-TABLES 150 lb/ft³, within 3 % */
    CONCRETE(poundsKgPerM3(150) * 0.97, poundsKgPerM3(150), poundsKgPerM3(150) * 1.06, 0),
    /** @source DENSITY-TABLES 490 to 495 lb/ft³ */
    STEEL(poundsKgPerM3(490), poundsKgPerM3(490), poundsKgPerM3(495), 0),
    /** @source DENSITY-TABLES 170 lb/ft³, within 3 % */
    ALUMINIUM(poundsKgPerM3(170) * 0.97, poundsKgPerM3(170), poundsKgPerM3(170) * 1.03, 0),
    /** @source DENSITY-TABLES 62.4 lb/ft³ */
    WATER(poundsKgPerM3(62.4) * 0.995, poundsKgPerM3(62.4), poundsKgPerM3(62.4) * 1.005, 0),
    /** @source DENSITY-TABLES dry sand 90 lb/ft³; PRACTICE wet a quarter more */
    SAND(poundsKgPerM3(90), poundsKgPerM3(100), poundsKgPerM3(112), 0),
    /** @source DENSITY-TABLES dry gravel 105 lb/ft³; PRACTICE wet a fifth more */
    GRAVEL(poundsKgPerM3(105), poundsKgPerM3(115), poundsKgPerM3(126), 0),
    /** @source DENSITY-TABLES earth 125 lb/ft³; PRACTICE the ends of the band */
    EARTH(poundsKgPerM3(95), poundsKgPerM3(125), poundsKgPerM3(135), 0),
    /** @source DENSITY-TABLES rock 175 lb/ft³, within 3 % */
    ROCK(poundsKgPerM3(175) * 0.97, poundsKgPerM3(175), poundsKgPerM3(175) * 1.03, 0);

    private final double lightKgPerM3;
    private final double likelyKgPerM3;
    private final double heavyKgPerM3;
    private final double gravityRatio;

    /**
     * With its band in kg/m³.
     *
     * @param gravityRatio of wood: oven-dry mass over that of water in its green volume; 0 for others
     */
    Material(double lightKgPerM3, double likelyKgPerM3, double heavyKgPerM3, double gravityRatio) {
        this.lightKgPerM3 = lightKgPerM3;
        this.likelyKgPerM3 = likelyKgPerM3;
        this.heavyKgPerM3 = heavyKgPerM3;
        this.gravityRatio = gravityRatio;
    }

    /** Its band when nobody measured moisture or mass. */
    public DensityBand band() {
        return new DensityBand(lightKgPerM3, likelyKgPerM3, heavyKgPerM3);
    }

    public boolean isWood() {
        return gravityRatio > 0;
    }

    /**
     * Wood whose moisture is known.
     *
     * @param moistureFraction water over oven-dry wood by mass, in [0, 2.5]
     * @throws IllegalStateException if it is no wood
     */
    public DensityBand band(double moistureFraction) {
        if (!isWood()) {
            throw new IllegalStateException(this + " is no wood.");
        }
        return DensityBand.ofWood(gravityRatio, moistureFraction);
    }

    private static double poundsKgPerM3(double poundsPerFt3Coefficient) {
        return Units.lbPerFt3ToKgPerM3(poundsPerFt3Coefficient);
    }
}
