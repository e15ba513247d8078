package underhook.core.job;

/** How a load moves on the ground when it falls. */
public enum LoadShape {
    /** Soft: a bag, a bladder, a net. */
    BAG,
    /** Hard with corners: a crate, a machine. */
    BOX,
    /** Rolls: a pole, a drum, a log, a pipe. */
    ROUND,
    /** Thin and flat: plates, sheets. It glides: the fall of a point says too little of it. */
    SHEET
}
