package underhook.core.job;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The helicopter as equipped for the day.
 *
 * @param rotorRadiusM main rotor radius, m
 * @param tailReachM from the mast's centre to the tail's end, m
 * @param emptyMassKg equipped empty mass from the latest weighing, kg
 * @param crewMassKg pilot with kit, kg
 * @param maxInternalMassKg most mass with people and no external load, kg
 * @param maxExternalMassKg most mass with an external load, kg
 * @param hookLimitKg most mass on the belly hook, line included, kg
 * @param fuelUsableKg usable fuel, kg
 * @param fuelGaugeSpreadKg how far the reading may be off either way, kg
 * @param burnKgPerS fuel flow while rotors turn, kg/s
 * @param hoverBurnKgPerS fuel flow in the hover while something is held up, kg/s
 * @param startFuelKg fuel for a start and the ground run, kg
 * @param reserveS reserve that is never planned into, as time at burnKgPerS, s
 * @param seats people in the cabin besides the pilot
 * @param emptyLineSpeedMPerS true airspeed with the empty line, m/s
 * @param cabinSpeedMPerS true airspeed with the line off, m/s
 * @param climbMPerS climb with a load, m/s
 * @param descentMPerS descent, m/s
 * @param pilotSide where the pilot looks down the line
 */
public record Machine(
        String name,
        double rotorRadiusM,
        double tailReachM,
        double emptyMassKg,
        double crewMassKg,
        double maxInternalMassKg,
        double maxExternalMassKg,
        double hookLimitKg,
        double fuelUsableKg,
        double fuelGaugeSpreadKg,
        double burnKgPerS,
        double hoverBurnKgPerS,
        double startFuelKg,
        double reserveS,
        int seats,
        double emptyLineSpeedMPerS,
        double cabinSpeedMPerS,
        double climbMPerS,
        double descentMPerS,
        HoverTable hover,
        List<LineItem> lines,
        Optional<Balance> balance,
        Body body,
        PilotSide pilotSide) {
    /** Files round fuel down; a tank that lacks no more is full. */
    private static final double FULL_WITHIN_KG = 0.001;

    /** On which side the pilot leans out and looks down the line. */
    public enum PilotSide {
        LEFT,
        RIGHT
    }

    /**
     * The shape of the machine beyond its rotor.
     *
     * @param noseReachM from the mast's centre to the nose, m
     * @param halfWidthM half the fuselage's width, m
     * @param tailHalfWidthM half the width of tail rotor and stabiliser, m
     * @param rotorAboveHookM height of the rotors over the belly hook, m; 0 is the safe side
     */
    public record Body(
            double noseReachM, double halfWidthM, double tailHalfWidthM, double rotorAboveHookM) {
        public Body {
            if (!(noseReachM > 0 && halfWidthM > 0 && tailHalfWidthM > 0 && rotorAboveHookM >= 0)) {
                throw new IllegalArgumentException("the body has a value out of range.");
            }
        }

        /** What is assumed where the manual was not asked: wide, and the rotors as low as the hook. */
        public static Body assumed(double rotorRadiusM) {
            return new Body(
                    rotorRadiusM, Math.min(1.5, rotorRadiusM), Math.min(1.5, rotorRadiusM), 0);
        }
    }

    public Machine {
        Objects.requireNonNull(name, "name");
        lines = List.copyOf(lines);
        boolean good =
                rotorRadiusM > 0
                        && tailReachM > 0
                        && emptyMassKg > 0
                        && crewMassKg > 0
                        && maxInternalMassKg > 0
                        && maxExternalMassKg > 0
                        && hookLimitKg > 0
                        && fuelUsableKg > 0
                        && fuelGaugeSpreadKg >= 0
                        && burnKgPerS > 0
                        && hoverBurnKgPerS > 0
                        && startFuelKg >= 0
                        && reserveS >= 0
                        && seats >= 0
                        && emptyLineSpeedMPerS > 0
                        && cabinSpeedMPerS > 0
                        && climbMPerS > 0
                        && descentMPerS > 0;
        if (!good) {
            throw new IllegalArgumentException("machine " + name + " has a value out of range.");
        }
    }

    /**
     * The most that the gauge may read, kg, where no more than so much fuel may be aboard; what a full tank holds is
     * no more than the tank, whatever the gauge reads.
     */
    public double mostReadKg(double mostAboardKg) {
        return mostAboardKg >= fuelUsableKg - FULL_WITHIN_KG
                ? fuelUsableKg
                : Math.max(0, mostAboardKg - fuelGaugeSpreadKg);
    }

    /** The same with other fuel flows. */
    public Machine withBurn(double cruiseKgPerS, double inHoverKgPerS) {
        return with(cruiseKgPerS, inHoverKgPerS, lines);
    }

    /** The same with other lines. */
    public Machine withLines(List<LineItem> others) {
        return with(burnKgPerS, hoverBurnKgPerS, others);
    }

    private Machine with(double cruiseKgPerS, double inHoverKgPerS, List<LineItem> others) {
        return new Machine(
                name,
                rotorRadiusM,
                tailReachM,
                emptyMassKg,
                crewMassKg,
                maxInternalMassKg,
                maxExternalMassKg,
                hookLimitKg,
                fuelUsableKg,
                fuelGaugeSpreadKg,
                cruiseKgPerS,
                inHoverKgPerS,
                startFuelKg,
                reserveS,
                seats,
                emptyLineSpeedMPerS,
                cabinSpeedMPerS,
                climbMPerS,
                descentMPerS,
                hover,
                others,
                balance,
                body,
                pilotSide);
    }
}
