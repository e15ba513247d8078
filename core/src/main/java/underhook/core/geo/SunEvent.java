package underhook.core.geo;

/**
 * A passing of the sun's centre through a fixed depth under a flat horizon at the observer's height.
 *
 * <p>Rise and set are at 50 arc minutes: 34 for refraction and 16 for half the disc. A hill delays the
 * light; the legal limits take no account of hills.
 *
 * @source NOAA-SOLAR glossary: zenith of 90.833° for rise and set, 96° for civil twilight
 */
public enum SunEvent {
    CIVIL_DAWN(Math.toRadians(-6), true),
    SUNRISE(Math.toRadians(-0.833), true),
    SUNSET(Math.toRadians(-0.833), false),
    CIVIL_DUSK(Math.toRadians(-6), false);

    private final double elevationGeometricRad;
    private final boolean rising;

    SunEvent(double elevationGeometricRad, boolean rising) {
        this.elevationGeometricRad = elevationGeometricRad;
        this.rising = rising;
    }

    /** Elevation of the sun's centre without refraction, rad. */
    public double elevationGeometricRad() {
        return elevationGeometricRad;
    }

    /** Whether the sun is on its way up. */
    public boolean isRising() {
        return rising;
    }
}
