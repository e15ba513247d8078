package underhook.core.line;

/**
 * How the line hangs at a moment and how it moves.
 *
 * <p>The load is at length · (sin fore cos side, sin side, −cos fore cos side) from the hook, along the
 * track, to the right and up.
 *
 * @param foreRad line from plumb along the track, rad; positive with the load ahead
 * @param sideRad line from the plane of track and plumb, rad; positive with the load to the right
 * @param foreRadPerS rad/s
 * @param sideRadPerS rad/s
 */
public record SwingState(double foreRad, double sideRad, double foreRadPerS, double sideRadPerS) {
    /** Hanging plumb and still. */
    public static final SwingState PLUMB = new SwingState(0, 0, 0, 0);

    /** Beyond this a line is no pendulum any more, rad. @source PRACTICE own setting */
    public static final double WIDEST_RAD = Math.toRadians(80);

    public SwingState {
        if (!(Math.abs(foreRad) < Math.PI / 2 && Math.abs(sideRad) < Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "foreRad ("
                            + foreRad
                            + ") and sideRad ("
                            + sideRad
                            + ") must lie within a right angle.");
        }
        if (!(Math.abs(foreRadPerS) < 10 && Math.abs(sideRadPerS) < 10)) {
            throw new IllegalArgumentException("rates must be below 10 rad/s.");
        }
    }
}
