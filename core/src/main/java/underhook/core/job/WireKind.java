package underhook.core.job;

/** What a wire is. */
public enum WireKind {
    /** A power line of any voltage. */
    POWER,
    TELEPHONE,
    /** A cable car, chair lift, ski tow or goods ropeway. */
    CABLEWAY,
    /** Anything else that hangs: a guy, a fence over a gorge, a slackline. */
    OTHER
}
