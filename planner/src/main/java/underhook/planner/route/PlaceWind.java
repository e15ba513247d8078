package underhook.planner.route;

/**
 * The wind at a place.
 *
 * @param fromGridRad where it comes from, rad from grid north
 * @param speedMPerS mean wind, m/s
 */
public record PlaceWind(double fromGridRad, double speedMPerS) {}
