package underhook.app.port;

/**
 * One thing that was planned and then measured.
 *
 * @param quantity what was measured
 * @param group kind of load, place and line that it belongs to
 * @param plannedAmount as planned, above 0, in the quantity's unit
 * @param flownAmount as flown, above 0, in the same unit
 */
public record FlownSample(
        Quantity quantity, String group, double plannedAmount, double flownAmount) {
    /** What is learned. */
    public enum Quantity {
        /** From hook-up until the last load was free, s. */
        LIFT_TIME,
        /** In the hover over the place, s. */
        HOVER_TIME,
        /** Mass on the load cell, kg. */
        MASS,
        /** Fuel for a time with the engine on, kg. */
        FUEL
    }

    public FlownSample {
        if (!(plannedAmount > 0 && flownAmount > 0)) {
            throw new IllegalArgumentException("amounts of a sample must be above 0.");
        }
    }
}
