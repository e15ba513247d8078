package underhook.core.finding;

/** How much a finding matters. STOP leaves the load, place or leg out of the plan. */
public enum Severity {
    NOTE,
    CAUTION,
    STOP
}
