package underhook.core.geo;

import underhook.core.unit.Units;

/**
 * The sun in the pilot's eyes.
 *
 * @param aheadRad angle between the sun and straight ahead, rad, in [0, π]
 * @param besideRad angle between the sun and the side that the pilot leans out to, rad, in [0, π]
 * @param visible whether the sun stands above the terrain; clouds may hide it
 */
public record Glare(double aheadRad, double besideRad, boolean visible) {
    /** Nearer than this it dazzles. @source PRACTICE no published angle was found */
    public static final double DAZZLE_RAD = Math.toRadians(30);

    /**
     * Glare on a heading.
     *
     * @param headingTrueRad heading, rad from true north
     * @param horizonRad angle of the terrain in the sun's direction, rad from the horizontal
     * @param leansRight whether the pilot looks down on the right side
     * @source DERIVED angle between two directions
     */
    public static Glare of(
            SunPosition sun, double headingTrueRad, double horizonRad, boolean leansRight) {
        double elevation = sun.elevationApparentRad();
        double beside = headingTrueRad + (leansRight ? 1 : -1) * Math.PI / 2;
        // Half the disc, a quarter of a degree, is enough to dazzle.
        boolean visible = elevation + Units.degToRad(0.27) > Math.max(0, horizonRad);
        return new Glare(angleRad(sun, headingTrueRad), angleRad(sun, beside), visible);
    }

    private static double angleRad(SunPosition sun, double levelTrueRad) {
        double cos =
                Math.cos(sun.elevationApparentRad())
                        * Math.cos(sun.azimuthTrueRad() - levelTrueRad);
        return Math.acos(Math.max(-1, Math.min(1, cos)));
    }

    /** Whether it dazzles on the way in. */
    public boolean isAhead() {
        return visible && aheadRad < DAZZLE_RAD;
    }

    /** Whether it dazzles while the pilot leans out and looks down the line. */
    public boolean isBeside() {
        return visible && besideRad < DAZZLE_RAD;
    }
}
