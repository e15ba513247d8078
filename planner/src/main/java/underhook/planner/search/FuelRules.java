package underhook.planner.search;

/**
 * Fuel of the machine.
 *
 * @param usableKg what the tank gives, kg
 * @param burnKgPerS flow with the engine on, kg/s
 * @param hoverBurnKgPerS flow while a load is stood up, kg/s
 * @param startKg for a start, kg
 * @param spreadKg how far the gauge may be off, kg
 * @param reserveS kept as time, s
 * @param contingencyS planned above the reserve, s
 * @param refuelS to refuel besides the flow, s
 * @param refuelKgPerS flow into the tank, kg/s
 */
public record FuelRules(
        double usableKg,
        double burnKgPerS,
        double hoverBurnKgPerS,
        double startKg,
        double spreadKg,
        double reserveS,
        double contingencyS,
        double refuelS,
        double refuelKgPerS) {
    public FuelRules {
        if (!(usableKg > 0 && burnKgPerS > 0 && refuelKgPerS > 0)) {
            throw new IllegalArgumentException("fuel figures must be above 0.");
        }
    }

    double setDownKgPerS(boolean standsUp) {
        return standsUp ? Math.max(burnKgPerS, hoverBurnKgPerS) : burnKgPerS;
    }

    double reserveKg() {
        return reserveS * burnKgPerS;
    }

    /** Least reading at hook-up for a trip and the way to fuel, both in seconds of flying. */
    double needKg(long flownS, long setDownS) {
        return burnKgPerS * flownS
                + Math.max(burnKgPerS, hoverBurnKgPerS) * setDownS
                + burnKgPerS * (reserveS + contingencyS)
                + 2 * spreadKg;
    }
}
