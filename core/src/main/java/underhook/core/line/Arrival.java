package underhook.core.line;

/**
 * What a way of slowing down does to the load.
 *
 * @param slowDown the way
 * @param swing what the load did, the period being as computed
 * @param beginM how far before the place to begin, m
 * @param lastsS how long it takes, s
 * @param hardestMPerS2 hardest deceleration, m/s²
 * @param noseUpRad how far the nose is up then, rad
 * @param residualM farthest from rest over the place, m
 * @param worstResidualM the same with the period off either way by the stated spread, m
 */
public record Arrival(
        SlowDown slowDown,
        SwingResult swing,
        double beginM,
        double lastsS,
        double hardestMPerS2,
        double noseUpRad,
        double residualM,
        double worstResidualM) {}
