package underhook.core.job;

/** How a mass became known. */
public enum MassStatus {
    WEIGHED,
    ESTIMATED,
    MISSING
}
