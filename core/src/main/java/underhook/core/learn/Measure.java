package underhook.core.learn;

/** What is learned of flights. */
public enum Measure {
    /** From hook-up until the last load was free, s. */
    LIFT_TIME,
    /** In the hover over the place, s. */
    HOVER_TIME,
    /** Mass on the load cell, kg. */
    MASS,
    /** Fuel for a time with the engine on, kg. */
    FUEL
}
