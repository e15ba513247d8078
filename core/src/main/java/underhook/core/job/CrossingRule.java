package underhook.core.job;

/** Whether a loaded machine may pass over a thing. */
public enum CrossingRule {
    NEVER,
    /** Only while a guard keeps it clear. */
    GUARDED,
    ALLOWED
}
