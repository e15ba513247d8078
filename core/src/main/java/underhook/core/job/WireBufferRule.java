package underhook.core.job;

/** Which table of least distances to a live wire is used besides the operator's own distance. */
public enum WireBufferRule {
    /** The operator's own distance alone. */
    OWN,
    /** Distances for cranes with a load, by voltage. */
    CRANE,
    /** Distances for cranes that travel without a load, by voltage. */
    CRANE_TRAVEL
}
