package underhook.core.aircraft;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * An ideal rotor hovering out of ground effect, by momentum theory.
 *
 * <p>Real power is 1.3 to 2 times the ideal; the wake of a real rotor is uneven, gusts to more than the
 * mean and meets the ground as an outwash. An estimate for people and loose things below, never a limit
 * for the machine.
 *
 * @param inducedMPerS downward speed through the disc, m/s
 * @param farWakeMPerS downward speed far below, m/s: twice the induced
 * @param idealPowerW power of the ideal rotor, W
 * @param discLoadingPa thrust over disc area, Pa
 */
public record MomentumHover(
        double inducedMPerS, double farWakeMPerS, double idealPowerW, double discLoadingPa) {

    /**
     * The hover of a mass under one rotor.
     *
     * @param massKg all the rotor carries, load included, kg, above 0
     * @param rotorRadiusM rotor radius, m, above 0
     * @param densityKgPerM3 air density, kg/m³, above 0
     * @throws IllegalArgumentException if an argument is not above 0 and finite
     * @source LEISHMAN-2006 chapter 2, momentum theory in hover
     */
    public static MomentumHover of(double massKg, double rotorRadiusM, double densityKgPerM3) {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(rotorRadiusM, "rotorRadiusM");
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        double thrust = massKg * Units.STANDARD_GRAVITY_M_PER_S2;
        double discLoading = thrust / (Math.PI * rotorRadiusM * rotorRadiusM);
        double induced = Math.sqrt(discLoading / (2 * densityKgPerM3));
        return new MomentumHover(induced, 2 * induced, thrust * induced, discLoading);
    }
}
