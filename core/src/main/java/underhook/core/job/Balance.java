package underhook.core.job;

import java.util.List;

/**
 * Longitudinal balance of the machine, arms from the manual's datum.
 *
 * @param emptyArmM arm of the equipped empty machine, m
 * @param crewArmM arm of the pilot and kit, m
 * @param fuelArmM arm of the fuel, m
 * @param cabinArmM arm of people in the cabin, m
 * @param hookArmM arm of the belly hook, m
 * @param envelope allowed limits, ascending in mass
 */
public record Balance(
        double emptyArmM,
        double crewArmM,
        double fuelArmM,
        double cabinArmM,
        double hookArmM,
        List<Limit> envelope) {
    /** Allowed arm at one mass; between rows the limits are straight. */
    public record Limit(double massKg, double forwardArmM, double aftArmM) {
        public Limit {
            if (!(massKg > 0 && forwardArmM <= aftArmM)) {
                throw new IllegalArgumentException(
                        "balance limit at " + massKg + " kg is crossed.");
            }
        }
    }

    public Balance {
        envelope = List.copyOf(envelope);
    }
}
