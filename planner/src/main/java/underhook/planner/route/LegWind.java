package underhook.planner.route;

/**
 * The wind on a leg.
 *
 * @param fromGridRad where it comes from, rad from grid north
 * @param speedMPerS middle of what it may be, m/s
 * @param spreadMPerS how far it may be off that, m/s
 */
public record LegWind(double fromGridRad, double speedMPerS, double spreadMPerS) {
    /** Still air. */
    public static final LegWind CALM = new LegWind(0, 0, 0);
}
