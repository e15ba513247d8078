package underhook.core.geo;

/**
 * On which side of the terrain a place lies in a wind: an estimate from the ground's shape alone. Trees,
 * stability and the wind's own strength are left out.
 */
public enum WindSide {
    /** Ground stands up towards the wind: downdraught and turbulence are to be expected. */
    LEE,
    /** Ground falls towards the wind and stands up behind: updraught is to be expected. */
    WINDWARD,
    OPEN;

    /** Ground further off than this is left out, m. @source PRACTICE */
    public static final double REACH_M = 1000;

    /** Ground that stands up more than this counts, rad. @source PRACTICE */
    private static final double STANDS_RAD = Math.toRadians(10);

    /**
     * The side in a wind.
     *
     * @param eye the place at the height of its ground
     * @param windFromGridRad where the wind comes from, rad from grid north
     * @source PRACTICE updraught to windward and downdraught to leeward of what stands up
     */
    public static WindSide of(HeightField terrain, Horizon.Eye eye, double windFromGridRad) {
        double upwindRad = Horizon.elevationRad(terrain, eye, windFromGridRad, REACH_M);
        if (upwindRad > STANDS_RAD) {
            return LEE;
        }
        double behindRad = windFromGridRad + Math.PI;
        boolean standsBehind = Horizon.elevationRad(terrain, eye, behindRad, REACH_M) > STANDS_RAD;
        return upwindRad < 0 && standsBehind ? WINDWARD : OPEN;
    }
}
