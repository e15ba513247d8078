package underhook.core.line;

/**
 * How a sling goes round a load, and what of its straight pull is left.
 *
 * <p>For a sling, all legs of one pair on one load. Where printed tables differ, the lower value stands
 * here.
 */
public enum Hitch {
    /** One straight leg. */
    VERTICAL,
    /** Round the load and through its own eye, drawn tight at 120° or more. */
    CHOKER,
    /** Under the load with both ends up. */
    BASKET;

    /** What a sling is made of. */
    public enum Material {
        /** @source LOAD-ANGLE-UNEQUAL choker 75 % */
        WIRE_ROPE(0.75),
        /** @source LOAD-ANGLE-UNEQUAL choker 75 % */
        CHAIN(0.75),
        /** @source PRACTICE web and round slings are printed with 80 %; as wire rope, to the safe side */
        WEB(0.75),
        /** @source OSHA-1918 manila: 250 of 550 lb at half an inch, the lowest of its rows */
        FIBRE_ROPE(250.0 / 550);

        private final double chokerFactor;

        Material(double chokerFactor) {
            this.chokerFactor = chokerFactor;
        }
    }

    /** Below this the bend itself weakens the sling, and no factor is given. */
    private static final double LEAST_BEND_RATIO = 25;

    /**
     * What a sling carries over what it carries straight.
     *
     * @param angleHorizontalRad legs above the horizontal, rad, in [π/6, π/2]; counts for the basket
     * @param bendRatio diameter of what it bends round over its own, at least 25 in a basket
     * @throws IllegalArgumentException outside the ranges, where the tables end
     * @source LOAD-ANGLE-UNEQUAL baskets: 200, 170, 140, 100 % at 90°, 60°, 45°, 30°
     */
    public double limitFactor(Material material, double angleHorizontalRad, double bendRatio) {
        if (!(angleHorizontalRad >= Math.PI / 6 - 1e-9 && angleHorizontalRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "angleHorizontalRad (" + angleHorizontalRad + ") must lie in [π/6, π/2].");
        }
        if (this == BASKET && !(bendRatio >= LEAST_BEND_RATIO)) {
            throw new IllegalArgumentException(
                    "bendRatio (" + bendRatio + ") must be at least 25 in a basket.");
        }
        return switch (this) {
            case VERTICAL -> 1;
            case CHOKER -> material.chokerFactor;
            case BASKET -> basketFactor(material, angleHorizontalRad);
        };
    }

    /**
     * Twice the sine, less what the tables are below it.
     *
     * <p>The printed 170 and 140 % are cut down from 173 and 141; manila's 900 of 550 lb at 60° from 173
     * to 164, its 750 at 45° from 141 to 136.
     */
    private static double basketFactor(Material material, double angleHorizontalRad) {
        double exact = 2 * Math.sin(angleHorizontalRad);
        boolean upright = exact > 2 - 1e-9;
        double cut = material == Material.FIBRE_ROPE ? 0.94 : 0.98;
        // All tables agree on 200 % upright and 100 % at the flattest.
        return upright ? 2 : Math.max(1, exact * cut);
    }
}
