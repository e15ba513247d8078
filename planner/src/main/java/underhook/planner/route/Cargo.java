package underhook.planner.route;

import underhook.core.fall.Fall;
import underhook.core.job.LoadShape;

/**
 * What hangs there and may be let go.
 *
 * @param light most drag for its mass
 * @param heavy least drag for its mass
 * @param lineM from hook to load, m
 * @param underHookM from hook to the load's lower end, m
 * @param speedMPerS true airspeed away from the places, m/s
 * @param trailRad steady trail at that speed, rad
 * @param slowsOverM so far before the end of a leg it begins to slow down, m
 */
public record Cargo(
        Fall.Body light,
        Fall.Body heavy,
        LoadShape shape,
        double lineM,
        double underHookM,
        double speedMPerS,
        double trailRad,
        double slowsOverM) {}
