package underhook.core.plan;

/** What a step of the day is. */
public enum StepKind {
    ROTATION,
    /** An empty move between laydowns. */
    POSITION,
    /** People moved by helicopter, line off. */
    CREW_MOVE,
    REFUEL,
    LINE_CHANGE,
    BREAK,
    WAIT
}
