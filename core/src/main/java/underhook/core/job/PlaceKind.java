package underhook.core.job;

/** What a place is for. */
public enum PlaceKind {
    /** Loads wait here; the machine may stand here. */
    LAYDOWN,
    /** Loads are set down or picked up here from the hover. */
    SITE,
    /** People get on and off here. */
    LANDING
}
