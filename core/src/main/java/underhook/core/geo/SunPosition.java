package underhook.core.geo;

/**
 * Where the sun's centre stands.
 *
 * @param azimuthTrueRad rad from true north, clockwise, in [0, 2π)
 * @param elevationGeometricRad rad above the horizontal, without refraction
 * @param elevationApparentRad rad above the horizontal as seen through standard air (1013.25 hPa, 15 °C);
 *     the same as the geometric one when the whole disc is below the horizon
 */
public record SunPosition(
        double azimuthTrueRad, double elevationGeometricRad, double elevationApparentRad) {}
