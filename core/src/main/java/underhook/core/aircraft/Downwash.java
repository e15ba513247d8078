package underhook.core.aircraft;

import underhook.core.unit.Ranges;

/**
 * What the air under a hovering machine does to people and loose things: an estimate, on the axis, of the
 * mean.
 *
 * <p>The wake speeds up to twice the induced speed and draws together. Real wakes gust above the mean and
 * spread out again farther down; that they weaken with height is not credited.
 *
 * @param downMPerS downward speed on the axis, m/s
 * @param wakeRadiusM radius of the drawn-together wake there, m
 * @param pressurePa pressure of that wind, Pa
 * @param pushOnSheetN what it pushes a flat sheet of one square metre with, N
 */
public record Downwash(
        double downMPerS, double wakeRadiusM, double pressurePa, double pushOnSheetN) {
    /** Flat plate across the flow. @source NASA-GLENN-SHAPE 1.28 */
    private static final double PLATE_COEFFICIENT = 1.28;

    /** Diameters from the rotor that light aircraft and loose things keep off. @source FAA-AIM 7-3-7 */
    private static final double KEEP_OFF_DIAMETERS_FACTOR = 3;

    /** Nobody without a task nearer than this to a turning rotor, m. @source WAC-296-32 100 ft */
    public static final double PEOPLE_OFF_M = 30.48;

    /**
     * Straight below the rotor.
     *
     * @param hover of the whole mass in that air
     * @param rotorRadiusM m, above 0
     * @param densityKgPerM3 kg/m³, above 0
     * @param belowM below the rotor, m, not negative: line and hook below the rotor together
     * @source LEISHMAN-2006 chapter 2 continuity; MCCORMICK-1967 tube of vortices: v (1 + z/√(z² + R²))
     */
    public static Downwash of(
            MomentumHover hover, double rotorRadiusM, double densityKgPerM3, double belowM) {
        Ranges.requirePositive(rotorRadiusM, "rotorRadiusM");
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        Ranges.requireNotNegative(belowM, "belowM");
        double grown = 1 + belowM / Math.hypot(belowM, rotorRadiusM);
        double down = hover.inducedMPerS() * grown;
        double pressure = 0.5 * densityKgPerM3 * down * down;
        return new Downwash(
                down, rotorRadiusM / Math.sqrt(grown), pressure, PLATE_COEFFICIENT * pressure);
    }

    /** How far light aircraft, tents and loose things keep off, m: three rotor diameters or 100 ft. */
    public static double keepOffM(double rotorRadiusM) {
        Ranges.requirePositive(rotorRadiusM, "rotorRadiusM");
        return Math.max(PEOPLE_OFF_M, KEEP_OFF_DIAMETERS_FACTOR * 2 * rotorRadiusM);
    }
}
