package underhook.core.geo;

/**
 * How high the terrain stands against the sky.
 *
 * <p>Trees are left out and the Earth's bend is taken off, so that the sun is rather seen than hidden: the
 * safe side for glare, not for daylight.
 */
public final class Horizon {
    private static final double EARTH_RADIUS_M = 6_371_000;

    /** Share of the Earth's bend that refraction takes back. @source PRACTICE usual in surveying */
    private static final double REFRACTION_COEFFICIENT = 0.13;

    private Horizon() {}

    /**
     * Angle from the horizontal to the highest terrain in one direction, rad; negative where all of it
     * lies below the eye.
     *
     * <p>Heights are taken at every cell; what lies beyond the reach or beyond the known terrain is not
     * seen.
     *
     * @param eye where somebody looks from
     * @param bearingGridRad direction, rad from grid north
     * @param reachM how far to look, m, above 0
     * @throws IllegalArgumentException if the reach is out of range
     * @source DERIVED tangent of height over distance, drop d²(1 − k)/2R
     */
    public static double elevationRad(
            HeightField terrain, Eye eye, double bearingGridRad, double reachM) {
        if (!(reachM > 0 && reachM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("reachM (" + reachM + ") must be above 0.");
        }
        double stepM = terrain.cellSizeM();
        double highest = -Math.PI / 2;
        for (double d = stepM; d <= reachM; d += stepM) {
            PlanePoint at = eye.point().towards(bearingGridRad, d);
            if (!terrain.covers(at.eastM(), at.northM())) {
                break;
            }
            double dropM = d * d * (1 - REFRACTION_COEFFICIENT) / (2 * EARTH_RADIUS_M);
            double riseM = terrain.heightM(at.eastM(), at.northM()) - dropM - eye.eyeAmslM();
            highest = Math.max(highest, Math.atan2(riseM, d));
        }
        return highest;
    }

    /**
     * Where somebody looks from.
     *
     * @param eyeAmslM height of the eye, m AMSL
     */
    public record Eye(PlanePoint point, double eyeAmslM) {}
}
