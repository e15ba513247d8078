package underhook.app.desk;

/**
 * Something that happened at the desk.
 *
 * @param job id of the job it happened to
 * @param revision head of the job, for a change; rows in the log, for a tap; else 0
 * @param text what is being done, or the reason of a failure
 * @param doneFraction of a run, in [0, 1]
 */
public record DeskEvent(Kind kind, String job, long revision, String text, double doneFraction) {
    /** What happened. */
    public enum Kind {
        /** The job has another head. */
        CHANGED,
        /** A run goes on. */
        PROGRESS,
        /** A question is being worked out. */
        ASKING,
        /** A run ended with a plan that is kept. */
        PLANNED,
        /** A run ended without one. */
        FAILED,
        /** Somebody tapped; the number stands where the head does. */
        TAPPED
    }
}
